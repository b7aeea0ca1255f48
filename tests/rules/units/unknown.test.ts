// units.unknown: no unit, with the nearest that is one.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

test("a slip of the finger, with the likeliest first", () => {
  expectFindings(`value Torque = 40 Nn
//                ^^ units.unknown
part Cover "cover" {
  mass 31 kgg
  //      ^^^ units.unknown
}`);
  expect(told("value Torque = 40 Nn\n", "units.unknown")).toMatchInlineSnapshot(`
    "“Nn” is no unit.
    → Probably N·m, N/m or N is meant.
    + Write N·m
    + Write N/m
    + Write N"
  `);
});

test("nothing near", () => {
  expect(told("value Speed = 40 furlongs\n", "units.unknown")).toContain("Write a unit behind the number");
});

test("silent: units of every sort, also in compounds", () => {
  expectFindings(`value A = 40 N·m
value B = 11.7 µm/(m·K)
value C = 85 dB(A)
value D = 3/8 in
value E = 5 kgf·cm
value F = 400 V AC
`);
});

test("the fix writes the nearest, and nothing is left", () => {
  const text = 'part Cover "cover" {\n  mass 31 kgg\n}\n';
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe('part Cover "cover" {\n  mass 31 kg\n}\n');
  expect(findingsIn(mended)).toEqual([]);
});
