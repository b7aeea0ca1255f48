// Declared order, `after` and `before`: which of two steps was done first is followed like any other state.
import type { OrderRef } from "#model/procedure.ts";
import type { Update } from "./formula.ts";
import { type Graph, nearest, spanKey } from "./graph.ts";
import type { World } from "./world.ts";

/** `earlier` is to be done before `later` begins; said at `ref`. */
export interface Constraint {
  readonly ref: OrderRef;
  readonly wanted: "after" | "before";
  /** The step that says so, as node where it begins. */
  readonly said: number;
  readonly earlier: number;
  readonly later: number;
  readonly variable: number;
}

/** Value of a constraint's variable once the later step has begun first. */
export const WRONG_WAY = "later first";

export function constraintsOf(
  graph: Graph,
  world: World,
): { constraints: readonly Constraint[]; eventsAt: ReadonlyMap<number, readonly Update[]> } {
  const constraints: Constraint[] = [];
  const eventsAt = new Map<number, Update[]>();
  const event = (node: number, update: Update): void => {
    const list = eventsAt.get(node) ?? [];
    eventsAt.set(node, list);
    list.push(update);
  };
  for (const node of graph.nodes) {
    if (node.operation.kind !== "enter") continue;
    const { step, pass } = node.operation.step;
    for (const wanted of ["after", "before"] as const) {
      for (const ref of step[wanted]) {
        const own = nearest(graph.entries.get(spanKey(step.span)), pass);
        const other = ref.target === null ? null : nearest(graph.entries.get(spanKey(ref.target)), pass);
        if (own === null || other === null || own === other) continue;
        const [earlier, later] = wanted === "after" ? [other, own] : [own, other];
        const variable = world.first(String(earlier.node), String(later.node));
        constraints.push({ ref, wanted, said: node.id, earlier: earlier.node, later: later.node, variable });
        event(earlier.leave, { variable, change: (value) => (value === "" ? "earlier first" : value) });
        event(later.node, { variable, change: (value) => (value === "" ? WRONG_WAY : value) });
      }
    }
  }
  return { constraints, eventsAt };
}
