// Each place that takes a quantity wants its own kind: one of that kind is right, one of another is told of there.
import { expect, test } from "vitest";
import { show } from "#quantity/display.ts";
import { declared, modelOf, problemsIn } from "./model-of.ts";

/** The place as `?`, what is right there, and what is of another kind. */
const PLACES: readonly (readonly [string, string, string])[] = [
  ["material X { expansion ? }", "11.7 µm/(m·K)", "11.7 µm"],
  ["material X { expansion 12 µm/(m·K) from ? }", "20 .. 100 °C", "20 .. 100 mm"],
  ["material X { heat limit ? }", "200 °C", "200 kg"],
  ["part X { mass ? }", "2.3 kg", "23 N"],
  ["part X { heat limit ? }", "120 °C", "80 Hz"],
  ["part X { cools ? }", "0.2 K/s", "0.2 K"],
  ["part X { prevailing torque ? }", "3 N·m", "3 J"],
  ["part X { torque ? dry }", "45 ± 2 N·m", "45 ± 2 bar"],
  ["part X { nut factor ? dry }", "0.20", "0.2 mm"],
  ["part X { friction ? dry }", "0.14", "0.14 N"],
  ["ring X { count 2 position 1 at ? }", "6 o'clock", "180°"],
  ["part X\npart Y\nfit X over Y { diameter ? }", "60 mm", "60 K"],
  ["part X\npart Y\nfit X over Y { interference ? }", "11 .. 36 µm", "11 .. 36 g"],
  ["part X\npart Y\nfit X over Y { slip clearance ? }", "15 µm", "15 °C"],
  ["part X\npart Y\nfit X over Y { length ? }", "40 mm", "40 mm²"],
  ["part X\npart Y\nfit X over Y { friction ? }", "0.12", "0.12 N·m"],
  ["tool X { torque ? }", "8 .. 60 N·m", "8 .. 60 bar"],
  ["tool X { accuracy ? }", "4 %", "4 N·m"],
  ["tool X { arm ? }", "400 mm", "4 kg"],
  ["tool X { offset ? }", "60 mm", "60°"],
  ["tool X { offset 6 mm angle ? }", "90°", "3 o'clock"],
  ["tool X { heats to ? }", "150 °C", "150 W"],
  ["tool X { cools to ? }", "-40 °C", "40 s"],
  ["tool X { lifts ? }", "250 kg", "2.5 kN"],
  ["tool X { force ? }", "100 kN", "100 bar"],
  ["consumable X { flash point ? }", "210 °C", "210 mm"],
  ["consumable X { cure ? }", "30 min", "30 K"],
  ["consumable X { density ? }", "870 kg/m³", "870 kg"],
  ["consumable X { expands ? }", "694", "694 L"],
  ["energy X { voltage ? }", "400 V AC", "400 W"],
  ["energy X { pressure ? }", "6 bar", "6 N"],
  ["energy X { hot ? }", "90 °C", "90 s"],
  ["energy X { stored ? }", "40 J", "40 N·m"],
  ["part X\nring R { count 2 }\narrangement A of X in R { radius ? }", "420 mm", "420 g"],
  ["part X\nring R { count 2 }\narrangement A of X in R { unbalance ? }", "at most 600 g·mm", "at most 600 g"],
  ["part X\nring R { count 2 }\narrangement A of X in R { speed ? }", "1450 rpm", "24 Hz"],
  ["threshold burn ?", "55 °C", "55 kg"],
  ["threshold preload ?", "85 %", "85 N·m"],
  ["threshold lifting ?", "20 kg", "200 N"],
  ["threshold noise ?", "80 dB(A)", "80 %"],
  ["procedure P { ambient ? }", "15 .. 25 °C", "15 .. 25 mm"],
  ["procedure P { step wait ? }", "15 min", "15 mm"],
  ['procedure P { step "x" takes ? }', "6 min", "6 K"],
  ['procedure P { step A "x" step "y" within ? after A }', "90 s", "90 mm"],
  ["part X\nprocedure P { step heat X to ? }", "100 .. 112 °C", "100 .. 112 s"],
  ["part X\nprocedure P { step heat X by ? }", "20 K", "20 kg"],
  ["part X\nprocedure P { step tighten X to ? }", "40 N·m", "40 MPa"],
  ["part X\nprocedure P { step tighten X to 40 N·m then ? }", "90 ± 5°", "90 ± 5 N·m"],
  ["part X\nprocedure P { step loosen X by ? }", "1/4 turn", "1/4 N·m"],
  ["part X\nprocedure P { step install X at ? }", "12 o'clock", "12°"],
  ["ring X { count 2 }\nprocedure P { step turn X[1] to ? }", "6 o'clock", "6 min"],
  ["ring X { count 2 }\nprocedure P { begin with X[1] at ? }", "6 o'clock", "6 h"],
  ["part X\nprocedure P { begin with X is at least 80 °C, X at most ? }", "120 °C", "120 K/s"],
  ["part X\nconsumable C\nprocedure P { step apply ? of C to X }", "5 g", "5 bar"],
  ["part X\nconsumable C\nprocedure P { step fill X with ? of C }", "0.5 L", "0.5 m"],
  ["part X\nconsumable C\nprocedure P { step apply C to X cure ? }", "10 min", "10 °C"],
  ['procedure P { step measure G "x" expect 0.2 .. 1.2 mm when G at most ? { step "y" } }', "0.6 mm", "0.6 N"],
  [
    'part X\nprocedure P { step measure G "x" expect 0 .. 1 mm step choose X by G { ?: 0.5 mm } }',
    "0.2 .. 0.6 mm",
    "0.2 .. 0.6 s",
  ],
];

