// A text after a change inside one task or procedure: that alone is read, and the tree of the rest is taken along, moved. Where it
// cannot be told that the text as a whole would be read the same, it says so. Knows blocks by their braces, no statement.
import { type AstNode, type CstNode, isAstNode, isCompositeCstNode, isLeafCstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import { Composite, type Concrete, moveConcrete, Root } from "./concrete.ts";
import type { Damage } from "./damage.ts";
import { type Edit, editBetween } from "./edit.ts";
import type { SyntaxProblem } from "./problem.ts";

/** What a text was read as. */
export interface TextRead {
  readonly file: ast.File;
  readonly problems: readonly SyntaxProblem[];
  readonly damage: readonly Damage[];
}

/**
 * What reading the whole text gives; null where that is to be done. Unless it is null, the earlier tree is a part of the later,
 * and no tree of the earlier text any more.
 * @param read reads a text by itself
 */
export function readAgain(
  before: TextRead & { readonly text: string },
  text: string,
  read: (text: string) => TextRead,
): TextRead | null {
  const edit = editBetween(before.text, text);
  const block = blockAround(before.file, edit);
  const place = block?.$cstNode;
  if (block === null || place === undefined || !isSoundOutside(before, place)) return null;
  const by = text.length - before.text.length;
  const end = place.end + by;
  const lineStart = text.lastIndexOf("\n", place.offset) + 1;
  const own = text.slice(lineStart, end);
  if (depthOf(own) > DEEPEST) return null;
  // Behind as many empty lines all that is told of it has its right place, and its right column.
  const [head, tail] = ast.isProcedure(block) ? ["", ""] : [HEAD, "}"];
  const { damage, file: part, problems } = read(head + "\n".repeat(lineStart - head.length) + own + tail);
  const [procedure] = part.items;
  const around = ast.isProcedure(block) ? part : ast.isProcedure(procedure) ? procedure : null;
  const now = onlyOne(around?.items ?? [], block);
  if (now?.$cstNode?.offset !== place.offset || now.$cstNode.end !== end || problems.some(mayReachFurther)) return null;
  return { file: grafted(block, now, text, by), problems, damage };
}

/** What a task may stand in. */
const HEAD = "procedure P {";

/** Blocks that can be read by themselves: a task deeper inside would have other nodes of the concrete tree around it. */
type ReadAlone = ast.Procedure | ast.Task;

function isReadAlone(node: AstNode): node is ReadAlone {
  return ast.isProcedure(node) || (ast.isTask(node) && ast.isProcedure(node.$container));
}

/** The only one, if it is of the same sort. */
function onlyOne(items: readonly AstNode[], like: ReadAlone): AstNode | undefined {
  const [only] = items;
  return items.length === 1 && only?.$type === like.$type ? only : undefined;
}

/** The innermost that was changed between its own braces, and nowhere else. */
function blockAround(file: ast.File, edit: Edit): ReadAlone | null {
  let found: ReadAlone | null = null;
  let inside: readonly AstNode[] = file.items;
  for (;;) {
    const next = inside.find(({ $cstNode: cst }) => cst !== undefined && cst.offset < edit.start && edit.end < cst.end);
    if (next === undefined) return found;
    if (isReadAlone(next) && holds(next, edit)) found = next;
    inside = blocksIn(next);
  }
}

/** What may hold tasks. */
function blocksIn(node: AstNode): readonly AstNode[] {
  const { items = [], otherwise } = node as Partial<ast.When>;
  return otherwise === undefined ? items : [...items, otherwise];
}

function holds({ $cstNode: cst }: ReadAlone, edit: Edit): boolean {
  const content = partsOf(cst as Composite);
  const open = content.find((node) => isBrace(node, "{"));
  const close = content[content.length - 1];
  return isBrace(open, "{") && isBrace(close, "}") && open.end <= edit.start && edit.end <= close.offset;
}

/** Of the rule itself: others may only call it. */
function partsOf({ content }: Composite): readonly CstNode[] {
  const [only] = content;
  return content.length === 1 && isCompositeCstNode(only) ? partsOf(only as Composite) : content;
}

/** One that stands in the text. */
function isBrace(node: CstNode | undefined, brace: string): node is CstNode {
  return isLeafCstNode(node) && node.tokenType.name === brace && node.length > 0;
}

/** What is wrong outside may hang on what stands inside. */
function isSoundOutside({ damage, problems }: TextRead, { end, offset }: CstNode): boolean {
  const isInside = ({ span }: { readonly span: Edit }): boolean => span.start > offset && span.end < end;
  return damage.every(isInside) && problems.every(isInside);
}

/** Whether a text that goes on behind it may be read otherwise for it. */
function mayReachFurther(problem: SyntaxProblem): boolean {
  if (problem.kind === "unclosed") return problem.what !== "string";
  return problem.kind === "unexpected" && /[{}]/.test(problem.found);
}

/** How deep brackets nest in it, at most: what is nested too deep is read otherwise, and depends on what stands around. */
function depthOf(text: string): number {
  let depth = 0;
  let most = 0;
  for (const [bracket] of text.matchAll(/[{}()[\]]/g)) {
    depth += "{([".includes(bracket) ? 1 : -1;
    most = Math.max(most, depth);
  }
  return most;
}

const DEEPEST = 20;

/** The same tree with another node in a place: what stands around it is made anew, what stands behind it is moved. */
function grafted(old: AstNode, now: AstNode, text: string, by: number): ast.File {
  let [from, to] = [old.$cstNode as Concrete, now.$cstNode as Concrete];
  let [was, is] = [old, now];
  for (;;) {
    const outer = from.container as Composite;
    const at = outer.content.indexOf(from);
    for (const behind of outer.content.slice(at + 1)) moveConcrete(behind as Concrete, by);
    const content = outer.content.with(at, to);
    const made = outer instanceof Root ? new Root(text, content) : new Composite(outer.offset, outer.end + by, content);
    made.grammarSource = outer.grammarSource;
    if (outer.own !== undefined) {
      is = withChild(outer.own, was, is);
      was = outer.own;
      made.own = is;
      (is as { $cstNode?: CstNode }).$cstNode = made;
    }
    if (outer instanceof Root) return is as ast.File;
    [from, to] = [outer, made];
  }
}

/** The same node with another child in place of one; it names nothing itself, and all its children are now those of the new one. */
function withChild(node: AstNode, was: AstNode, is: AstNode): AstNode {
  const made = { ...node };
  for (const [key, value] of Object.entries(node)) {
    if (key.startsWith("$")) continue;
    const held: unknown = Array.isArray(value)
      ? value.map((one) => (one === was ? is : one))
      : value === was
        ? is
        : value;
    (made as Record<string, unknown>)[key] = held;
    for (const [at, child] of [held].flat().entries()) {
      if (!isAstNode(child)) continue;
      Object.assign(child, { $container: made, $containerProperty: key });
      if (Array.isArray(held)) Object.assign(child, { $containerIndex: at });
    }
  }
  return made;
}
