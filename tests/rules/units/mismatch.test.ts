// units.mismatch: the right dimension is not enough.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

test.each([
  ["an energy for a torque", "part P { torque 40 J dry }", "40 J"],
  ["a pressure for a force", "tool Press { force 98 kPa }", "98 kPa"],
  ["a length for a mass", "part P { mass 31 mm }", "31 mm"],
  ["an angle for a clock position", 'ring R { count 4 numbered clockwise seen from "end" position 1 at 90° }', "90°"],
  ["a temperature for a mass", "part P { mass 20 °C }", "20 °C"],
  ["a frequency for a time", "part P { cools 3 Hz }", "3 Hz"],
  ["an angle for a temperature", "part P { heat limit 120° }", "120°"],
])("%s", (_title, text, place) => {
  const found = findingsIn(`${text}\n`).filter(({ code }) => code === "units.mismatch");
  expect(found).toHaveLength(1);
  expect(text.slice(found[0]?.range.start.character, found[0]?.range.end.character)).toBe(place);
});

test("what it tells: the kinds, and units that would do", () => {
  expect(told("part P { torque 40 J dry }\n", "units.mismatch")).toMatchInlineSnapshot(`
    "This is an energy; a torque belongs here.
      Wanted: a torque, in N·m, lbf·in or lbf·ft
      Found: an energy, in J
    → Give it in N·m, lbf·in or lbf·ft, if that is what is meant."
  `);
  expect(told("part P { heat limit 120° }\n", "units.mismatch")).toMatchInlineSnapshot(`
    "This is an angle; a temperature belongs here.
      Wanted: a temperature, in °C or °F
      Found: an angle, in °
    → Give it in °C or °F, if that is what is meant."
  `);
});

test.each(["4", "1", "12.5"])("an accuracy of %s: its unit was left out", (number) => {
  const text = `tool Wrench "wrench" { torque 8 .. 60 N·m  accuracy ${number} }
  // ${" ".repeat(47)}${"^".repeat(number.length)} units.mismatch`;
  expectFindings(text);
  expect(told(text, "units.mismatch")).toBe(`The number ${number} has no unit.\n→ Write ${number} %.`);
});

test("steps of a thermometer are differences, in any unit", () => {
  const text = (resolution: string): string =>
    `tool Meter "thermometer" { measures 0 .. 200 °C  resolution ${resolution} }\n`;
  for (const resolution of ["1 °C", "1 K", "1.8 °F"]) expectFindings(text(resolution));
  expect(told(text("1 mm"), "units.mismatch")).toContain("Wanted: a temperature difference, in K");
});

test("a number without a unit", () => {
  const text = `part Cover "cover" {
  mass 31
  //   ^^ units.mismatch
}`;
  expectFindings(text);
  expect(told(text, "units.mismatch")).toMatchInlineSnapshot(`
    "The number 31 has no unit.
    → Write 31 kg, 31 g, 31 lb or 31 oz."
  `);
});

test("two temperatures added, unlike kinds added", () => {
  expectFindings(`value Sum = 20 °C + 30 °C
//          ^^^^^^^^^^^^^ units.mismatch
value Odd = 20 N·m + 3 kg
//          ^^^^^^^^^^^^^ units.mismatch
`);
  expect(told("value Sum = 20 °C + 30 °C\n", "units.mismatch")).toMatchInlineSnapshot(`
    "Two temperatures cannot be added.
    → Give what is added as a difference, in K."
  `);
  expect(told("value Odd = 20 N·m + 3 kg\n", "units.mismatch")).toMatchInlineSnapshot(`
    "A torque and a mass do not go together in a sum.
    → Add only quantities of one kind."
  `);
});

test("silent: differences, products of the right kind, mixed units of one kind", () => {
  expectFindings(`value Hot = 20 °C + 80 K
value Rise = 100 °C - 20 °C
value Torque = 8 lbf·in .. 1.2 N·m
part Screw "screw" { torque 100 N * 0.4 m dry }
part Bearing "bearing" { cools 0.2 K/s }
`);
});
