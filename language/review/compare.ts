// From two matched trees to bare changes: what each node says otherwise, which nodes came, went and moved, each with the
// edits that carry it out. Knows no findings, no margins and no words.
import type { Edit, Plain } from "./edit.ts";
import { nodesUnder, type Pairs } from "./match.ts";
import { BLOCKS, movedNodes } from "./moved.ts";
import type { Node, Saying } from "./record.ts";

/** A change as it is found, before it is put into words. */
export type Bare =
  | {
      readonly what: "said";
      readonly node: Both;
      readonly old: Saying | null;
      readonly new: Saying | null;
      readonly edits: readonly Edit[];
    }
  | { readonly what: "added"; readonly new: Node; readonly edits: readonly Edit[] }
  | { readonly what: "removed"; readonly old: Node; readonly edits: readonly Edit[] }
  | { readonly what: "moved"; readonly node: Both; readonly edits: readonly Edit[] };

export interface Both {
  readonly old: Node;
  readonly new: Node;
}

export interface Compared {
  readonly changes: readonly Bare[];
  readonly pairs: Pairs;
  /** What holds a node, on its own side. */
  readonly parents: ReadonlyMap<Node, Node>;
  /** Where a node stands in what holds it. */
  readonly places: ReadonlyMap<Node, number>;
  /** Of a node without a partner, the one whose coming or going tells of it. */
  readonly ownerOf: (node: Node) => Node;
  /** Both records, made when they are asked for. */
  readonly plain: { readonly old: Plain; readonly new: Plain };
}

/** @param key by which the ids of this tree begin */
export function compareTrees(old: Node, now: Node, pairs: Pairs, key: string): Compared {
  const [olds, news] = [nodesUnder(old), nodesUnder(now)];
  const parents = new Map<Node, Node>();
  const places = new Map<Node, number>();
  for (const node of [...olds, ...news])
    for (const [at, inner] of node.holds.entries()) {
      parents.set(inner, node);
      places.set(inner, at);
    }
  const idOf = idsFor(olds, news, pairs, key);
  const moved = movedNodes(now, pairs, parents);
  const edits = createEdits();
  const changes: Bare[] = [];
  const ownerOf = ownersIn(news, olds, pairs, parents);
  collectPlaces({ news, pairs, parents, idOf, moved, ownerOf, edits });
  for (const node of news) {
    const before = pairs.toOld.get(node);
    if (before === undefined) {
      if (ownerOf(node) === node) changes.push({ what: "added", new: node, edits: edits.of(node) });
      continue;
    }
    const both = { old: before, new: node };
    if (moved.has(node)) changes.push({ what: "moved", node: both, edits: edits.of(node) });
    for (const [whole, ...parts] of withParts(sayingsChanged(before, node))) {
      const edits = [whole, ...parts].flatMap((pair) => settingEdits(pair, idOf(node)));
      changes.push({ what: "said", node: both, old: whole[0], new: whole[1], edits });
    }
  }
  for (const node of olds) {
    if (pairs.toNew.has(node) || ownerOf(node) !== node) continue;
    changes.push({ what: "removed", old: node, edits: [...edits.of(node), { do: "drop", id: idOf(node) }] });
  }
  return {
    ...{ changes, pairs, parents, places, ownerOf },
    get plain() {
      return { old: plainOf(old, idOf), new: plainOf(now, idOf) };
    },
  };
}

export function isInside(inner: Node, outer: Node, parents: ReadonlyMap<Node, Node>): boolean {
  let at = parents.get(inner);
  while (at !== undefined && at !== outer) at = parents.get(at);
  return at === outer;
}

function idsFor(olds: readonly Node[], news: readonly Node[], { toOld }: Pairs, key: string): (node: Node) => string {
  const ids = new Map<Node, string>();
  olds.forEach((node, at) => {
    ids.set(node, `${key}:${at}`);
  });
  news.forEach((node, at) => {
    const before = toOld.get(node);
    ids.set(node, before === undefined ? `${key}:+${at}` : (ids.get(before) ?? ""));
  });
  return (node) => ids.get(node) ?? "";
}

function plainOf(node: Node, idOf: (node: Node) => string): Plain {
  return { ...bareNode(node, idOf), holds: node.holds.map((inner) => plainOf(inner, idOf)) };
}

function bareNode(node: Node, idOf: (node: Node) => string): Omit<Plain, "holds"> {
  return { id: idOf(node), sort: node.sort, says: Object.fromEntries(node.says.map(({ key, text }) => [key, text])) };
}

/* ---- what comes, goes and moves ---- */

/**
 * Of a node without a partner, the node whose coming or going tells of it: the outermost one, but that a block put round
 * things that were there before, or taken from round them, speaks for itself alone, and so do the steps in the case of a branch.
 */
