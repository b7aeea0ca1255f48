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
/** Runs in a browser, in the checklist itself: it has a clock and keeps what is filled in, and loads nothing. */
const pageFolder = "language/outputs/checklist/page/";
const inPage = ["console.*", "navigator.*", "Math.random", "crypto.*", "document.write", "document.cookie"];
const callsInPage = new Set([
  "fetch",
  "eval",
  "XMLHttpRequest",
  "WebSocket",
  "EventSource",
  "Function",
  "importScripts",
]);
/** Text would become markup. */
const markupMembers = new Set(["innerHTML", "outerHTML", "insertAdjacentHTML", "srcdoc"]);

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

test.each([
  ["the network", 'await fetch("x");'],
  ["the network another way", 'new WebSocket("wss://x");'],
  ["code from a text", 'eval("x");'],
  ["markup from a text", "place.innerHTML = text;"],
  ["a module at run time", 'await import("x");'],
])("says so in the page: %s", (_title, text) => {
  expect(complaints({ path: `${pageFolder}a.ts`, text })).toHaveLength(1);
});

test("the page may keep things and know the time", () => {
  const text = 'localStorage.setItem("x", new Date().toISOString());';
  expect(complaints({ path: `${pageFolder}a.ts`, text })).toEqual([]);
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
    const complaint = server
      ? reachOf(node, inServer)
      : path.startsWith(pageFolder)
        ? outsidePage(node)
        : outside(node);
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

function outsidePage(node: ts.Node): string | undefined {
  if ((ts.isCallExpression(node) || ts.isNewExpression(node)) && ts.isIdentifier(node.expression)) {
    if (callsInPage.has(node.expression.text)) return node.expression.text;
  }
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) return "import()";
  if (ts.isPropertyAccessExpression(node) && markupMembers.has(node.name.text)) return node.name.text;
  return reachOf(node, inPage);
}

function reachOf(node: ts.Node, patterns: readonly string[]): string | undefined {
  if (!ts.isPropertyAccessExpression(node) || !ts.isIdentifier(node.expression)) return undefined;
  const read = `${node.expression.text}.${node.name.text}`;
  return patterns.includes(read) || patterns.includes(`${node.expression.text}.*`) ? read : undefined;
}
