// Where the step or task that a name means has its head, for speaking of it. Knows records, no graph.
import type { Item, Procedure, StepRef } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";

/** Name or first words of the step or task; the name where it is used, if it means none. */
export function headOf(procedure: Procedure, ref: StepRef): Span {
  const { target } = ref;
  return (target === null ? null : headIn(procedure.items, target)) ?? ref.span;
}

function headIn(items: readonly Item[], target: Span): Span | null {
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

function insideOf(item: Item): readonly (readonly Item[])[] {
  switch (item.kind) {
    case "task":
    case "repeat":
    case "any order":
      return [item.items];
    case "when":
      return [...item.arms.map((arm) => arm.items), item.otherwise ?? []];
    default:
      return [];
  }
}
