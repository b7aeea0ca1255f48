// Quantities as text: in the writer's units, exactly converted to others, or both. Rounding is by the role of the place,
// so that no conversion makes a band wider than it is. Knows no place.

import type { Kind } from "./kind.ts";
import { lastDigit } from "./number-text.ts";
import type { Magnitude, Quantity } from "./quantity.ts";
import { abs, cmp, div, eq, max, min, mul, type Rational, sub, tenTo, ZERO } from "./rational.ts";
import { decimal, powerNotAbove, roundTo, type Side } from "./rounding.ts";
import { shownUnit } from "./shown-unit.ts";
import { fromBase, scaleOf, type Unit } from "./unit.ts";

/**
 * What a quantity is for, which decides to which side it is rounded: a band that `must be met` inwards; what `occurs`
 * outwards; `at least safe`, where more is the safe side (a load), upwards; `at most safe`, where less is (a capacity, a
 * flash point, a heat limit), downwards; `nominal` to the nearest.
 */
export type Role = "must be met" | "occurs" | "at least safe" | "at most safe" | "nominal";

/** An end rounded for display: the value in the unit asked for, and its last digit. */
export interface Rounded {
  readonly value: Rational;
  readonly digit: number;
}

export interface RoundedEnds {
  readonly low: Rounded | null;
  readonly nominal: Rounded | null;
  readonly high: Rounded | null;
}

/** The quantity in its writer's own units: `40 ± 2 N·m`, `8 lbf·in .. 1.2 N·m`, `at most 120 °C`. */
export function show(q: Quantity): string {
  const number = (end: Magnitude | null, side: Side): End | null =>
    end && { text: numberOf(end, side), unit: end.unit };
  const ends = { low: number(q.low, "up"), nominal: number(q.nominal, "nearest"), high: number(q.high, "down") };
  const tolerance = q.form === "tolerance" ? toleranceOf(q) : null;
  return written(q, ends, tolerance);
}

/** One end in its writer's unit. */
export function showMagnitude(end: Magnitude, kind: Kind): string {
  return withUnit(numberOf(end, "nearest"), end.unit.text, kind);
}

/** The quantity exactly converted to a unit of its kind, and rounded by its role; in its own units where the unit does not fit. */
export function showIn(q: Quantity, unit: Unit, role: Role): string {
  if (!unit.kinds.includes(q.kind)) return show(q);
  const ends = roundedEnds(q, unit, role);
  const text = (end: Rounded | null): End | null => end && { text: decimal(end.value, end.digit), unit };
  return written(q, { low: text(ends.low), nominal: text(ends.nominal), high: text(ends.high) }, null);
}

/** In the unit of another, so that the two can be compared at a glance. */
export function showLike(q: Quantity, other: Quantity): string {
  const unit = (other.nominal ?? other.low ?? other.high)?.unit;
  return unit === undefined ? show(q) : showIn(q, unit, "nominal");
}

/** In the writer's units, and in parentheses in the other system's where the kind has other units there. */
export function showBoth(q: Quantity, role: Role): string {
  const unit = otherUnit(q);
  if (unit === null) return show(q);
  // A band says all that is to be kept: its nominal value is not repeated.
  const banded = q.form === "tolerance" || q.form === "nominal in range";
  return `${show(q)} (${showIn(banded ? { ...q, form: "range", nominal: null } : q, unit, role)})`;
}

/** The unit of the other system (metric for customary, and the other way round); null where both share theirs. */
function otherUnit(q: Quantity): Unit | null {
  const ends = [q.nominal, q.low, q.high].filter((end) => end !== null);
  const system = ends[0]?.unit.system ?? "shared";
  if (system === "shared") return null;
  const size = ends.map((end) => abs(end.base)).reduce(max, ZERO);
  return shownUnit(q.kind, size, system === "metric" ? "customary" : "metric");
}

/** The ends in `unit`, each rounded to the side its role asks for, with digits added until a band to be met is not empty. */
export function roundedEnds(q: Quantity, unit: Unit, role: Role): RoundedEnds {
  const exact = (end: Magnitude | null) => end && fromBase(end.base, unit, q.kind);
  const [low, nominal, high] = [exact(q.low), exact(q.nominal), exact(q.high)];
  const digits = [q.low, q.nominal, q.high].flatMap((end) => (end === null ? [] : digitIn(end, unit)));
  const first = Math.min(...digits);
  const digit = role === "must be met" && low && high ? digitOfBand(low, high, first) : first;
  const sides = SIDES[role];
  const round = (value: Rational | null, side: Side): Rounded | null =>
    value && { value: roundTo(value, digit, side), digit };
  const ends = { low: round(low, sides.low), high: round(high, sides.high) };
  // A band of one point that no decimal meets: the nearest, which is never a reversed band.
  if (role === "must be met" && ends.low && ends.high && cmp(ends.low.value, ends.high.value) > 0)
    return { low: round(low, "nearest"), nominal: round(nominal, "nearest"), high: round(high, "nearest") };
  return { ...ends, nominal: between(ends.low, round(nominal, sides.nominal), ends.high) };
}

