// Every test runs and asserts something: none is skipped, marked as a plan or run alone, and none is without an expectation.
import ts from "typescript";
import { expect, test } from "vitest";
import { allFiles, type SourceFile } from "./source-files.ts";

/** Ways to leave a test out. */
const leavingOut = new Set(["skip", "only", "todo", "skipIf", "runIf", "fails"]);
const testNames = new Set(["test", "it", "describe", "suite"]);

test("no test is left out or asserts nothing", () => {
  const tests = allFiles.filter(isTest);
  expect(tests.length).toBeGreaterThan(0);
  expect(tests.flatMap(complaints)).toEqual([]);
});

// Put together from their words, so that a plain search for tests left out does not find these.
test.each([
  ["a test left out", ["test", "skip"], "('a', () => { expect(1).toBe(1); });"],
  ["a test run alone", ["it", "only"], "('a', () => { expect(1).toBe(1); });"],
  ["a plan for a test", ["test", "todo"], "('a');"],
  ["a group left out", ["describe", "skip"], "('a', () => {});"],
])("says so: %s", (_title, words, rest) => {
  expect(complaints({ path: "tests/a.test.ts", text: words.join(".") + rest })).toHaveLength(1);
});

test.each([
  ["a test that leaves itself out", "test('a', (context) => { context.skip(); expect(1).toBe(1); });"],
  ["the same by its own name", "test('a', ({ skip }) => { skip(); expect(1).toBe(1); });"],
  ["a test left out on some machines", "test.skipIf(true)('a', () => { expect(1).toBe(1); });"],
  ["a test left out by another name", "xit('a', () => { expect(1).toBe(1); });"],
  ["a test without an expectation", "test('a', () => { run(); });"],
  ["a test whose helper expects nothing", "const run = () => 1;\ntest('a', () => { run(); });"],
  ["a table of tests without an expectation", "test.each([1])('a', () => { run(); });"],
])("says so: %s", (_title, text) => {
  expect(complaints({ path: "tests/a.test.ts", text })).toHaveLength(1);
});

test.each([
  ["an expectation", "test('a', () => { expect(1).toBe(1); });"],
  ["a property", "test('a', () => { fc.assert(fc.property(fc.nat(), (n) => n >= 0)); });"],
  ["a helper that expects", "function same(a) { expect(a).toBe(1); }\ntest('a', () => same(1));"],
  ["a helper of a helper", "const b = (x) => expect(x);\nconst a = (x) => b(x);\ntest('a', () => { a(1); });"],
  ["the harness", 'import { finds } from "#harness/marks.ts";\ntest("a", () => finds("x"));'],
  ["a helper handed over by name", "function same() { expect(1).toBe(1); }\ntest('a', same);"],
])("is silent: %s", (_title, text) => {
  expect(complaints({ path: "tests/a.test.ts", text })).toEqual([]);
});

function isTest({ path }: SourceFile): boolean {
  return /\.test\.(?:ts|mjs|js)$/.test(path);
}

function complaints({ path, text }: SourceFile): string[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const asserting = assertingNames(source);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) {
      const complaint = complaintAbout(node, asserting);
      if (complaint !== undefined) {
        found.push(`${path}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}: ${complaint}`);
        return;
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function complaintAbout(call: ts.CallExpression, asserting: ReadonlySet<string>): string | undefined {
  const words = calleeWords(call.expression);
  const [first] = words;
  if (first === undefined) return undefined;
  if (/^x(?:it|test|describe)$/.test(first)) return "a test left out";
  if (!testNames.has(first) && words[words.length - 1] === "skip") return "a test that leaves itself out";
  if (!testNames.has(first)) return undefined;
  const left = words.find((word) => leavingOut.has(word));
  if (left !== undefined) return `a test marked ${left}`;
  if (first !== "test" && first !== "it") return undefined;
  // A number after it is a time limit.
  const body = call.arguments.filter((argument) => !ts.isNumericLiteral(argument)).at(-1);
  const isTheTest = call.arguments.length >= 2 && body !== undefined;
  return isTheTest && !mentions(body, asserting) ? "a test without an expectation" : undefined;
}

/** `test.each(table)` called with a title gives `test`, `each`. */
function calleeWords(callee: ts.Expression): string[] {
  if (ts.isIdentifier(callee)) return [callee.text];
  if (ts.isPropertyAccessExpression(callee)) return [...calleeWords(callee.expression), callee.name.text];
  if (ts.isCallExpression(callee)) return calleeWords(callee.expression);
  return ts.isTaggedTemplateExpression(callee) ? calleeWords(callee.tag) : [];
}

/** `expect`, `assert`, what the harness gives, and functions of the file that call one of these, however far down. */
function assertingNames(source: ts.SourceFile): Set<string> {
  const names = new Set(["expect", "assert", "expectTypeOf"]);
  const functions: { name: string; body: ts.Node }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && /^["']#harness\//.test(node.moduleSpecifier.getText())) {
      const bindings = node.importClause?.namedBindings;
      if (bindings && ts.isNamedImports(bindings)) for (const { name } of bindings.elements) names.add(name.text);
    }
    if (ts.isFunctionDeclaration(node) && node.name && node.body)
      functions.push({ name: node.name.text, body: node.body });
    if (
      ts.isVariableDeclaration(node) &&
      ts.isIdentifier(node.name) &&
      node.initializer &&
      isFunction(node.initializer)
    ) {
      functions.push({ name: node.name.text, body: node.initializer });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  for (let before = -1; before !== names.size; ) {
    before = names.size;
    for (const { name, body } of functions) if (mentions(body, names)) names.add(name);
  }
  return names;
}

function isFunction(node: ts.Node): boolean {
  return ts.isArrowFunction(node) || ts.isFunctionExpression(node);
}

function mentions(node: ts.Node, names: ReadonlySet<string>): boolean {
  if (ts.isIdentifier(node) && names.has(node.text)) return true;
  return ts.forEachChild(node, (child) => mentions(child, names) || undefined) ?? false;
}
