// A procedure carried out by brute force: every option value, every outcome of every check, every order of what may come in any
// order, until no new state turns up. Written from the language's description alone; knows nothing of the checker.
import { outcomesOf } from "./paper/carry-out.ts";
import { lateClocks } from "./paper/clocks.ts";
import { type Course, flowTroubles, placeOf } from "./paper/flow.ts";
import { performed } from "./paper/perform.ts";
import { compile, type Instruction, type Program } from "./paper/program.ts";
import { readingsIn, type SimProcedure, valuesRead } from "./paper/shop.ts";
import { atEnd, type Trouble, troubles } from "./paper/troubles.ts";
import { fails, keyOf, startOf, type World } from "./paper/world.ts";

/** `at`: the line as `simText` names it. */
export interface SimFinding {
  readonly code: string;
  readonly at: string;
  readonly so: Readonly<Record<string, string>>;
}

/** All findings, one for each option assignment under which each holds. */
export function simulate(procedure: SimProcedure): readonly SimFinding[] {
  const others = procedure.performed.flatMap(({ name }) =>
    simulate(performed(procedure, name)).map((finding) => ({ ...finding, at: `${name} ${finding.at}` })),
  );
  return [...foundIn(procedure), ...others];
}

function foundIn(procedure: SimProcedure): readonly SimFinding[] {
  const program = compile(procedure, procedure.items);
  const starts = everyReading(procedure, startOf(procedure, program));
  const courses: Course[] = [];
  // What no branch asks for makes no difference.
  const asked = procedure.options.filter(({ name }) => program.options.has(name));
  const others = assignments(procedure.options.filter((option) => !asked.includes(option)));
  const found = assignments(asked).flatMap((so) => {
    const { troubles, ends, ways } = run(procedure, program, starts, so);
    courses.push({ so, ways });
    const all = [...troubles, ...apart(readingsOf(procedure), ends).flatMap((worlds) => atEnd(procedure, worlds))];
    return others.flatMap((other) => all.map(({ code, at = "" }) => ({ code, at, so: { ...so, ...other } })));
  });
  const onTheWay = flowTroubles(procedure.items, program, courses).flatMap(({ code, at, so }) =>
    assignments(procedure.options)
      .filter((all) => so === null || Object.entries(so).every(([name, value]) => all[name] === value))
      .map((all) => ({ code, at, so: all })),
  );
  return [...found, ...onTheWay];
}

/** Before it is measured, a reading may be anything. */
function everyReading(procedure: SimProcedure, start: World): readonly World[] {
  return readingsIn(procedure.items).reduce<readonly World[]>(
    (worlds, reading) =>
      worlds.flatMap((world) =>
        valuesRead(procedure.items, reading).map((read) => ({ ...world, [`reading ${reading}`]: String(read) })),
      ),
    [start],
  );
}

/** What is wrong on the way under one assignment, and every world in which the end is reached. */
export function run(
  procedure: SimProcedure,
  program: Program,
  starts: readonly World[],
  so: Readonly<Record<string, string>>,
): { troubles: readonly Trouble[]; ends: readonly World[]; ways: Course["ways"] } {
  const { instructions, blocks } = program;
  // Every state that can stand before each instruction.
  const before: Map<string, World>[] = instructions.map(() => new Map());
  const ways = new Map<string, Set<string>>();
  const readings = readingsOf(procedure);
  const placeIn = (at: number, world: World): string =>
    placeOf(at, readings.map((reading) => world[reading]).join(" "));
  const open = starts.map((world) => ({ at: 0, world, key: keyOf(world) }));
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const here = next;
    const instruction = instructions[here.at];
    const seen = before[here.at];
    if (instruction === undefined || seen === undefined || seen.has(here.key)) continue;
    seen.set(here.key, here.world);
    const place = placeIn(here.at, here.world);
    const onward = ways.get(place) ?? new Set();
    ways.set(place, onward);
    for (const after of outcomesOf(procedure, program, instruction, here.world))
      for (const { at, orders } of instruction.next(so, (block) => after[block] ?? "")) {
        const world = orders === null ? after : { ...after, ...orders };
        onward.add(placeIn(at, world));
        open.push({ at, world, key: world === here.world ? here.key : keyOf(world) });
      }
  }
  const found = instructions.flatMap((instruction, at) =>
    apart([...blocks, ...readings], [...(before[at]?.values() ?? [])]).flatMap((worlds) =>
      troublesAt(procedure, program, instruction, worlds),
    ),
  );
  const worlds = before.map((each) => [...each.values()]);
  return { troubles: [...found, ...lateClocks(program, worlds)], ends: worlds.at(-1) ?? [], ways };
}

/** What is found in some order, or for what was read, is found for that alone: each is looked at by itself. */
function apart(by: readonly string[], worlds: readonly World[]): readonly (readonly World[])[] {
  if (worlds.length < 2 || by.length === 0) return worlds.length === 0 ? [] : [worlds];
  const groups = new Map<string, World[]>();
  for (const world of worlds) {
    const key = by.map((variable) => world[variable]).join(" ");
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [world]);
    else group.push(world);
  }
  return [...groups.values()];
}

function readingsOf(procedure: SimProcedure): readonly string[] {
  return readingsIn(procedure.items).map((reading) => `reading ${reading}`);
}

/** Each choice of a value for every option. */
export function assignments(options: SimProcedure["options"]): readonly Record<string, string>[] {
  return options.reduce<Record<string, string>[]>(
    (list, { name, values }) => list.flatMap((so) => values.map((value) => ({ ...so, [name]: value }))),
    [{}],
  );
}

function troublesAt(
  procedure: SimProcedure,
  { pairs }: Program,
  { does, at, step }: Instruction,
  worlds: readonly World[],
): readonly Trouble[] {
  switch (does.kind) {
    case "act":
      return troubles(procedure, does.act, worlds).map((trouble) => ({ at, ...trouble }));
    case "needs":
      return fails(procedure, does.condition, worlds) ? [{ code: "order.unmet-need", at }] : [];
    case "begin step":
      // The second of the two came before: that is known once the first comes after it.
      return pairs
        .filter((pair) => pair.first === step && worlds.some((world) => isTooLate(world, pair.first, pair.at)))
        .map((pair) => ({ code: "order.declared", at: pair.at }));
    default:
      return [];
  }
}

function isTooLate(world: World, first: string, at: string): boolean {
  return world[`began ${first}`] === "no" && world[`early ${at}`] === "yes";
}
