// The steps and lines of a procedure as they are written, each once, whatever repeat or branch they stand in. Follows nothing.
import type { Damaged, Item, Line, Step } from "./procedure.ts";

/** Every step, in the order of the text. */
export function* stepsOf(items: readonly Item[]): Generator<Step> {
  for (const item of items) {
    if (item.kind === "step") yield item;
    else for (const inside of item.kind === "task" ? [item.items] : blocksOf(item)) yield* stepsOf(inside);
  }
}

/** Every line of a step, those of its inner blocks too, in the order of the text. */
export function* linesOf(lines: readonly Line[]): Generator<Line> {
  for (const line of lines) {
    yield line;
    for (const inside of blocksOf(line)) yield* linesOf(inside);
  }
}

/** What stands in a repeat, in each branch, in any order, in a check that may fail; nothing for whatever else it is. */
export function blocksOf(one: Item): readonly (readonly Item[])[];
export function blocksOf(one: Line): readonly (readonly Line[])[];
export function blocksOf(one: Item | Line): readonly (readonly (Item | Line)[])[];
export function blocksOf(one: Item | Line): readonly (readonly (Item | Line)[])[] {
  switch (one.kind) {
    case "repeat":
    case "any order":
      return [one.items];
    case "when":
      return [...one.arms.map(({ items }) => items), one.otherwise ?? []];
    case "check":
      return [one.fails ?? []];
    default:
      return [];
  }
}

/** The same, and what stands in a task or step. */
export function insideOf(one: Item | Line): readonly (readonly (Item | Line)[])[] {
  if (one.kind === "task") return [one.items];
  return one.kind === "step" ? [one.lines] : blocksOf(one);
}

/** What could not be read in a step, task or procedure itself; not what stands in the steps and tasks in it. */
export function* damagedIn(content: readonly (Item | Line)[]): Generator<Damaged> {
  for (const one of content) {
    if (one.kind === "damaged") yield one;
    else for (const inside of blocksOf(one)) yield* damagedIn(inside);
  }
}
