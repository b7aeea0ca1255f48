// What an expression has come to so far: for each kind it may still be, its exact interval; and how the four operations
// combine kinds (affine temperatures, intervals, products). Knows no tree and no place.
import { DIMENSIONLESS, type Dimension, times } from "./dimension.ts";
import { addIntervals, divIntervals, type Interval, mulIntervals, negInterval, subIntervals } from "./interval.ts";
import { type Kind, kindsOf } from "./kind.ts";
import type { Form, Qualifier, Quantity } from "./quantity.ts";
import { add, cmp, div, isZero, mul, neg, type Rational, sub } from "./rational.ts";
import { BARE, toBase, type Unit, unitNamed } from "./unit.ts";

/** One thing the operand may be. */
export interface Candidate extends Interval {
  /** Null for a dimension that is no kind's (half-way through a product). */
  readonly kind: Kind | null;
  readonly dimension: Dimension;
  /** The nominal value; null for ranges and one-sided quantities. All values in coherent units. */
  readonly nominal: Rational | null;
}

export interface Operand {
  readonly candidates: readonly Candidate[];
  readonly form: Form;
  /** The unit its result is best shown in; null where a product has none yet. */
  readonly unit: Unit | null;
  /** The power of ten of the last digit given, in {@link unit}; null where a product has no unit yet. */
  readonly digit: number | null;
  readonly qualifier: Qualifier | null;
  readonly computed: boolean;
  /** Whether no unit was written anywhere in it. */
  readonly bare: boolean;
  /** Set where it is one written number. */
  readonly fraction: boolean;
}

/** A written number. `intervals`: whether °C and °F may be intervals here; alone in a sum they are temperatures. */
export function literalOperand(
  value: Rational,
  unit: Unit,
  digit: number | null,
  marks: { readonly intervals: boolean; readonly fraction: boolean; readonly bare: boolean },
): Operand {
  const kinds: readonly (Kind | null)[] = unit.kinds.length > 0 ? unit.kinds : [null];
  const fitting = kinds.filter((k) => k !== "temperature difference" || isZero(unit.offset) || marks.intervals);
  return {
    candidates: fitting.map((kind) => point(kind, unit.dimension, toBase(value, unit, kind))),
    form: "nominal",
    unit,
    digit,
    qualifier: unit.qualifier,
    computed: false,
    bare: marks.bare,
    fraction: marks.fraction,
  };
}

/** A named value. */
export function namedOperand(q: Quantity, dimensionOfKind: (kind: Kind) => Dimension): Operand | null {
  const shown = q.nominal ?? q.low ?? q.high;
  if (shown === null) return null;
  const ends = q.form === "nominal" ? [q.nominal, q.nominal] : [q.low, q.high];
  const candidates = [q.kind, ...(q.alternatives ?? [])].map((kind) => ({
    kind,
    dimension: dimensionOfKind(kind),
    low: ends[0]?.base ?? null,
    nominal: q.nominal?.base ?? null,
    high: ends[1]?.base ?? null,
  }));
  const { unit, digit } = shown;
  return {
    candidates,
    form: q.form,
    unit,
    digit,
    qualifier: q.qualifier,
    computed: q.computed,
    bare: false,
    fraction: false,
  };
}

export type Combination = Operand | "mismatch" | "division by zero";

/** Combines two operands; `mismatch` where no pair of their kinds goes together. */
export function combine(op: "+" | "-" | "*" | "/", left: Operand, right: Operand): Combination {
  if (opposed(left.qualifier, right.qualifier)) return "mismatch";
  const results: Candidate[] = [];
  let byZero = false;
  for (const a of intervalsFirst(left.candidates)) {
    for (const b of intervalsFirst(right.candidates)) {
      for (const kind of resultKinds(op, a, b)) {
        if (results.some((known) => known.kind === kind)) continue;
        const result = computed(op, a, b, kind);
        if (result === null) byZero = true;
        else results.push(result);
      }
    }
  }
  const first = results[0];
  if (first === undefined) return byZero ? "division by zero" : "mismatch";
  const unit = op === "+" || op === "-" ? sumUnit(left, right, first.kind) : productUnit(op, left, right);
  return {
    candidates: results,
    form: formOf(first, left.form, right.form),
    unit,
    digit: unit === null ? null : finer(left.digit, right.digit),
    qualifier: left.qualifier ?? right.qualifier,
    computed: true,
    bare: left.bare && right.bare,
    fraction: false,
  };
}