test.each(PLACES)("%s takes %s and not %s", (place, right, wrong) => {
  const told = (value: string) =>
    problemsIn(place.replace("?", value)).filter((problem) => !problem.startsWith("unused"));
  expect(told(right)).toEqual([]);
  expect(told(wrong)).toEqual([`mismatch «${wrong}»`]);
});

test.each([
  'step measure "x" expect 1 .. 2 mm',
  'step { check "x" expect at most 3 bar }',
  'step { record "x" 15 .. 25 °C }',
  'step { record "x" }',
])("a reading may be of any kind: %s", (line) => {
  expect(problemsIn(`procedure P { ${line} }`)).toEqual([]);
});

test("stages take their whole from the last", () => {
  const told = (stages: string) => problemsIn(`value V = 45 N·m\npart X\nprocedure P { step tighten X to ${stages} }`);
  expect(told("30 %, 70 %, 100 % of V")).toEqual([]);
  expect(told("30 % of V, 100 % of V")).toEqual([]);
  expect(told("30 %, 70 % , 45 N·m")).toEqual(["unused value «V»", "mismatch «30 %»", "mismatch «70 %»"]);
});

test("units and numbers are told at their own place", () => {
  expect(problemsIn("part X { mass 3 kgg }")).toEqual(["unknown unit «kgg»"]);
  expect(problemsIn("part X { mass -3 kg }")).toEqual(["impossible «-3 kg»"]);
  expect(problemsIn("part X { mass 3 }")).toEqual(["missing unit «3»"]);
  expect(problemsIn("part X { torque 42 .. 38 N·m dry }")).toEqual(["reversed range «42 .. 38 N·m»"]);
  expect(problemsIn("part X { torque 40 Nm dry }")).toEqual(["style «Nm»"]);
});

test("a name that is not known is no quantity of another kind", () => {
  expect(problemsIn("part X\nprocedure P { step tighten X to Torque }")).toEqual([
    "unknown «Torque», wanted a value or a reading",
  ]);
});

test("a long sum is followed to its end", () => {
  expect(problemsIn(`value A = 1 mm${" + 1 mm".repeat(300)}`)).toEqual([]);
});

test.each([
  ["100 % of 45 ± 2 N·m", "45 ± 2 N·m"],
  ["30 % of 45 ± 2 N·m", "13.5 ± 0.6 N·m"],
  ["50 % of 40 .. 44 N·m", "20 .. 22 N·m"],
  ["50 % of 40 N·m .. 75 % of 40 N·m", "20 .. 30 N·m"],
  ["50 % of 45 N·m", "22.5 N·m"],
])("a share of a band is a band: %s", (written, shown) => {
  const { value } = declared(modelOf(`value V = ${written}`), "value", "V");
  expect(value === null ? null : show(value.quantity)).toBe(shown);
});
