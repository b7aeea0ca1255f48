// Everything but cli/, server/ and extension/ is pure: no Node, clock, randomness, I/O, and nothing of the machine's
// own language settings. Only cli/ reads the arguments and writes standard output.
import ts from "typescript";
import { expect, test } from "vitest";
import { allFiles, layerOf, type SourceFile } from "./source-files.ts";

const impure = new Set(["cli", "server", "extension"]);

/** `object.member` reads that reach outside; `*` is any member. */
const reaching = [
  "process.*",
  "console.*",
  "performance.*",
  "crypto.*",
  "navigator.*",
  "localStorage.*",
  "Date.now",
  "Math.random",
  "globalThis.*",
];
const calls = new Set(["fetch", "require", "setInterval", "Date"]);
/** Methods whose answer depends on the language the machine is set to. */
const localeMethods = new Set(["localeCompare", "toLocaleString", "toLocaleUpperCase", "toLocaleLowerCase"]);
const inServer = ["process.argv", "process.stdout", "console.*"];

test("the core reaches for nothing outside itself", () => {
  expect(allFiles.filter(({ path }) => isPure(path)).length).toBeGreaterThan(0);
  expect(allFiles.flatMap(complaints)).toEqual([]);
});

test.each([
  ["a Node built-in", 'import { readFileSync } from "node:fs";'],
  ["a Node built-in at run time", 'const fs = await import("node:fs");'],
  ["the clock", "const now = Date.now();"],
  ["the clock as an object", "const now = new Date();"],
  ["the clock as a text", "const now = Date();"],
  ["a finer clock", "const now = performance.now();"],
  ["randomness", "const x = Math.random();"],
  ["the environment", "const home = process.env.HOME;"],
  ["the network", 'await fetch("x");'],
  ["the console", 'console.log("x");'],
  ["a detour to the console", 'globalThis.console.log("x");'],
  ["an order that depends on the machine's language", "names.sort((a, b) => a.localeCompare(b));"],
  ["a format that depends on the machine's language", "new Intl.NumberFormat();"],
])("says so: %s", (_title, text) => {
  expect(complaints({ path: "language/model/a.ts", text })).toHaveLength(1);
});

test.each([
  ["a date that is given", "const day = new Date(Date.UTC(2026, 4, 4));"],
  ["a word in a text", 'const x = "process.env, Date.now()"; // console.log'],
  ["a property of that name", "const x = step.process.name;"],
  ["a language that is named", 'new Intl.Segmenter("en");'],
])("is silent: %s", (_title, text) => {
  expect(complaints({ path: "language/model/a.ts", text })).toEqual([]);
});

test("the server leaves arguments and standard output alone, the command may use them", () => {
  const text = 'process.stdout.write(process.argv.join(" "));';
  expect(complaints({ path: "language/server/a.ts", text })).toHaveLength(2);
  expect(complaints({ path: "language/cli/a.ts", text })).toEqual([]);
});

function isPure(path: string): boolean {
  const layer = layerOf(path);
  return layer !== undefined && !impure.has(layer);
}

function complaints({ path, text }: SourceFile): string[] {
  const server = layerOf(path) === "server";
  if (!isPure(path) && !server) return [];
  const found: string[] = [];
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest);
  const visit = (node: ts.Node): void => {
    const complaint = server ? reachOf(node, inServer) : outside(node);
    if (complaint === undefined) ts.forEachChild(node, visit);
    else found.push(`${path}:${source.getLineAndCharacterOfPosition(node.pos).line + 1}: ${complaint}`);
  };
  visit(source);
  return found;
}

function outside(node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node) && node.text.startsWith("node:")) return node.text;
  if (ts.isNewExpression(node) && node.arguments?.length !== undefined && node.arguments.length === 0) {
    if (ts.isIdentifier(node.expression) && node.expression.text === "Date") return "new Date()";
    if (reachOf(node.expression, ["Intl.*"]) !== undefined) return "Intl without a language";
  }
  if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && calls.has(node.expression.text)) {
    return `${node.expression.text}()`;
  }
  if (ts.isPropertyAccessExpression(node) && localeMethods.has(node.name.text)) return node.name.text;
  return reachOf(node, reaching);
}

function reachOf(node: ts.Node, patterns: readonly string[]): string | undefined {
  if (!ts.isPropertyAccessExpression(node) || !ts.isIdentifier(node.expression)) return undefined;
  const read = `${node.expression.text}.${node.name.text}`;
  return patterns.includes(read) || patterns.includes(`${node.expression.text}.*`) ? read : undefined;
}
