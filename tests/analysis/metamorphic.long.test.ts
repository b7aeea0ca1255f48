// Changes of a text that change nothing of the work: other names, a task round some steps, an option nobody asks about. What is
// found stays the same, at the same lines, for the same options.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  actsIn,
  innerItems,
  isHeavy,
  linesIn,
  PLAIN_PART,
  type Relation,
  replaced,
  type SimAct,
  type SimItem,
  type SimLine,
  type SimProcedure,
  type SimStep,
  stepsIn,
  withInner,
} from "../oracles/paper/shop.ts";
import { simText } from "../oracles/paper/text.ts";
import { assignments } from "../oracles/paper-simulator.ts";
import { procedures } from "../oracles/procedure-generator.ts";
import { onPaper } from "./run-on-paper.ts";

/** So many must be changed and compared for each kind of change. */
const LEAST = 300;
const ROUNDS = 8;
const made = fc.sample(procedures, LEAST);

interface Version {
  readonly text: string;
  /** By line, what it was called before the change; lines that bear no finding are not in it. */
  readonly names: ReadonlyMap<number, string>;
  /** What an option or a choice was called before the change. */
  readonly before?: (name: string) => string;
}

function version(procedure: SimProcedure, nameBefore = (name: string): string => name): Version {
  const { text, lines } = simText(procedure);
  return { text, names: new Map([...lines].map(([name, line]) => [line, nameBefore(name)])) };
}

/** Every finding, as its code and the name of its line, with the assignments of all options for which it holds. */
function findings(
  { text, names, before = (name) => name }: Version,
  options: SimProcedure["options"],
  chosen: Readonly<Record<string, string>> = {},
): readonly (readonly [string, string])[] {
  const isChosen = (so: Readonly<Record<string, string>>): boolean =>
    Object.entries(chosen).every(([option, choice]) => so[option] === choice);
  const all = assignments(options).filter(isChosen);
  const rows = new Map<string, Set<string>>();
  for (const { code, line, fact } of onPaper(text, { chosen }).facts) {
    // Where nothing leads, the head of a step may be all there is to show; heads of blocks are only counted.
    const name = (names.get(line) ?? "elsewhere").replace(/(?<=\bhead) \d+$/, "");
    const key = `${code} ${code === "flow.unreachable" ? "" : name}`;
    const cubes = fact.options?.map((cube) =>
      Object.entries(cube).map(([name, value]) => [before(name), before(value)] as const),
    );
    const row = rows.get(key) ?? new Set();
    rows.set(key, row);
    for (const so of all)
      if (cubes?.some((cube) => cube.every(([name, value]) => so[name] === value)) ?? true) row.add(JSON.stringify(so));
  }
  return [...rows].map(([key, so]) => [key, [...so].sort().join(" ")] as const).sort(([a], [b]) => (a < b ? -1 : 1));
}

type Findings = ReturnType<typeof findings>;
const known = new Map<SimProcedure, Findings>();
function plain(procedure: SimProcedure): Findings {
  const found = known.get(procedure) ?? findings(version(procedure), procedure.options);
  known.set(procedure, found);
  return found;
}

/** Changes every procedure that can be changed so, until enough are, and compares. `at` varies what is changed. */
function expectSame(what: string, change: (procedure: SimProcedure, at: number) => Version | null): void {
  const seen = new Set<string>();
  let faulty = 0;
  for (let round = 0; round < ROUNDS && seen.size < LEAST; round++) {
    for (const [at, procedure] of made.entries()) {
      if (seen.size >= LEAST) break;
      const after = change(procedure, at + 5 * round);
      if (after === null || seen.has(after.text)) continue;
      seen.add(after.text);
      if (plain(procedure).length > 0) faulty++;
      const texts = `${simText(procedure).text}\n--- changed to\n${after.text}`;
      expect(findings(after, procedure.options), texts).toEqual(plain(procedure));
    }
  }
  console.info(`${what}: ${seen.size} changes compared, ${faulty} of procedures with findings`);
  expect(seen.size).toBe(LEAST);
  expect(faulty).toBeGreaterThan(0.2 * LEAST);
}

/* ---- the words ---- */