const SIDES: Readonly<Record<Role, { readonly low: Side; readonly nominal: Side; readonly high: Side }>> = {
  "must be met": { low: "up", nominal: "nearest", high: "down" },
  occurs: { low: "down", nominal: "nearest", high: "up" },
  "at least safe": { low: "up", nominal: "up", high: "up" },
  "at most safe": { low: "down", nominal: "down", high: "down" },
  nominal: { low: "nearest", nominal: "nearest", high: "nearest" },
};

/** The last digit given, converted: the largest power of ten not above it. */
function digitIn(end: Magnitude, unit: Unit): number {
  return powerNotAbove(div(mul(tenTo(end.digit), scaleOf(end.unit)), scaleOf(unit)));
}

// A band of one point has no decimal inside when its conversion does not terminate; then so many digits are enough.
const MORE_DIGITS = 12;

function digitOfBand(low: Rational, high: Rational, first: number): number {
  for (let digit = first; digit > first - MORE_DIGITS; digit--) {
    if (cmp(roundTo(low, digit, "up"), roundTo(high, digit, "down")) <= 0) return digit;
  }
  return first - MORE_DIGITS;
}

/** The nominal value is never shown outside the band it is shown with. */
function between(low: Rounded | null, nominal: Rounded | null, high: Rounded | null): Rounded | null {
  if (nominal === null || low === null || high === null || cmp(low.value, high.value) > 0) return nominal;
  return { ...nominal, value: min(max(nominal.value, low.value), high.value) };
}

// ---- text

interface End {
  readonly text: string;
  readonly unit: Unit;
}

function written(
  q: Quantity,
  { low, nominal, high }: { readonly low: End | null; readonly nominal: End | null; readonly high: End | null },
  tolerance: string | null,
): string {
  const one = (end: End) => withUnit(end.text, unitText(end.unit, q), q.kind);
  if (q.form === "at least" && low) return `at least ${one(low)}`;
  if (q.form === "at most" && high) return `at most ${one(high)}`;
  if (nominal && tolerance !== null) return one({ ...nominal, text: `${nominal.text} ± ${tolerance}` });
  if (nominal && (low === null || high === null)) return one(nominal);
  if (low === null || high === null) return "";
  const same = low.unit.text === high.unit.text;
  const range = same ? one({ ...high, text: `${low.text} .. ${high.text}` }) : `${one(low)} .. ${one(high)}`;
  return nominal ? `${one(nominal)} (${range})` : range;
}

function unitText(unit: Unit, q: Quantity): string {
  return unit.qualifier === null && q.qualifier !== null ? `${unit.text} ${q.qualifier}` : unit.text;
}

function withUnit(number: string, unit: string, kind: Kind): string {
  if (unit === "") return number;
  return kind === "angle" && /^[°′″]/.test(unit) ? number + unit : `${number} ${unit}`;
}

function numberOf(end: Magnitude, side: Side): string {
  if (end.fraction) return fractionText(end.written);
  const exact = eq(roundTo(end.written, end.digit, "down"), end.written);
  return decimal(exact ? end.written : roundTo(end.written, end.digit, side), end.digit);
}

/** `3/8`, `1 1/2`, `-1/4`. */
function fractionText(value: Rational): string {
  const sign = value.n < 0n ? "-" : "";
  const size = abs(value);
  const whole = size.n / size.d;
  const rest = size.n % size.d;
  if (rest === 0n) return `${sign}${whole}`;
  return `${sign}${whole === 0n ? "" : `${whole} `}${rest}/${size.d}`;
}

/** The tolerance in the unit of its nominal value; null where no few digits write it exactly. */
function toleranceOf(q: Quantity): string | null {
  const { low, nominal, high } = q;
  if (low === null || nominal === null || high === null || nominal.fraction) return null;
  const width = sub(high.written, nominal.written);
  const digit = lastDigit(width, high.digit);
  if (low.unit.text !== nominal.unit.text || high.unit.text !== nominal.unit.text) return null;
  return eq(roundTo(width, digit, "down"), width) ? decimal(width, digit) : null;
}
