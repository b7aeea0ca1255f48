// safety.instruction-in-note: notes carry no instruction (ASD-STE100; second); `avoid` and `wear` are for those of a safety statement.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

const work = (line: string, mark = ""): string => `part Pump "pump"
procedure Look "Look" {
  ${line}
${mark}  step inspect Pump
}
`;

test("a note that asks for something", () => {
  const text = work(
    'note "The tape is red. Remove the tape first."',
    "//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ safety.instruction-in-note warning\n",
  );
  expectFindings(text);
  expect(told(text, "safety.instruction-in-note")).toMatchInlineSnapshot(`
    "This note asks for something to be done.
      “Remove the tape first.” is an action, and a note has no box to tick.
    → Make it a step, or a line of its step."
  `);
});

test("the first text of a safety statement", () => {
  const text = work('warning fall "Do not lean over the rail." avoid "Hook the line in."');
  expect(findingsIn(text).map(({ code }) => code)).toEqual(["safety.instruction-in-note"]);
  expect(told(text, "safety.instruction-in-note")).toMatchInlineSnapshot(`
    "The first text of this warning asks for something to be done.
      “Do not lean over the rail.” is an action. The first text says what the hazard is and what it does.
    → Put it behind “avoid”, or behind “wear” if it is something to wear."
  `);
});

test.each([
  'note "The tape is red and comes off easily."',
  'note "See 6.4.2 for the pump without a rail."',
  'note "Screw heads may be sharp."',
  'warning fall "The rail is missing." avoid "Do not lean over. Hook the line in."',
  'warning noise "The pump is loud." avoid "Keep away." wear "Put on ear muffs."',
  'caution damage "Grease makes the seal swell." avoid "Touch it with dry gloves."',
])("silent: %s", (line) => {
  expect(findingsIn(work(line))).toEqual([]);
});

test("in a step as well", () => {
  const text = work("").replace("step inspect Pump", 'step { note "Turn the shaft by hand."  inspect Pump }');
  expect(findingsIn(text).map(({ code }) => code)).toEqual(["safety.instruction-in-note"]);
});

test("a verb of the shop's own", () => {
  const text = work('note "Bluecheck the seat."');
  expect(findingsIn(text)).toEqual([]);
  expect(findingsIn(`verb "bluecheck"\n${text}`).map(({ code }) => code)).toEqual(["safety.instruction-in-note"]);
});
