// Which paired nodes stand elsewhere than before: in something else, or in another order. Knows no change.
import { nodesUnder, type Pairs } from "./match.ts";
import type { Node, Sort } from "./record.ts";
import { longestRising } from "./rising.ts";

/** Blocks round steps: where one comes or goes, what is in it has not moved by that. */
export const BLOCKS: ReadonlySet<Sort> = new Set<Sort>(["task", "repeat", "when", "arm", "any order"]);
/** What holds for all that comes behind it: only that counts, not how several of them stand among themselves. */
const HEADS: ReadonlySet<Sort> = new Set<Sort>(["statement", "note"]);

/** Nodes of the new side: all in one place but the longest run that kept its order, and all that came from another place. O(n log n). */
export function movedNodes(now: Node, { toNew, toOld }: Pairs, parents: ReadonlyMap<Node, Node>): ReadonlySet<Node> {
  const moved = new Set<Node>();
  /** What stayed in its place, by that place, in the new order. */
  const inside = new Map<Node, Node[]>();
  for (const node of nodesUnder(now)) {
    const before = toOld.get(node);
    if (before === undefined || !parents.has(node)) continue;
    const [from, to] = [holderOf(before, toNew, parents), holderOf(node, toOld, parents)];
    if (from === null || to === null || toNew.get(from) !== to) moved.add(node);
    else if (inside.has(to)) inside.get(to)?.push(node);
    else inside.set(to, [node]);
  }
  const places = placesOf(toOld);
  for (const [holder, nodes] of inside) if (holder.sort !== "any order") reorderedIn(nodes, toOld, places, moved);
  return moved;
}

/** The nearest node that holds it, but for blocks without a partner. */
function holderOf(node: Node, partner: ReadonlyMap<Node, Node>, parents: ReadonlyMap<Node, Node>): Node | null {
  let holder = parents.get(node);
  while (holder !== undefined && BLOCKS.has(holder.sort) && !partner.has(holder)) holder = parents.get(holder);
  return holder ?? null;
}

/** Where each old node stands in its text. */
function placesOf(toOld: ReadonlyMap<Node, Node>): ReadonlyMap<Node, number> {
  const places = new Map<Node, number>();
  const [root] = toOld.values();
  if (root !== undefined) for (const [at, node] of nodesUnder(root).entries()) places.set(node, at);
  return places;
}

function reorderedIn(
  nodes: readonly Node[],
  toOld: ReadonlyMap<Node, Node>,
  places: ReadonlyMap<Node, number>,
  moved: Set<Node>,
): void {
  const placeOf = (node: Node): number => places.get(toOld.get(node) ?? node) ?? 0;
  const doing = nodes.filter(({ sort }) => !HEADS.has(sort));
  const kept = longestRising(doing.map(placeOf));
  doing.forEach((node, at) => {
    if (!kept.has(at)) moved.add(node);
  });
  const stable = doing.filter((_, at) => kept.has(at));
  const staying = new Set(stable);
  const before = stable.map(placeOf);
  let passed = 0;
  for (const node of nodes) {
    if (staying.has(node)) passed++;
    else if (HEADS.has(node.sort) && countBelow(before, placeOf(node)) !== passed) moved.add(node);
  }
}

/** How many of the rising numbers are below the limit. */
function countBelow(rising: readonly number[], limit: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
