// Which procedures of a text are, sign by sign and node by node, those of an earlier one, whole and in the same surroundings; they may
// stand further up or down. Knows the tree and no records.
import { type CstNode, isCompositeCstNode, isLeafCstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { ParsedFile } from "#syntax/parse.ts";

type Item = ast.File["items"][number];

/** An item and where it stood when its file was lowered: its node may stand in a later tree by now. */
export interface PlacedItem {
  readonly node: Item;
  readonly start: number;
  readonly end: number;
}

/** A text that was lowered before. */
interface Earlier {
  readonly parsed: Pick<ParsedFile, "damage" | "problems" | "text">;
  readonly places: readonly PlacedItem[];
}

/** An item of an earlier text, and by how much it has moved since. */
export interface SameItem {
  readonly before: PlacedItem;
  readonly by: number;
}

/** All but those that could not be read. */
export function placesOf({ file }: ParsedFile): readonly PlacedItem[] {
  return soundItems(file).map((node) => ({ node, start: node.$cstNode?.offset ?? 0, end: node.$cstNode?.end ?? 0 }));
}

/**
 * The items that are the same; null where one outside the procedures is another or has moved, or where others are declared, since then
 * nothing in the file need mean what it meant.
 */
export function sameItems(before: Earlier, now: ParsedFile): ReadonlyMap<Item, SameItem> | null {
  const items = soundItems(now.file);
  if (items.length !== before.places.length) return null;
  const same = new Map<Item, SameItem>();
  for (const [at, item] of items.entries()) {
    const old = before.places[at] as PlacedItem;
    if (old.node.$type !== item.$type || nameOf(old.node) !== nameOf(item)) return null;
    const by = moveOf(before, old, now, item);
    if (by !== 0 && !ast.isProcedure(item)) return null;
    if (by !== null) same.set(item, { before: old, by });
  }
  return same;
}

function soundItems({ items }: ast.File): readonly Item[] {
  return items.filter((item) => !ast.isDamaged(item));
}

function nameOf(item: Item): unknown {
  return (item as { readonly name?: unknown }).name;
}

/** By how much an item has moved; null where it is another. */
function moveOf({ parsed: before }: Earlier, old: PlacedItem, now: ParsedFile, item: Item): number | null {
  const [from, to] = [old.node.$cstNode, item.$cstNode];
  if (from === undefined || to === undefined) return null;
  const by = to.offset - old.start;
  // A node is taken over only where what it was read from is the same.
  if (from === to) return by;
  if (isTouched(before, old) || isTouched(now, { start: to.offset, end: to.end })) return null;
  if (before.text.slice(old.start, old.end) !== now.text.slice(to.offset, to.end)) return null;
  return isSameTree(from, to, to.offset - from.offset) ? by : null;
}

/** Whether something is wrong with its form: how it was read may then hang on what stands round it. */
function isTouched({ damage, problems }: Earlier["parsed"], { end, start }: Omit<PlacedItem, "node">): boolean {
  const touches = ({ span }: { readonly span: { readonly start: number; readonly end: number } }) =>
    span.start <= end && span.end >= start;
  return damage.some(touches) || problems.some(touches);
}

/** The tree of nodes follows from this one and the text. */
function isSameTree(one: CstNode, other: CstNode, by: number): boolean {
  if (one.grammarSource !== other.grammarSource || one.offset + by !== other.offset || one.end + by !== other.end)
    return false;
  if (!isCompositeCstNode(one)) return isLeafCstNode(one) && isLeafCstNode(other) && one.tokenType === other.tokenType;
  if (!isCompositeCstNode(other)) return false;
  const { content } = one;
  const others = other.content;
  if (content.length !== others.length) return false;
  for (let at = 0; at < content.length; at++)
    if (!isSameTree(content[at] as CstNode, others[at] as CstNode, by)) return false;
  return true;
}
