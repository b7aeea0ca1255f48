// What is left of a reading beside a value that is chosen by it, such as the end float beside a shim. Exact. Knows no table of rows.
import { type Interval, subIntervals } from "#quantity/interval.ts";
import { band, type Quantity } from "#quantity/quantity.ts";
import { cmp } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import { type Given, input, limitOf, quantityOf, termOf } from "./ends.ts";
import { type Computed, explained, refused } from "./explanation.ts";

/** What is left: `r = g − v` by interval arithmetic; an end of the reading may be open. @param unit of the result */
export function remainder(reading: Given, chosen: Given, unit: Unit): Computed {
  const left = asQuantity(reading.value, subIntervals(band(reading.value), band(chosen.value)), unit);
  if (left === null) return refused({ why: "open end", input: "reading", end: "low" });
  return explained({
    result: { name: "what is left", symbol: "r", value: left },
    formula: "r = g − v",
    inputs: [
      termOf(input("reading", "g", reading.value.kind, reading)),
      termOf(input("value chosen", "v", chosen.value.kind, chosen)),
    ],
    source: "the difference at both ends (arithmetic)",
    caution: "From the reading as taken and the value as marked: measure what is left.",
  });
}

/** The values that leave of all of these readings what is wanted: `g⁺ − r⁺ ≤ v ≤ g⁻ − r⁻`; null where there is none. */
export function fittingValues(reading: Quantity, wanted: Quantity, unit: Unit): Quantity | null {
  const [readings, left] = [band(reading), band(wanted)];
  const { low: least } = subIntervals({ low: readings.high, high: null }, { low: null, high: left.high });
  const { high: most } = subIntervals({ low: null, high: readings.low }, { low: left.low, high: null });
  const isBound = (left.high === null || least !== null) && (left.low === null || most !== null);
  if (!isBound || (least !== null && most !== null && cmp(least, most) > 0)) return null;
  return asQuantity(reading, { low: least, high: most }, unit);
}

/** The part of a reading that is expected; null where none of it is. */
export function expectedPart(reading: Quantity, expected: Quantity | null): Quantity | null {
  if (expected === null) return reading;
  const [own, other] = [band(reading), band(expected)];
  const isLowest = own.low !== null && (other.low === null || cmp(own.low, other.low) >= 0);
  const isHighest = own.high !== null && (other.high === null || cmp(own.high, other.high) <= 0);
  if (isLowest && isHighest) return reading;
  const part = { low: isLowest ? own.low : other.low, high: isHighest ? own.high : other.high };
  if (part.low !== null && part.high !== null && cmp(part.low, part.high) >= 0) return null;
  return asQuantity(reading, part, unitOf(reading));
}

function unitOf({ nominal, low, high }: Quantity): Unit {
  return (nominal ?? low ?? high)?.unit ?? unitNamed("mm");
}

function asQuantity({ kind }: Quantity, { low, high }: Interval, unit: Unit): Quantity | null {
  if (low !== null && high !== null) return quantityOf(kind, { low, nominal: null, high }, unit, DIGITS);
  if (low !== null) return limitOf(kind, "at least", low, unit, DIGITS);
  return high === null ? null : limitOf(kind, "at most", high, unit, DIGITS);
}

/** So many that a difference of no account is not seen, and any other is. */
const DIGITS = 5;
