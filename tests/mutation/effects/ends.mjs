// What is looked for at the end, what is held against somebody, performed procedures, declared times.
export const ENDS = [
  {
    file: "asked-of-caller.ts",
    breaks: [
      ["performed: what is in the way", "if (bad.length === 0) return [];", "return [];"],
      [
        "performed: what it knows itself",
        "=> keys.has(world.keyOf(variable));\n  const bad",
        "=> false;\n  const bad",
        "The procedures that the random ones perform put nothing right themselves.",
        "tests/analysis/perform-in-the-way.test.ts",
      ],
      [
        "performed: what it tells itself",
        "&& !told.has(nameOf(trouble))",
        "",
        "None of them does what it has to tell itself and its caller, too.",
        "tests/analysis/perform-in-the-way.test.ts",
      ],
      [
        "performed: told once, then taken as met",
        "assumes: updates.filter(({ assumed }) => assumed === true),",
        "assumes: [],",
        "No random procedure works on the same driven part once more.",
        "tests/analysis/perform-in-the-way.test.ts",
      ],
    ],
  },
  {
    file: "leaving.ts",
    breaks: [
      ["end: an aid left in", '"temporary", isAttached,', '"temporary", () => false,'],
      ["end: an energy left off", '"isolated", isCutOff,', '"isolated", () => false,'],
      [
        "end: not what finish with asks for",
        "if (!test(entry.value) || isSaidAtEnd(run, variable, entry.value)) continue;",
        "if (!test(entry.value)) continue;",
      ],
      [
        "end: finish with",
        "where: run.decisions.and(end.reach, canFail(run.cells, run.decisions, read, formula)),",
        "where: NEVER,",
      ],
      [
        "end: left behind is not told again as unfinished",
        "return run.cells.of(cell.filter((entry) => told?.has(entry.from) !== true && !isTakenAsOff(entry)));",
        "return run.cells.of(cell.filter((entry) => !isTakenAsOff(entry)));",
      ],
      [
        "end: what is taken as off is held against nobody",
        "return run.cells.of(cell.filter((entry) => told?.has(entry.from) !== true && !isTakenAsOff(entry)));",
        "return run.cells.of(cell.filter((entry) => told?.has(entry.from) !== true));",
      ],
    ],
  },
  {
    file: "state-at-end.ts",
    breaks: [
      [
        "end: only seated",
        '.filter((entry) => entry.value === "seated" && isOwn(actionAt(end, entry)?.verb))',
        '.filter((entry) => entry.value === "" && isOwn(actionAt(end, entry)?.verb))',
      ],
      [
        "end: a fastener loose",
        "...instances.flatMap((instance) => [...seated(end, instance), ...loose(end, instance)]),",
        "...instances.flatMap((instance) => seated(end, instance)),",
      ],
      ["end: a part left out", "...instances.flatMap((instance) => leftOut(end, instance).map(untold)),", ""],
      [
        "end: out from the start",
        "if (wasIn === NEVER) return [];",
        "",
        "A shortcut: what was never in is told for `entry.when` and `wasIn`, so nowhere, and report.ts takes in nothing that holds nowhere.",
      ],
      [
        "end: a lock told is not told again",
        "...instances.flatMap((instance) => leftOut(end, instance).map(untold)),",
        "...instances.flatMap((instance) => leftOut(end, instance)),",
      ],
      ["end: a lock left out", "...locks.map(({ raw }) => raw),", ""],
      ["end: a position passed over", "...skipped(end),", ""],
      ["end: a fastener that finish with speaks of", "if (said.has(gripAt) || said.has(placeAt)) return [];", ""],
      [
        "end: where a part is to be out, its fasteners are",
        'if (good(kindOf(run.world.keyOf(variable)) === "place" ? OUT : "loose"))',
        'if (good("?"))',
      ],
    ],
  },
  {
    file: "origin.ts",
    breaks: [
      [
        "what is only taken as met is held against nobody",
        "return cell.some(({ from }) => run.isSupposed(from)) ? cell.filter(({ from }) => !run.isSupposed(from)) : cell;",
        "return cell;",
      ],
    ],
  },
  {
    file: "need-facts.ts",
    breaks: [
      [
        "an aid closed over: not what finish with asks for",
        "if (isSaidAtEnd(run, inside.variable, entry.value)) continue;",
        "",
      ],
      [
        "a need: under these options only",
        "where = run.decisions.and(where, whereShown(run, state, variable, test));",
        "where = run.decisions.or(where, whereShown(run, state, variable, test));",
      ],
    ],
  },
  {
    file: "condition-facts.ts",
    breaks: [
      [
        "needs: asked",
        "if (where === NEVER) return;\n  const bad = culprit(read, formula);\n  const givers",
        "if (where !== null) return;\n  const bad = culprit(read, formula);\n  const givers",
      ],
      [
        "after, before: told",
        "const isWrong = (value: string): boolean => value === WRONG_WAY;",
        "const isWrong = (): boolean => false;",
      ],
    ],
  },
];
