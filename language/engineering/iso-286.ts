// Limit deviations of holes and shafts by ISO 286-1 from letters and grade, and the interference of a fit from both.
// Tables and whole micrometres: exact. Outside the tables the answer is that it is not known.
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, mul, type Rational, rational, sub, ZERO } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import { type Given, positive, quantityOf, readInput, termOf } from "./ends.ts";
import { type Computed, explained, type Outcome, type Refused, refused } from "./explanation.ts";
import { fundamentalDeviation, lowerOfShaftJ, STEPS, tolerance, upperOfHoleJ } from "./iso-286-tables.ts";

/** How far the limits of size lie above the nominal size, in metres, exact. */
export interface Deviations {
  readonly lower: Rational;
  readonly upper: Rational;
}

/** A tolerance class for holes (`H7`) or shafts (`s6`). */
interface ToleranceClass {
  readonly letters: string;
  readonly grade: number;
}

/**
 * The limit deviations of a class (`H7`, `s6`) at a nominal size in metres, by ISO 286-1: sizes to 500 mm, grades IT5 to
 * IT11, letters a to zc and A to ZC with their sub-steps. Null outside, and where the standard has no such deviation (t to
 * 24 mm, v to 14, y to 18; cd, ef, fg above 10; a and b to 1 mm; K coarser than IT8).
 *
 * Shafts: one limit from the table, the other by the standard tolerance. Holes: A to H mirror the shafts; K, M, N to IT8
 * and P to ZC to IT7 are raised by Δ = ITn − IT(n − 1); coarser ones mirror the shafts, and N lies at zero.
 */
export function limitDeviations(name: string, size: Rational): Deviations | null {
  const found = readClass(name);
  const step = stepOf(size);
  if (found === null || step === null) return null;
  const { letters, grade } = found;
  const width = grade < FINEST ? null : tolerance(grade, step);
  if (width === null || (/^[ab]$/i.test(letters) && cmp(size, MILLI) <= 0)) return null;
  if (/^js$/i.test(letters)) return { lower: mul(rational(-width, 2), MICRO), upper: mul(rational(width, 2), MICRO) };
  const limit = isShaft(letters) ? shaftLimit(letters, grade, step) : holeLimit(letters, grade, step);
  if (limit === null) return null;
  const lower = limit.side === "upper" ? limit.at - width : limit.at;
  return { lower: mul(rational(lower), MICRO), upper: mul(rational(lower + width), MICRO) };
}

/**
 * The interference of a fit such as `H7/s6`: `δ = ei − ES .. es − EI`, below zero where it is clearance. The smallest comes
 * of the largest hole with the smallest shaft. At 20 °C; exact.
 */
export function interferenceByClasses(text: string, diameter: Given): Computed {
  const size = positive("diameter", "d", "length", diameter);
  const read = readInput(size);
  if (!read.ok) return read;
  if (read.value.nominal === null) return refused({ why: "missing", input: "nominal diameter" });
  const limits = limitsOf(text, read.value.nominal);
  if (!limits.ok) return limits;
  const { hole, shaft } = limits.value;
  return explained({
    result: {
      name: "interference",
      symbol: "δ",
      value: band(sub(shaft.lower, hole.upper), sub(shaft.upper, hole.lower), diameter.value),
    },
    formula: "δ = ei − ES .. es − EI",
    inputs: [
      termOf(size),
      { name: "deviations of the hole", symbol: "EI .. ES", value: band(hole.lower, hole.upper, diameter.value) },
      { name: "deviations of the shaft", symbol: "ei .. es", value: band(shaft.lower, shaft.upper, diameter.value) },
    ],
    source: "ISO 286-1 (second)",
    caution: "At 20 °C, of sizes within their tolerances; measured sizes come before letters.",
  });
}

const FINEST = 5;
const [MILLI, MICRO] = [rational(1, 1000), rational(1, 1_000_000)];

function readClass(text: string): ToleranceClass | null {
  const [, letters, grade] = /^\s*([A-Z]{1,2}|[a-z]{1,2})\s?(\d{1,2})\s*$/.exec(text) ?? [];
  return letters === undefined ? null : { letters, grade: Number(grade) };
}

function isShaft(letters: string): boolean {
  return letters === letters.toLowerCase();
}

function stepOf(size: Rational): number | null {
  if (cmp(size, ZERO) <= 0) return null;
  const step = STEPS.findIndex((end) => cmp(size, mul(rational(end), MILLI)) <= 0);
  return step === -1 ? null : step;
}

/** The limit nearest the nominal size, in micrometres, and which one it is. */
interface Limit {
  readonly at: number;
  readonly side: "lower" | "upper";
}

function shaftLimit(letters: string, grade: number, step: number): Limit | null {
  if (letters === "h") return { at: 0, side: "upper" };
  if (letters === "k" && grade > 7) return { at: 0, side: "lower" };
  if (letters === "j") return limit(lowerOfShaftJ(grade, step), "lower");
  const deviation = fundamentalDeviation(letters, step);
  // a to g lie below the nominal size, k to zc above it.
  return letters < "h" ? limit(deviation && -deviation, "upper") : limit(deviation, "lower");
}

function holeLimit(letters: string, grade: number, step: number): Limit | null {
  if (letters === "H") return { at: 0, side: "lower" };
  if (letters === "J") return limit(upperOfHoleJ(grade, step), "upper");
  const deviation = fundamentalDeviation(letters.toLowerCase(), step);
  if (deviation === null || letters < "H") return limit(deviation, "lower");
  const middle = /^[KMN]$/.test(letters);
  // To 3 mm there is no Δ.
  if (step === 0) return { at: -deviation, side: "upper" };
  if (grade > (middle ? 8 : 7)) {
    if (letters === "K") return null;
    return { at: letters === "N" ? 0 : -deviation, side: "upper" };
  }
  // The one exception that the standard makes: M6 over 250 to 315 mm.
  if (letters === "M" && grade === 6 && deviation === 20) return { at: -9, side: "upper" };
  const [own, finer] = [tolerance(grade, step), tolerance(grade - 1, step)];
  return own === null || finer === null ? null : { at: own - finer - deviation, side: "upper" };
}

function limit(at: number | null, side: Limit["side"]): Limit | null {
  return at === null ? null : { at, side };
}

function limitsOf(text: string, size: Rational): Outcome<{ readonly hole: Deviations; readonly shaft: Deviations }> {
  const [first = "", second = "", ...more] = text.split(/[/-]/);
  const classes = more.length === 0 ? [readClass(first), readClass(second)] : [];
  const [hole, shaft] = classes;
  if (!hole || !shaft || isShaft(hole.letters) || !isShaft(shaft.letters)) return notKnown(text);
  const [outer, inner] = [limitDeviations(first, size), limitDeviations(second, size)];
  return outer === null || inner === null ? notKnown(text) : { ok: true, value: { hole: outer, shaft: inner } };
}

function notKnown(given: string): Refused {
  return refused({ why: "not known", input: "tolerance", given });
}

/** In micrometres or thousandths of an inch, as the diameter is metric or not. */
function band(low: Rational, high: Rational, { nominal }: Quantity): Quantity {
  const unit = unitNamed(nominal?.unit.system === "customary" ? "thou" : "µm");
  return quantityOf("length", { low, nominal: null, high }, unit);
}
