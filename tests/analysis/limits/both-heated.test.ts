// A fit whose inner part was heated as well: it counts as warm as it may be. Growth is α · d · ΔT (thermal expansion along a straight line), worked
// by hand: α 11.7 µm/(m·K) and 60 mm give 0.702 µm/K; 36 µm of interference and 15 µm of slip are wanted, 51 µm.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";

const told = (before: string, ambient = "15 .. 25 °C"): readonly string[] =>
  findingsIn(`material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 300 °C }
tool Oven "oven" { heats to 200 °C }
part Bearing "bearing" { material Steel }
part Shaft "shaft" { material Steel }
fit Bearing over Shaft { diameter 60 mm  interference 11 .. 36 µm  slip clearance 15 µm }
procedure Fit "Fit the bearing" {
  ambient ${ambient}
  warning burn "The parts are hot." avoid "Do not touch them." wear "gloves"
  ${before}
  step heat Bearing to 98 .. 110 °C with Oven
  step install Bearing on Shaft
  step wait until Bearing is at most 40 °C
}
`)
    .filter(({ code }) => code === "limits.too-cool-to-fit")
    .map(({ why, remedy }) => `${why} ${remedy}`);

test("a cold shaft: 73 K are 51.2 µm, enough", () => {
  expect(told("")).toEqual([]);
});

test("a heated shaft may be at 90 °C: 8 K are 5.62 µm; 51 µm take 72.65 K more than 90 °C", () => {
  expect(told("step heat Shaft to 80 .. 90 °C with Oven")).toEqual([
    "The bore is 5.62 µm larger at 98 °C, 51 µm wanted. Heat to at least 162.7 °C.",
  ]);
});

test("of a shaft whose heat has no upper end nothing is said", () => {
  expect(told("step heat Shaft to at least 80 °C with Oven")).toEqual([]);
});

test("a shaft that took heat from the bearing in a first try is taken as at the shop's temperature", () => {
  const first = "step heat Bearing to 98 .. 110 °C with Oven\n  step install Bearing on Shaft\n  step remove Bearing";
  expect(told(first)).toEqual([]);
});
