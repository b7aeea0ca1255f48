// The rows of a choice by a reading: whether each value that is expected falls into one row, and whether what a row leaves of the
// reading is what is to be left. Knows nothing of what is chosen but its value.
import { expectedPart, fittingValues, remainder } from "#engineering/remainder.ts";
import type { Action, ChooseRow } from "#model/procedure.ts";
import { band, type Magnitude, type Quantity, within } from "#quantity/quantity.ts";
import { cmp, type Rational } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import type { Span } from "#syntax/span.ts";
import type { At } from "./at-node.ts";
import type { RemainderFact, RowFact } from "./limit-fact.ts";

type Choose = Extract<Action, { readonly verb: "choose" }>;

export function choiceFacts(at: At, action: Choose): void {
  rowFacts(at, action);
  for (const row of action.rows) remainderFacts(at, action, row);
}

/** What is left of the reading where this row holds, beside what is to be left. */
function remainderFacts(at: At, { leaving, reading, subject }: Choose, { range, result, span }: ChooseRow): void {
  if (leaving === null || reading === null || range === null || result === null) return;
  const { quantity: limit } = leaving;
  const value = valueOfRow(result);
  if (value === null) {
    if ("name" in result)
      at.leaveOut({ matter: "remainder", of: subject.name, lacks: "value", when: null, in: result.name, span });
    return;
  }
  const expected = reading.expect?.quantity ?? null;
  const kinds = [range.quantity, value, ...(expected === null ? [] : [expected])].map(({ kind }) => kind);
  if (kinds.some((kind) => kind !== limit.kind)) return;
  const readings = expectedPart(range.quantity, expected);
  if (readings === null) return;
  const unit = (limit.low ?? limit.nominal ?? limit.high)?.unit ?? unitNamed("mm");
  const left = remainder({ value: readings }, { value }, unit);
  if (!left.ok) return;
  at.explain?.({ of: `${subject.name} by ${reading.name}`, span: result.span, explanation: left.explanation });
  if (within(left.value, limit) || at.node.operation.kind !== "act") return;
  const fact: Omit<RemainderFact, "options" | "pass" | "more"> = {
    ...{ kind: "choice", how: "remainder", reading: reading.name, chosen: subject.name },
    ...{ value, readings, remainder: left.value, limit, fitting: fittingValues(readings, limit, unit) },
    ...{ declaredAt: leaving.span, span: result.span },
  };
  const { pass } = at.node.operation.line;
  at.collect({ fact, where: at.state.reach, pass, subject: reading.name, node: at.node.id });
}

/** Null for a part: nothing says how thick it is. */
function valueOfRow(result: NonNullable<ChooseRow["result"]>): Quantity | null {
  if ("quantity" in result) return result.quantity;
  return result.thing?.kind === "value" ? (result.thing.value?.quantity ?? null) : null;
}

/** Of rows that could not be read nothing is said. Two rows may meet in one value: either serves there. */
function rowFacts(at: At, action: Choose): void {
  const { reading, subject, rows } = action;
  const ranges = rows.flatMap(({ range }) => (range === null ? [] : [{ quantity: range.quantity, span: range.span }]));
  const [first] = ranges;
  if (reading === null || first === undefined || ranges.length < rows.length) return;
  const { kind } = first.quantity;
  const expect = reading.expect?.quantity ?? null;
  if ([...ranges.map(({ quantity }) => quantity), ...(expect === null ? [] : [expect])].some((q) => q.kind !== kind))
    return;
  const tell = (fault: Pick<RowFact, "how" | "from" | "to" | "declaredAt">, span: Span): void => {
    if (at.node.operation.kind !== "act") return;
    const fact = { kind: "choice" as const, reading: reading.name, chosen: subject.name, of: kind, ...fault, span };
    at.collect({
      fact,
      where: at.state.reach,
      pass: at.node.operation.line.pass,
      subject: reading.name,
      node: at.node.id,
    });
  };
  const rising = [...ranges].sort((a, b) => upward(band(a.quantity).low, band(b.quantity).low));
  let top = first;
  rising.forEach((row, place) => {
    if (place > 0) {
      const [end, begin] = [ends(top.quantity).high, ends(row.quantity).low];
      const order = end === null || begin === null ? 1 : cmp(end.base, begin.base);
      if (order < 0) tell({ how: "gap", from: end, to: begin, declaredAt: top.span }, row.span);
      if (order > 0)
        tell({ how: "overlap", from: begin, to: lesser(end, ends(row.quantity).high), declaredAt: top.span }, row.span);
    }
    if (place === 0 || isAbove(ends(row.quantity).high, ends(top.quantity).high)) top = row;
  });
  if (expect === null || reading.expect === null) return;
  const wanted = ends(expect);
  const lowest = ends(rising[0]?.quantity ?? expect).low;
  const highest = ends(top.quantity).high;
  const { span: declaredAt } = reading.expect;
  if (lowest !== null && wanted.low !== null && cmp(wanted.low.base, lowest.base) < 0)
    tell({ how: "below", from: wanted.low, to: lowest, declaredAt }, action.place);
  if (highest !== null && wanted.high !== null && cmp(wanted.high.base, highest.base) > 0)
    tell({ how: "above", from: highest, to: wanted.high, declaredAt }, action.place);
}

/** As written; null is open. */
function ends({ form, low, nominal, high }: Quantity): {
  readonly low: Magnitude | null;
  readonly high: Magnitude | null;
} {
  return form === "nominal" ? { low: nominal, high: nominal } : { low, high };
}

function upward(a: Rational | null, b: Rational | null): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? -1 : 1;
  return cmp(a, b);
}

function isAbove(a: Magnitude | null, b: Magnitude | null): boolean {
  return b !== null && (a === null || cmp(a.base, b.base) > 0);
}

function lesser(a: Magnitude | null, b: Magnitude | null): Magnitude | null {
  return isAbove(a, b) ? b : a;
}
