// safety.no-avoidance: what a danger or warning has to say beside the hazard (ANSI Z535.6; second).
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

const work = (statement: string, mark = ""): string => `part Pump "pump"
procedure Look "Look" {
  ${statement}
${mark}  step inspect Pump
}
`;

test("left out, or put off", () => {
  const text = work(
    'warning fall "The rail is missing."',
    "//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ safety.no-avoidance warning\n",
  );
  expectFindings(text);
  expect(told(text, "safety.no-avoidance")).toMatchInlineSnapshot(`
    "This warning does not say how to avoid the hazard.
      Everybody would find out alone, at the machine.
    → Add “avoid” with what to do or to leave."
  `);
});

test.each(["…", "", "TBD", "to be done.", "xxx", "?"])("“%s” says nothing yet", (avoid) => {
  const found = findingsIn(work(`danger fall "The rail is missing." avoid "${avoid}"`));
  expect(found.map(({ code }) => code)).toEqual(["safety.no-avoidance"]);
});

test.each([
  'warning fall "The rail is missing." avoid "Stay."',
  'danger fall "The rail is missing." avoid "Hook the line in."',
  'caution damage "The face scratches."',
  'note "The rail is missing."',
])("silent: %s", (statement) => {
  expect(findingsIn(work(statement))).toEqual([]);
});
