// Walks an expression to its operand: reads numbers and units, combines, and notes what is wrong on the way.
import { factsOf, type Kind } from "./kind.ts";
import { readNumber, withoutThousandsMark } from "./number-text.ts";
import { combine, literalOperand, namedOperand, negated, type Operand } from "./operand.ts";
import type { MismatchedOperands, QuantityProblem } from "./problem.ts";
import { size } from "./rational.ts";
import type { Binary, Expression, Literal } from "./tree.ts";
import { BARE, readUnit, type UnitReading } from "./unit.ts";

/** What the walk knows of its place, and where it leaves its problems. */
export interface Evaluation<At> {
  /** The kinds the place takes; null for any. */
  readonly wanted: readonly Kind[] | null;
  readonly problems: QuantityProblem<At>[];
  /** Whether the value may lie on either side of zero. */
  readonly signed?: boolean;
}

/** The value of an expression; null where a problem, or an unknown name, leaves none. Total. */
export function operandOf<At>(of: Expression<At>, evaluation: Evaluation<At>): Operand | null {
  const { wanted, problems } = evaluation;
  const intervals = wanted?.includes("temperature difference") ?? false;
  return walk(of, { wanted, problems, sumIntervals: intervals, intervals, depth: 0 });
}

/** The operand with the unit of `other` where it has none itself: `38 .. 42 N·m`. */
export function withUnitOf(operand: Operand, other: Operand, wanted: readonly Kind[] | null): Operand {
  const value = operand.candidates[0]?.nominal ?? null;
  if (!operand.bare || other.bare || other.unit === null || value === null) return operand;
  const intervals = other.candidates.some((candidate) => candidate.kind === "temperature difference");
  const marks = { intervals: intervals || (wanted?.includes("temperature difference") ?? false), bare: false };
  const literal = literalOperand(value, other.unit, operand.digit, { ...marks, fraction: operand.fraction });
  return { ...literal, computed: operand.computed };
}

/** The kinds an operand may be. */
export function kindsOfOperand(operand: Operand): readonly Kind[] {
  return operand.candidates.map((candidate) => candidate.kind).filter((kind) => kind !== null);
}

/** Both sides of an operation, for a mismatch. */
export function mismatched(op: MismatchedOperands["op"], left: Operand, right: Operand): MismatchedOperands {
  const side = (operand: Operand) => ({ kinds: kindsOfOperand(operand), qualifier: operand.qualifier });
  return { op, left: side(left), right: side(right) };
}

interface Walk<At> extends Evaluation<At> {
  /** Whether °C and °F are intervals here, and in the sums below. */
  readonly intervals: boolean;
  readonly sumIntervals: boolean;
  readonly depth: number;
}

// No value a person writes nests or grows like that; deeper trees would exhaust the stack.
const DEEPEST = 200;
const LARGEST_BITS = 4096;

function walk<At>(of: Expression<At>, at: Walk<At>): Operand | null {
  if (at.depth > DEEPEST) return tooLarge(of.at, at);
  switch (of.op) {
    case "literal":
      return readLiteral(of, at);
    case "name":
      return of.value === null ? null : namedOperand(of.value, (kind) => factsOf(kind).dimension);
    case "negate": {
      const inner = walk(of.of, { ...at, depth: at.depth + 1 });
      return inner && negated(inner, of.of.op === "literal");
    }
    case "percent of":
      return shareOf(of, at);
    default:
      return walkChain(of, at);
  }
}

/** A chain such as `a + b - c + …` leans to the left; it is folded in a loop, so that its length costs no stack. */
function walkChain<At>(of: Binary<At>, at: Walk<At>): Operand | null {
  const chain: Binary<At>[] = [];
  let first: Expression<At> = of;
  while (isBinary(first)) {
    chain.push(first);
    first = first.left;
  }
  const bottom = chain[chain.length - 1] ?? of;
  let left = walk(first, operandPlace(bottom, bottom.right, at));
  for (const binary of chain.reverse()) {
    const right = walk(binary.right, operandPlace(binary, binary.left, at));
    left = left && right && combined(binary, left, right, at);
  }
  return left;
}

function isBinary<At>(of: Expression<At>): of is Binary<At> {
  return of.op === "+" || of.op === "-" || of.op === "*" || of.op === "/";
}

/** In a sum both sides are like the whole; in a product only the side beside a bare number is. */
function operandPlace<At>(of: Binary<At>, other: Expression<At>, at: Walk<At>): Walk<At> {
  const depth = at.depth + 1;
  if (of.op === "+" || of.op === "-") return { ...at, intervals: at.sumIntervals, depth };
  return { ...at, intervals: true, wanted: isPure(other) ? at.wanted : null, depth };
}

function isPure<At>(of: Expression<At>): boolean {
  return of.op === "literal" && (of.unit === null || of.unit === "%");
}

