// Effects and needs of rings that are filled in one direction, of turning, and of work that is undone before it was used.
export const RINGS = [
  {
    file: "actions/filling.ts",
    breaks: [
      [
        "fill: the arc",
        "return isWrongWay(places, now, position) ? TOLD : written(filled(places, now, position, at));",
        "return value;",
      ],
      [
        "fill: told once",
        "return isWrongWay(places, now, position) ? TOLD : written(filled(places, now, position, at));",
        "return written(filled(places, now, position, at));",
      ],
      [
        "fill: the wrong way",
        "bad: [{ variable, test: (value) => isWrongWay(places, read(value), position) }],",
        "bad: [{ variable, test: () => false }],",
      ],
      [
        "fill: a position passed over",
        "if (now.passed.some((passed) => passed.position === position)) return true;",
        "",
      ],
      [
        "fill: who passed over it",
        "const passed = between.filter((one) => !held.includes(one)).map((one) => ({ position: one, by: at }));",
        "const passed: { position: number; by: number }[] = [];",
      ],
      [
        "fill: what is held is no gap",
        "const passed = between.filter((one) => !held.includes(one)).map",
        "const passed = between.map",
      ],
      [
        "fill: a single hole has no direction",
        "if (isSingleHole(ring, now, position) || now.arc === null",
        "if (now.arc === null",
      ],
      [
        "fill: held by begin with",
        "return now === null || isElsewhere(place) ? value : written({ ...now, held: withOne(now.held, seat.position) });",
        "return value;",
      ],
      [
        "fill: taken out is not held",
        "return now === null || !now.held.includes(position) ? value : written(emptied(places, now, position));",
        "return value;",
      ],
      [
        "fill: the arc ends where the part still stands",
        "if (arc === null || (position !== arc.first && position !== arc.last)) return { ...now, held };",
        "if (arc !== undefined) return { ...now, held };",
      ],
      ["fill: the direction", "return ring.fill === ring.numbered ? 1 : -1;", "return 1;"],
      ["fill: an aid has no direction", "places.count > 1 && !part.temporary", "places.count > 1"],
    ],
  },
  {
    file: "turning.ts",
    breaks: [
      [
        "turn: the way of the numbers",
        "return hour(Number(orientation) + (way * (position - 1) * 12) / ring.count);",
        "return hour(Number(orientation) + ((position - 1) * 12) / ring.count + 0 * way);",
      ],
      [
        "turn: which position is turned",
        "return String(hour(clock - (way * (position - 1) * 12) / ring.count));",
        "return String(hour(clock + 0 * way));",
      ],
      ["ring: position 1 at the start", "turnedTo(ring, ring.start.position, clock)", '"0"'],
    ],
  },
  {
    file: "actions/wasting.ts",
    breaks: [
      ["film: put on", 'renews: "always", change: () => how }', "change: (v) => v }"],
      ["film: cleaned off", 'updates: [{ variable, by: world.films(), change: () => "" }],', "updates: [],"],
      [
        "film: used by work on a neighbour",
        "for (const near of [thing, ...neighbours(world, thing.part, thing.index)]) {",
        "for (const near of [thing]) {",
      ],
      ["film: used by work on the part", 'used.push(use(world, near, "film"))', "used.push()"],
      ["heat: used by work", 'used.push(use(world, near, "warmth"))', "used.push()"],
      [
        "heat: used by time",
        'if (verb === "wait") return { needs: [], updates: usesWork(world) };',
        'if (verb === "wait") return NOTHING;',
      ],
      [
        "turn: not used by time",
        'if (verb === "wait") return { needs: [], updates: usesWork(world) };',
        'if (verb === "wait") return { needs: [], updates: usesAll(world) };',
      ],
      ["all is used by a look", "if (USES_ALL.has(verb)) return { needs: [], updates: usesAll(world) };", ""],
      [
        "turn: used by work",
        'const used: Update[] = verb === "turn" ? [] : world.all("turned").map(cleared);',
        "const used: Update[] = [];",
      ],
      ["turn: not used by energies", "if (IDLE.has(verb)) return NOTHING;", ""],
      ["turn: turned", 'updates: [{ variable, renews: "always", change: () => "turned" }],', "updates: [],"],
      [
        "turn: turned again for nothing",
        'bad: [{ variable, test: (value) => value === "turned" }],',
        "bad: [{ variable, test: () => false }],",
      ],
      [
        "clean or cool: undone for nothing",
        'bad: [{ variable, test: (value) => value !== "" }],',
        "bad: [{ variable, test: () => false }],",
      ],
      [
        "clean: uses no film of a neighbour",
        "if (FILM.has(verb) || !world.isForeseen(FOLLOWED))",
        "if (!world.isForeseen(FOLLOWED))",
      ],
    ],
  },
  {
    file: "flow-state.ts",
    breaks: [
      [
        "all films and heat used at one stroke",
        "if (update.usesFilms === true) next = { ...next, films: emptyStore() };",
        "if (update.usesFilms === true) next = { ...next };",
      ],
      [
        "a change that depends on another where it need not be",
        "...within(becomes(entry), may),\n    ...within([entry], mayNot),",
        "...within(becomes(entry), may),",
      ],
      [
        "a change that depends on another where it can be",
        "...within(becomes(entry), may),\n    ...within([entry], mayNot),",
        "...within([entry], decisions.or(may, mayNot)),",
      ],
      [
        "two ways meet: both count",
        "context.cells.join(one ?? context.atStart(variable), a.reach, other ?? context.atStart(variable), b.reach),",
        "one ?? other ?? context.atStart(variable),",
      ],
      [
        "a value that becomes another that there was before",
        "cell.every((entry) => becomes(entry).every(({ value, from: by }) => value === entry.value && by === entry.from))",
        "cell.flatMap(becomes).every(({ value, from: by }) => cell.some((old) => old.value === value && old.from === by))",
      ],
      [
        "what a change asks of the variable itself",
        "if (!when.some((tests) => tests.some((test) => test.variable === variable))) {",
        "if (when.length >= 0) {",
      ],
      [
        "what is taken as met does not follow what was only taken so",
        "const known = assumed ? cell.filter(({ from }) => !context.isSupposed(from)) : cell;",
        "const known = cell;",
      ],
    ],
  },
];
