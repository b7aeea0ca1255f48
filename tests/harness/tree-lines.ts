// A tree as lines, for comparing trees.
import { type AstNode, type CstNode, isCompositeCstNode, isReference } from "langium";

/** All that a tree holds, one line for each node: of the abstract one its properties, of the concrete one its places. */
export function treeLines(root: AstNode): readonly string[] {
  const nodes: AstNode[] = [root];
  const numbers = new Map<unknown, number>();
  const lines: string[] = [];
  for (const node of nodes) {
    numbers.set(node, numbers.size);
    const { $container, $containerIndex, $containerProperty, $cstNode, $type } = node;
    const said = Object.entries(node).filter(([name, value]) => !name.startsWith("$") && value !== undefined);
    const properties = said
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, value]) => `${name}=${shown(value, nodes)}`);
    const place = `in ${numbers.get($container)} ${$containerProperty} ${$containerIndex}`;
    lines.push(`${$type} ${properties} ${place} ${$cstNode?.astNode === node}`);
  }
  const concrete: CstNode[] = root.$cstNode === undefined ? [] : [root.$cstNode];
  for (const node of concrete) {
    numbers.set(node, numbers.size);
    const { grammarSource, hidden, length, offset, range } = node;
    const { end, start } = range;
    const place = [start.line, start.character, end.line, end.character];
    const source = `${grammarSource?.$type} ${sourceText(grammarSource)}`;
    lines.push(`${offset} ${length} ${place} ${hidden} ${source} in ${numbers.get(node.container)}`);
    if (isCompositeCstNode(node)) concrete.push(...node.content);
  }
  return lines;
}

function sourceText(source: CstNode["grammarSource"]): string {
  if (source === undefined) return "";
  const known = texts.get(source) ?? source.$cstNode?.text ?? "";
  texts.set(source, known);
  return known;
}

const texts = new WeakMap<object, string>();

function shown(value: unknown, nodes: AstNode[]): string {
  if (Array.isArray(value)) return `[${value.map((one) => shown(one, nodes))}]`;
  if (isReference(value)) return `ref ${value.$refText} at ${value.$refNode?.offset} ${value.$refNode?.length}`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  nodes.push(value as AstNode);
  return `node ${nodes.length - 1}`;
}
