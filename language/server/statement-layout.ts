// The layout of one statement, without reading the file it stands in: as far in as its blocks say, broken as its width asks.
// For what is done at each keystroke, and for statements in a file that has faults elsewhere.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { formatEdits, type TextEdit } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";
import { outward } from "./tree-at.ts";

/** The smallest statement between steps, or declaration at the top of the file, that holds the node. */
export function statementOf(node: AstNode): AstNode | undefined {
  for (const one of outward(node)) if (standsBetweenSteps(one) || ast.isFile(one.$container)) return one;
  return undefined;
}

/** How many blocks a statement stands in. */
export function depthOf(statement: AstNode): number {
  let depth = 0;
  // `otherwise` is no block inside the block it belongs to.
  for (const one of outward(statement))
    if (one !== statement && !ast.isFile(one) && one.$containerProperty !== "otherwise") depth++;
  return depth;
}

/**
 * The formatter's edits of a statement that begins at `start` in a text; none where it cannot be read.
 * @param depth how many blocks it stands in
 */
export function statementEdits(
  text: string,
  path: string,
  { start, end }: { readonly start: number; readonly end: number },
  depth: number,
): readonly TextEdit[] {
  const around = depth === 0 ? "" : `procedure P {\n${"task {\n".repeat(depth - 1)}`;
  const own = parseText(`${around}${text.slice(start, end)}\n${"}\n".repeat(depth)}`, path);
  const [first, last] = [around.length, around.length + end - start];
  return formatEdits(own).flatMap(({ span, newText }) =>
    span.start < first || span.end > last
      ? []
      : [{ span: { path, start: span.start - first + start, end: span.end - first + start }, newText }],
  );
}

function standsBetweenSteps({ $container: holder, $containerProperty: property }: AstNode): boolean {
  if (property !== "items" || holder === undefined) return false;
  if (ast.isTask(holder) || ast.isProcedure(holder)) return true;
  const isBlock = ast.isRepeat(holder) || ast.isWhen(holder) || ast.isAnyOrder(holder) || ast.isOtherwise(holder);
  return isBlock && ![...outward(holder)].some(ast.isStep);
}
