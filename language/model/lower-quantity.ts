// Value places: from the tree to quantities, each with the kind its place wants. Named values and readings are worked out
// when first used. Knows no statement.
import { type AstNode, AstUtils } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { Evaluated, Expression, Wanted, Written } from "#quantity/expression.ts";
import { type Formula, formulaEnds } from "#quantity/formula.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";
import type { Citation, NamedValue, Reading, Value } from "./declarations.ts";
import { evaluateOnce, evaluateStagesOnce } from "./evaluate-once.ts";
import { type Scope, spanOf } from "./lowering.ts";
import { meant, propertySpan, resolve } from "./names.ts";

/** The quantity of a value place; null, with a problem, where none can be read. */
export function lowerValue(
  scope: Scope,
  node: ast.Quantity,
  wanted: Wanted,
  per: Citation | null = null,
  signed = false,
): Value | null {
  const written = writtenOf(scope, node);
  return toValue(scope, evaluateOnce(written, wanted, signed), written.at, per, { node, written });
}

/** The kind of what is written, where it says so itself. */
export function kindWritten(scope: Scope, node: ast.Quantity): Kind | null {
  return evaluateOnce(writtenOf(scope, node), null).quantity?.kind ?? null;
}

/** As {@link lowerValue} for a place that may be empty. */
export function lowerOptional(scope: Scope, node: ast.Quantity | undefined, wanted: Wanted): Value | null {
  return node === undefined ? null : lowerValue(scope, node, wanted);
}

/** A list of stages such as `30 %, 70 %, 100 % of FinalTorque`; one entry each, null where none can be read. */
export function lowerStages(scope: Scope, nodes: readonly ast.Quantity[], wanted: Wanted): readonly (Value | null)[] {
  const written = nodes.map((node) => writtenOf(scope, node));
  const whole = wholeOf(scope, written.at(-1), wanted);
  return evaluateStagesOnce(written, wanted).map((evaluated, at) => {
    const value = toValue(scope, evaluated, (written[at] as Written<Span>).at, null, placeIn(nodes[at], written[at]));
    const share = whole === null ? null : shareIn(scope, written[at]);
    return value === null || whole === null || share === null ? value : { ...value, share: { text: share, ...whole } };
  });
}

/** What the stages are shares of: as the last of them says. */
function wholeOf(
  scope: Scope,
  last: Written<Span> | undefined,
  wanted: Wanted,
): { readonly of: string; readonly whole: Quantity } | null {
  if (last?.form !== "nominal" || last.value.op !== "percent of") return null;
  const { of } = last.value;
  const whole = evaluateOnce({ form: "nominal", value: of, at: of.at }, wanted).quantity;
  return whole === null ? null : { of: scope.parsed.text.slice(of.at.start, last.at.end), whole };
}

/** `30 %`, as written; null for a stage that is no share. */
function shareIn(scope: Scope, written: Written<Span> | undefined): string | null {
  if (written?.form !== "nominal") return null;
  const { value } = written;
  const at =
    value.op === "percent of" ? value.share.at : value.op === "literal" && value.unit === "%" ? value.at : null;
  return at === null ? null : scope.parsed.text.slice(at.start, at.end);
}

/** The bound of a condition: `at least 80 °C`. */
export function lowerBound(scope: Scope, limit: string, node: ast.Expression, wanted: Wanted): Value | null {
  const value = expressionOf(scope, node);
  const written: Written<Span> = { form: limit.endsWith("least") ? "at least" : "at most", value, at: value.at };
  return toValue(scope, evaluateOnce(written, wanted), value.at, null, { node, written });
}

/** A bare amount: `0.5 mm` of a `choose`. */
export function lowerLiteral(scope: Scope, node: ast.Literal, wanted: Wanted): Value | null {
  const value = expressionOf(scope, node);
  return toValue(scope, evaluateOnce({ form: "nominal", value, at: value.at }, wanted), value.at, null);
}

