// From the state's floating-point numbers back to exact ones, and computed temperatures as a writer would write them. Knows
// no rule.
import { fromNumber } from "#engineering/ends.ts";
import { type Rational, ZERO } from "#quantity/rational.ts";

/** The exact number that a bound stands for: bounds come of written values, and keep their first 12 digits. */
export function exact(bound: number): Rational {
  return fromNumber(Number(bound.toPrecision(12))) ?? ZERO;
}