function ownersIn(
  news: readonly Node[],
  olds: readonly Node[],
  { toNew, toOld }: Pairs,
  parents: ReadonlyMap<Node, Node>,
): Compared["ownerOf"] {
  const isPaired = (node: Node): boolean => toNew.has(node) || toOld.has(node);
  const around = new Set<Node>();
  for (const paired of [...toNew.keys(), ...toOld.keys()]) {
    let holder = parents.get(paired);
    while (holder !== undefined && !isPaired(holder) && !around.has(holder)) {
      around.add(holder);
      holder = parents.get(holder);
    }
  }
  /** Steps, and what holds some. */
  const ofSteps = new Set<Node>();
  for (const numbered of [...olds, ...news].filter(({ number }) => number !== null))
    for (let at: Node | undefined = numbered; at !== undefined && !ofSteps.has(at); at = parents.get(at))
      ofSteps.add(at);
  const ownerOf = (node: Node): Node => {
    const holder = parents.get(node);
    if (holder === undefined || isPaired(holder)) return node;
    const isAround = BLOCKS.has(holder.sort) && around.has(holder) && node.sort !== "arm";
    const isCase = holder.sort === "arm" && ofSteps.has(node);
    return isAround || isCase ? node : ownerOf(holder);
  };
  return ownerOf;
}

interface Edits {
  readonly add: (owner: Node, edit: Edit) => void;
  readonly of: (owner: Node) => readonly Edit[];
}

function createEdits(): Edits {
  const byOwner = new Map<Node, Edit[]>();
  return {
    add: (owner, edit) => {
      const own = byOwner.get(owner);
      if (own === undefined) byOwner.set(owner, [edit]);
      else own.push(edit);
    },
    of: (owner) => byOwner.get(owner) ?? [],
  };
}

interface Placing {
  readonly news: readonly Node[];
  readonly pairs: Pairs;
  readonly parents: ReadonlyMap<Node, Node>;
  readonly idOf: (node: Node) => string;
  readonly moved: ReadonlySet<Node>;
  readonly ownerOf: (node: Node) => Node;
  readonly edits: Edits;
}

/** Where each node goes that came or that stands elsewhere; in the order of the new side, so that what it goes behind is there. */
function collectPlaces({ news, pairs, parents, idOf, moved, ownerOf, edits }: Placing): void {
  let turn = 0;
  for (const parent of news) {
    let behind: string | null = null;
    for (const node of parent.holds) {
      turn++;
      const at = { into: idOf(parent), behind, turn };
      behind = idOf(node);
      const before = pairs.toOld.get(node);
      if (before === undefined) {
        edits.add(ownerOf(node), { do: "put", node: bareNode(node, idOf), ...at });
        continue;
      }
      const move: Edit = { do: "move", id: idOf(node), ...at };
      const [from, to] = [parents.get(before), parents.get(node)];
      if (moved.has(node)) edits.add(node, move);
      else if (to !== undefined && !pairs.toOld.has(to)) edits.add(ownerOf(to), move);
      else if (from !== undefined && !pairs.toNew.has(from)) edits.add(ownerOf(from), move);
    }
  }
}

/* ---- what a node says ---- */

type SayingPair = readonly [old: Saying | null, now: Saying | null];

function settingEdits([old, now]: SayingPair, id: string): readonly Edit[] {
  const set = (key: string, to: string | null): Edit => ({ do: "set", id, key, to });
  const gone = old !== null && old.key !== now?.key ? [set(old.key, null)] : [];
  return [...gone, ...(now === null ? [] : [set(now.key, now.text)])];
}

/** Each change, with those of its parts that only came or went with it. */
function withParts(changed: readonly SayingPair[]): readonly (readonly [SayingPair, ...SayingPair[]])[] {
  const byKey = new Map(changed.flatMap((pair) => pair.flatMap((one) => (one === null ? [] : [[one.key, pair]]))));
  const parts = new Map<SayingPair, SayingPair[]>();
  const wholes = changed.filter((pair) => {
    const [old, now] = pair;
    const whole = byKey.get((now ?? old)?.within ?? "");
    if (whole === undefined || (old !== null && now !== null && old.text !== now.text)) return true;
    parts.set(whole, [...(parts.get(whole) ?? []), pair]);
    return false;
  });
  return wholes.map((pair) => [pair, ...(parts.get(pair) ?? [])]);
}

/** What one says and the other does not, by key; one that went and one that came of the same sort are one change. */
function sayingsChanged(old: Node, now: Node): readonly SayingPair[] {
  const after = new Map(now.says.map((one) => [one.key, one]));
  const before = new Map(old.says.map((one) => [one.key, one]));
  const changed: [Saying | null, Saying | null][] = [];
  const went = old.says.filter(({ key }) => !after.has(key));
  const came = now.says.filter(({ key }) => !before.has(key));
  for (const one of now.says) {
    const other = before.get(one.key);
    if (other !== undefined && (other.text !== one.text || other.units !== one.units)) changed.push([other, one]);
  }
  const left = new Set(came);
  for (const one of went) {
    const alike = went.filter(({ label }) => label === one.label).length === 1;
    const others = alike && !APART.has(one.label) ? came.filter(({ label }) => label === one.label) : [];
    const [other = null] = others.length === 1 ? others : [];
    if (other !== null) left.delete(other);
    changed.push([one, other]);
  }
  return [...changed, ...[...left].map((one) => [null, one] as const)];
}

/** One for another is both a loss and a gain. */
const APART: ReadonlySet<string> = new Set(["allow", "hazard", "raises"]);
