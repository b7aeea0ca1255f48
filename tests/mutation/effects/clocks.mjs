// `within`: what counts as time on the way, from where to where, and what is not said.
export const CLOCKS = [
  {
    file: "times.ts",
    breaks: [
      ["within: from where a jump leads out, too", "return [leave, ...out.map(({ id }) => id)];", "return [leave];"],
      [
        "within: from where the first step ends",
        "return [leave, ...out.map(({ id }) => id)];",
        "return [first, ...out.map(({ id }) => id)];",
      ],
      [
        "within: to where a jump leads out, too",
        'return kind === "leave" || kind === "stop" || kind === "jump";',
        'return kind === "leave";',
      ],
      [
        "within: of the same pass",
        "return samePass(places, nearest(places, pass)).flatMap(",
        "return samePass(places, nearest(places, [])).flatMap(",
        "The brute-force run tells no passes, and each pass of a repeat takes as long.",
        "tests/analysis/mutants/times-by-hand.test.ts",
      ],
      ["within: a loop may take any time", "or(so, when), longest.loop);", "or(so, when), NEVER);"],
      ["within: not known only where not too late", "or(so, and(when, not(late))), NEVER);", "or(so, when), NEVER);"],
    ],
  },
  {
    file: "longest.ts",
    breaks: [
      ["within: waits count", "const waited = waitAt(node);", "const waited = 0 * waitAt(node);"],
      [
        "within: what a step says counts",
        "const whole = list.map((one) => ({ ...one, time: one.time + (step.takes ?? 0), byWaits: !step.waits }));",
        "const whole = list.map((one) => ({ ...one, byWaits: !step.waits }));",
      ],
      ["within: waits that are longer than that", "return step.waits ? [...whole, ...list] : whole;", "return whole;"],
      [
        "within: what a step says that is longer than its waits",
        "return step.waits ? [...whole, ...list] : whole;",
        "return step.waits ? list : whole;",
      ],
      [
        "within: waits are no time beside what the step says",
        "if (waited > 0) return list.map((one) => (one.byWaits ? { ...one, time: one.time + waited } : one));",
        "if (waited > 0) return list.map((one) => ({ ...one, time: one.time + waited }));",
      ],
      [
        "within: a step that says no time",
        "const unknown = visible(and(when, unsaid));",
        "const unknown = and(NEVER, unsaid);",
      ],
      [
        "within: loops that take time",
        "if (node !== undefined) loop = or(loop, visible(and(when, takesTime(timing, run, node))));",
        "",
      ],
      [
        "within: only loops that take time",
        "if (node !== undefined) loop = or(loop, visible(and(when, takesTime(timing, run, node))));",
        "if (node !== undefined) loop = or(loop, visible(when));",
      ],
      [
        "within: what is performed takes its time",
        "const both = list.flatMap((one) => (one.byWaits ? performed(one) : [one]));",
        "const both = list;",
      ],
      [
        "within: what is performed is no time beside what the step says",
        "const both = list.flatMap((one) => (one.byWaits ? performed(one) : [one]));",
        "const both = list.flatMap(performed);",
      ],
      [
        "within: a time not said in what is performed",
        "const isSaid = upperSeconds(node.step?.step.takes ?? null) !== null;",
        "const isSaid = node.step !== undefined;",
      ],
      [
        "within: said by the step that performs it",
        "const isSaid = upperSeconds(node.step?.step.takes ?? null) !== null;",
        "const isSaid = node.step === undefined;",
      ],
    ],
  },
  {
    file: "step-times.ts",
    breaks: [
      [
        "within: the longer end of a time",
        "const { form, nominal, high } = value.quantity;",
        "const { form, nominal, low: high } = value.quantity;",
      ],
      ["within: a step that waits for a time says one", "(until || !plain)", "(until || plain || !plain)"],
      [
        "within: what is performed says its times",
        'if (line.kind === "action" && line.action.verb === "perform") all.plain = true;',
        "",
      ],
    ],
  },
];
