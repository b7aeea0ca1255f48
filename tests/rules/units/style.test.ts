// units.style: plain-keyboard spellings, read as meant and written properly by the formatter.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

test("spellings of newton metres, degrees, micrometres, plus-minus, foot-pounds", () => {
  expectFindings(`value A = 40 N*m
//           ^^^ units.style hint
value B = 110 degC
//            ^^^^ units.style
value C = 12 um
//           ^^ units.style
value D = 40 +/- 2 N·m
//           ^^^ units.style
value E = 40 lb-ft
//           ^^^^^ units.style
`);
  expect(told("value A = 40 N*m\n", "units.style")).toMatchInlineSnapshot(`
    "“N*m” is written N·m.
    → “sprag format” writes it so.
    + Write N·m"
  `);
});

test.each([
  ["value A = 40 N*m\n", "value A = 40 N·m\n"],
  ["value D = 40 +/- 2 N·m\n", "value D = 40 ± 2 N·m\n"],
  ["value E = 40 ft-lb\n", "value E = 40 lbf·ft\n"],
])("the fix of %j", (text, wanted) => {
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe(wanted);
  expect(findingsIn(mended)).toEqual([]);
});

test("silent: the proper spellings, with either sort of µ", () => {
  expectFindings("value A = 40 N·m\nvalue B = 110 °C\nvalue C = 12 µm\nvalue D = 12 μm\nvalue E = 40 ± 2 N·m\n");
});
