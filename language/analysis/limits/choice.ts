// The rows of a choice by a reading: whether each value that is expected falls into one row. Knows nothing of what is chosen.
import type { Action } from "#model/procedure.ts";
import { band, type Magnitude, type Quantity } from "#quantity/quantity.ts";
import { cmp, type Rational } from "#quantity/rational.ts";
import type { Span } from "#syntax/span.ts";
import type { At } from "./at-node.ts";
import type { ChoiceFact } from "./limit-fact.ts";

type Choose = Extract<Action, { readonly verb: "choose" }>;

/** Of rows that could not be read nothing is said. Two rows may meet in one value: either serves there. */
export function choiceFacts(at: At, action: Choose): void {
  const { reading, subject, rows } = action;
  const ranges = rows.flatMap(({ range }) => (range === null ? [] : [{ quantity: range.quantity, span: range.span }]));
  const [first] = ranges;
  if (reading === null || first === undefined || ranges.length < rows.length) return;
  const { kind } = first.quantity;
  const expect = reading.expect?.quantity ?? null;
  if ([...ranges.map(({ quantity }) => quantity), ...(expect === null ? [] : [expect])].some((q) => q.kind !== kind))
    return;
  const tell = (fault: Pick<ChoiceFact, "how" | "from" | "to" | "declaredAt">, span: Span): void => {
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
