// Repeats that are done no time, as “from 8 to 1”: what stands in them is written out nowhere, so no path can tell. Knows
// records, no graph.
import type { Item, Line } from "#model/procedure.ts";
import { isConstantRange, passValues } from "#model/repeat-passes.ts";
import { insideOf } from "#model/written-steps.ts";
import type { Span } from "#syntax/span.ts";

export interface IdleRepeat {
  readonly repeat: Span;
  /** Its first step; inside a step its first action. */
  readonly first: Span;
  /** How many steps stand in it, at least 1. */
  readonly steps: number;
}

/** The outermost of them that hold a step or an action. */
export function idleRepeats(items: readonly (Item | Line)[]): readonly IdleRepeat[] {
  return items.flatMap((item): readonly IdleRepeat[] => {
    if (item.kind !== "repeat") return insideOf(item).flatMap(idleRepeats);
    if (!isConstantRange(item.range) || passValues(item.range).next().done !== true) return idleRepeats(item.items);
    const inside = placesIn(item.items);
    const [first] = inside;
    return first === undefined ? [] : [{ repeat: item.span, first, steps: inside.length }];
  });
}

/** Where steps stand, or between the lines of a step where actions do. */
function placesIn(items: readonly (Item | Line)[]): readonly Span[] {
  return items.flatMap((item): readonly Span[] => {
    if (item.kind === "step") return [item.headSpan];
    if (item.kind === "perform") return [item.action.place];
    if (item.kind === "action") return [item.place];
    return insideOf(item).flatMap(placesIn);
  });
}
