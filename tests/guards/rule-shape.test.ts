// One rule, one file: `rules/<family>/<name>.ts` exports the one rule `<family>.<name>` with its page, stands in the
// one list, and knows no other rule and no tree. What the examples do is shown in tests/rules.

import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { allFiles, root, type SourceFile } from "./source-files.ts";

const ruleFile = /^language\/rules\/([a-z]+)\/([a-z-]+)\.ts$/;
const families = new Set(["syntax", "names", "units", "limits", "order", "flow", "safety", "trace", "wording"]);
/** What a rule may import: the shape, what a finding is, wording made for all rules, and the plain data of lower layers. */
const forbiddenImport =
  /from\s+["'](?:#grammar\/|#syntax\/(?!span\.ts|problem\.ts)|langium|chevrotain|\.\/|\.\.\/(?!rule\.ts|finding\.ts|put-in\.ts|(?:hazard-|slip-|table-|crib-)?wording\.ts))[^"']*/;

const rules = allFiles.filter(({ path }) => ruleFile.test(path));
const list = allFiles.find(({ path }) => path === "language/rules/index.ts");

test("every rule stands in one file of its own and in the list", () => {
  expect(rules.length).toBeGreaterThan(0);
  expect(list).toBeDefined();
  expect(rules.flatMap((file) => shapeComplaints(file, list?.text ?? ""))).toEqual([]);
});

test("every rule has a page with two examples, and text a person can use", async () => {
  const found = await Promise.all(rules.map(async (file) => ({ file, exports: await load(file) })));
  expect(found.flatMap(({ file, exports }) => pageComplaints(file.path, exports))).toEqual([]);
});

const sound = { finds: "It finds.", why: "It matters.", fails: "part A {}", mended: 'part A "a" {}' };
const soundText = '// Job.\nexport const enclosed = rule({ code: "order.enclosed" });\n';
const soundList = 'import { enclosed } from "./order/enclosed.ts";\nimport { x } from "./orders/enclosed.ts";';

test.each([
  ["another code than its place", soundText.replace("order.enclosed", "order.closed"), soundList],
  ["two rules in a file", `${soundText}export const other = rule({ code: "order.other" });\n`, soundList],
  ["no rule in a file", "// Job.\nexport const limit = 4;\n", soundList],
  ["a rule missing from the list", soundText, 'import { retained } from "./order/retained.ts";'],
  ["a rule that knows another", `${soundText}import { x } from "./retained.ts";`, soundList],
  ["a rule that knows one of another family", `${soundText}import { x } from "../flow/endless.ts";`, soundList],
  ["a rule that knows the tree", `${soundText}import type { Step } from "#grammar/generated/ast.ts";`, soundList],
])("says so: %s", (_title, text, index) => {
  expect(shapeComplaints({ path: "language/rules/order/enclosed.ts", text }, index)).toHaveLength(1);
});

test("says so: a family that is not one", () => {
  const text = soundText.replace("order.enclosed", "orders.enclosed");
  expect(shapeComplaints({ path: "language/rules/orders/enclosed.ts", text }, soundList)).toHaveLength(1);
});

test("is silent: a sound rule", () => {
  const text = `${soundText}import { rule } from "../rule.ts";\nimport type { Span } from "#syntax/span.ts";`;
  expect(shapeComplaints({ path: "language/rules/order/enclosed.ts", text }, soundList)).toEqual([]);
  expect(pageComplaints("a.ts", { enclosed: { code: "order.enclosed", page: sound } })).toEqual([]);
});

test.each([
  ["no reason given", { ...sound, why: " " }],
  ["no example that fails", { ...sound, fails: "" }],
  ["no example made right", { finds: "It finds.", why: "It matters.", fails: "part A {}" }],
  ["the same example twice", { ...sound, mended: sound.fails }],
  ["a page that calls the writer's text names", { ...sound, finds: "An invalid part." }],
])("says so: %s", (_title, page) => {
  expect(pageComplaints("a.ts", { enclosed: { code: "order.enclosed", page } })).toHaveLength(1);
});

function shapeComplaints({ path, text }: SourceFile, index: string): string[] {
  const [, family = "", name = ""] = ruleFile.exec(path) ?? [];
  const codes = [...text.matchAll(/^export const \w+[^=]*= rule(?:<[^(]*>)?\(\{\s*code: "([^"]+)"/gm)].map(
    ([, code]) => code,
  );
  const exported = text.match(/^export /gm)?.length ?? 0;
  const forbidden = forbiddenImport.exec(text);
  return [
    ...(families.has(family) ? [] : [`no family is called ${family}`]),
    ...(codes.length === 1 && exported === 1 ? [] : ["exports one rule({ code … }) and nothing else"]),
    ...(codes.length !== 1 || codes[0] === `${family}.${name}`
      ? []
      : [`its code is ${family}.${name}, not ${codes[0]}`]),
    ...(index.includes(`"./${family}/${name}.ts"`) ? [] : ["is not in rules/index.ts"]),
    ...(forbidden === null ? [] : [`a rule must not know this: ${forbidden[0]}`]),
  ].map((complaint) => `${path}: ${complaint}`);
}

type Exports = Readonly<Record<string, unknown>>;

async function load({ path }: SourceFile): Promise<Exports> {
  return (await import(/* @vite-ignore */ pathToFileURL(join(root, path)).href)) as Exports;
}

function pageComplaints(path: string, exports: Exports): string[] {
  return Object.values(exports).flatMap((value) => {
    const page = ((value as { page?: unknown }).page ?? {}) as Readonly<Record<string, unknown>>;
    const empty = ["finds", "why", "fails", "mended"].filter((field) => !isFilled(page[field]));
    return [
      ...(empty.length === 0 ? [] : [`its page lacks ${empty.join(", ")}`]),
      ...(isFilled(page.fails) && page.fails === page.mended ? ["its two examples are the same"] : []),
      ...(/\binvalid\b/i.test(`${page.finds} ${page.why}`) ? ["no text says “invalid”"] : []),
    ].map((complaint) => `${path}: ${complaint}`);
  });
}

function isFilled(value: unknown): boolean {
  return typeof value === "string" && value.trim() !== "";
}