/** Works a named value or reading out, where it stands, unless that is done; null while it waits for itself. */
export function workOut(scope: Scope, node: ast.ValueDeclaration | ast.Measure): Value | null {
  const { inHand, records, scopes, workedOut } = scope.lowering;
  const record = records.get(node) as NamedValue | Reading | undefined;
  const own = scopes.get(node);
  if (record === undefined || own === undefined) return null;
  if (!workedOut.has(node) && !inHand.has(node) && inHand.size < DEEPEST) {
    inHand.add(node);
    if (ast.isMeasure(node)) Object.assign(record, { expect: lowerOptional(own, node.expect, null) });
    else Object.assign(record, { value: lowerValue(own, node.value, null, record.per) });
    inHand.delete(node);
    workedOut.add(node);
  }
  return record.kind === "value" ? record.value : record.expect;
}

// No shop builds a value on more than a few others; a longer chain would exhaust the stack.
const DEEPEST = 200;

function toValue(
  scope: Scope,
  evaluated: Evaluated<Span>,
  span: Span,
  per: Citation | null,
  place?: ValuePlace,
): Value | null {
  for (const problem of evaluated.problems) {
    // A comma was told of when the text was read.
    if (problem.kind !== "decimal comma") scope.problems.push({ kind: "quantity", span: problem.at, problem });
  }
  if (evaluated.quantity === null) return null;
  const quantity = differenceFirst(evaluated.quantity);
  const { named, readings } = place === undefined ? NOTHING : madeOf(scope, place.node);
  const value = { quantity, span, per, ...(named.length === 0 ? {} : { named }) };
  if (place === undefined || readings.length === 0) return value;
  const text = scope.parsed.text.slice(span.start, span.end);
  return { ...value, workedOut: { text, readings, ends: formulaEnds(place.written) } };
}

/** Where it may be either, `30 K` is how far two temperatures lie apart: what is read on a scale is written in °C or °F. */
function differenceFirst(quantity: Quantity): Quantity {
  const isEither = quantity.kind === "temperature" && quantity.alternatives?.includes(DIFFERENCE) === true;
  return isEither ? { ...quantity, kind: DIFFERENCE, alternatives: ["temperature"] } : quantity;
}

const DIFFERENCE = "temperature difference";

/** A node, and what it was read as. */
interface ValuePlace {
  readonly node: AstNode;
  readonly written: Written<Span>;
}

function placeIn(node: AstNode | undefined, written: Written<Span> | undefined): ValuePlace | undefined {
  return node === undefined || written === undefined ? undefined : { node, written };
}

interface MadeOf {
  readonly named: readonly NamedValue[];
  /** Also by way of named values. */
  readonly readings: readonly Reading[];
}

const NOTHING: MadeOf = { named: [], readings: [] };

/** What a value is made of, beside numbers. */
function madeOf(scope: Scope, node: AstNode): MadeOf {
  if (isPlain(node)) return NOTHING;
  const named = new Set<NamedValue>();
  const readings = new Set<Reading>();
  for (const use of AstUtils.streamAst(node).filter(ast.isValueUse)) {
    const meaning = meant(scope, use.value);
    const record = meaning === undefined ? undefined : scope.lowering.records.get(meaning);
    if (record?.kind === "reading") readings.add(record);
    if (record?.kind !== "value") continue;
    named.add(record);
    for (const reading of record.value?.workedOut?.readings ?? []) readings.add(reading);
  }
  return { named: [...named], readings: [...readings] };
}

/** Most values are numbers with units: nothing to look for. */
function isPlain(node: AstNode): boolean {
  if (!ast.isQuantity(node)) return false;
  const parts = [node.value, node.high, node.low, node.tolerance];
  return parts.every((part) => part === undefined || (ast.isLiteral(part) && part.of === undefined));
}

function writtenOf(scope: Scope, node: ast.Quantity): Written<Span> {
  const at = spanOf(scope, node);
  const share = shareOfBand(scope, node);
  if (share !== null) return { form: "nominal", value: share, at };
  const value = expressionOf(scope, node.value);
  if (node.limit !== undefined) return { form: node.limit.endsWith("least") ? "at least" : "at most", value, at };
  if (node.plusMinus) {
    const sign = propertySpan(scope, node, "plusMinus");
    const problem = { kind: "style", at: sign, text: "+/-", canonical: "±" } as const;
    scope.problems.push({ kind: "quantity", span: sign, problem });
  }
  if (node.tolerance !== undefined)
    return { form: "tolerance", value, tolerance: expressionOf(scope, node.tolerance), at };
  if (node.high === undefined) return { form: "nominal", value, at };
  const high = expressionOf(scope, node.high);
  if (node.low === undefined) return { form: "range", low: value, high, at };
  return { form: "nominal in range", value, low: expressionOf(scope, node.low), high, at };
}