function combined<At>(of: Binary<At>, left: Operand, right: Operand, at: Walk<At>): Operand | null {
  const additive = of.op === "+" || of.op === "-";
  const [a, b] = additive ? unitsFilledIn(of, left, right, at) : [left, right];
  const result = combine(of.op, a, b);
  if (result === "division by zero") {
    at.problems.push({ kind: "division by zero", at: of.right.at });
    return null;
  }
  if (result === "mismatch") {
    at.problems.push(mismatchOf(of.op, a, b, of.at));
    return null;
  }
  return isTooLarge(result) ? tooLarge(of.at, at) : result;
}

function mismatchOf<At>(op: MismatchedOperands["op"], left: Operand, right: Operand, at: At): QuantityProblem<At> {
  return { kind: "mismatch", at, found: [], wanted: [], operands: mismatched(op, left, right), unit: null };
}

/** A bare number in a sum with a quantity lacks its unit. */
function unitsFilledIn<At>(of: Binary<At>, left: Operand, right: Operand, at: Walk<At>): [Operand, Operand] {
  const bare = left.bare === right.bare ? null : left.bare ? left : right;
  const other = bare === left ? right : left;
  if (bare === null || other.unit === null || kindsOfOperand(other).includes("ratio")) return [left, right];
  const place = bare === left ? of.left : of.right;
  at.problems.push({ kind: "missing unit", at: place.at, number: numberText(place), usual: [other.unit.text] });
  const filled = withUnitOf(bare, other, at.wanted);
  return bare === left ? [filled, right] : [left, filled];
}

/** The number of a literal as written, signed; empty for what is no single number. */
export function numberText<At>(of: Expression<At>): string {
  if (of.op === "negate") return `-${numberText(of.of)}`;
  return of.op === "literal" ? of.number : "";
}

function shareOf<At>(of: Extract<Expression<At>, { op: "percent of" }>, at: Walk<At>): Operand | null {
  const share = walk(of.share, { ...at, wanted: ["ratio"], depth: at.depth + 1 });
  const whole = walk(of.of, { ...at, depth: at.depth + 1 });
  if (share === null || whole === null) return null;
  const result = kindsOfOperand(share).includes("ratio") ? combine("*", share, whole) : "mismatch";
  if (typeof result !== "string") return isTooLarge(result) ? tooLarge(of.at, at) : result;
  at.problems.push(mismatchOf("of", share, whole, of.at));
  return null;
}

function isTooLarge(operand: Operand): boolean {
  return operand.candidates.some(({ low, nominal, high }) => {
    return [low, nominal, high].some((value) => value !== null && size(value) > LARGEST_BITS);
  });
}

function tooLarge<At>(place: At, at: Walk<At>): null {
  at.problems.push({ kind: "impossible", at: place, why: "too many digits", of: null, shown: "" });
  return null;
}

// ---- literals

function readLiteral<At>(of: Literal<At>, at: Walk<At>): Operand | null {
  const number = readNumber(of.number);
  const reading = of.unit === null ? null : readUnitAs(of.unit, at.wanted);
  if (reading !== null && of.unit !== null) noteUnit(of.unit, reading, of.unitAt ?? of.at, at);
  if (!number.ok) {
    if (number.why === "zero denominator") at.problems.push({ kind: "division by zero", at: of.at });
    else
      at.problems.push({
        kind: "impossible",
        at: of.at,
        why: "too many digits",
        of: null,
        shown: of.number.slice(0, 20),
      });
    return null;
  }
  if (number.comma) {
    const whole = withoutThousandsMark(of.number);
    const canonical = of.number.replace(",", ".");
    at.problems.push({ kind: "decimal comma", at: of.at, text: of.number, canonical, whole });
    if (whole !== null) return null;
  }
  if (reading !== null && !reading.ok) return null;
  const marks = { intervals: at.intervals, fraction: number.fraction, bare: reading === null };
  return literalOperand(number.value, reading === null ? BARE : reading.unit, number.digit, marks);
}

/** Read for the first wanted kind it can express, or else as it stands. */
function readUnitAs(text: string, wanted: readonly Kind[] | null): UnitReading {
  for (const kind of wanted ?? []) {
    const reading = readUnit(text, kind);
    if (reading.ok && reading.unit.kinds.includes(kind)) return reading;
  }
  return readUnit(text, wanted?.[0] ?? null);
}

function noteUnit<At>(text: string, reading: UnitReading, place: At, at: Walk<At>): void {
  if (!reading.ok) at.problems.push({ kind: "unknown unit", at: place, text, nearest: reading.nearest });
  else if (reading.ambiguous !== null) at.problems.push({ kind: "ambiguous", at: place, text, ...reading.ambiguous });
  else if (reading.style) at.problems.push({ kind: "style", at: place, text, canonical: reading.unit.text });
}
