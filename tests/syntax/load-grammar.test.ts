// The grammar is loaded as Langium's own loader loads it.
import { readFileSync } from "node:fs";
import { type AstNode, isAstNode, isReference, loadGrammarFromJson as langiumsLoader } from "langium";
import { expect, test } from "vitest";
import { loadGrammarFromJson } from "#grammar/load-grammar.ts";

test("every node, property and reference of the grammar is as Langium's loader gives it", () => {
  const file = readFileSync(new URL("../../language/grammar/generated/grammar.ts", import.meta.url), "utf8");
  const [, written = ""] = /loadGrammarFromJson\('(.*)'\)/.exec(file) ?? [];
  const json = JSON.parse(`"${written.replaceAll("\\'", "'").replaceAll('"', '\\"')}"`);
  const [ours, theirs] = [told(loadGrammarFromJson(json)), told(langiumsLoader(json))];
  expect(ours.length).toBeGreaterThan(2_000);
  expect(ours).toEqual(theirs);
});

/** One line for each node, with its place, and what stands in each property. */
function told(root: AstNode): readonly string[] {
  const nodes: AstNode[] = [root];
  for (const node of nodes) nodes.push(...Object.values(contentOf(node)).flat().filter(isAstNode));
  const numbers = new Map(nodes.map((node, number) => [node, number]));
  const shown = (value: unknown): string => {
    if (Array.isArray(value)) return `[${value.map(shown)}]`;
    if (isReference(value)) return `ref ${value.$refText} ${numbers.get(value.ref as AstNode)}`;
    return isAstNode(value) ? `node ${numbers.get(value)}` : JSON.stringify(value);
  };
  return nodes.map((node) => {
    const { $container, $containerIndex, $containerProperty, $type } = node;
    const content = Object.entries(contentOf(node)).map(([name, value]) => `${name}=${shown(value)}`);
    const container = $container === undefined ? "none" : numbers.get($container);
    return `${$type} ${content.join(" ")} in ${container} ${$containerProperty} ${$containerIndex}`;
  });
}

function contentOf(node: AstNode): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(node).filter(([name]) => !name.startsWith("$")));
}
