// How often a repeat is done and with which numbers, and how many steps a procedure has written out. Counts before
// anything is written, so that a zero too many costs nothing.

import type { Span } from "#syntax/span.ts";
import { constantOf } from "./lower-target.ts";
import type { Item, Line, RepeatBlock, RepeatRange } from "./procedure.ts";

/** Numbers rising or falling by a step: `from 16 down to 4`, or one entry of `in 1, 5, 3`. */
interface Run {
  readonly first: number;
  readonly count: number;
  readonly stride: number;
}

/** What a repeat counts; null where its bounds are no constants. A repeat upwards from 4 to 1 is done no time. */
function runsOf(range: RepeatRange): readonly Run[] | null {
  if (range.form === "from") {
    const [first, last] = [constantOf(range.first), constantOf(range.last)];
    const stride = range.stride === null ? 1 : constantOf(range.stride);
    if (first === null || last === null || stride === null || !(stride >= 1)) return null;
    return [runFrom(first, last, range.down ? -stride : stride)].filter((run) => run.count > 0);
  }
  const runs: Run[] = [];
  for (const item of range.values) {
    if (item.form !== "one" && item.form !== "range") continue;
    const first = constantOf(item.form === "one" ? item.value : item.first);
    const last = constantOf(item.form === "one" ? item.value : item.last);
    if (first === null || last === null) return null;
    runs.push(runFrom(first, last, first <= last ? 1 : -1));
  }
  return runs;
}

function runFrom(first: number, last: number, stride: number): Run {
  const count = Math.floor((last - first) / stride) + 1;
  return { first, count: Number.isFinite(count) ? Math.max(0, count) : 0, stride };
}

/** Whether the bounds are whole numbers that are known when the text is read. */
export function isConstantRange(range: RepeatRange): boolean {
  return runsOf(range) !== null;
}

/** The numbers of the passes, in order; to be asked for only after {@link countSteps} found them few enough. */
export function* passValues(range: RepeatRange): Generator<number> {
  for (const { first, count, stride } of runsOf(range) ?? []) {
    for (let at = 0; at < count; at++) yield first + at * stride;
  }
}

export interface Count {
  /** Steps written out; a `perform` between steps is one. */
  readonly steps: number;
  /** The innermost repeat that alone goes beyond the limit, or the first with which the whole does. */
  readonly tooLarge: Span | null;
}

/** Counts the steps and their lines, written out; lines count against the limit as steps do, ten to one. */
export function countSteps(items: readonly Item[], limit: number): Count {
  const counting: Counting = { limit, tooLarge: null };
  const { lines, steps } = countAll(counting, items);
  const isOver = steps > limit || lines > limit * LINES_PER_STEP;
  return { steps, tooLarge: counting.tooLarge ?? (isOver ? largestRepeat(items) : null) };
}

const LINES_PER_STEP = 10;

interface Counting {
  readonly limit: number;
  tooLarge: Span | null;
}
interface Sum {
  readonly steps: number;
  readonly lines: number;
}

function countAll(counting: Counting, items: readonly (Item | Line)[]): Sum {
  let steps = 0;
  let lines = 0;
  for (const item of items) {
    const own = countOne(counting, item);
    steps += own.steps;
    lines += own.lines;
  }
  return { steps, lines };
}

function countOne(counting: Counting, item: Item | Line): Sum {
  switch (item.kind) {
    case "step":
      return { steps: 1, lines: 1 + countAll(counting, item.lines).lines };
    case "perform":
      return { steps: 1, lines: 1 };
    case "task":
    case "any order": {
      const inside = countAll(counting, item.items);
      return { steps: inside.steps, lines: inside.lines + 1 };
    }
    case "when": {
      const arms: readonly { readonly items: readonly (Item | Line)[] }[] = item.arms;
      const inside = countAll(counting, [...arms.flatMap((arm) => arm.items), ...(item.otherwise ?? [])]);
      return { steps: inside.steps, lines: inside.lines + 1 };
    }
    case "check": {
      const inside = countAll(counting, item.fails ?? []);
      return { steps: 0, lines: inside.lines + 1 };
    }
    case "repeat":
      return countRepeat(counting, item);
    default:
      return { steps: 0, lines: 1 };
  }
}

function countRepeat(counting: Counting, block: RepeatBlock<Item> | RepeatBlock<Line>): Sum {
  const inside = countAll(counting, block.items);
  const passes = passCount(block.range);
  // An empty pass costs something too.
  const sum = { steps: passes * inside.steps, lines: passes * (inside.lines + 1) };
  const isOver = sum.steps > counting.limit || sum.lines > counting.limit * LINES_PER_STEP;
  if (isOver) counting.tooLarge ??= block.span;
  return sum;
}

/** How often a repeat is done; 0 where its bounds are no constants. */
export function passCount(range: RepeatRange): number {
  return (runsOf(range) ?? []).reduce((sum, run) => sum + run.count, 0);
}

/** Where no repeat alone is too much: the outermost that comes to the most. */
function largestRepeat(items: readonly Item[]): Span | null {
  const counting: Counting = { limit: Number.POSITIVE_INFINITY, tooLarge: null };
  let most = -1;
  let span: Span | null = null;
  const waiting: Item[] = [...items];
  for (const item of waiting) {
    if (item.kind === "task" || item.kind === "any order") waiting.push(...item.items);
    if (item.kind === "when") waiting.push(...item.arms.flatMap((arm) => arm.items), ...(item.otherwise ?? []));
    if (item.kind !== "repeat") continue;
    const { steps } = countRepeat(counting, item);
    if (steps > most) {
      most = steps;
      span = item.span;
    }
  }
  return span;
}