/** The operand with its sign turned. A written number stays one. */
export function negated(of: Operand, written: boolean): Operand {
  const candidates = of.candidates.flatMap((c) => {
    // Minus 20 °C is a temperature too, but not the negative of its kelvins.
    const offset = c.kind === "temperature" && of.unit !== null ? of.unit.offset : null;
    if (c.kind === "temperature" && !written) return [];
    const turn = (value: Rational) => (offset === null ? neg(value) : sub(add(offset, offset), value));
    const ends = offset === null ? negInterval(c) : { low: c.high && turn(c.high), high: c.low && turn(c.low) };
    return [{ ...c, ...ends, nominal: c.nominal && turn(c.nominal) }];
  });
  const form = of.form === "at least" ? "at most" : of.form === "at most" ? "at least" : of.form;
  return { ...of, candidates, form, computed: of.computed || !written };
}

/** The form of a result, from its ends and what its operands were. */
export function formOf(result: Candidate, left: Form, right: Form): Form {
  if (left === "nominal" && right === "nominal") return "nominal";
  if (result.low === null) return "at most";
  if (result.high === null) return "at least";
  if (result.nominal === null) return "range";
  const symmetrical = cmp(sub(result.nominal, result.low), sub(result.high, result.nominal)) === 0;
  return symmetrical && left !== "nominal in range" && right !== "nominal in range" ? "tolerance" : "nominal in range";
}

function point(kind: Kind | null, dimension: Dimension, value: Rational): Candidate {
  return { kind, dimension, low: value, nominal: value, high: value };
}

/** `20 K` beside a temperature is likelier an interval than a temperature of its own. */
function intervalsFirst(candidates: readonly Candidate[]): readonly Candidate[] {
  const isInterval = (candidate: Candidate) => candidate.kind === "temperature difference";
  return [...candidates.filter(isInterval), ...candidates.filter((candidate) => !isInterval(candidate))];
}

function opposed(a: Qualifier | null, b: Qualifier | null): boolean {
  return a !== null && b !== null && a !== b;
}

// ---- which kinds a pair gives

function resultKinds(op: "+" | "-" | "*" | "/", a: Candidate, b: Candidate): readonly (Kind | null)[] {
  if (op === "+" || op === "-") {
    const sum = sumKind(op, a, b);
    return sum === undefined ? [] : [sum];
  }
  // A multiple of a temperature has no meaning on a scale with an offset.
  if (a.kind === "temperature" || b.kind === "temperature") return [];
  if (b.dimension === DIMENSIONLESS) return [a.kind];
  if (a.dimension === DIMENSIONLESS && op === "*") return [b.kind];
  const kinds = kindsOf(times(a.dimension, b.dimension, op === "*" ? 1 : -1)).filter((kind) => kind !== "temperature");
  return kinds.length > 0 ? kinds : [null];
}

const NO_SUM: readonly (Kind | null)[] = ["clock position", "sound level"];

/** Undefined where the two cannot be added. */
function sumKind(op: "+" | "-", a: Candidate, b: Candidate): Kind | null | undefined {
  if (a.kind === "temperature" && b.kind === "temperature") return op === "-" ? "temperature difference" : undefined;
  if (a.kind === "temperature" && b.kind === "temperature difference") return "temperature";
  if (a.kind === "temperature difference" && b.kind === "temperature") return op === "+" ? "temperature" : undefined;
  return a.kind === b.kind && a.dimension === b.dimension && !NO_SUM.includes(a.kind) ? a.kind : undefined;
}

// ---- values

function computed(op: "+" | "-" | "*" | "/", a: Candidate, b: Candidate, kind: Kind | null): Candidate | null {
  const ends = { "+": addIntervals, "-": subIntervals, "*": mulIntervals, "/": divIntervals }[op](a, b);
  if (ends === null) return null;
  const operation = { "+": add, "-": sub, "*": mul, "/": div }[op];
  const nominal = a.nominal === null || b.nominal === null ? null : operation(a.nominal, b.nominal);
  const additive = op === "+" || op === "-";
  const own = additive ? a.dimension : times(a.dimension, b.dimension, op === "*" ? 1 : -1);
  return { kind, dimension: own, ...ends, nominal };
}

/** A temperature keeps the unit of the temperature; a difference of two takes one without an offset. */
function sumUnit(left: Operand, right: Operand, kind: Kind | null): Unit | null {
  if (kind === "temperature")
    return [left, right].find((o) => o.unit !== null && !isZero(o.unit.offset))?.unit ?? left.unit;
  // 90 °C would be taken for a temperature; °F has no such other name.
  if (kind === "temperature difference" && left.candidates[0]?.kind === "temperature" && left.unit?.text === "°C")
    return KELVIN;
  return left.unit;
}

const KELVIN = unitNamed("K");

function finer(a: number | null, b: number | null): number | null {
  return a === null || b === null ? (a ?? b) : Math.min(a, b);
}

function productUnit(op: "*" | "/", left: Operand, right: Operand): Unit | null {
  if (isPure(right) && !(left.unit === BARE && op === "*")) return left.unit;
  return op === "*" && isPure(left) ? right.unit : null;
}

function isPure(operand: Operand): boolean {
  return operand.candidates.every((candidate) => candidate.dimension === DIMENSIONLESS);
}
