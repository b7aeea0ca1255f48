// Conditions and what they make so, ways through the graph, orders, time beside actions.
export const WAYS = [
  {
    file: "follow.ts",
    breaks: [
      ["begin with: so at the start", "suppose([operation.condition]);", ""],
      ["needs: taken as met", "suppose(operation.step.needs);", ""],
      ["gives: so afterwards", "suppose(operation.step.gives);", ""],
      [
        "wait until: the bound",
        'if (action.verb === "wait" && operation.line.until !== null) suppose([operation.line.until]);',
        "",
      ],
      ["perform: begin with taken as met", "suppose(callee?.begin ?? []);", ""],
      [
        "perform: as at the start taken as met",
        "state = apply(run, state, [{ variable: run.world.byKey(key, initial), change: () => initial }], node.id);",
        "",
        "What a performed procedure of the brute-force run touches it leaves anew, so that how it was before shows nowhere.",
        "tests/analysis/perform.test.ts",
      ],
      ["perform: what it leaves", "state = callee.perform(run, state, node.id);", ""],
      ["perform: finish with holds after", "suppose(callee.finish);", ""],
      ["perform: time passes in it", "if (callee.takesTime) state = apply(run, state, run.afterTime(), node.id);", ""],
      [
        "measure: a new reading",
        "state = forgetReading(run, state, run.readings.variable(action.reading));",
        "",
        "The brute-force run takes no readings.",
        "tests/analysis/readings.test.ts",
      ],
      [
        "when: only where it holds",
        "const formula = holds ? run.formula(condition) : negated(run.formulas, run.formula(condition));",
        "const formula = run.formula(condition);",
        "No branch of the brute-force run asks for a state.",
        "tests/analysis/ways.test.ts",
      ],
      [
        "when: what was asked is known inside",
        'if ("variable" in part) next = assign(run, next, part.variable, narrowed(run, next, part));',
        "",
        "No branch of the brute-force run asks for a state.",
        "tests/analysis/temperature.test.ts",
      ],
      ["loops: until nothing new turns up", "if (way.edge.to < next) next = way.edge.to;", ""],
    ],
  },
  {
    file: "formula.ts",
    breaks: [
      [
        "is installed: in its own position",
        "const ownKey = own === null ? null : placeKey(own.places, own.position);",
        "const ownKey: string | null = own === null ? null : null;",
        "In which place a part is shows only where it is put there once more, and no aid of the brute-force run is in at the start.",
        "tests/analysis/start-and-end.test.ts",
      ],
      [
        "is installed: its position holds it",
        "(placeOf(at) === ownKey ? withHolder(held, key, isTaken) : held)",
        "held",
      ],
      [
        "is installed: its position holds it for nobody where it is only taken as so",
        "withHolder(held, key, isTaken)",
        "withHolder(held, key, isTaken && false)",
      ],
      ["is installed: one of single use is used still", "(isInstalled(at) ? used : putBack(used))", "used"],
      ["is installed: held in the arc", "before.push(...heldFrom(world, part, own, isElsewhere, variable));", ""],
      ["is installed: a fastener as found", '(isInstalled(at) && grip !== "absent" ? grip : AS_FOUND)', "grip"],
      [
        "is removed: out of the arc, its position free, no grip",
        "...unfilling(world, part, index),\n      ...vacate(world, part, index),\n      ...release(world, part, index),",
        "",
      ],
      [
        "is secured: by all its fasteners",
        '...world.related("secures", part, index).map((by) => tightened(context, by.part, by.index, thing)),',
        "",
      ],
      ["is secured: in", "all: [\n          installed,", "all: ["],
      [
        "is tightened: in",
        'return { all: [{ implied: installed }, grip(isTight, "tight")] };',
        'return grip(isTight, "tight");',
      ],
      [
        "is loose: in",
        'return { all: [{ implied: installed }, grip(isLoose, "loose")] };',
        'return grip(isLoose, "loose");',
      ],
      [
        "is loose: of what was only found in",
        "const isSo = (value: string): boolean => good(value) && value !== AS_FOUND;",
        "const isSo = good;",
      ],
      ["is isolated: off by nobody's doing", "met: { change: () => OFF },", "met: { change: () => LIVE },"],
      ["is live: live", "unmet: { change: () => LIVE },", "unmet: { change: () => OFF },"],
      ["an own state", '? constantAtom(world.part(part, index, "own"), state, null)', "? { unknown: true }"],
      ["a fact", 'return constantAtom(context.world.fact(condition.fact), "yes", "no");', "return { unknown: true };"],
      ["at a clock position", "good: (value) => placeAt(places, position, value) === wanted,", "good: () => true,"],
      [
        "at most: the high bound",
        "good: test((now) => now.low >= low && now.high <= high),",
        "good: test((now) => now.low >= low),",
      ],
      [
        "at least: the low bound",
        "good: test((now) => now.low >= low && now.high <= high),",
        "good: test((now) => now.high <= high),",
      ],
      [
        "at most: what touches, too",
        "met: { ...within(low, high), after: alsoAtMost(context.world, thing.part, thing.index, high) },",
        "met: within(low, high),",
      ],
    ],
  },
  {
    file: "passing.ts",
    breaks: [
      ["a check uses all", 'case "look":\n      return usesAll(world);', 'case "look":\n      return [];'],
      ["takes: coats rest", "(rests ? rested(world, seconds, coatedIn(world, lines)) : [])", "[]"],
      [
        "takes: not what the step itself coats",
        "rested(world, seconds, coatedIn(world, lines))",
        "rested(world, seconds + 0 * coatedIn(world, lines).size)",
      ],
    ],
  },
  {
    file: "run.ts",
    breaks: [
      [
        "end of a task: it cools",
        'operation.kind === "end of task" ? afterTime()',
        'operation.kind === "end of task" ? []',
      ],
    ],
  },
  {
    file: "precedence.ts",
    breaks: [
      ["after, before: the earlier came first", 'value === "" ? "earlier first" : value', "value"],
      ["after, before: the later came first", 'value === "" ? WRONG_WAY : value', "value"],
      [
        "after, before: of the same pass",
        'const [earlier, later] = wanted === "after" ? [other, own] : [own, other];',
        "const [earlier, later] = [other, own];",
      ],
    ],
  },
  {
    file: "graph.ts",
    breaks: [
      ["in any order: not only as written", "waysThrough(trials, ", "waysThrough(trials.slice(0, 1), "],
      ["jumps: lead there", "if (to !== null) context.nodes[from]?.next.push({ to, guards: [] });", ""],
      ["jumps: of the same pass", "const ofPass = samePass(places, nearest(places, pass));", "const ofPass = places;"],
      ["a check may fail", "if (line.fails !== null) {", "if (line.fails !== null && line.fails.length < 0) {"],
      [
        "a check may hold",
        "open = [...fork, ...lines(context, line.fails, fork)];",
        "open = lines(context, line.fails, fork);",
      ],
      [
        "stop ends the way",
        'then(context, ends, { kind: "stop", jump });\n    return [];',
        'return then(context, ends, { kind: "stop", jump });',
      ],
      ["otherwise: only where none held", "failed.push({ condition, holds: false });", ""],
    ],
  },
  {
    file: "footprint.ts",
    breaks: [
      [
        "in any order: what one writes another reads",
        "      const asked = bad.map(({ variable }) => variable);\n",
        "      const asked = [];\n",
        "In random blocks something else mostly holds the children together; blocks made for it notice.",
        "tests/analysis/any-order.test.ts",
      ],
      [
        "in any order: what a step needs",
        "for (const condition of item.needs) takesAsMet(context, print, condition);",
        "",
      ],
      ["in any order: what a step gives", "for (const condition of item.gives) makes(context, print, condition);", ""],
      ["in any order: a declared order", "if (target !== null) print.looks.push([doneKey(spanKey(target))]);", ";"],
      [
        "in any order: what a step's time changes",
        'changes(print, passing(context.world, { kind: "leave", step: item }));',
        "",
      ],
      [
        "in any order: a look",
        'changes(print, passing(context.world, { kind: "look", check: item.check, pass: item.pass }));',
        "",
      ],
      [
        "in any order: what is taken as met",
        "if (context.assumes) takesAsSo(print, settle(context.formulas, context.formula(condition)));",
        "",
      ],
    ],
  },
  {
    file: "any-order-ways.ts",
    breaks: [
      [
        "in any order: all orders of few",
        "return runs.flatMap((run) => {",
        "return runs.slice(-1).flatMap((run) => {",
        "Needs three children: blocks made for it notice.",
        "tests/analysis/any-order.test.ts",
      ],
      [
        "in any order: each child once",
        "const after = set | (1 << at);",
        "const after = full;",
        "Needs five children that one answer rests on: blocks made for it notice.",
        "tests/analysis/any-order.test.ts",
      ],
    ],
  },
  {
    file: "any-order.ts",
    breaks: [
      [
        "in any order: a jump out sees all",
        "if (print.ends || print.leaves) join(prints.map((_, index) => index));",
        "",
      ],
      [
        "in any order: the reverse",
        "const trials = [inOrder(group), inOrder([...group].reverse())];",
        "const trials = [inOrder(group)];",
      ],
      [
        "in any order: what decides what is written",
        "for (const read of write.reads) keys.add(read);",
        "",
        "Needs three children of which one decides what another does: blocks made for it notice.",
        "tests/analysis/any-order.test.ts",
      ],
      [
        "in any order: what decides whether anything is done",
        "for (const read of prints[at]?.control ?? []) keys.add(read);",
        "",
        "Needs three children of which one decides what another does: blocks made for it notice.",
        "tests/analysis/any-order.test.ts",
      ],
      [
        "in any order: what a jump out of the block asks",
        "...(print?.leaves === true ? written.map((key) => [key]) : [])",
        "",
        "Needs three children of which one leaves: blocks made for it notice.",
        "tests/analysis/any-order.test.ts",
      ],
      [
        "in any order: what is asked behind the block",
        "...written.map((key) => concerned([key], null))",
        "",
        "Needs three children: blocks made for it notice.",
        "tests/analysis/any-order.test.ts",
      ],
    ],
  },
];