test("other names, an option that nothing asks about, a part that nobody names", () => {
  expectSame("other names and idle ones", (procedure, at) => {
    const { parts, rings, energies, facts, options, items } = procedure;
    const names = [
      ...[...parts, ...rings, ...energies, ...options, ...stepsIn(items)].map(({ name }) => name),
      ...facts,
      ...options.flatMap(({ values }) => values),
      ...parts.flatMap(({ states }) => states),
      ...["Oil", "Hoist", "Heater", "Work"],
    ];
    // Against the alphabet, so that nothing hangs on the order of names.
    const renamed = new Map([...new Set(names)].sort().map((name, number) => [name, `N${999 - number}`]));
    const back = new Map([...renamed].map(([name, other]) => [other, name]));
    const { text, names: lines } = version(procedure);
    const declared = [...text.matchAll(/^part (\w+)/gm)].map(([, name]) => name ?? "");
    const other = declared[at % declared.length] ?? "";
    // What is never put in holds and covers nothing.
    const says = ["", ` { needs ${other} }`, ` { encloses ${other} }`, ` { retains ${other} }`][at % 4] ?? "";
    const idle = [`option Idle "idle" { one two three }`, `part Spare[1..2] "spare"${says}`];
    return {
      text: [...idle, text].join("\n").replace(/[\p{L}_][\p{L}\d_]*/gu, (word) => renamed.get(word) ?? word),
      names: new Map([...lines].map(([line, name]) => [line + idle.length, name])),
      before: (name) => back.get(name) ?? name,
    };
  });
}, 900_000);

/* ---- the form ---- */

test("a task round a run of steps, a block of one that may be done in any order", () => {
  expectSame("a task, a block of one", (procedure, at) => {
    const free = walled(procedure.items);
    const one = free[at % Math.max(free.length, 1)];
    const items =
      one === undefined ? procedure.items : replaced(procedure.items, one, [{ kind: "any order", children: [one] }]);
    // The end of a task lets heat out.
    const isWarm = actsIn(items).some(({ verb }) => verb === "heat" || verb === "cool");
    if (items.length === 0 || (isWarm && one === undefined)) return null;
    if (isWarm) return version({ ...procedure, items });
    const from = at % items.length;
    const to = from + 1 + (at % 3);
    const task: SimItem = { kind: "task", items: items.slice(from, to) };
    return version({ ...procedure, items: [...items.slice(0, from), task, ...items.slice(to)] });
  });
}, 900_000);

test("one step in two, or two in one", () => {
  expectSame("one step in two, or two in one", (procedure, at) => {
    const { items } = procedure;
    // Between two steps what was heated cools.
    const isCold = (line: SimLine): boolean => line.kind !== "act" || !/^(?:heat|cool)$/.test(line.act.verb);
    const free = new Set(walled(items).filter(({ lines }) => lines.every(isWorkOrWord) && lines.every(isCold)));
    const long = [...free].filter(({ lines }) => cuts(lines).length > 0);
    const step = long[at % Math.max(long.length, 1)];
    if (isClocked(items)) return null;
    if (step !== undefined && at % 3 === 0) {
      const all = cuts(step.lines);
      const cut = all[at % all.length] ?? 1;
      const halves: SimItem[] = [
        { ...step, lines: step.lines.slice(0, cut) },
        { ...step, name: `${step.name}Then`, lines: step.lines.slice(cut) },
      ];
      // In any order they would be two children.
      return version({ ...procedure, items: replaced(items, step, [{ kind: "task", items: halves }]) });
    }
    const pairs = pairsIn(items).filter(
      ([one, next]) =>
        free.has(one) && free.has(next) && cuts([...one.lines, ...next.lines]).includes(one.lines.length),
    );
    const [one, next] = pairs[at % Math.max(pairs.length, 1)] ?? [];
    if (one === undefined || next === undefined) return null;
    const joined: SimStep = { ...one, lines: [...one.lines, ...next.lines] };
    return version({ ...procedure, items: replaced(replaced(items, next, []), one, [joined]) });
  });
}, 900_000);

/* ---- the order ---- */

test("what has nothing to do with the rest: a neighbour the other way round, a step more", () => {
  expectSame("what has nothing to do with the rest", (procedure, at) => {
    const { items } = procedure;
    const pairs = neighbours(procedure);
    const [first, second] = pairs[at % Math.max(pairs.length, 1)] ?? [];
    if (first === undefined || second === undefined || at % 4 === 0) return withOneMore(procedure, at);
    const start = marksBefore(items, first);
    const [a, b] = [marks([first]), marks([second])];
    return version(
      { ...procedure, items: swapped(items, first, second) },
      numbered((number) => {
        if (number >= start && number < start + b) return number + a;
        return number >= start + b && number < start + a + b ? number - b : number;
      }),
    );
  });
}, 900_000);

