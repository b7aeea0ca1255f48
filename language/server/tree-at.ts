// What stands at an offset of a text: the token, the smallest statement, the name and what it stands for. The only file of the
// server that looks at tokens of the tree.
import { type AstNode, type CstNode, CstUtils, isCompositeCstNode, isLeafCstNode, type LeafCstNode } from "langium";
import type { ParsedFile } from "#syntax/parse.ts";
import { type Declaring, meaningOf } from "./name-meaning.ts";
import { siteAt } from "./name-sites.ts";

/** The token that holds the offset, or that ends at it where none begins there. */
export function tokenAt(parsed: ParsedFile, offset: number): LeafCstNode | undefined {
  const root = parsed.file.$cstNode;
  if (root === undefined) return undefined;
  const found = CstUtils.findLeafNodeAtOffset(root, offset);
  return found !== undefined && !isBlank(found) ? found : CstUtils.findLeafNodeBeforeOffset(root, offset);
}

/** Every token in the order of the text, comments among them. */
export function* tokensOf(parsed: ParsedFile): Generator<LeafCstNode> {
  const root = parsed.file.$cstNode;
  const waiting: CstNode[] = root === undefined ? [] : [root];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (isLeafCstNode(next)) yield next;
    else if (isCompositeCstNode(next))
      for (let at = next.content.length - 1; at >= 0; at--) waiting.push(next.content[at] as CstNode);
  }
}

/** The innermost node of the tree at an offset: a literal, a target, a line, a step … */
export function nodeAt(parsed: ParsedFile, offset: number): AstNode {
  return tokenAt(parsed, offset)?.astNode ?? parsed.file;
}

/** From the node outward to the file, the node first. */
export function* outward(node: AstNode): Generator<AstNode> {
  for (let at: AstNode | undefined = node; at !== undefined; at = at.$container) yield at;
}

/** The first node outward for which the guard holds. */
export function enclosing<Node extends AstNode>(from: AstNode, is: (node: AstNode) => node is Node): Node | undefined {
  for (const node of outward(from)) if (is(node)) return node;
  return undefined;
}

/** A name in the text and the node that declares it; `declared` is missing where nothing bears the name. */
export interface NameAt {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  readonly declared: Declaring | undefined;
  /** Whether the name stands in its own declaration. */
  readonly isDeclaration: boolean;
}

/** The name at an offset, or the one that ends there: one that is used, or one that is declared. */
export function nameAt(parsed: ParsedFile, offset: number): NameAt | null {
  const site = siteAt(parsed, offset);
  if (site === undefined) return null;
  const { name, start, end, use } = site;
  return { name, start, end, declared: meaningOf(site), isDeclaration: use === "declares" };
}

function isBlank(leaf: LeafCstNode): boolean {
  return leaf.hidden && leaf.text.trim() === "";
}
