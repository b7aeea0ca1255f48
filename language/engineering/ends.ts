// Between written quantities and the numbers of a formula: their ends taken out, exactly, and computed ends made a
// quantity again. Knows no formula.
import { addIntervals, divIntervals, type Interval, mulIntervals, subIntervals } from "#quantity/interval.ts";
import type { Kind } from "#quantity/kind.ts";
import { lastDigit } from "#quantity/number-text.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import { abs, cmp, div, eq, fromDecimal, max, type Rational, ZERO } from "#quantity/rational.ts";
import { powerNotAbove } from "#quantity/rounding.ts";
import { unitForResult } from "#quantity/shown-unit.ts";
import { fromBase, type Unit, unitNamed } from "#quantity/unit.ts";
import { type Outcome, refused, type Term } from "./explanation.ts";

/** A value that a computation is given, and where it was read. */
export interface Given {
  readonly value: Quantity;
  readonly source?: string;
}

/** A given value with its name, its sign, the kind it must have, and whether it must be above zero. */
export interface Input extends Term {
  readonly kind: Kind;
  readonly positive: boolean;
}

/** The ends in coherent units, both there; the nominal where the value has one. */
export interface Ends {
  readonly low: Rational;
  readonly nominal: Rational | null;
  readonly high: Rational;
}

/** An input that must be above zero: a length, a mass, a coefficient. */
export function positive(name: string, symbol: string, kind: Kind, given: Given): Input {
  return { ...input(name, symbol, kind, given), positive: true };
}

/** An input that may be zero or below. */
export function input(name: string, symbol: string, kind: Kind, { value, source }: Given): Input {
  return { name, symbol, value, kind, positive: false, ...(source === undefined ? {} : { source }) };
}

/** What an explanation shows of an input. */
export function termOf({ name, symbol, value, source }: Input): Term {
  return { name, symbol, value, ...(source === undefined ? {} : { source }) };
}

/** The ends of all inputs, or what is wrong with the first that does not serve. */
export function readInputs<Name extends string>(inputs: Readonly<Record<Name, Input>>): Outcome<Record<Name, Ends>> {
  const read: Partial<Record<Name, Ends>> = {};
  for (const key of Object.keys(inputs) as Name[]) {
    const ends = readInput(inputs[key]);
    if (!ends.ok) return ends;
    read[key] = ends.value;
  }
  return { ok: true, value: read as Record<Name, Ends> };
}

/** The ends of one input, or what is wrong with it. */
export function readInput({ name, kind, value, positive: above }: Input): Outcome<Ends> {
  if (value.kind !== kind) return refused({ why: "wrong kind", input: name, wanted: kind });
  const nominal = value.nominal?.base ?? null;
  const bare = value.form === "nominal";
  const low = bare ? nominal : (value.low?.base ?? null);
  const high = bare ? nominal : (value.high?.base ?? null);
  if (low === null) return refused({ why: "open end", input: name, end: "low" });
  if (high === null) return refused({ why: "open end", input: name, end: "high" });
  if (above && cmp(low, ZERO) <= 0) return refused({ why: "not above zero", input: name });
  return { ok: true, value: { low, nominal, high } };
}

/** A value known exactly. */
export function point(value: Rational): Ends {
  return { low: value, nominal: value, high: value };
}

/** The sum, end by end. */
export function sum(first: Ends, ...others: readonly Ends[]): Ends {
  return others.reduce((a, b) => join(a, b, addIntervals), first);
}

/** The first value less the second, which is another quantity: their ends are not in step. */
export function difference(a: Ends, b: Ends): Ends {
  return join(a, b, subIntervals);
}

/** The product, by interval arithmetic. */
export function product(first: Ends, ...others: readonly Ends[]): Ends {
  return others.reduce((a, b) => join(a, b, mulIntervals), first);
}

/** The quotient, by interval arithmetic; null where the divisor can be zero. */
export function quotient(a: Ends, b: Ends): Ends | null {
  const over = divIntervals(a, b);
  if (over === null || over.low === null || over.high === null) return null;
  return { low: over.low, nominal: a.nominal && b.nominal && div(a.nominal, b.nominal), high: over.high };
}

/** A function that only rises, at each end: for what no exact arithmetic can do. Null where it gives no finite number. */
export function rising(value: Ends, f: (x: Rational) => number): Ends | null {
  const [low, nominal, high] = [value.low, value.nominal, value.high].map((end) => end && fromNumber(f(end)));
  if (low == null || high == null) return null;
  return { low, nominal: nominal ?? null, high };
}

/** The rational with the first 16 digits of a floating-point number; null for what is no finite number. */
export function fromNumber(value: number): Rational | null {
  return Number.isFinite(value) ? fromDecimal(value.toExponential(15)) : null;
}

/** The quantity with these ends, shown with so many significant digits at most: nominal where they are one, else a range. */
export function quantityOf(kind: Kind, { low, nominal, high }: Ends, unit: Unit, digits = 4): Quantity {
  const digit = digitFor(kind, [low, high], unit, digits);
  const magnitude = (base: Rational): Magnitude => ({ base, written: fromBase(base, unit, kind), unit, digit });
  const common = { kind, qualifier: null, computed: true } as const;
  if (eq(low, high)) return { ...common, form: "nominal", low: null, nominal: magnitude(low), high: null };
  const form = nominal === null ? "range" : "nominal in range";
  return { ...common, form, low: magnitude(low), nominal: nominal && magnitude(nominal), high: magnitude(high) };
}

/** `at least` or `at most` a value. */
export function limitOf(kind: Kind, form: "at least" | "at most", base: Rational, unit: Unit, digits = 4): Quantity {
  const { nominal } = quantityOf(kind, point(base), unit, digits);
  const ends = form === "at least" ? { low: nominal, high: null } : { low: null, high: nominal };
  return { kind, form, ...ends, nominal: null, qualifier: null, computed: true };
}

/** The unit for a result of a kind beside a given value: its own for the same kind, else the usual one of its system. */
export function unitBeside(given: Quantity, kind: Kind, size: Rational): Unit {
  const own = (given.nominal ?? given.low ?? given.high)?.unit ?? unitNamed("");
  return own.kinds.includes(kind) ? own : unitForResult(kind, size, own.system);
}

/** Not more digits than the value has; a temperature to a tenth, whatever its zero. */
function digitFor(kind: Kind, bases: readonly Rational[], unit: Unit, digits: number): number {
  const size = bases.map((base) => abs(fromBase(base, unit, kind))).reduce(max, ZERO);
  const floor = kind === "temperature" ? -1 : powerNotAbove(size) + 1 - digits;
  const needed = bases.map((base) => lastDigit(fromBase(base, unit, kind), Math.min(floor, 0)));
  return Math.max(floor, Math.min(...needed));
}

/** An operation of closed intervals, whose result is closed, and of their nominal values. */
function join(a: Ends, b: Ends, operation: (a: Interval, b: Interval) => Interval): Ends {
  const over = operation(a, b);
  const middle = a.nominal && b.nominal && operation(alone(a.nominal), alone(b.nominal)).low;
  return { low: over.low ?? a.low, nominal: middle, high: over.high ?? a.high };
}

function alone(value: Rational): Interval {
  return { low: value, high: value };
}
