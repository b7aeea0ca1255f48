// Langium's grammar from its JSON: the same tree that Langium's own loader makes, which first makes all services of a language. Knows
// nothing of Sprag.
import { type AstNode, type Grammar, isAstNode } from "langium";

/** @param json as the generator writes it: nodes with their `$type`, and references as `{"$ref": "#/rules@3"}` */
export function loadGrammarFromJson(json: string): Grammar {
  const grammar = JSON.parse(json) as Grammar;
  link(grammar, grammar);
  return grammar;
}

type Linked = { -readonly [Key in keyof AstNode]: AstNode[Key] } & Record<string, unknown>;

function link(node: AstNode, root: AstNode): void {
  const linked = node as Linked;
  for (const [property, value] of Object.entries(linked)) {
    if (Array.isArray(value)) {
      for (let index = 0; index < value.length; index++) {
        if (isWrittenReference(value[index])) value[index] = reference(value[index].$ref, root);
        else if (isAstNode(value[index])) linkInto(value[index], root, node, property, index);
      }
    } else if (isWrittenReference(value)) linked[property] = reference(value.$ref, root);
    else if (isAstNode(value)) linkInto(value, root, node, property);
  }
}

function linkInto(node: AstNode, root: AstNode, container: AstNode, property: string, index?: number): void {
  link(node, root);
  Object.assign(node, { $container: container, $containerProperty: property, $containerIndex: index });
}

interface WrittenReference {
  readonly $ref: string;
}

function isWrittenReference(value: unknown): value is WrittenReference {
  return typeof value === "object" && value !== null && "$ref" in value;
}

function reference(path: string, root: AstNode): { readonly $refText: string; readonly ref: AstNode } {
  let at: unknown = root;
  for (const segment of path.slice("#/".length).split("/")) {
    const [property = "", index] = segment.split("@");
    const value = (at as Record<string, unknown>)[property];
    at = index === undefined ? value : (value as readonly unknown[])[Number(index)];
  }
  if (!isAstNode(at)) throw new Error(`Nothing in the grammar is at ${path}`);
  return { $refText: (at as AstNode & { readonly name?: string }).name ?? "", ref: at };
}
