// units.impossible: what nothing can be. Absolute zero: −273.15 °C, −459.67 °F, 0 K (SI Brochure, 9th edition, 2.3.1).
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

test.each([
  ["below absolute zero, °C", "value A = -273.16 °C"],
  ["below absolute zero, °F", "value A = -459.68 °F"],
  ["below absolute zero, K", "value A = -0.1 K .. 5 °C"],
  ["a negative mass", "part P { mass -31 kg }"],
  ["a negative time", "part P { cools 1 K/s }\nprocedure Q { step { inspect P takes -3 min } }"],
  ["a division by zero", "value A = 40 N·m / 0"],
  ["thirteen o'clock", 'ring R { count 4 numbered clockwise seen from "end" position 1 at 13 o\'clock }'],
])("%s", (_title, text) => {
  expect(findingsIn(`${text}\n`).map(({ code }) => code)).toContain("units.impossible");
});

test("what it tells", () => {
  expect(told("part P { mass -31 kg }\n", "units.impossible")).toMatchInlineSnapshot(`
    "-31 kg is less than nothing.
      A mass cannot be below zero.
    → Take the sign out, or correct the value."
  `);
  expect(told("value A = -300 °C\n", "units.impossible")).toMatchInlineSnapshot(`
    "-300 °C is below absolute zero.
    → Nothing is colder than −273.15 °C (−459.67 °F). Correct the sign or the unit."
  `);
});

// An accuracy is a share of the reading: with all of it as the error no setting is left (design: limits.tool-accuracy, T/(1−a)).
test.each([
  ["120 %", "120 % is no accuracy: it takes all of the reading."],
  ["100 %", "100 % is no accuracy: it takes all of the reading."],
  ["2 .. 150 % of full scale", "2 .. 150 % is no accuracy: it takes all of the reading."],
])("an accuracy of %s", (accuracy, message) => {
  const text = `tool Wrench "wrench" { torque 8 .. 60 N·m  accuracy ${accuracy} }\n`;
  expect(told(text, "units.impossible").split("\n")[0]).toBe(message);
});

test("silent: an accuracy of less than all of the reading", () => {
  const wrench = (accuracy: string): string => `tool Wrench "wrench" { torque 8 .. 60 N·m  accuracy ${accuracy} }\n`;
  for (const accuracy of ["4 %", "99 %", "0.04", "0.5 % of full scale"]) expectFindings(wrench(accuracy));
});

test("silent: at absolute zero, below freezing, a negative angle, differences of either sign", () => {
  expectFindings(`value A = -273.15 °C
value B = -40 .. -20 °C
value C = -459.67 °F
value D = -90°
value E = 20 °C - 80 °C
part Shaft "shaft"
part Hub "hub"
fit Hub over Shaft { diameter 50 mm  interference -23 .. 2 µm }
`);
});
