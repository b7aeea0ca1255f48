// Circles: files that use each other, procedures that perform each other. Knows records, no tree.
import type { Span } from "#syntax/span.ts";
import type { ModelProblem } from "./problem.ts";
import type { FileModel, Item, Line, PerformAction, Procedure } from "./procedure.ts";
import { insideOf } from "./written-steps.ts";

/** A problem at each `use` that lies on a circle of files. */
export function cyclicUses(models: readonly FileModel[]): readonly ModelProblem[] {
  const edges = models.flatMap(({ path, uses }) =>
    uses.flatMap((use) => (use.path === null ? [] : [{ from: path, to: use.path, span: use.span }])),
  );
  return problemsOf(edges, "use", (path) => path);
}

/** A problem at each `perform` that lies on a circle of procedures. */
export function cyclicPerforms(procedures: readonly Procedure[]): readonly ModelProblem[] {
  const names = new Map(procedures.map(({ id, name }) => [id, name]));
  const edges = procedures.flatMap(performEdges);
  return problemsOf(edges, "perform", (id) => names.get(id) ?? id);
}

/** Asked for again after each change, mostly of procedures that are the same. */
const known = new WeakMap<Procedure, readonly Edge[]>();

function performEdges(performing: Procedure): readonly Edge[] {
  const before = known.get(performing);
  if (before !== undefined) return before;
  const edges = performsIn(performing.items).flatMap(({ procedure, place }) =>
    procedure === null ? [] : [{ from: performing.id, to: procedure.id, span: place }],
  );
  known.set(performing, edges);
  return edges;
}

interface Edge {
  readonly from: string;
  readonly to: string;
  readonly span: Span;
}

function problemsOf(
  edges: readonly Edge[],
  what: "use" | "perform",
  nameOf: (node: string) => string,
): readonly ModelProblem[] {
  const next = new Map<string, string[]>();
  for (const { from, to } of edges) next.set(from, [...(next.get(from) ?? []), to]);
  return edges.flatMap(({ from, to, span }) => {
    const way = wayBack(next, to, from);
    return way === null ? [] : [{ kind: "use cycle" as const, span, what, names: [from, ...way].map(nameOf) }];
  });
}

/** The shortest way from one node to another, both included; null where there is none. */
function wayBack(next: ReadonlyMap<string, readonly string[]>, from: string, to: string): readonly string[] | null {
  const cameFrom = new Map<string, string | null>([[from, null]]);
  const waiting = [from];
  for (const node of waiting) {
    if (node === to) break;
    for (const each of next.get(node) ?? []) {
      if (cameFrom.has(each)) continue;
      cameFrom.set(each, node);
      waiting.push(each);
    }
  }
  if (!cameFrom.has(to)) return null;
  const way: string[] = [];
  for (let at: string | null | undefined = to; at !== null && at !== undefined; at = cameFrom.get(at)) way.unshift(at);
  return way;
}

/** Every `perform`, wherever it stands. */
export function performsIn(items: readonly (Item | Line)[]): readonly PerformAction[] {
  return items.flatMap((item): readonly PerformAction[] => {
    if (item.kind === "perform") return [item.action];
    if (item.kind === "action") return item.verb === "perform" ? [item] : [];
    return insideOf(item).flatMap(performsIn);
  });
}
