// Interval arithmetic on exact rationals, with ends that may be open. Knows no unit.
import { add, cmp, div, isZero, max, min, mul, neg, ONE, type Rational, sub } from "./rational.ts";

/** All values from low to high; null is open. */
export interface Interval {
  readonly low: Rational | null;
  readonly high: Rational | null;
}

export function addIntervals(a: Interval, b: Interval): Interval {
  return { low: both(add, a.low, b.low), high: both(add, a.high, b.high) };
}

export function subIntervals(a: Interval, b: Interval): Interval {
  return { low: both(sub, a.low, b.high), high: both(sub, a.high, b.low) };
}

export function negInterval(a: Interval): Interval {
  return { low: a.high && neg(a.high), high: a.low && neg(a.low) };
}

/** The product; open on both sides where an open end meets anything but a closed interval of one sign. */
export function mulIntervals(a: Interval, b: Interval): Interval {
  if (isClosed(a) && isClosed(b)) {
    const products = [mul(a.low, b.low), mul(a.low, b.high), mul(a.high, b.low), mul(a.high, b.high)];
    return { low: products.reduce(min), high: products.reduce(max) };
  }
  if (isClosed(b)) return stretched(a, b);
  return isClosed(a) ? stretched(b, a) : OPEN;
}

/** The quotient; null where the divisor can be zero. */
export function divIntervals(a: Interval, b: Interval): Interval | null {
  if (!isClosed(b)) {
    const end = b.low ?? b.high;
    return end !== null && !isZero(end) && (b.low !== null) === end.n > 0n ? OPEN : null;
  }
  if (b.low.n <= 0n && b.high.n >= 0n) return null;
  return mulIntervals(a, { low: div(ONE, b.high), high: div(ONE, b.low) });
}

interface Closed extends Interval {
  readonly low: Rational;
  readonly high: Rational;
}

const OPEN: Interval = { low: null, high: null };

function isClosed(a: Interval): a is Closed {
  return a.low !== null && a.high !== null;
}

/** An interval with an open end times a closed one. */
function stretched(open: Interval, by: Closed): Interval {
  if (by.high.n < 0n) return negInterval(stretched(open, { low: neg(by.high), high: neg(by.low) }));
  if (by.low.n < 0n) return OPEN;
  return {
    low: open.low && min(mul(open.low, by.low), mul(open.low, by.high)),
    high: open.high && max(mul(open.high, by.low), mul(open.high, by.high)),
  };
}

function both(op: (a: Rational, b: Rational) => Rational, a: Rational | null, b: Rational | null): Rational | null {
  return a === null || b === null ? null : op(a, b);
}

/** Whether the interval is the wrong way round. */
export function isReversed(a: Interval): boolean {
  return isClosed(a) && cmp(a.low, a.high) > 0;
}
