// A fix of a number never gives another value than the writer can have meant: where there are several, none is chosen silently.
import { expect, test } from "vitest";
import { openWorkspace } from "#workspace/index.ts";

/** What each fix would write, finding by finding. */
function offered(text: string): readonly (readonly string[])[] {
  const texts = new Map([["a.sprag", text]]);
  const { files } = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" }).check([
    "a.sprag",
  ]);
  const found = files.flatMap(({ findings }) => findings).filter(({ code }) => code.startsWith("syntax."));
  return found.map(({ fixes = [] }) => fixes.flatMap(({ edits }) => edits.map(({ newText }) => newText)));
}

const torque = (value: string): string => `tool Wrench "torque wrench" { torque ${value} }\n`;

test.each([
  [
    "a comma that may part thousands, in a range with a dash",
    "1,000-2,000 N·m",
    [["1000", "1.000"], ["1,000 .. 2,000"], ["2000", "2.000"]],
  ],
  ["the same with blanks", "1,000 - 2,000 N·m", [["1000", "1.000"], ["1,000 .. 2,000"], ["2000", "2.000"]]],
  ["a comma that can only be a point", "1,5-2,5 N·m", [["1.5 .. 2.5"]]],
  ["groups on both sides of a dash", "1 000-2 000 N·m", [["1000"], ["1_000 .. 2_000"], ["2000"]]],
  ["groups by themselves", "1 000 N·m", [["1000"]]],
])("%s", (_, value, wanted) => {
  expect(offered(torque(value))).toEqual(wanted);
});

test("in a list a comma may have been left out: nothing is offered, and both are said", () => {
  const text = 'part Screw "screw"\nprocedure Work "Work" {\n  step tighten Screw to 30 100 N·m\n}\n';
  expect(offered(text)).toEqual([[]]);
  const texts = new Map([["a.sprag", text]]);
  const report = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" }).check([
    "a.sprag",
  ]);
  const remedies = report.files.flatMap(({ findings }) => findings.map(({ remedy }) => remedy));
  expect(remedies).toContain("Write 30100, or a comma between two numbers.");
});
