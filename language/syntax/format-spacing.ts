// Which words stand close to the one before, without a blank. Knows no lines.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { spelled } from "./format-spelling.ts";
import type { Word } from "./format-words.ts";

/** The indices of the words that no blank precedes. */
export function closeWords(words: readonly Word[]): ReadonlySet<number> {
  const close = new Set<number>();
  let before: Word | undefined;
  words.forEach((word, at) => {
    if (before !== undefined && isClose(before, word)) close.add(at);
    before = word;
  });
  return close;
}

function isClose(before: Word, word: Word): boolean {
  const left = before.leaf.tokenType.name;
  const right = word.leaf.tokenType.name;
  if (left === "[" || left === "(" || CLOSE_BEFORE.has(right)) return true;
  if (right === "UNIT") return CLOSE_UNITS.has(spelled(word));
  const node = word.leaf.astNode;
  if (right === ".." || left === "..") return isIndexRange(right === ".." ? node : before.leaf.astNode);
  if (left === "-" || left === "−") return isSign(before) || isCode(before);
  return (right === "-" || right === "." || left === ".") && isCode(word);
}

const CLOSE_BEFORE = new Set([",", ":", "[", "]", ")"]);
// The SI brochure (9th edition, 5.4.3): no space before the signs of angles. The sign for inches behind a blank would begin a text.
const CLOSE_UNITS = new Set(["°", "′", "″", '"']);

/** `[1..4]` close, as a name; `[n + 1 .. n + 4]` would read wrongly. */
function isIndexRange(node: AstNode): boolean {
  if (ast.isInstances(node)) return true;
  return ast.isIndexRange(node) && !ast.isIndexSum(node.first) && !ast.isIndexSum(node.last);
}

/** The minus of a negative value. */
function isSign({ leaf }: Word): boolean {
  return ast.isNegation(leaf.astNode);
}

/** A part of a code such as `order.left-behind`. */
function isCode({ leaf }: Word): boolean {
  return ast.isAllow(leaf.astNode);
}
