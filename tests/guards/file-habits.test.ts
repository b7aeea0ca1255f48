// Habits every file keeps: a header that says its job, at most 500 lines, a name that says something, and a top level
// that holds only what belongs there.
import { readdirSync } from "node:fs";
import { basename } from "node:path";
import { expect, test } from "vitest";
import { allFiles, programFiles, root, type SourceFile } from "./source-files.ts";

const mostLines = 500;
const longestHeader = 4;
const vagueNames = /^(?:utils?|helpers?|types|misc|common|shared|stuff|lib|index\.d)\.[a-z]+$/;
const kebabCase = /^[a-z0-9]+(?:-[a-z0-9]+)*(?:(?:\.long)?\.test|\.config|\.d)?\.(?:ts|mjs|js)$/;
const topLevel = new Set([
  ...["README.md", "DEVELOPERS.md", "package.json", "package-lock.json", "tsconfig.json"],
  ...["language", "extension", "tests", "samples", "node_modules"],
]);

test("every program file begins with a header, is short enough and is named for what it holds", () => {
  expect(programFiles.length).toBeGreaterThan(10);
  expect(programFiles.flatMap(complaints)).toEqual([]);
});

test("no folder is named for nothing in particular", () => {
  const folders = new Set(allFiles.flatMap(({ path }) => path.split("/").slice(0, -1)));
  expect([...folders].filter((name) => vagueNames.test(`${name}.ts`))).toEqual([]);
});

test("the top level holds only what belongs there", () => {
  expect(misplaced(readdirSync(root))).toEqual([]);
});

test.each([
  ["no header", "language/model/a.ts", "export const a = 1;\n"],
  ["a long header", "language/model/a.ts", `${"// words\n".repeat(5)}export const a = 1;\n`],
  ["an empty header", "language/model/a.ts", "//\nexport const a = 1;\n"],
  ["too many lines", "language/model/a.ts", `// A list.\n${"a();\n".repeat(500)}`],
  ["a vague name", "language/model/utils.ts", "// Things.\n"],
  ["another way to write a name", "language/model/fooBar.ts", "// Things.\n"],
])("says so: %s", (_title, path, text) => {
  expect(complaints({ path, text })).toHaveLength(1);
});

test("500 lines are not too many", () => {
  expect(complaints({ path: "language/model/a.ts", text: `// A list.\n${"a();\n".repeat(499)}` })).toEqual([]);
});

test("says so: a stray file or folder at the top level", () => {
  expect(misplaced(["README.md", ".gitignore", "scripts", "notes.txt"])).toEqual(["scripts", "notes.txt"]);
});

function complaints({ path, text }: SourceFile): string[] {
  const name = basename(path);
  const lines = text.replace(/\n$/, "").split("\n").length;
  const header = headerLines(text);
  return [
    ...(header.length === 0 ? ["no header comment says what it is for"] : []),
    ...(header.length > longestHeader ? [`its header has ${header.length} lines, ${longestHeader} are enough`] : []),
    ...(lines > mostLines ? [`${lines} lines, ${mostLines} are the most`] : []),
    ...(vagueNames.test(name) || !kebabCase.test(name) ? ["its name: kebab-case, for what it holds"] : []),
  ].map((complaint) => `${path}: ${complaint}`);
}

/** The lines of words in the comment a file begins with. */
function headerLines(text: string): string[] {
  const body = text.replace(/^#!.*\n/, "");
  const comment = /^(?:\/\/.*\n?)+/.exec(body)?.[0] ?? /^\/\*[\s\S]*?\*\//.exec(body)?.[0] ?? "";
  return comment.split("\n").filter((line) => /\p{L}/u.test(line));
}

function misplaced(names: readonly string[]): string[] {
  return names.filter((name) => !name.startsWith(".") && !topLevel.has(name));
}
