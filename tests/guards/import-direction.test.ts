// Imports run only as the table of layers says (DEVELOPERS.md, "Folders").
import { posix } from "node:path";
import ts from "typescript";
import { expect, test } from "vitest";
import { allFiles, layerOf, type SourceFile } from "./source-files.ts";

/** What each layer may import itself; it may also import what those may. */
const direct: Readonly<Record<string, readonly string[]>> = {
  quantity: [],
  engineering: ["quantity"],
  grammar: [],
  syntax: ["grammar", "quantity"],
  model: ["syntax"],
  analysis: ["model", "engineering"],
  rules: ["analysis"],
  outputs: ["analysis"],
  review: ["analysis"],
  workspace: ["quantity", "engineering", "grammar", "syntax", "model", "analysis", "rules", "outputs", "review"],
  server: ["workspace", "syntax"],
  cli: ["workspace", "server"],
  extension: [],
};

/** The one file of a layer that others, named here, may use for its types. */
const typesOnly = [
  { file: "language/rules/finding.ts", by: ["outputs", "review"] },
  { file: "language/server/protocol.ts", by: ["extension"] },
];

/** Packages that only the layers beside them may import. */
const packages: readonly { readonly name: RegExp; readonly only: readonly string[] }[] = [
  { name: /^(?:langium\/lsp|vscode-languageserver)(?:$|\/)/, only: ["server"] },
  { name: /^vscode(?:$|-languageclient(?:$|\/))/, only: ["extension"] },
  // The extension's scripts read the grammar; what ships does not.
  { name: /^langium(?:$|\/(?!lsp))/, only: ["grammar", "syntax", "model", "workspace", "server", "extension"] },
  { name: /^(?:@chevrotain\/.*|chevrotain)$/, only: ["quantity", "grammar", "syntax"] },
  { name: /^(?:commander|picocolors|tinyglobby|chokidar|tinypool)$/, only: ["cli"] },
  // The command leaves out what the server leaves out.
  { name: /^ignore$/, only: ["server"] },
  { name: /^hono(?:$|\/)/, only: ["outputs", "review"] },
  { name: /^(?:pdfkit|docx|fflate|write-excel-file|csv-stringify|@dagrejs)(?:$|\/)/, only: ["outputs"] },
  { name: /^diff$/, only: ["review"] },
];

interface Import {
  readonly from: string;
  readonly typeOnly: boolean;
}

test("imports run only as the table says", () => {
  expect(allFiles.filter(({ path }) => layerOf(path) !== undefined).length).toBeGreaterThan(0);
  expect(allFiles.flatMap(complaints)).toEqual([]);
});

test.each([
  ["a layer below reaching up", "language/quantity/a.ts", 'import { x } from "#model/x.ts";'],
  ["a layer below reaching up by a relative path", "language/quantity/a.ts", 'import { x } from "../model/x.ts";'],
  ["an export from a layer above", "language/engineering/a.ts", 'export * from "#analysis/x.ts";'],
  ["an import at run time", "language/model/a.ts", 'const x = await import("#rules/index.ts");'],
  ["the value of another layer's types", "language/outputs/a.ts", 'import { f } from "#rules/finding.ts";'],
  ["a rule from an output", "language/outputs/a.ts", 'import type { Rule } from "#rules/rule.ts";'],
  ["the editor's protocol in the core", "language/workspace/a.ts", 'import { C } from "vscode-languageserver/node";'],
  ["LSP services outside the server", "language/syntax/a.ts", 'import { L } from "langium/lsp";'],
  ["tree nodes in a rule", "language/rules/order/a.ts", 'import { AstNode } from "langium";'],
  ["the façade in the extension", "extension/client.ts", 'import type { S } from "../language/workspace/index.ts";'],
  ["a layer the table does not know", "language/stuff/a.ts", 'import { x } from "#quantity/x.ts";'],
  ["scripts that build, in the product", "language/rules/a.ts", 'import { x } from "../../.scripts/x.mjs";'],
  ["tests in the product", "language/rules/a.ts", 'import { x } from "#harness/x.ts";'],
])("says so: %s", (_title, path, text) => {
  expect(complaints({ path, text })).toHaveLength(1);
});

test.each([
  ["a layer it names", "language/engineering/a.ts", 'import { x } from "#quantity/x.ts";'],
  ["a layer that one may import", "language/rules/rule.ts", 'import type { P } from "#syntax/problem.ts";'],
  ["its own folder", "language/model/a.ts", 'import { x } from "./b.ts";'],
  ["what builds share", "extension/build.mjs", 'import { x } from "../.scripts/x.mjs";'],
  ["types of the findings", "language/review/a.ts", 'import type { Finding } from "#rules/finding.ts";'],
  ["types by name of the protocol", "extension/a.ts", 'import { type P } from "../language/server/protocol.ts";'],
  ["words in a text that look like an import", "language/model/a.ts", "const x = 'import y from \"#rules/z.ts\"';"],
])("is silent: %s", (_title, path, text) => {
  expect(complaints({ path, text })).toEqual([]);
});

function complaints({ path, text }: SourceFile): string[] {
  const layer = layerOf(path);
  if (layer === undefined) return [];
  if (direct[layer] === undefined) return [`${path}: no layer is called ${layer}`];
  return importsOf(path, text)
    .filter((found) => !isAllowed(layer, path, found))
    .map((found) => `${path}: ${layer}/ must not import ${found.from}${found.typeOnly ? "" : " (as a value)"}`);
}

function isAllowed(layer: string, path: string, { from, typeOnly }: Import): boolean {
  const target = targetOf(path, from);
  if (target === undefined) return packages.every(({ name, only }) => !name.test(from) || only.includes(layer));
  const targetLayer = layerOf(target);
  if (targetLayer === layer) return true;
  // Scripts that build may share what they do.
  if (targetLayer === undefined && path.endsWith(".mjs") && target.startsWith(".scripts/")) return true;
  if (targetLayer === undefined) return target.startsWith("language/") && target.endsWith("package.json");
  return (
    reach(layer).has(targetLayer) || typesOnly.some(({ file, by }) => typeOnly && file === target && by.includes(layer))
  );
}

/** The file an import means, for imports inside the repository. */
function targetOf(path: string, from: string): string | undefined {
  if (from.startsWith("#harness/")) return `tests/harness/${from.slice("#harness/".length)}`;
  if (from.startsWith("#")) return `language/${from.slice(1)}`;
  return from.startsWith(".") ? posix.join(posix.dirname(path), from) : undefined;
}

function reach(layer: string): Set<string> {
  const below = direct[layer] ?? [];
  return new Set(below.flatMap((name) => [name, ...reach(name)]));
}

function importsOf(path: string, text: string): Import[] {
  const found: Import[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push({ from: node.moduleSpecifier.text, typeOnly: bringsTypesOnly(node.importClause) });
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push({ from: node.moduleSpecifier.text, typeOnly: node.isTypeOnly });
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [specifier] = node.arguments;
      found.push({ from: specifier && ts.isStringLiteral(specifier) ? specifier.text : "(computed)", typeOnly: false });
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      const { literal } = node.argument;
      if (ts.isStringLiteral(literal)) found.push({ from: literal.text, typeOnly: true });
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.Latest));
  return found;
}

function bringsTypesOnly(clause: ts.ImportClause | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.isTypeOnly) return true;
  const names = clause.namedBindings;
  return (
    clause.name === undefined &&
    names !== undefined &&
    ts.isNamedImports(names) &&
    names.elements.every((name) => name.isTypeOnly)
  );
}