/** With a step on a part of its own; a turn of a ring would count it as use of that turn. */
function withOneMore(procedure: SimProcedure, at: number): Version | null {
  const { items, parts } = procedure;
  const places = walled(items);
  const behind = places[at % Math.max(places.length, 1)];
  if (behind === undefined || isClocked(items) || actsIn(items).some(({ verb }) => verb === "turn")) return null;
  const more: SimStep = {
    kind: "step",
    name: "More",
    lines: [{ kind: "act", act: { verb: "lubricate", part: "Spare" } }],
  };
  const start = marksBefore(items, behind) + marks([behind]);
  const changed = {
    ...procedure,
    parts: [...parts, { ...PLAIN_PART, name: "Spare" }],
    items: replaced(items, behind, [behind, more]),
  };
  return version(
    changed,
    numbered((number) => (number > start ? number - 1 : number === start ? Number.NaN : number)),
  );
}

/** The name of a line from what its number was before. */
function numbered(before: (number: number) => number): (name: string) => string {
  return (name) => (name.startsWith("l") ? `l${before(Number(name.slice(1)))}` : name);
}

/* ---- the options ---- */

test("a choice made beforehand: what is found for that choice", () => {
  const seen = new Set<string>();
  // That a choice leaves a branch out is no fault of the work.
  const ofWork = (list: Findings): Findings => list.filter(([key]) => !key.startsWith("flow."));
  for (let round = 0; round < ROUNDS && seen.size < LEAST; round++) {
    for (const [number, procedure] of made.entries()) {
      const { text } = version(procedure);
      const at = number + 5 * round;
      const asked = procedure.options.filter(({ name }) => text.includes(`option ${name} `));
      const option = asked[at % Math.max(asked.length, 1)];
      const choice = option?.values[at % option.values.length];
      if (option === undefined || choice === undefined || seen.size >= LEAST) continue;
      const wanted = plain(procedure).flatMap(([key, so]): [string, string][] => {
        const left = so.split(" ").filter((one) => one.includes(`"${option.name}":"${choice}"`));
        return left.length === 0 ? [] : [[key, left.join(" ")]];
      });
      seen.add(`${number} ${option.name} ${choice}`);
      const found = findings(version(procedure), procedure.options, { [option.name]: choice });
      expect(ofWork(found), `${option.name} is ${choice}\n${text}`).toEqual(ofWork(wanted));
    }
  }
  console.info(`a choice beforehand: ${seen.size} compared`);
  expect(seen.size).toBe(LEAST);
}, 900_000);

/* ---- looking into procedures ---- */

/** The steps that a line speaks of. */
function namesIn(line: SimLine): readonly string[] {
  if ("step" in line) return [line.step];
  return line.kind === "check" && line.jump !== null && line.jump !== "stop" ? [line.jump.to] : [];
}

/** Where a step can be cut: its needs stay before the first action, what it gives behind the last. */
function cuts(lines: readonly SimLine[]): readonly number[] {
  const isWork = ({ kind }: SimLine): boolean => kind === "act" || kind === "check";
  return lines.flatMap((_, at) => {
    const [first, second] = [lines.slice(0, at), lines.slice(at)];
    const fits = !first.some(({ kind }) => kind === "gives") && !second.some(({ kind }) => kind === "needs");
    return fits && first.some(isWork) && second.some(isWork) ? [at] : [];
  });
}

/** Where one step more or less may be one of which nobody says how long it takes. */
function isClocked(items: readonly SimItem[]): boolean {
  return linesIn(items).some(({ kind }) => kind === "within");
}

/** Steps that nothing jumps into or out of. */
function walled(items: readonly SimItem[]): readonly SimStep[] {
  const named = new Set(linesIn(items).flatMap(namesIn));
  const jumps = (step: SimStep): boolean => step.lines.some((line) => namesIn(line).length > 0);
  return stepsIn(items).filter((step) => !named.has(step.name) && !jumps(step));
}

function swapped(items: readonly SimItem[], first: SimItem, second: SimItem): readonly SimItem[] {
  return items.map((item) => {
    if (item === first) return second;
    return item === second ? first : withInner(item, (inside) => swapped(inside, first, second));
  });
}

