// units.reversed-range: after conversion, in every form of a range.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

test("the high end first, also across units and below zero", () => {
  expectFindings(`value A = 42 .. 38 N·m
//        ^^^^^^^^^^^^ units.reversed-range
value B = 1.2 N·m .. 8 lbf·in
//        ^^^^^^^^^^^^^^^^^^^ units.reversed-range
value C = -190 .. -200 °C
//        ^^^^^^^^^^^^^^^ units.reversed-range
`);
  expect(told("value A = 42 .. 38 N·m\n", "units.reversed-range")).toMatchInlineSnapshot(`
    "The low end of this range lies above its high end.
      Wanted: 38 .. 42 N·m
      Found: 42 N·m .. 38 N·m
    → Write 38 .. 42 N·m, or correct the end that is mistyped.
    + Write 38 .. 42 N·m"
  `);
});

test("silent: the low end first after conversion, equal ends, a clock position past twelve", () => {
  expectFindings(`value A = 8 lbf·in .. 1.2 N·m
value B = 40 .. 40 N·m
value C = -200 .. -190 °C
value D = 11 o'clock .. 1 o'clock
`);
});

test("the fix turns it", () => {
  const text = "value A = 42 .. 38 N·m\n";
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe("value A = 38 .. 42 N·m\n");
  expect(findingsIn(mended)).toEqual([]);
});
