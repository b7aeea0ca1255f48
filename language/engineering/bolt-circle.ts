// In which order the places of a bolt circle are tightened, and in which passes. Works on positions 1 to n round the
// circle; knows no parts.
import { cmp, eq, type Rational } from "#quantity/rational.ts";

/**
 * The cross pattern over the positions of a circle of `count`: each position is followed by its opposite (for an odd
 * count by the free one nearest to it), and the next always goes where the widest gap is left.
 *
 * Gives the sequences in common use for 4, 8, 12, 16, 20 and 24 places (those of ASME PCC-1 style tables, as quoted by
 * others; 4 and 20 from memory). A permutation of 1 to `count` for every whole `count` above zero, else empty. Up to 68
 * places no gap is, after each four, more than two places wider than an even spread would leave. Beyond, it may be, and at
 * 128 no order can keep it: of the four gaps in a half after eight, all at most 18, two stay whole until twelve are done and
 * would have to be 13 at most, which leaves 62 of 64 places. There, no gap is wider than halving the quarters leaves.
 */
export function crossPattern(count: number): readonly number[] {
  if (!Number.isInteger(count) || count < 1) return [];
  if (count % 2 === 1) return oddPattern(count);
  // Four places, a quarter turn apart, are done together where the circle can be quartered; else two.
  const spokes = count % 4 === 0 ? [0, 2, 1, 3] : [0, 1];
  const sector = count / spokes.length;
  return spread(sector).flatMap((start) => spokes.map((spoke) => start + spoke * sector));
}

/** Positions 1 to `count` as they follow each other. Empty for anything but a whole number above zero. */
export function circularPattern(count: number): readonly number[] {
  return Number.isInteger(count) && count > 0 ? Array.from({ length: count }, (_, at) => at + 1) : [];
}

/** What is wrong with stages of tightening: one that falls below the one before it, or a last that is not the final value. */
export interface StageFault {
  readonly why: "falls" | "last";
  /** The stage in question, from 0. */
  readonly at: number;
}

/**
 * Checks the stages in which a bolt circle is tightened, as torques in coherent units, exact. A stage may be repeated.
 * Null where they rise to the final value; so are no stages at all.
 */
export function stageFault(stages: readonly Rational[], final: Rational): StageFault | null {
  const falls = stages.findIndex((stage, at) => at > 0 && cmp(stage, stages[at - 1] ?? stage) < 0);
  if (falls !== -1) return { why: "falls", at: falls };
  const last = stages.at(-1);
  return last === undefined || eq(last, final) ? null : { why: "last", at: stages.length - 1 };
}

/**
 * The passes over a bolt circle: one for each stage in the order given, then once round in rising order at the last stage,
 * until nothing turns (ASME PCC-1 practice; second). Each names its stage, from 0.
 */
export function tighteningPasses(
  order: readonly number[],
  stages: number,
): readonly { readonly stage: number; readonly positions: readonly number[] }[] {
  if (!Number.isInteger(stages) || stages < 1) return [];
  const each = Array.from({ length: stages }, (_, stage) => ({ stage, positions: order }));
  return [...each, { stage: stages - 1, positions: [...order].sort((a, b) => a - b) }];
}

/** The positions 1 to `size` of a closed circle, each next one where it leaves the smallest widest gap. */
function spread(size: number): readonly number[] {
  const taken = [1];
  const order = [1];
  while (order.length < size) {
    const next = middleOfWidest(taken, size, order.at(-1) ?? 1);
    order.push(next);
    insert(taken, next);
  }
  return order;
}

function oddPattern(count: number): readonly number[] {
  const taken = [1];
  const order = [1];
  while (order.length < count) {
    const last = order.at(-1) ?? 1;
    const next = order.length % 2 === 1 ? nearestToOpposite(taken, count, last) : middleOfWidest(taken, count, last);
    order.push(next);
    insert(taken, next);
  }
  return order;
}

/** A middle of one of the widest gaps; of several the one farthest from the place tightened last, then the lowest. */
function middleOfWidest(taken: readonly number[], size: number, last: number): number {
  const gaps = taken.map((start, at) => ({ start, width: (taken[at + 1] ?? (taken[0] ?? 1) + size) - start }));
  const widest = Math.max(...gaps.map((gap) => gap.width));
  const middles = gaps
    .filter((gap) => gap.width === widest)
    .flatMap(({ start }) => [start + Math.floor(widest / 2), start + Math.ceil(widest / 2)])
    .map((position) => ((position - 1) % size) + 1)
    .sort((a, b) => a - b);
  return farthest(middles, (position) => distance(position, last, size));
}

function nearestToOpposite(taken: readonly number[], count: number, last: number): number {
  const free = Array.from({ length: count }, (_, at) => at + 1).filter((position) => !taken.includes(position));
  return farthest(free, (position) => distance(position, last, count));
}

/** The first of those whose measure is greatest. */
function farthest(positions: readonly number[], measure: (position: number) => number): number {
  let best = positions[0] ?? 1;
  for (const position of positions) if (measure(position) > measure(best)) best = position;
  return best;
}

function distance(a: number, b: number, size: number): number {
  const apart = Math.abs(a - b);
  return Math.min(apart, size - apart);
}

function insert(sorted: number[], value: number): void {
  const at = sorted.findIndex((one) => one > value);
  sorted.splice(at === -1 ? sorted.length : at, 0, value);
}
