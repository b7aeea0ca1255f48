// Readings as typed by a fitter, and limits as exact numbers: reads, converts, compares, shows. Knows no plan but its amounts.
import { readNumber } from "#quantity/number-text.ts";
import { add, cmp, div, isZero, mul, neg, type Rational, rational, sub } from "#quantity/rational.ts";
import { decimal, roundTo, type Side } from "#quantity/rounding.ts";
import type { Amount, Limits, UnitChoice } from "./plan.ts";

/** The value that a declared reading has now, in the coherent unit; null where it is not taken. */
export type Readings = (reading: string) => Rational | null;

export interface Typed {
  /** In the coherent unit. */
  readonly base: Rational;
  readonly unit: UnitChoice;
  /** The number as it was understood, with a point, and its unit. */
  readonly shown: string;
}

/**
 * A number as a fitter types it: `0.03`, `0,03`, `3/8`, `-1.5`, with or without one of the units behind it.
 * @param unit the one chosen; a unit typed behind the number counts instead
 */
export function readTyped(text: string, unit: UnitChoice, units: readonly UnitChoice[]): Typed | null {
  const plain = text.trim().replace(/[\u2212\u2013]/g, "-");
  const behind = units.find((one) => one.text !== "" && plain.endsWith(one.text));
  const own = behind ?? unit;
  const [, sign = "", number = ""] = /^([+-]?)\s*(.*)$/.exec(behind ? plain.slice(0, -own.text.length) : plain) ?? [];
  // A nought that is left out is understood: `.03`.
  const read = readNumber(number.trim().replace(/^(?=[.,]\d)/, "0"));
  if (!read.ok) return null;
  const value = sign === "-" ? neg(read.value) : read.value;
  const base = add(mul(value, fraction(own.scale)), fraction(own.zero));
  return { base, unit: own, shown: withUnit(decimal(value, read.digit), own) };
}

/** Whether it lies within both ends; null where an end is not known yet. */
export function isWithin(value: Rational, { low, high }: Limits, readings: Readings): boolean | null {
  const now = (end: Amount | null): Rational | null => (end === null ? null : amountNow(end, readings));
  const [from, to] = [now(low), now(high)];
  if ((low !== null && from === null) || (high !== null && to === null)) return null;
  return (from === null || cmp(value, from) >= 0) && (to === null || cmp(value, to) <= 0);
}

/** What an amount comes to; null where a reading is not taken yet. */
export function amountNow(amount: Amount, readings: Readings): Rational | null {
  if (typeof amount === "string") return fraction(amount);
  if ("reading" in amount) return readings(amount.reading);
  const [left, right] = [amountNow(amount.left, readings), amountNow(amount.right, readings)];
  if (left === null || right === null) return null;
  if (amount.op === "/") return isZero(right) ? null : div(left, right);
  return { "+": add, "-": sub, "*": mul }[amount.op](left, right);
}

/** In a unit, to the digit that it is shown with; a low end is rounded up and a high one down, so that no band grows. */
export function shownIn(base: Rational, unit: UnitChoice, side: Side): string {
  const value = div(sub(base, fraction(unit.zero)), fraction(unit.scale));
  return withUnit(decimal(roundTo(value, unit.digit, side), unit.digit), unit);
}

function withUnit(number: string, { text }: UnitChoice): string {
  return text === "" ? number : `${number} ${text}`;
}

/** `n/d` or a whole number. */
function fraction(text: string): Rational {
  const [above = "0", below = "1"] = text.split("/");
  return rational(BigInt(above), BigInt(below));
}
