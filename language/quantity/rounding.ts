// Exact values to shown digits: which power of ten, and to which side. A band that must be met never grows; knows no unit.
import { cmp, div, floor, mul, neg, type Rational, rational, tenTo } from "./rational.ts";

/** To which side a value is rounded. */
export type Side = "down" | "up" | "nearest";

/** `value` rounded to a multiple of the power of ten; halves go away from zero. */
export function roundTo(value: Rational, digit: number, side: Side): Rational {
  const step = tenTo(digit);
  const steps = div(value, step);
  return mul(rational(roundedSteps(steps, side)), step);
}

/** The largest power of ten that is not above `value`, which is above zero. */
export function powerNotAbove(value: Rational): number {
  if (value.n <= 0n) return 0;
  let digit = value.n.toString().length - value.d.toString().length;
  while (cmp(tenTo(digit), value) > 0) digit--;
  while (cmp(tenTo(digit + 1), value) <= 0) digit++;
  return digit;
}

/** A decimal with digits down to the power of ten `digit`; exact for a value rounded to it. */
export function decimal(value: Rational, digit: number): string {
  const places = Math.max(0, -digit);
  const steps = roundedSteps(mul(value, tenTo(places)), "nearest");
  const sign = steps < 0n ? "-" : "";
  const digits = (steps < 0n ? -steps : steps).toString().padStart(places + 1, "0");
  const whole = digits.slice(0, digits.length - places);
  return places === 0 ? sign + whole : `${sign}${whole}.${digits.slice(-places)}`;
}

function roundedSteps(steps: Rational, side: Side): bigint {
  if (side === "down") return floor(steps);
  if (side === "up") return -floor(neg(steps));
  if (steps.n < 0n) return -roundedSteps(neg(steps), side);
  return (2n * steps.n + steps.d) / (2n * steps.d);
}