/** How many lines bear a name. */
function marks(items: readonly SimItem[]): number {
  return items.reduce((so, item) => {
    if (item.kind === "jump") return so + 1;
    if (item.kind !== "step") return so + marks(innerItems(item));
    const ofLine = (line: SimLine): number =>
      line.kind === "check" ? 1 + line.fails.length + (line.jump === null ? 0 : 1) : 1;
    return so + item.lines.reduce((sum, line) => sum + ofLine(line), 0);
  }, 0);
}

function marksBefore(items: readonly SimItem[], wanted: SimItem): number {
  let count = 0;
  const look = (list: readonly SimItem[]): boolean =>
    list.some((item) => {
      if (item === wanted) return true;
      if (item.kind !== "step" && item.kind !== "jump") return look(innerItems(item));
      count += marks([item]);
      return false;
    });
  look(items);
  return count;
}

/** Steps one behind the other in a list that is done in its order. */
function pairsIn(items: readonly SimItem[]): readonly (readonly [SimStep, SimStep])[] {
  return items.flatMap((item, at): readonly (readonly [SimStep, SimStep])[] => {
    const next = items[at + 1];
    if (item.kind === "any order") return item.children.flatMap((child) => pairsIn(innerItems(child)));
    if (item.kind === "when") return [...pairsIn(item.inside), ...pairsIn(item.otherwise ?? [])];
    if (item.kind !== "step") return pairsIn(innerItems(item));
    return next?.kind === "step" ? [[item, next]] : [];
  });
}

/** Such steps that share nothing, not even by a declaration. */
function neighbours(procedure: SimProcedure): readonly (readonly [SimStep, SimStep])[] {
  const groupOf = groups(procedure);
  const free = new Set(walled(procedure.items).filter(({ lines }) => lines.every(isPlain)));
  const touched = ({ lines }: SimStep): ReadonlySet<string> => new Set(lines.flatMap(thingsIn).map(groupOf));
  return pairsIn(procedure.items).filter(([one, next]) => {
    const own = touched(one);
    return free.has(one) && free.has(next) && ![...touched(next)].some((group) => own.has(group));
  });
}

function isWorkOrWord({ kind }: SimLine): boolean {
  return kind === "act" || kind === "needs" || kind === "gives" || kind === "check";
}

/** Nothing that looks at everything, turns what others look at, or takes time; of what is performed nobody can tell. */
function isPlain(line: SimLine): boolean {
  if (line.kind === "needs" || line.kind === "gives") return true;
  return line.kind === "act" && !["do", "wait", "wait until", "turn", "inspect", "perform"].includes(line.act.verb);
}

function thingsIn(line: SimLine): readonly string[] {
  if (line.kind === "act") return thingsOf(line.act);
  if (line.kind !== "needs" && line.kind !== "gives") return [];
  return Object.entries(line.condition).flatMap(([of, name]) =>
    ["part", "energy", "place", "fact"].includes(of) ? [String(name)] : [],
  );
}

function thingsOf(act: SimAct): readonly string[] {
  if (act.verb === "heat" || act.verb === "cool") return [act.part];
  if ("energy" in act) return [act.energy];
  if (!("part" in act) || act.verb === "wait until") return [];
  const hung = ["lift", "support", "set down"].includes(act.verb) ? ["Hoist"] : [];
  return [
    act.part,
    ...("place" in act && act.place !== undefined ? [act.place] : []),
    ...("over" in act && act.over !== undefined ? [act.over] : []),
    ...hung,
  ];
}

/** The name of all that hangs together by declarations: a screw with its cover, that with what drives it, a part with its ring. */
function groups({ parts, fits }: SimProcedure): (name: string) => string {
  const leader = new Map<string, string>();
  const find = (name: string): string => {
    const above = leader.get(name) ?? name;
    return above === name ? name : find(above);
  };
  const join = (one: string, other: string): void => void leader.set(find(one), find(other));
  const relations: readonly Relation[] = ["needs", "encloses", "retains", "secures", "locks"];
  for (const part of parts) {
    for (const name of [...relations.flatMap((relation) => part[relation]), ...part.driven])
      join(part.name, base(name));
    if (part.seats !== null) join(part.name, part.seats.ring);
    // Whatever hangs on the hoist hangs on the one hoist.
    if (isHeavy(part)) join(part.name, "Hoist");
  }
  for (const { outer, inner } of fits) join(outer, inner);
  return (name) => find(base(name));
}

function base(name: string): string {
  return name.split("[")[0] ?? name;
}
