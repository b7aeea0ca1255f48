// The content of a procedure's text as YAML, and a JSON Schema that every node of it has to fit: what somebody would have who kept
// procedures as data and checked their form only.
import { Ajv, type ValidateFunction } from "ajv";
import { type AstNode, isAstNode, isReference } from "langium";
import { parse, stringify } from "yaml";

/** A node of the tree: its kind, and what is written in it. */
interface Content {
  readonly kind: string;
  readonly [property: string]: unknown;
}

/** What holds statements; what stands in a statement is kept as it is written there, as a person would write it. */
const LISTS: ReadonlySet<string> = new Set(["items", "lines", "properties", "fails", "arms", "otherwise"]);

export function yamlOf(root: AstNode): string {
  return stringify(contentOf(root));
}

function contentOf(node: AstNode): Content {
  const properties = Object.entries(node).flatMap(([name, value]) => {
    const isWritten = !name.startsWith("$") && value !== undefined && value !== false && value !== null;
    return isWritten ? [[name, LISTS.has(name) ? statements(value) : written(value)]] : [];
  });
  return Object.fromEntries([["kind", node.$type], ...properties]) as Content;
}

function statements(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(statements);
  return isAstNode(value) ? contentOf(value) : value;
}

function written(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(written);
  if (isReference(value)) return value.$refText;
  return isAstNode(value) ? (value.$cstNode?.text ?? "") : value;
}

/** Made ready once; reads a text and tells whether it fits. */
export function yamlCheck(example: string): (text: string) => boolean {
  const kinds = new Map<string, Content[]>();
  gather(parse(example), kinds);
  const definitions = Object.fromEntries([...kinds].map(([kind, nodes]) => [kind, definitionOf(kind, nodes)]));
  const ajv = new Ajv({ discriminator: true, strict: true });
  const validate: ValidateFunction = ajv.compile({
    $defs: definitions,
    ...referenceTo((parse(example) as Content).kind),
  });
  return (text) => validate(parse(text));
}

function gather(value: unknown, kinds: Map<string, Content[]>): void {
  if (Array.isArray(value)) for (const one of value) gather(one, kinds);
  if (!isContent(value)) return;
  kinds.set(value.kind, [...(kinds.get(value.kind) ?? []), value]);
  for (const one of Object.values(value)) gather(one, kinds);
}

function isContent(value: unknown): value is Content {
  return typeof value === "object" && value !== null && "kind" in value;
}

/** All that nodes of one kind have, and what all of them have; nothing else. */
function definitionOf(kind: string, nodes: readonly Content[]): object {
  const names = [...new Set(nodes.flatMap(Object.keys))].filter((name) => name !== "kind");
  const values = (name: string): readonly unknown[] => nodes.flatMap((node) => (name in node ? [node[name]] : []));
  return {
    type: "object",
    properties: {
      kind: { const: kind },
      ...Object.fromEntries(names.map((name) => [name, schemaOf(values(name))])),
    },
    required: ["kind", ...names.filter((name) => nodes.every((node) => name in node))],
    additionalProperties: false,
  };
}

function schemaOf(values: readonly unknown[]): object {
  if (values.some(Array.isArray)) return { type: "array", items: schemaOf(values.flat()) };
  if (!values.some(isContent)) return { type: [...new Set(values.map((value) => typeof value))] };
  const kinds = [...new Set(values.filter(isContent).map(({ kind }) => kind))];
  const [only] = kinds;
  if (kinds.length === 1 && only !== undefined) return referenceTo(only);
  return {
    type: "object",
    properties: { kind: { type: "string" } },
    required: ["kind"],
    discriminator: { propertyName: "kind" },
    oneOf: kinds.map(referenceTo),
  };
}

function referenceTo(kind: string): { readonly $ref: string } {
  return { $ref: `#/$defs/${kind}` };
}
