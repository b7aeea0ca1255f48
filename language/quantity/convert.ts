// Converts a quantity given as text to another unit: exact values, and what may be shown of them. For the command and
// the hover; wording is theirs.
import { show, showIn } from "./display.ts";
import { evaluate, type QuantityProblem } from "./expression.ts";
import type { Kind } from "./kind.ts";
import { lastDigit } from "./number-text.ts";
import type { Magnitude, Quantity } from "./quantity.ts";
import { readQuantityText, type TextSpan } from "./quantity-text.ts";
import { eq, type Rational } from "./rational.ts";
import { decimal, powerNotAbove, roundTo } from "./rounding.ts";
import { fromBase, readUnit, type Unit } from "./unit.ts";

export interface ConvertedEnd {
  readonly end: "low" | "nominal" | "high";
  /** The exact value in the new unit: a decimal where it terminates within 30 places, otherwise a fraction `n/d`; null where π is in it. */
  readonly exact: string | null;
  /** The first twelve significant digits, where `exact` is no decimal; otherwise as `exact`. */
  readonly digits: string;
}

/** The quantity in the new unit, read as one kind. */
export interface ConvertedReading {
  readonly kind: Kind;
  /** As written, in canonical spelling. */
  readonly from: string;
  readonly ends: readonly ConvertedEnd[];
  /** A value rounded to the digits given, a band rounded inwards. */
  readonly shown: string;
  /** The band rounded inwards, so that who keeps it keeps the original; null for a bare nominal. */
  readonly inwards: string | null;
}

export type Conversion =
  | {
      readonly ok: true;
      readonly unit: string;
      /** One for each kind that both units express with different results: °C to °F as a temperature, and as a difference. */
      readonly readings: readonly ConvertedReading[];
      /** Spellings, and units that were in doubt. */
      readonly notes: readonly ConversionProblem[];
    }
  | { readonly ok: false; readonly problem: ConversionProblem };

export type ConversionProblem =
  | QuantityProblem<TextSpan>
  | { readonly kind: "unreadable"; readonly at: TextSpan; readonly expected: string }
  | { readonly kind: "unknown target"; readonly text: string; readonly nearest: readonly string[] }
  | { readonly kind: "ambiguous target"; readonly text: string; readonly readAs: string; readonly why: string };

/** Converts `text` (a quantity in any form of the language) to the unit `target`. Total. */
export function convertText(text: string, target: string): Conversion {
  const source = readQuantityText(text);
  if (!source.ok) return { ok: false, problem: { kind: "unreadable", at: source.at, expected: source.expected } };
  const reading = readUnit(target, null);
  if (!reading.ok) return { ok: false, problem: { kind: "unknown target", text: target, nearest: reading.nearest } };
  const { unit, ambiguous } = reading;
  const tries = unit.kinds.map((kind) => evaluate(source.written, kind));
  const readings = tries.flatMap(({ quantity }) => (quantity === null ? [] : [readingOf(quantity, unit)]));
  const problems =
    tries.find((one) => one.quantity !== null)?.problems ?? tries[0]?.problems ?? noKind(source.written.at, unit);
  const isUnclear = (problem: ConversionProblem) => problem.kind === "decimal comma" && problem.whole !== null;
  const fatal = problems.find((problem) => isUnclear(problem) || !NOTES.includes(problem.kind));
  // `-300 °C` to kelvin is still an interval; that it is no temperature must be said.
  const impossible = tries.flatMap((one) => one.problems).filter((problem) => problem.kind === "impossible");
  if (readings.length === 0 && fatal !== undefined) return { ok: false, problem: fatal };
  const doubt: ConversionProblem[] =
    ambiguous === null ? [] : [{ kind: "ambiguous target", text: target, ...ambiguous }];
  return { ok: true, unit: unit.text, readings: distinct(readings), notes: [...problems, ...impossible, ...doubt] };
}

const NOTES: readonly QuantityProblem<TextSpan>["kind"][] = ["style", "ambiguous", "decimal comma", "reversed range"];

function noKind(at: TextSpan, unit: Unit): readonly QuantityProblem<TextSpan>[] {
  return [{ kind: "mismatch", at, found: [], wanted: unit.kinds, operands: null, unit: unit.text }];
}

function readingOf(q: Quantity, unit: Unit): ConvertedReading {
  const end = (name: ConvertedEnd["end"], magnitude: Magnitude | null): ConvertedEnd[] => {
    if (magnitude === null) return [];
    const value = fromBase(magnitude.base, unit, q.kind);
    return [{ end: name, exact: magnitude.unit.pi === unit.pi ? exactText(value) : null, digits: digitsText(value) }];
  };
  return {
    kind: q.kind,
    from: show(q),
    ends: [...end("low", q.low), ...end("nominal", q.nominal), ...end("high", q.high)],
    shown: showIn(q, unit, q.form === "nominal" ? "nominal" : "must be met"),
    inwards: q.form === "nominal" ? null : inwards(q, unit),
  };
}

function inwards(q: Quantity, unit: Unit): string {
  return showIn({ ...q, form: q.nominal === null ? q.form : "range", nominal: null }, unit, "must be met");
}

/** Kinds that come to the same (a ratio, a concentration) are one reading. */
function distinct(readings: readonly ConvertedReading[]): readonly ConvertedReading[] {
  return readings.filter((one, index) => readings.findIndex((other) => sameEnds(one, other)) === index);
}

function sameEnds(a: ConvertedReading, b: ConvertedReading): boolean {
  return a.ends.every((end, index) => end.digits === b.ends[index]?.digits);
}

const PLACES = 30;
const SIGNIFICANT = 12;

function exactText(value: Rational): string {
  const digit = lastDigit(value, -PLACES);
  return eq(roundTo(value, digit, "down"), value) ? decimal(value, digit) : `${value.n}/${value.d}`;
}

function digitsText(value: Rational): string {
  const exact = exactText(value);
  if (!exact.includes("/")) return exact;
  const first = powerNotAbove({ n: value.n < 0n ? -value.n : value.n, d: value.d });
  return decimal(value, first - SIGNIFICANT + 1);
}