/** `100 % of 45 ± 2 N·m`: the tolerance, or the other end, belongs to what the share is of. */
function shareOfBand(scope: Scope, node: ast.Quantity): Expression<Span> | null {
  if (!isShareOfBand(node)) return null;
  const share = operandOf(scope, node.value);
  if (share.op !== "percent of") return null;
  const band = evaluateOnce(writtenOf(scope, { ...node, value: node.value.of }), null);
  for (const problem of band.problems) scope.problems.push({ kind: "quantity", span: problem.at, problem });
  return { ...share, of: { op: "name", value: band.quantity, at: share.of.at } };
}

type ShareOfBand = ast.Quantity & { readonly value: ast.Literal & { readonly of: ast.Literal } };

function isShareOfBand(node: ast.Quantity): node is ShareOfBand {
  const { value } = node;
  const isShare = ast.isLiteral(value) && ast.isLiteral(value.of) && value.of.of === undefined;
  const isRangeOfShares = ast.isLiteral(node.high) && node.high.of !== undefined;
  return isShare && !isRangeOfShares && (node.tolerance !== undefined || node.high !== undefined);
}

/** Sums lean to the left and may be long: their left side is followed in a loop. */
function expressionOf(scope: Scope, node: ast.Expression): Expression<Span> {
  const sums: ast.Sum[] = [];
  let first: ast.Expression = node;
  while (ast.isSum(first)) {
    sums.push(first);
    first = first.left;
  }
  let so = operandOf(scope, first);
  for (const sum of sums.reverse()) {
    const right = expressionOf(scope, sum.right);
    const op = sum.operator === "\u2212" ? "-" : sum.operator;
    so = { op, left: so, right, at: { ...so.at, end: right.at.end } };
  }
  return so;
}

function operandOf(scope: Scope, node: Exclude<ast.Expression, ast.Sum>): Expression<Span> {
  const at = spanOf(scope, node);
  if (ast.isNegation(node)) return { op: "negate", of: expressionOf(scope, node.operand), at };
  if (ast.isValueUse(node)) {
    const value = namedQuantity(scope, node);
    const formula = value === null ? null : namedFormula(scope, node);
    return { op: "name", value, at, ...(formula === null ? {} : { formula }) };
  }
  const unit = node.unit ?? null;
  const unitAt = unit === null ? null : propertySpan(scope, node, "unit");
  if (node.of === undefined) return { op: "literal", number: node.number, unit, at, unitAt };
  const share = { ...at, end: (unitAt ?? propertySpan(scope, node, "number")).end };
  const literal: Expression<Span> = { op: "literal", number: node.number, unit, at: share, unitAt };
  return { op: "percent of", share: literal, of: expressionOf(scope, node.of), at };
}

function namedQuantity(scope: Scope, use: ast.ValueUse): Quantity | null {
  const record = resolve(scope, use.value, ["value", "reading"]);
  const node = meant(scope, use.value);
  if (record === null || !(ast.isValueDeclaration(node) || ast.isMeasure(node))) return null;
  const { inHand, records } = scope.lowering;
  if (inHand.has(node)) {
    const waiting = [...inHand];
    const circle = [...waiting.slice(waiting.indexOf(node)), node];
    const names = circle.map((each) => records.get(each)?.name ?? "");
    scope.problems.push({ kind: "use cycle", span: spanOf(scope, use), what: "value", names });
    return null;
  }
  return workOut(scope, node)?.quantity ?? null;
}

/** How a name hangs on readings; null where it does not. */
function namedFormula(scope: Scope, use: ast.ValueUse): Formula | null {
  const meaning = meant(scope, use.value);
  const record = meaning === undefined ? undefined : scope.lowering.records.get(meaning);
  if (record?.kind === "reading") return { op: "reading", id: record.id };
  return record?.kind === "value" ? (record.value?.workedOut?.ends?.nominal ?? null) : null;
}
