// Every word the extension shows is there in both languages: what the manifest names, and what the client says.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { expect, test } from "vitest";

type Words = Readonly<Record<string, string>>;

const extension = join(import.meta.dirname, "..", "..", "extension");
const words = (path: string): Words => JSON.parse(readFileSync(join(extension, path), "utf8")) as Words;
const manifest = readFileSync(join(extension, "package.json"), "utf8");
const client = readdirSync(join(extension, "client"), { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts"))
  .map((name) => readFileSync(join(extension, "client", name), "utf8"));

test.each([["package.nls.json"], ["package.nls.de.json"]])("the manifest's words in %s", (file) => {
  const named = [...manifest.matchAll(/"%([\w.]+)%"/g)].map(([, key]) => key as string);
  expect(named.length).toBeGreaterThan(10);
  expect(Object.keys(words(file)).sort()).toEqual(named.sort());
});

test.each([["l10n/bundle.l10n.json"], ["l10n/bundle.l10n.de.json"]])("what the client says in %s", (file) => {
  expect(Object.keys(words(file)).sort()).toEqual([...new Set(client.flatMap(saidIn))].sort());
});

test.each([
  ["package.nls.json", "package.nls.de.json"],
  ["l10n/bundle.l10n.json", "l10n/bundle.l10n.de.json"],
])("the words of %s and %s name the same settings, codes and figures", (english, german) => {
  const marks = (text: string): string[] => (text.match(/\{\d\}|`[^`]+`|\b[a-z]+\.[a-z]+\b/g) ?? []).sort();
  const there = words(german);
  const different = Object.entries(words(english)).filter(
    ([key, text]) => JSON.stringify(marks(text)) !== JSON.stringify(marks(there[key] ?? "")),
  );
  expect(different).toEqual([]);
});

test("the German words are not the English ones", () => {
  const english = words("l10n/bundle.l10n.json");
  const same = Object.entries(words("l10n/bundle.l10n.de.json")).filter(([key, text]) => english[key] === text);
  expect(same).toEqual([]);
});

test("no sentence is shown that is not in the bundles", () => {
  expect(client.flatMap(shownWithoutKey)).toEqual([]);
  expect(shownWithoutKey('window.showErrorMessage("It broke.");')).toEqual(["It broke."]);
});

/** The keys that a text hands to `l10n.t`; a key that is no plain text is one that nobody can translate. */
function saidIn(text: string): string[] {
  return calls(text)
    .filter((call) => call.expression.getText() === "l10n.t")
    .map(({ arguments: [key] }) => (key !== undefined && ts.isStringLiteral(key) ? key.text : "(computed)"));
}

function shownWithoutKey(text: string): string[] {
  return calls(text)
    .filter((call) => /^window\.show|^item\./.test(call.expression.getText()))
    .flatMap(({ arguments: given }) => given.filter(ts.isStringLiteral).map((literal) => literal.text));
}

function calls(text: string): ts.CallExpression[] {
  const found: ts.CallExpression[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) found.push(node);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile("client.ts", text, ts.ScriptTarget.Latest, true));
  return found;
}
