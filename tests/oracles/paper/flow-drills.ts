// Four steps in every small nesting, with one jump at every place, to every step: all ways in which work can go astray in little. Knows
// nothing of the checker.
import { act, done, look } from "./sequences.ts";
import { PLAIN_PART, type SimItem, type SimJump, type SimProcedure, type SimStep } from "./shop.ts";
import { inOrder, measuring, READING } from "./spoil.ts";

export function flowDrills(): readonly SimProcedure[] {
  return nestings().flatMap((items) => [items, ...jumpsFor(items).flatMap((jump) => withJump(items, jump))].map(drill));
}

function drill(items: readonly SimItem[]): SimProcedure {
  return {
    parts: ["Hub", "Cover"].map((name) => ({ ...PLAIN_PART, name })),
    ...{ rings: [], fits: [], energies: [], facts: [] },
    options: [{ name: "Extent", values: ["Full", "Part"] }],
    begin: [],
    finish: [{ part: "Hub", state: "installed" }],
    items: inOrder(items),
    performed: [],
  };
}

const step = (name: string, ...lines: SimStep["lines"]): SimStep => ({ kind: "step", name, lines });
const [A, B, C, D] = [
  step("First", done(act("install", "Hub"))),
  step("Second", done(act("install", "Cover"))),
  step("Third", done(act("remove", "Cover"))),
  step("Fourth", look),
] as const;
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
