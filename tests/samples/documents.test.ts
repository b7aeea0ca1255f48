// The documents hold what they say: every example in them is checked as a reader would check it.
import { expect, test } from "vitest";
import { expectMarked } from "#harness/check.ts";
import { folderWith } from "#harness/command.ts";
import { readMarks } from "#harness/marks.ts";
import { plainTexts, tables } from "#harness/samples.ts";
import { allFiles } from "../guards/source-files.ts";

interface Chapter {
  readonly name: string;
  readonly source: string;
}

const beside = Object.fromEntries([...plainTexts].filter(([path]) => path.startsWith("shop/")));
// Pictures only have to be there.
for (const { path } of allFiles.filter((file) => /^samples\/.*\.svg$/.test(file.path)))
  beside[path.replace("samples/", "")] = "";
for (const [path, text] of tables) beside[path] = text;

const documents = allFiles.filter(({ path }) => /^(?:README|DEVELOPERS|language\/GUIDE)\.md$/.test(path));
const chapters = documents.flatMap(({ path, text }) => chaptersOf(path, text));

test("there are examples to check", () => {
  expect(documents.length).toBe(3);
  expect(chapters.filter(({ name }) => name.startsWith("README.md")).length).toBeGreaterThan(0);
  expect(chapters.filter(({ name }) => name.startsWith("language/GUIDE.md")).length).toBeGreaterThan(15);
});

test.each(chapters)("$name", ({ source }) => {
  expectMarked(
    readMarks(source).map((file) => ({ ...file, path: "example.sprag" })),
    {},
    beside,
  );
});

test("the first procedure of the README is checked and found fault with as printed there", () => {
  const { text } = documents.find(({ path }) => path === "README.md") ?? { text: "" };
  const [procedure = ""] = blocksOf(text, "sprag");
  const [clean, faulty] = blocksOf(text, "text");
  const cut = procedure.replace(/^ {2}step FitCover [\s\S]*?^ {2}}\n/m, "");
  expect(cut.length).toBeLessThan(procedure.length);
  const { sprag } = folderWith({ "close-cover.sprag": procedure });
  expect(sprag("check", "close-cover.sprag")).toEqual({ status: 0, out: clean, err: "" });
  const without = folderWith({ "close-cover.sprag": cut });
  expect(without.sprag("check", "close-cover.sprag")).toEqual({ status: 1, out: faulty, err: "" });
});

test("every call of sprag in the documents is one that the command knows", () => {
  const calls = documents.flatMap(({ text }) => [...text.matchAll(/npx sprag ([a-z]+)(?:[^\n`]*)/g)]);
  const { sprag } = folderWith();
  const known = new Set(calls.map(([, name = ""]) => name));
  const told = [
    "arrange",
    "check",
    "convert",
    "explain",
    "export",
    "format",
    "merge",
    "new",
    "outline",
    "review",
    "serve",
    "verify",
  ];
  expect([...known].sort()).toEqual(told);
  for (const name of known) expect(sprag(name, "--help").status).toBe(0);
  for (const [call, name = ""] of calls)
    for (const [flag] of call.matchAll(/--[a-z-]+/g)) expect(sprag(name, "--help").out).toContain(flag);
});

/** The examples of each chapter make one file; a mark under a line shows a finding. */
function chaptersOf(path: string, text: string): readonly Chapter[] {
  return text.split(/^(?=## )/m).flatMap((chapter) => {
    const blocks = blocksOf(chapter, "sprag");
    const title = /^## (.*)$/m.exec(chapter)?.[1] ?? "";
    return blocks.length === 0 ? [] : [{ name: `${path}: ${title}`, source: blocks.join("\n") }];
  });
}

function blocksOf(text: string, language: string): readonly string[] {
  const blocks = text.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm);
  return [...blocks].filter(([, of]) => of === language).map(([, , block = ""]) => block);
}
