// Four steps in every small nesting, with one jump at every place, to every step: all ways in which work can go astray in little. Knows
// nothing of the checker.
import { clocked } from "./clocked.ts";
import { drawing } from "./picker.ts";
import { act, done, look, takes } from "./sequences.ts";
import {
  actsIn,
  PLAIN_PART,
  type SimAct,
  type SimItem,
  type SimJump,
  type SimLine,
  type SimProcedure,
  type SimStep,
} from "./shop.ts";
import { inOrder, measuring, READING } from "./spoil.ts";

export function flowDrills(): readonly SimProcedure[] {
  return ways().map(drill);
}

/** The same with times, and one step to end within a time after another. */
export function clockDrills(): readonly SimProcedure[] {
  return [...ends(), ...ways().map((items, at) => clocked(items, drawing(at), MINUTES))].map(drill);
}

/** A jump that ends the step whose end begins the time, one that ends the step to be done in it, a loop that takes none; work performed. */
function ends(): readonly (readonly SimItem[])[] {
  const out = (jump: SimJump, ...fails: readonly SimAct[]): SimLine => ({ kind: "check", fails, jump });
  const late: SimLine = { kind: "within", minutes: 10, step: "First" };
  const over: SimItem = { kind: "jump", jump: { way: "go to", to: "Fourth" } };
  const fourth = step("Fourth", look, takes(5), late);
  return [
    [step("First", look, takes(5), out({ way: "go to", to: "Second" })), over, step("Second", look, takes(20)), fourth],
    [step("First", look, takes(5)), step("Fourth", takes(5), out("stop", { verb: "wait", minutes: 20 }), late)],
    [step("First", look, takes(5)), step("Second", takes(0), out({ way: "return to", to: "Second" })), fourth],
    ...PERFORMED.flatMap(({ name: procedure }) => {
      const perform = done({ verb: "perform", procedure });
      return [[perform], [perform], [perform, takes(4)]].map((lines, at) => [
        step("First", look, takes(5)),
        step("Second", ...lines),
        step("Fourth", look, takes(at === 0 ? 5 : 4), late),
      ]);
    }),
  ];
}

const MINUTES = [5, 10, 15, 30, 60];

function ways(): readonly (readonly SimItem[])[] {
  return nestings().flatMap((items) => [items, ...jumpsFor(items).flatMap((jump) => withJump(items, jump))]);
}

function drill(items: readonly SimItem[]): SimProcedure {
  return {
    parts: ["Hub", "Cover"].map((name) => ({ ...PLAIN_PART, name })),
    ...{ rings: [], fits: [], energies: [], facts: [] },
    options: [{ name: "Extent", values: ["Full", "Part"] }],
    begin: [],
    finish: [{ part: "Hub", state: "installed" }],
    items: inOrder(items),
    performed: PERFORMED.filter(({ name }) =>
      actsIn(items).some((one) => "procedure" in one && one.procedure === name),
    ),
  };
}

const step = (name: string, ...lines: SimStep["lines"]): SimStep => ({ kind: "step", name, lines });
const [A, B, C, D] = [
  step("First", done(act("install", "Hub"))),
  step("Second", done(act("install", "Cover"))),
  step("Third", done(act("remove", "Cover"))),
  step("Fourth", look),
] as const;
/** One takes six minutes, one does not say. */
const PERFORMED: SimProcedure["performed"] = [
  { name: "Rest", begin: [], finish: [], items: [step("Inner", look, takes(6))] },
  { name: "Idle", begin: [], finish: [], items: [step("Inner", look)] },
];
const when = (inside: readonly SimItem[], otherwise: readonly SimItem[] | null, value = "Full"): SimItem => ({
  ...{ kind: "when", option: "Extent", value, inside, otherwise },
});
const read = (most: number, inside: readonly SimItem[], otherwise: readonly SimItem[] | null): SimItem => ({
  ...{ kind: "when read", reading: READING, most, inside, otherwise },
});
const task = (...items: readonly SimItem[]): SimItem => ({ kind: "task", items });

function nestings(): readonly (readonly SimItem[])[] {
  return [
    [A, B, C, D],
    [A, when([B, C], null), D],
    [A, when([B], [C]), D],
    [A, when([B, when([C], null, "Part")], null), D],
    [A, when([when([B], [C])], null), D],
    [A, { kind: "repeat", variable: "n", values: [1, 2], items: [B, C] }, D],
    [A, { kind: "any order", children: [B, C] }, D],
    [A, task(B, task(C)), D],
    [A, measuring, read(1, [B], [C]), D],
    [measuring, read(1, [A, read(2, [B], [C])], null), D],
    [measuring, read(2, [A, read(1, [B], [C])], [D])],
    [A, task(), B, when([], [C]), D],
    [A, when([B], []), C, task(task()), D],
    [A, B, when([task()], []), { kind: "repeat", variable: "n", values: [1, 2], items: [] }, C, D],
  ];
}

function jumpsFor(items: readonly SimItem[]): readonly SimJump[] {
  const names = [A, B, C, D].map(({ name }) => name);
  const ways = ["return to", "go to"] as const;
  const isThere = (name: string): boolean => JSON.stringify(items).includes(`"${name}"`);
  return ["stop", ...names.filter(isThere).flatMap((to) => ways.map((way) => ({ way, to })))];
}

/** The jump by itself, and where a check fails, at each place between, before and behind two items of any block. */
function withJump(items: readonly SimItem[], jump: SimJump): readonly (readonly SimItem[])[] {
  const added: readonly SimItem[] = [{ kind: "jump", jump }, step("Look", { kind: "check", fails: [], jump })];
  const here = Array.from({ length: items.length + 1 }, (_, at) =>
    added.map((one) => [...items.slice(0, at), one, ...items.slice(at)]),
  ).flat();
  const deeper = items.flatMap((item, at) => inside(item, jump).map((made) => items.with(at, made)));
  return [...here, ...deeper];
}

function inside(item: SimItem, jump: SimJump): readonly SimItem[] {
  switch (item.kind) {
    case "task":
    case "repeat":
      return withJump(item.items, jump).map((items) => ({ ...item, items }));
    case "when":
    case "when read":
      return [
        ...withJump(item.inside, jump).map((made) => ({ ...item, inside: made })),
        ...(item.otherwise === null ? [] : withJump(item.otherwise, jump).map((otherwise) => ({ ...item, otherwise }))),
      ];
    case "any order":
      // A bare jump is no child: whatever else is done comes before it or not at all.
      return withJump(item.children, jump)
        .filter((children) => children.every(({ kind }) => kind !== "jump"))
        .map((children) => ({ ...item, children }));
    default:
      return [];
  }
}
