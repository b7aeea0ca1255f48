// Numbers as a writer gives them: decimals, fractions, mixed numbers, a decimal comma. Knows no unit.
import { add, fromDecimal, type Rational, rational } from "./rational.ts";

export type NumberReading =
  | {
      readonly ok: true;
      readonly value: Rational;
      /** The power of ten of the last digit given; for a fraction that of its decimal form, to four places at most. */
      readonly digit: number;
      readonly fraction: boolean;
      /** Whether a comma stood for the point. */
      readonly comma: boolean;
    }
  | { readonly ok: false; readonly why: "zero denominator" | "too many digits" | "no number" };

/** Reads `1_000`, `0.5`, `3/8`, `1 1/2`, `13,5`. Total. */
export function readNumber(text: string): NumberReading {
  if (text.length > LONGEST) return { ok: false, why: "too many digits" };
  const plain = text.trim().replace(/[\u00a0\u202f]/g, " ");
  const mixed = /^(?:(\d[\d_]*) +)?(\d[\d_]*)\s*\/\s*(\d[\d_]*)$/.exec(plain);
  if (mixed !== null) return readFraction(mixed[1] ?? "0", mixed[2] ?? "", mixed[3] ?? "");
  const comma = /^\d[\d_]*,\d[\d_]*$/.test(plain);
  const decimal = plain.replaceAll("_", "").replace(",", comma ? "." : ",");
  const value = /^\d+(?:\.\d+)?$/.test(decimal) ? fromDecimal(decimal) : null;
  if (value === null) return { ok: false, why: "no number" };
  const point = decimal.indexOf(".");
  return { ok: true, value, digit: point < 0 ? 0 : point + 1 - decimal.length, fraction: false, comma };
}

/** `1000` of `1,000`, whose comma may part thousands or stand for the point; null where it can only be a point. */
export function withoutThousandsMark(text: string): string | null {
  return /^[1-9]\d{0,2},\d{3}$/.test(text) ? text.replace(",", "") : null;
}

/** The power of ten of the last digit needed to write `value` exactly, not below `floor`, not above zero. */
export function lastDigit(value: Rational, floor: number): number {
  let digit = 0;
  let scaled = value.n;
  while (digit > floor && scaled % value.d !== 0n) {
    scaled *= 10n;
    digit--;
  }
  return digit;
}

// More than any measured value has; keeps exact arithmetic cheap.
const LONGEST = 60;
const FRACTION_FLOOR = -4;

function readFraction(whole: string, above: string, below: string): NumberReading {
  const [w, n, d] = [whole, above, below].map((part) => BigInt(part.replaceAll("_", "") || "0"));
  if (w === undefined || n === undefined || d === undefined || d === 0n) return { ok: false, why: "zero denominator" };
  const value = add(rational(w), rational(n, d));
  return { ok: true, value, digit: lastDigit(value, FRACTION_FLOOR), fraction: true, comma: false };
}
