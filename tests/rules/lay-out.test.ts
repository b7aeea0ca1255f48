// Lines that fixes put in and take out: indentation, comments, blank lines, and places where it cannot be done.
import { expect, test } from "vitest";
import { layOut } from "#rules/lay-out.ts";
import type { Edit } from "#rules/rule.ts";

function after(text: string, edit: Edit): string | null {
  const fix = layOut({ title: "mend", edits: [edit] }, () => text);
  const [made] = fix?.edits ?? [];
  return made === undefined ? null : text.slice(0, made.span.start) + made.newText + text.slice(made.span.end);
}

/** The place of a part of the text. */
function placeOf(text: string, part: string) {
  const start = text.indexOf(part);
  return { path: "a.sprag", start, end: start + part.length };
}

test.each([
  ["at the line's indentation", "a {\n  step b\n}\n", "a {\n  NEW\n  step b\n}\n"],
  ["above its comments", "a {\n  // why\n  // more\n  step b\n}\n", "a {\n  NEW\n  // why\n  // more\n  step b\n}\n"],
  ["below a blank line", "a {\n  x\n\n  step b\n}\n", "a {\n  x\n\n  NEW\n  step b\n}\n"],
  ["on the first line", "step b", "NEW\nstep b"],
  ["with the line ends of the text", "a {\r\n  step b\r\n}\r\n", "a {\r\n  NEW\r\n  step b\r\n}\r\n"],
])("a line before: %s", (_title, text, wanted) => {
  expect(after(text, { lineBefore: placeOf(text, "step b"), newText: "NEW" })).toBe(wanted);
});

test("no line before what does not begin its line", () => {
  const text = "repeat n in 1, 2 { step b }\n";
  expect(after(text, { lineBefore: placeOf(text, "step b"), newText: "NEW" })).toBeNull();
});

test.each([
  ["at the end of a block", "a {\n  step b\n}\n", "a {\n  step b\n  NEW\n}\n"],
  ["of a block that stands indented", "x {\n  a {\n    step b\n  }\n}\n", "x {\n  a {\n    step b\n    NEW\n  }\n}\n"],
])("a last line: %s", (_title, text, wanted) => {
  const block = text.slice(text.indexOf("a {"), text.indexOf("}") + 1);
  expect(after(text, { lastIn: placeOf(text, block), newText: "NEW" })).toBe(wanted);
});

test("no last line in a block that closes on its line, or is not closed", () => {
  expect(after("a { step b }\n", { lastIn: placeOf("a { step b }\n", "a { step b }"), newText: "NEW" })).toBeNull();
  expect(
    after("a {\n  step b\n", { lastIn: placeOf("a {\n  step b\n", "a {\n  step b\n"), newText: "NEW" }),
  ).toBeNull();
});

test.each([
  ["with its line", "a {\n  c\n  OLD\n  b\n}\n", "a {\n  c\n  b\n}\n"],
  ["with one of two blank lines", "a\n\nOLD\n\nb\n", "a\n\nb\n"],
  ["with the blank line before the end of the block", "a {\n  b\n  c\n\n  OLD\n}\n", "a {\n  b\n  c\n}\n"],
  ["behind another", "a OLD\nb\n", "a\nb\n"],
  ["between others", "a OLD b\n", "a b\n"],
  ["before another", "a\n  OLD b\n", "a\n  b\n"],
  ["as the last line without an end", "a\nOLD", "a\n"],
])("a statement goes %s", (_title, text, wanted) => {
  expect(after(text, { takeOut: placeOf(text, "OLD") })).toBe(wanted);
});

test("the first of a block leaves no blank line there", () => {
  const text = "task A {\n  OLD\n\n  step b\n}\n";
  expect(after(text, { takeOut: placeOf(text, "OLD") })).toBe("task A {\n  step b\n}\n");
});

test.each([
  ["on one line where there is room", 96, "  a BREAK\n"],
  ["each on a line of its own where there is not", 97, "  a\n    BREAK\n"],
])("the rests of a new line stand %s", (_title, length, wanted) => {
  const rest = "b".repeat(length);
  const text = "x {\n  step c\n}\n";
  const edit = { lineBefore: placeOf(text, "step c"), newText: "a", rests: [rest] };
  expect(after(text, edit)).toBe(`x {\n${wanted.replace("BREAK", rest)}  step c\n}\n`);
});

test.each([
  ["joined to one line", "step {\n  b\n  OLD\n}\n", "step { b }\n"],
  [
    "joined from behind, indented",
    "x {\n  when a is b {\n    OLD\n    step b\n  }\n}\n",
    "x {\n  when a is b { step b }\n}\n",
  ],
  ["left, as a task stands", "task A {\n  b\n  OLD\n}\n", "task A {\n  b\n}\n"],
  ["left, with a comment", "step {\n  b // why\n  OLD\n}\n", "step {\n  b // why\n}\n"],
  ["left, with a comment above", "step {\n  // why\n  b\n  OLD\n}\n", "step {\n  // why\n  b\n}\n"],
  ["left, with a block in it", "step {\n  when c { d }\n  OLD\n}\n", "step {\n  when c { d }\n}\n"],
  ["left, with another way", "when c {\n  b\n  OLD\n} otherwise { d }\n", "when c {\n  b\n} otherwise { d }\n"],
  ["left, too long", `step {\n  ${"b".repeat(92)}\n  OLD\n}\n`, `step {\n  ${"b".repeat(92)}\n}\n`],
])("where one line is left of a block, it is %s", (_title, text, wanted) => {
  expect(after(text, { takeOut: placeOf(text, "OLD") })).toBe(wanted);
});

test("not where a comment behind it would lose what it speaks of, nor without a text", () => {
  const text = "a\nOLD // since the seal leaks\n";
  expect(after(text, { takeOut: placeOf(text, "OLD") })).toBeNull();
  expect(layOut({ title: "mend", edits: [{ takeOut: placeOf(text, "OLD") }] }, () => undefined)).toBeNull();
});

test.each([
  ["as far in as the line that opens it", "x {\n  a {\n    step b\n}\n", "x {\n  a {\n    step b\n  }\n}\n"],
  [
    "behind the comment of the last line",
    "x {\n  a {\n    step b // why\n}\n",
    "x {\n  a {\n    step b // why\n  }\n}\n",
  ],
  ["on the line itself where the block has one", "x {\n  a { step b\n}\n", "x {\n  a { step b }\n}\n"],
  ["with the line ends of the text", "a {\r\n  step b\r\n", "a {\r\n  step b\r\n}\r\n"],
])("a closing brace: %s", (_title, text, wanted) => {
  const opens = { ...placeOf(text, "a {"), start: text.indexOf("a {") + 2 };
  expect(after(text, { closes: opens, at: placeOf(text, "step b") })).toBe(wanted);
});
