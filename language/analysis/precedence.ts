// Declared order, `after` and `before`: which of two steps was done first is followed like any other state.
import type { OrderRef } from "#model/procedure.ts";
import { type Entry, nearest, passText, samePass, spanKey } from "./entries.ts";
import type { Graph } from "./graph.ts";
import type { Update } from "./update.ts";
import type { World } from "./world.ts";

/** `earlier` is to be done before `later` begins; said at `ref`. */
export interface Constraint {
  readonly ref: OrderRef;
  readonly wanted: "after" | "before";
  /** The step that says so, and the other, as nodes where they begin. */
  readonly said: number;
  readonly other: number;
  /** Where the earlier step begins, in each of its turns. */
  readonly earlier: readonly number[];
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
  for (const [key, places] of graph.entries) {
    const told = new Set<string>();
    for (const place of places) {
      const { operation } = graph.nodes[place.node] ?? {};
      if (operation?.kind !== "enter") continue;
      const { after, before } = operation.step.step;
      if ((after.length === 0 && before.length === 0) || told.has(passText(place.pass))) continue;
      told.add(passText(place.pass));
      const own = samePass(places, place);
      for (const wanted of ["after", "before"] as const) {
        for (const ref of operation.step.step[wanted]) {
          const known = ref.target === null ? [] : (graph.entries.get(spanKey(ref.target)) ?? []);
          const other = samePass(known, nearest(known, place.pass));
          const [one] = other;
          if (one === undefined || one === place) continue;
          const [earlier, later] = wanted === "after" ? [other, own] : [own, other];
          const name = (step: string, { pass }: Entry): string => `${step} ${passText(pass)}`;
          const [ownName, otherName] = [name(key, place), name(spanKey(ref.target ?? ref.span), one)];
          const variable = wanted === "after" ? world.first(otherName, ownName) : world.first(ownName, otherName);
          constraints.push({
            ref,
            wanted,
            said: place.node,
            other: one.node,
            earlier: earlier.map(({ node }) => node),
            variable,
          });
          for (const { leave } of earlier)
            event(leave, { variable, change: (value) => (value === "" ? "earlier first" : value) });
          for (const { node } of later)
            event(node, { variable, change: (value) => (value === "" ? WRONG_WAY : value) });
        }
      }
    }
  }
  return { constraints, eventsAt };
}
