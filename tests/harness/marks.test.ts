// The harness itself: marks are read and written, and a finding that is missing, too many or elsewhere fails the test.
import { expect, test } from "vitest";
import { expectFindings } from "#harness/check.ts";
import { readMarks, writeMarks } from "#harness/marks.ts";

const TWICE = `part Seal "front seal"
part Seal "rear seal"
//   ^^^^ names.duplicate
`;

test("marks are taken out of the text and speak of the line before them", () => {
  const [file, ...others] = readMarks(`${TWICE}  //  ^^ order.enclosed warning allowed\n`);
  expect(others).toEqual([]);
  expect(file).toEqual({
    path: "main.sprag",
    text: 'part Seal "front seal"\npart Seal "rear seal"\n',
    marks: [
      { line: 1, character: 5, length: 4, code: "names.duplicate", remarks: [] },
      { line: 1, character: 6, length: 2, code: "order.enclosed", remarks: ["warning", "allowed"] },
    ],
  });
});

test("a comment that is no mark stays", () => {
  expect(readMarks("// ^^^^ this one\n//   ^ a.B\n")[0]?.marks).toEqual([]);
});

test("several files", () => {
  const files = readMarks('use "b.sprag"\n// file: shop/b.sprag\npart A\n//   ^ names.unused\n');
  expect(files.map(({ path, text, marks }) => [path, text, marks.length])).toEqual([
    ["main.sprag", 'use "b.sprag"', 0],
    ["shop/b.sprag", "part A\n", 1],
  ]);
});

test("what is written is read again", () => {
  const [file] = readMarks(TWICE);
  expect(file && readMarks(writeMarks(file))[0]).toEqual(file);
});

test("passes where exactly the marked findings come", () => {
  expectFindings(TWICE);
});

test.each([
  ["a finding without a mark", TWICE.replace(/\/\/.*\n/, "")],
  ["a mark without a finding", 'part Seal "seal"\n//   ^^^^ names.duplicate\n'],
  ["another code", TWICE.replace("names.duplicate", "names.unknown")],
  ["a place too short", TWICE.replace("^^^^", "^^^")],
  ["a place one further", TWICE.replace("//   ", "//    ")],
  ["the other line", 'part Seal "front seal"\n//   ^^^^ names.duplicate\npart Seal "rear seal"\n'],
  ["another severity", TWICE.replace("duplicate", "duplicate warning")],
  ["not allowed, though the mark says so", TWICE.replace("duplicate", "duplicate allowed")],
  ["one of two at a place", TWICE.replace(/(\/\/.*\n)/, "$1$1")],
])("fails: %s", (_title, source) => {
  expect(() => expectFindings(source)).toThrow();
});
