// Effects and needs of fasteners, loads, energies, coats and heat.
export const FASTENERS = [
  {
    file: "actions/fastening.ts",
    breaks: [
      [
        "tighten: the grip",
        'changing([{ variable: world.part(part, index, "grip"), renews: "always", change: () => grip }]),',
        "",
      ],
      [
        "tighten: the last action counts",
        'changing([{ variable: world.part(part, index, "grip"), renews: "always", change',
        'changing([{ variable: world.part(part, index, "grip"), change',
      ],
      [
        "tighten: in",
        'needing([notInstalled(part, index, world.part(part, index, "place"), "tighten"), ...secured]),',
        "needing(secured),",
      ],
      [
        "tighten: what it secures in",
        'needing([notInstalled(part, index, world.part(part, index, "place"), "tighten"), ...secured]),',
        'needing([notInstalled(part, index, world.part(part, index, "place"), "tighten")]),',
      ],
      ["tighten: locked", 'needing(locked(world, part, index, "tighten")),', ""],
      ["tighten: reachable", 'workOn(world, part, index, "tighten"),', ""],
      [
        "tighten: a single-use part again",
        "bad: [{ variable, test: isSpent }, isIn],",
        'bad: [{ variable, test: (value) => value === "removed" }, isIn],',
      ],
      [
        "tighten: once told it is taken as new",
        '(value === "loosened" ? "fresh" : value) },\n      { variable, when: [[isIn]], change: (value) => (isSpent(value) ? "fresh" : value) },',
        "value },",
      ],
      ["tighten: a load on a wet joint", "clamping(world, part, index),", ""],
      ["loosen: the grip", 'changing([{ variable, renews: "always", change: () => grip }]),', ""],
      ["loosen: in", 'needing([notInstalled(part, index, place, "loosen"), notTight]),', "needing([notTight]),"],
      [
        "loosen: tight",
        'needing([notInstalled(part, index, place, "loosen"), notTight]),',
        'needing([notInstalled(part, index, place, "loosen")]),',
      ],
      ["loosen: locked", 'needing(locked(world, part, index, "loosen")),', ""],
      ["loosen: reachable", 'workOn(world, part, index, "loosen"),', ""],
      [
        "loosen: used",
        '(!isAttached(at) ? "removed" : isTaken ? putBack("removed") : "loosened"),',
        "(isTaken ? at : _),",
      ],
      ["loosen by an angle: not used", 'part.singleUse && grip === "loose" ?', "part.singleUse ?"],
      ["loosen: the last that was tight", 'grip === "loose" ? lastFastenerLoose(world, part, index) : NOTHING,', ""],
      [
        "loosen by an angle: not let go",
        'grip === "loose" ? lastFastenerLoose(world, part, index) : NOTHING,',
        "lastFastenerLoose(world, part, index),",
      ],
    ],
  },
  {
    file: "action.ts",
    breaks: [
      [
        "tighten by hand: still loose",
        'const grip = action.toSeat ? "seated" : isRunIn ? "run in" : "tight";',
        'const grip = action.toSeat ? "seated" : "tight";',
      ],
      [
        "tighten to seat: seated",
        'const grip = action.toSeat ? "seated" : isRunIn ? "run in" : "tight";',
        'const grip = isRunIn ? "run in" : "tight";',
      ],
      ["loosen by an angle: set", 'action.setBack ? "set" : "loose"', '"loose"'],
      ["wait: it cools", "[...coolDown(world, ambient.low), ...rested(world, seconds)]", "[...rested(world, seconds)]"],
      [
        "wait: coats rest",
        "[...coolDown(world, ambient.low), ...rested(world, seconds)]",
        "[...coolDown(world, ambient.low)]",
      ],
      [
        "clean: clean by this, also where it was only taken as so",
        'renews: "where supposed", change: () => to',
        "change: () => to",
      ],
      [
        "turn: where the ring stands",
        '{ variable: orientationVariable(world, places), renews: "where supposed", change: () => value }',
        "{ variable: orientationVariable(world, places), change: (v) => v }",
      ],
      ["clean: clean", 'set(thing, "surface", "clean"), ', ""],
      ["lubricate: lubricated", 'work(thing, [set(thing, "surface", film), ...filmed', "work(thing, [...filmed"],
      ["align: aligned", 'work(thing, [set(thing, "aligned", "yes")])', "work(thing, [])"],
      ["fill: a load on a wet part", "loading(world, thing, thing.part.name)", "{ needs: [], updates: [] }"],
      [
        "lift: a load on a wet part",
        "both(lifting(world, thing), takeUp(world, thing.part, thing.index, action.tools))",
        "takeUp(world, thing.part, thing.index, action.tools)",
      ],
      [
        "drain: a content, drained",
        'work(thing, [set(thing, "contents", action.verb === "drain" ? "drained" : "bled")])',
        "work(thing, [])",
        "No condition of the language asks whether a part is drained or bled.",
      ],
    ],
  },
  {
    file: "actions/loads.ts",
    breaks: [
      ["lift: it hangs", "change: () => value }] }", "change: (v) => v }] }"],
      [
        "lift: what hung on that tool is given up",
        "return both(...others.map(",
        "return both(...others.slice(0, 0).map(",
      ],
      [
        "set down: hangs no more",
        'change: (value) => (isMeant(value) ? "no" : value) };',
        "change: (value) => value };",
      ],
      [
        "set down: once told it is taken as held",
        '{ variable: hung, change: (value) => (isMeant(value) ? "yes" : value) },',
        '{ variable: hung, change: (value) => (isMeant(value) ? "no" : value) },',
      ],
      [
        "set down: what stands by itself needs none",
        "if (held.part.stands) return { needs: [], updates: [letGo] };",
        "",
      ],
      [
        "the last fastener: not of what stands by itself",
        "isHeavy(world, held) && !held.stands)",
        "isHeavy(world, held))",
      ],
      [
        "set down: two fasteners in",
        "needs: atMostOneIn(world, fasteners).map((out) => ({",
        "needs: atMostOneIn(world, fasteners).slice(0, 0).map((out) => ({",
      ],
      ["in and two fasteners in: hangs no more", 'change: () => "no",', "change: (v) => v,"],
      [
        "hangs no more only while the part is in",
        "when: enough.map((tests) => [isIn, ...tests]),",
        "when: enough.map((tests) => [...tests]),",
      ],
      [
        "the last fastener: once told the part is taken as held",
        'updates: [{ variable: hung, when: ways, change: () => "yes" }],',
        "updates: [],",
      ],
      ["the last fastener: not while it hangs", 'test: (value: string) => value === "no" },', "test: () => true },"],
      [
        "the last fastener: the others loose",
        "...others.map((other) => grip(other, (value) => !mayBeTight(value))),",
        "",
      ],
      [
        "the last fastener: the others out",
        "[isIn(world, fastener), ...others.map((other) => isNotIn(world, other))],",
        "",
      ],
      [
        "heavy: above what one person may lift",
        "kilograms > (world.liftingLimit ?? ONE_PERSON_LIMIT)",
        "kilograms > 0 * (world.liftingLimit ?? ONE_PERSON_LIMIT)",
      ],
    ],
  },
  {
    file: "actions/energies.ts",
    breaks: [
      ["isolate: isolated", "value === LIVE ? ISOLATED : value", "value"],
      ["isolate: who did it first", "value === LIVE ? ISOLATED : value", "ISOLATED"],
      ["prove: whose isolation it was", 'keepsOrigin: "always", change: proved', "change: proved"],
      ["restore: live", 'updates: [{ variable, renews: "where supposed", change: () => LIVE }]', "updates: []"],
      [
        "restore: a load on a wet part",
        "return both({ needs, updates: [] }, driving(world, energy), {",
        "return both({ needs, updates: [] }, {",
      ],
      [
        "restore: a cover off",
        'return need(cover, "out", [{ variable, test: (value) => value === OUT }]);',
        'return need(cover, "out", [{ variable, test: () => false }]);',
      ],
      [
        "restore: a fastener loose",
        'need(fastener, "loose", [{ variable: grip, test: isSlack }, installed(held)]),',
        "",
      ],
      [
        "restore: a fastener out",
        'need(fastener, "out", [{ variable: place, test: (value) => value === OUT }, installed(held)]),',
        "",
      ],
      ["restore: an aid in", "return [...off, ...loose, ...aids];", "return [...off, ...loose];"],
      [
        "restore: only what is spoken of",
        ".filter(({ part }) => world.isSpokenOf(part))\n    .map((cover)",
        ".map((cover)",
      ],
      [
        "restore: what was not live",
        "const only: Test[] = [{ variable: world.energy(energy), test: isDead }, installed(driven)];",
        "const only: Test[] = [installed(driven)];",
      ],
    ],
  },
  {
    file: "state-values.ts",
    breaks: [
      ["prove: shown to be dead", 'value === ISOLATED ? "proved dead" : value === UNKNOWN', "value === UNKNOWN"],
      [
        "set counts as tight",
        'value === "tight" || value === "set" || value === "seated"',
        'value === "tight" || value === "seated"',
      ],
      [
        "seated counts as tight",
        'value === "tight" || value === "set" || value === "seated"',
        'value === "tight" || value === "set"',
      ],
      ["as found counts as loose where loose is asked", "isSlack(value) || value === AS_FOUND", "isSlack(value)"],
      ["as found may be tight", "isTight(value) || value === AS_FOUND", "isTight(value)"],
      ["run in by hand is loose", 'value === "loose" || value === "run in"', 'value === "loose"'],
    ],
  },
  {
    file: "actions/curing.ts",
    breaks: [
      ["apply: the coat", "change: () => value }];", "change: (v) => v }];"],
      ["time: coats rest", 'return left <= seconds ? "" :', "return left >= 0 ? value :"],
      [
        "time: a coat that is not yet over rests on",
        'return left <= seconds ? "" :',
        'return left <= seconds ? "" : left >= 0 ? value :',
      ],
      ["wet once told is taken as cured", 'change: (value) => (test(value) ? "" : value)', "change: (value) => value"],
      [
        "install: closes over a wet part",
        'mustBeCured(world, inside, "closed over", name, isWet)',
        'mustBeCured(world, inside, "closed over", name, () => false)',
      ],
      ["press: a load on a wet part", "return both(loading(world, { part, index }, name), onto", "return both(onto"],
      ["press: a load on what is under it", "onto === null ? NOTHING : loading(world, onto, name)", "NOTHING"],
      ["lift: a consumable's own time is no matter", "return value.endsWith(RESTS_FIRST);", 'return value !== "";'],
    ],
  },
  {
    file: "actions/heating.ts",
    breaks: [
      [
        "heat: both bounds",
        'return { variable, renews: "where supposed", change: () => temperature(low, high) };',
        "return { variable, change: (v) => v };",
      ],
      [
        "heat: the low bound",
        'return { variable, renews: "where supposed", change: () => temperature(low, high) };',
        "return { variable, change: () => temperature(high, high) };",
      ],
      [
        "heat by: both bounds",
        "return now === null ? UNKNOWN : temperature(now.low + (ends[0] ?? 0), now.high + (ends[1] ?? 0));",
        "return value;",
      ],
      [
        "heat: goes over to what touches",
        "return [set(world, part, index, to, by, cooling), ...warmed(world, part, index)];",
        "return [set(world, part, index, to, by, cooling)];",
      ],
      [
        "together: the hotter warms the other",
        "return [...warmed(world, part, index), ...takesOver];",
        "return takesOver;",
      ],
      [
        "together: takes over the other's heat",
        "return [...warmed(world, part, index), ...takesOver];",
        "return warmed(world, part, index);",
      ],
      [
        "touching: the high bound only",
        "return from.high > now.high ? temperature(now.low, from.high) : value;",
        "return from.high > now.high ? temperature(from.low, from.high) : value;",
      ],
      [
        "time: cools the low bound",
        "temperature(Math.min(now.low, ambientLow), now.high);",
        "temperature(now.low, now.high);",
      ],
      [
        "time: leaves the high bound",
        "temperature(Math.min(now.low, ambientLow), now.high);",
        "temperature(Math.min(now.low, ambientLow), Math.min(now.high, ambientLow));",
      ],
    ],
  },
  {
    file: "joints.ts",
    breaks: [
      [
        "touching: on the other",
        "return [rides(one, other), rides(other, one), [isIn(one), isIn(other)]];",
        "return [[isIn(one), isIn(other)]];",
      ],
      [
        "touching: both in",
        "return [rides(one, other), rides(other, one), [isIn(one), isIn(other)]];",
        "return [rides(one, other), rides(other, one)];",
      ],
    ],
  },
];
