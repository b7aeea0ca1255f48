// Effects and needs of putting parts in and taking them out, of reach, and of what stands on what.
export const PARTS = [
  {
    file: "actions/placing.ts",
    breaks: [
      ["install: the place", "change: () => IN };", "change: (v) => v };"],
      [
        "install: the numbered place",
        "return { variable, renews, change: () => there };",
        "return { variable, renews, change: (v) => v };",
      ],
      [
        "install: who did it, where it was only supposed",
        'const renews = "where supposed";',
        "const renews = undefined as never;",
      ],
      ["install: on another part", "onPart(carrierKey, isInstalled(under), isTaken || isPlaceTaken(under))", "IN"],
      [
        "install: on a part of which it is only taken as so where it is",
        "onPart(carrierKey, isInstalled(under), isTaken || isPlaceTaken(under)),",
        "onPart(carrierKey, isInstalled(under), isTaken && false),",
      ],
      ["install: the position holds it", "change: (value) => withHolder(value, key)", "change: (value) => value"],
      ["install: the old position is free", "changing(vacate(world, part, index, seat)),", ""],
      ["install: a fastener is loose", 'return isSlack(grip) ? grip : "loose";', "return grip;"],
      [
        "install: who put a fastener in left it loose",
        '{ variable, when: [[isOut]], renews: "always", change: slackened },',
        "{ variable, when: [[isOut]], change: slackened },",
      ],
      [
        "install new: fresh",
        'return { needs: fresh ? [] : [need], updates: [{ variable, change: () => "fresh" }] };',
        "return { needs: fresh ? [] : [need], updates: [] };",
      ],
      [
        "install: what stands on it comes along",
        "changing(carry(world, part, index)),\n    closingOver",
        "closingOver",
      ],
      ["install: heat goes over", "changing(broughtTogether(world, part, index)),", ""],
      ["install: hangs no more", "changing(hangingNoMore(world, part, index)),", ""],
      ["install: not while it is in", "needing([alreadyIn]),", ""],
      [
        "install: position free",
        "bad: [{ variable: holder, test: isOther }]",
        "bad: [{ variable: holder, test: () => false }]",
      ],
      ["install: the own position", "return index === at.position ? null", "return index !== null ? null"],
      ["install: another ring", "if (seats.places !== at.places) return", "if (false as boolean) return"],
      ["install: support in", "test: (value) => value !== UNKNOWN && !isInstalled(value) }],", "test: () => false }],"],
      ["install: at the clock position", "return now === null || now === wanted;", "return now === null || true;"],
      [
        "install: outer hot",
        "test: (value) => isKnown(value, ({ high }) => high <= ambient.high) },",
        "test: () => true },",
      ],
      [
        "install: inner cold",
        "test: (value) => isKnown(value, ({ low }) => low >= ambient.low) },",
        "test: () => true },",
      ],
      [
        "install: a fit only where the mate is in",
        "boolean => isAttached(value) && carrierOf(value) !== key;",
        "boolean => value !== key;",
      ],
      [
        "press: no heat needed",
        'action.verb === "press" ? pressing(world, part, index, carrier)',
        "(false as boolean) ? pressing(world, part, index, carrier)",
      ],
      ["install: closes over an aid", ".filter((inside) => inside.part.temporary)", ".filter(() => false)"],
      ["remove: the place", '{ variable: place, renews: "where supposed", change: () => OUT },', ""],
      ["remove: the position is free", "...vacate(world, part, index),\n      { variable: place", "{ variable: place"],
      ["remove: the grip", "...release(world, part, index),", ""],
      ["remove: what stands on it comes along", "...carry(world, part, index),\n", "\n"],
      ["remove: used", 'change: () => "removed"', "change: (v: string) => v"],
      ["remove: out of the arc", "changing(unfilling(world, part, index)),", ""],
      [
        "remove: only what is in",
        "bad: [{ variable: place, test: isRemoved }],",
        "bad: [{ variable: place, test: () => false }],",
      ],
      [
        "remove: retained",
        'bad: [{ variable: world.part(by, at, "place"), test: isInstalled }],\n      trouble: {\n        kind: "retained"',
        'bad: [{ variable: world.part(by, at, "place"), test: () => false }],\n      trouble: {\n        kind: "retained"',
      ],
      ["remove: held by a tight fastener", '["tightened", isTight],', ""],
      ["remove: held by a loose fastener", '["loose", isLoose],', ""],
      ["remove: the last fastener", "lastFastenerOut(world, part, index, verb),", ""],
    ],
  },
  {
    file: "actions/reaching.ts",
    breaks: [
      [
        "work: enclosed",
        'bad: [{ variable: world.part(by, at, "place"), test: isInstalled }, ...only],',
        'bad: [{ variable: world.part(by, at, "place"), test: () => false }, ...only],',
      ],
      [
        "work: on the bench it is free",
        'const isIn: Test = { variable: world.part(part, index, "place"), test: isInstalled };',
        'const isIn: Test = { variable: world.part(part, index, "place"), test: () => true };',
      ],
      [
        "inspect: enclosed",
        "return behind(world, part, index, verb, [{ variable",
        'return behind(world, { ...part, id: "" }, index, verb, [{ variable',
      ],
      [
        "work: live",
        'needs: [need("energised", LIVE), need("not proved", ISOLATED)],',
        'needs: [need("not proved", ISOLATED)],',
      ],
      [
        "work: not proved",
        'needs: [need("energised", LIVE), need("not proved", ISOLATED)],',
        'needs: [need("energised", LIVE)],',
      ],
      ["work: live once told is taken as off", "value === LIVE ? OFF : value", "value"],
      [
        "work: not proved once told is taken as proved",
        '{ variable, assumed: true, keepsOrigin: "always", ...when, change: proved },',
        "",
      ],
      [
        "work: whose isolation it was",
        '{ variable, assumed: true, keepsOrigin: "always", ...when, change: proved },',
        "{ variable, assumed: true, ...when, change: proved },",
      ],
    ],
  },
  {
    file: "standing.ts",
    breaks: [
      [
        "carried: where to is as sure as where its carrier is",
        "onPart(carrier, isInstalled(below), isTaken || isPlaceTaken(below));",
        "onPart(carrier, isInstalled(below), isTaken && false);",
      ],
      [
        "carried: that it is on it is as sure as before",
        'keepsOrigin: "where supposed",\n    change: (value',
        "change: (value",
      ],
      [
        "out: who else is in the position is as sure as before",
        'keepsOrigin: "where supposed" as const,\n    change: (held)',
        "change: (held)",
      ],
      [
        "out: the position no longer holds it",
        "change: (held) => withoutHolder(held, key),",
        "change: (held) => held,",
      ],
      ["out: no grip", 'change: () => "absent"', "change: (v) => v"],
      [
        "carried: goes with what it stands on",
        "return below === UNKNOWN ? UNKNOWN : onPart(carrier, isInstalled(below), isTaken || isPlaceTaken(below));",
        "return value;",
      ],
      [
        "carried: only what stands on it",
        "if (carrierOf(value) !== carrier || !cameAlong) return value;",
        "if (carrierOf(value) === null || !cameAlong) return value;",
      ],
    ],
  },
  {
    file: "relations.ts",
    breaks: [
      [
        "partners: the like-numbered",
        'if (relation.which === "same") return from === to;',
        'if (relation.which === "same") return from !== to;',
      ],
      ["partners: stack in one position", "stack: (a, b) => a === b || (stacks", "stack: (a, b) => a === b && (stacks"],
    ],
  },
];
