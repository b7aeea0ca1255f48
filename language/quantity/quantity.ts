// A quantity as written: its kind, its form, its ends, each with the exact value and the unit the writer chose.
import type { Kind } from "./kind.ts";
import { cmp, eq, type Rational } from "./rational.ts";
import type { Unit } from "./unit.ts";

/** One number with its unit. */
export interface Magnitude {
  /**
   * The exact value in the coherent unit of its kind: SI, with kelvin for temperatures and their differences, turns for
   * angles, turns per second for rotational speeds, hours for clock positions, 1 for ratios and concentrations (`12 %` is 0.12).
   */
  readonly base: Rational;
  /** The number in {@link unit}. */
  readonly written: Rational;
  readonly unit: Unit;
  /** The power of ten of the last digit given, in {@link unit}: -1 for `0.5`, 0 for `40`. */
  readonly digit: number;
  /** Set where the number was written as a fraction (`3/8`). */
  readonly fraction?: true;
}

export type Form = "nominal" | "range" | "tolerance" | "nominal in range" | "at least" | "at most";

export type Qualifier = "AC" | "DC" | "absolute" | "gauge";

export interface Quantity {
  readonly kind: Kind;
  /** Other kinds it can still be taken as (`30 N * 400 mm` is a torque or an energy); absent where its place has decided. */
  readonly alternatives?: readonly Kind[];
  readonly form: Form;
  /** Null where there is no lower end. */
  readonly low: Magnitude | null;
  /** Null for ranges and one-sided quantities. */
  readonly nominal: Magnitude | null;
  /** Null where there is no upper end. */
  readonly high: Magnitude | null;
  readonly qualifier: Qualifier | null;
  /** Whether it was computed, not written as it stands. */
  readonly computed: boolean;
}

/** Low and high end in coherent units; null is open. */
export interface Band {
  readonly low: Rational | null;
  readonly high: Rational | null;
}

/** The band of a quantity; a bare nominal is its own band. */
export function band(q: Quantity): Band {
  if (q.form === "nominal") return { low: q.nominal?.base ?? null, high: q.nominal?.base ?? null };
  return { low: q.low?.base ?? null, high: q.high?.base ?? null };
}

/**
 * Whether all of `inner` lies in `outer`. Kinds and qualifiers are the caller's to compare first. A range of clock
 * positions that runs past 12 wraps round.
 */
export function within(inner: Quantity, outer: Quantity): boolean {
  const [a, b] = [band(inner), band(outer)];
  if (outer.kind === "clock position" && b.low !== null && b.high !== null && cmp(b.low, b.high) > 0) {
    return [a.low, a.high].every((end) => end !== null && (notBelow(end, b.low) || notAbove(end, b.high)));
  }
  return notBelow(a.low, b.low) && notAbove(a.high, b.high);
}

/** Whether the two have a value in common; kinds and qualifiers are the caller's to compare first. */
export function overlaps(a: Quantity, b: Quantity): boolean {
  const [left, right] = [band(a), band(b)];
  return startsBy(left.low, right.high) && startsBy(right.low, left.high);
}

/** Whether the two say the same: kind, form, exact values, qualifier; the units may differ. */
export function sameQuantity(a: Quantity, b: Quantity): boolean {
  return (
    a.kind === b.kind &&
    a.form === b.form &&
    a.qualifier === b.qualifier &&
    sameMagnitude(a.low, b.low) &&
    sameMagnitude(a.nominal, b.nominal) &&
    sameMagnitude(a.high, b.high)
  );
}

function sameMagnitude(a: Magnitude | null, b: Magnitude | null): boolean {
  return a === null || b === null ? a === b : eq(a.base, b.base);
}

function notBelow(end: Rational | null, limit: Rational | null): boolean {
  return limit === null || (end !== null && cmp(end, limit) >= 0);
}

function notAbove(end: Rational | null, limit: Rational | null): boolean {
  return limit === null || (end !== null && cmp(end, limit) <= 0);
}

function startsBy(low: Rational | null, high: Rational | null): boolean {
  return low === null || high === null || cmp(low, high) <= 0;
}
