// Which procedures of a text are, sign by sign and node by node, those of an earlier one, whole and in the same surroundings; they may
// stand further up or down. Knows the tree and no records.
import { type CstNode, isCompositeCstNode, isLeafCstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { ParsedFile } from "#syntax/parse.ts";

type Item = ast.File["items"][number];

/** An item of an earlier text, and by how much it has moved since. */
export interface SameItem {
  readonly before: Item;
  readonly by: number;
}

/**
 * The items that are the same; null where one outside the procedures is another or has moved, or where others are declared, since then
 * nothing in the file need mean what it meant.
 */
export function sameItems(before: ParsedFile, now: ParsedFile): ReadonlyMap<Item, SameItem> | null {
  const [earlier, items] = [before, now].map(({ file }) => file.items.filter((item) => !ast.isDamaged(item)));
  if (earlier === undefined || items?.length !== earlier.length) return null;
  const same = new Map<Item, SameItem>();
  for (const [at, item] of items.entries()) {
    const old = earlier[at] as Item;
    if (old.$type !== item.$type || nameOf(old) !== nameOf(item)) return null;
    const by = moveOf(before, old, now, item);
    if (by !== 0 && !ast.isProcedure(item)) return null;
    if (by !== null) same.set(item, { before: old, by });
  }
  return same;
}

function nameOf(item: Item): unknown {
  return (item as { readonly name?: unknown }).name;
}

/** By how much an item has moved; null where it is another. */
function moveOf(before: ParsedFile, old: Item, now: ParsedFile, item: Item): number | null {
  const [from, to] = [old.$cstNode, item.$cstNode];
  if (from === undefined || to === undefined || isTouched(before, from) || isTouched(now, to)) return null;
  if (before.text.slice(from.offset, from.end) !== now.text.slice(to.offset, to.end)) return null;
  const by = to.offset - from.offset;
  return isSameTree(from, to, by) ? by : null;
}

/** Whether something is wrong with its form: how it was read may then hang on what stands round it. */
function isTouched({ damage, problems }: ParsedFile, { end, offset }: CstNode): boolean {
  const touches = ({ span }: { readonly span: { readonly start: number; readonly end: number } }) =>
    span.start <= end && span.end >= offset;
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
