// Which node of the old side is which of the new: by name, then by all it says, by what it does and to what, then by where it
// stands. Knows no change and no words.
import type { Node, Sort } from "./record.ts";

export interface Pairs {
  readonly toNew: ReadonlyMap<Node, Node>;
  readonly toOld: ReadonlyMap<Node, Node>;
}

/**
 * Pairs the nodes of two trees, each at most once and with one of its own sort.
 *
 * Every round puts the nodes that are left into buckets by a key and pairs them in order, so a round costs as much as there
 * are nodes; a pair is followed into its insides once. Pairs found by place can show further ones inside, so that there are
 * as many rounds as levels at most: O(n·d) for n nodes on d levels, and the text they hold.
 */
export function matchTrees(old: Node, now: Node): Pairs {
  const contents = createContents();
  const matching: Matching = { toNew: new Map(), toOld: new Map(), contents, waiting: [], parents: [] };
  const [all, alsoAll] = [nodesUnder(old), nodesUnder(now)];
  pair(matching, old, now);
  pairBy(matching, all.filter(isNamed), alsoAll.filter(isNamed), ({ sort, name }) => `${sort} ${name}`);
  for (let before = 0; before < matching.toNew.size; ) {
    before = matching.toNew.size;
    matchInside(matching);
    const isLeft = (node: Node): boolean => MOVES.has(node.sort) && !isPaired(matching, node);
    const keys: readonly Key[] = [contentKey(matching), doesKey];
    for (const key of keys) pairBy(matching, all.filter(isLeft), alsoAll.filter(isLeft), key);
    matchInside(matching);
    for (const [one, other] of [...matching.parents]) pairByPlace(matching, one, other);
  }
  return matching;
}

/** What can be told again in another place. */
const MOVES: ReadonlySet<Sort> = new Set<Sort>([
  ...(["task", "step", "repeat", "when", "any order", "perform", "statement", "note", "action", "check"] as const),
]);

interface Matching {
  readonly toNew: Map<Node, Node>;
  readonly toOld: Map<Node, Node>;
  readonly contents: (node: Node) => number;
  /** Pairs whose insides have not been looked at. */
  readonly waiting: (readonly [Node, Node])[];
  /** All pairs that hold something. */
  readonly parents: (readonly [Node, Node])[];
}

type Key = (node: Node) => string | null;

function pair(matching: Matching, old: Node, now: Node): void {
  matching.toNew.set(old, now);
  matching.toOld.set(now, old);
  if (old.holds.length === 0 && now.holds.length === 0) return;
  matching.waiting.push([old, now]);
  matching.parents.push([old, now]);
}

function isPaired({ toNew, toOld }: Matching, node: Node): boolean {
  return toNew.has(node) || toOld.has(node);
}

function matchInside(matching: Matching): void {
  const keys: readonly Key[] = [contentKey(matching), headKey, doesKey, hazardKey];
  for (let next = matching.waiting.pop(); next !== undefined; next = matching.waiting.pop()) {
    const [old, now] = next;
    for (const key of keys) pairBy(matching, old.holds, now.holds, key);
  }
}

function pairBy(matching: Matching, old: readonly Node[], now: readonly Node[], key: Key): void {
  const isFree = (node: Node): boolean => !isPaired(matching, node);
  for (const [one, other] of pairsBy(old.filter(isFree), now.filter(isFree), key)) pair(matching, one, other);
}

/** Pairs of those that have the same key, in their order; what has none is left out. */
export function pairsBy<T>(
  old: readonly T[],
  now: readonly T[],
  key: (one: T) => string | null,
): readonly (readonly [T, T])[] {
  const buckets = new Map<string, T[]>();
  for (const one of [...now].reverse()) {
    const own = key(one);
    if (own === null) continue;
    const bucket = buckets.get(own);
    if (bucket === undefined) buckets.set(own, [one]);
    else bucket.push(one);
  }
  return old.flatMap((one) => {
    const own = key(one);
    const partner = own === null ? undefined : buckets.get(own)?.pop();
    return partner === undefined ? [] : [[one, partner] as const];
  });
}

function isNamed({ sort, name }: Node): boolean {
  return name !== null && (sort === "step" || sort === "task" || sort === "declaration");
}

function contentKey({ contents }: Matching): Key {
  return (node) => String(contents(node));
}

/** Title of a task, condition of an arm. */
function headKey({ sort, title, name }: Node): string | null {
  if (sort === "task") return title() === "" ? null : `task ${title()}`;
  return sort === "arm" ? `arm ${name}` : null;
}

function doesKey({ sort, does }: Node): string | null {
  return does === null || does === "" ? null : `${sort} ${does}`;
}

function hazardKey({ sort, about }: Node): string | null {
  return sort === "statement" || sort === "note" ? `${sort} ${[...about].sort().join()}` : null;
}

/** Pairs what is left between the same neighbours, in order, where the two have something in common. */
function pairByPlace(matching: Matching, old: Node, now: Node): void {
  /** What is left on the new side, by its neighbour before and its sort; `next` is the first that can still be taken. */
  const gaps = new Map<Node | null, Map<Sort, { readonly nodes: Node[]; next: number }>>();
  let last: Node | null = null;
  for (const node of now.holds) {
    if (matching.toOld.has(node)) {
      last = node;
      continue;
    }
    const sorts = gaps.get(last) ?? new Map<Sort, { readonly nodes: Node[]; next: number }>();
    gaps.set(last, sorts);
    const gap = sorts.get(node.sort);
    if (gap === undefined) sorts.set(node.sort, { nodes: [node], next: 0 });
    else gap.nodes.push(node);
  }
  last = null;
  for (const node of old.holds) {
    const partner = matching.toNew.get(node);
    if (partner !== undefined) {
      last = partner;
      continue;
    }
    const gap = gaps.get(last)?.get(node.sort);
    if (gap === undefined) continue;
    const end = Math.min(gap.nodes.length, gap.next + MOST_AHEAD);
    for (let at = gap.next; at < end; at++) {
      const other = gap.nodes[at];
      if (other === undefined || !haveInCommon(node, other)) continue;
      pair(matching, node, other);
      gap.next = at + 1;
      break;
    }
  }
}

/** So far is looked for one that has something in common, so that a long gap costs no square. */
const MOST_AHEAD = 40;

/** Things that do nothing are told by their place alone. */
function haveInCommon(a: Node, b: Node): boolean {
  if (a.about.length === 0 || b.about.length === 0 || !DOING.has(a.sort)) return true;
  // Another thing to do is no change of the one before.
  if (a.sort === "action") return a.about[0] === b.about[0];
  return a.about.some((one) => b.about.includes(one));
}

const DOING: ReadonlySet<Sort> = new Set<Sort>(["step", "action", "declaration"]);

/** The node and all in it, in the order of the text. */
export function nodesUnder(root: Node): readonly Node[] {
  const found: Node[] = [];
  const waiting = [root];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    found.push(node);
    for (let at = node.holds.length - 1; at >= 0; at--) waiting.push(node.holds[at] as Node);
  }
  return found;
}

/** Numbers that are the same for nodes that say and hold the same, but for their names. */
function createContents(): (node: Node) => number {
  const numbers = new Map<string, number>();
  const known = new Map<Node, number>();
  const contentOf = (node: Node): number => {
    const before = known.get(node);
    if (before !== undefined) return before;
    const says = node.says.filter(({ key }) => key !== "name").map(({ key, text }) => [key, text]);
    const key = JSON.stringify([node.sort, says, node.holds.map(contentOf)]);
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    known.set(node, number);
    return number;
  };
  return contentOf;
}
