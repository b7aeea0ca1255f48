// Where the step or task that a name means has its head, for speaking of it. Knows records, no graph.
import type { Item, Line, Procedure, StepRef } from "#model/procedure.ts";
import { insideOf } from "#model/written-steps.ts";
import type { Span } from "#syntax/span.ts";

/** Name or first words of the step or task; the name where it is used, if it means none. */
export function headOf(procedure: Procedure, ref: StepRef): Span {
  const { target } = ref;
  return (target === null ? null : headIn(procedure.items, target)) ?? ref.span;
}

function headIn(items: readonly (Item | Line)[], target: Span): Span | null {
  for (const item of items) {
    const isHere = item.kind === "task" || item.kind === "step";
    if (isHere && item.span.start === target.start && item.span.path === target.path) return item.headSpan;
    for (const inner of insideOf(item)) {
      const head = headIn(inner, target);
      if (head !== null) return head;
    }
  }
  return null;
}
