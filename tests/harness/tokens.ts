// The tokens of a text and the statement each stands in, for tests that spoil texts one token at a time. Knows the tree
// and no finding.
import { type AstNode, AstUtils, type CstNode, type LeafCstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";

export type Token = LeafCstNode;

export interface Place {
  readonly start: number;
  readonly end: number;
}

/** All tokens that are no comments. */
export function leavesOf(node: CstNode | undefined): Token[] {
  if (node === undefined) return [];
  if ("content" in node) return (node.content as CstNode[]).flatMap(leavesOf);
  return (node as LeafCstNode).hidden ? [] : [node as LeafCstNode];
}

/**
 * The places of the statement a token belongs to: its step or declaration, a line at the head of a procedure or task, or
 * of what holds steps its own words and its braces.
 */
export function statementOf({ astNode }: Token): readonly Place[] {
  const whole =
    AstUtils.getContainerOfType(astNode, ast.isStep) ?? AstUtils.getContainerOfType(astNode, ast.isDeclaration);
  if (whole !== undefined) return [placeOf(whole.$cstNode)];
  const item = itemOf(astNode);
  if (!HOLDERS.has(item.$type)) return [placeOf(item.$cstNode)];
  // The ways of a `when` stand beside each other: the word `otherwise` between them belongs to both.
  const { otherwise } = item as { readonly otherwise?: AstNode };
  const holders = [item, otherwise, ...(item.$containerProperty === "otherwise" ? [item.$container] : [])];
  return leavesOf(item.$cstNode?.container ?? item.$cstNode)
    .filter((leaf) => holders.includes(itemOf(leaf.astNode)))
    .map(placeOf);
}

const HOLDERS = new Set(["Procedure", "Task", "Repeat", "When", "Otherwise", "AnyOrder"]);

/** The item of a file, a procedure or a block that a node is or stands in. */
function itemOf(of: AstNode): AstNode {
  let node = of;
  while (
    node.$containerProperty !== "items" &&
    node.$containerProperty !== "otherwise" &&
    node.$container !== undefined
  )
    node = node.$container;
  return node;
}

function placeOf(node: CstNode | undefined): Place {
  return { start: node?.offset ?? 0, end: node?.end ?? 0 };
}
