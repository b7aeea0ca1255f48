// limits.flash-point: from 16.7 K (30 °F; 29 CFR 1910.106(a)(19), read) under the flash point a warning, from 15 K an error.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (
  flash: string,
  range: string,
  severity: string | null,
  before = "",
): string => `tool Heater "heater" { heats to 300 °C }
consumable Solvent "solvent" { flash point ${flash} }
part Housing "housing" { heat limit 300 °C }
procedure Warm {
  step apply Solvent to Housing
  step inspect Housing
${before}  step heat Housing to ${range} with Heater
${severity === null ? "" : `  //   ^^^^^^^^^^^^ limits.flash-point ${severity}\n`}}`;

test.each([
  ["100 °C", "60 .. 85 °C", "error"],
  ["100 °C", "60 .. 84.9 °C", "warning"],
  ["100 °C", "60 .. 83.3 °C", "warning"],
  ["100 °C", "60 .. 83.2 °C", null],
  ["212 °F", "140 .. 185 °F", "error"],
  ["212 °F", "140 .. 184 °F", "warning"],
  ["212 °F", "140 .. 181 °F", null],
  ["at least 100 °C", "60 .. 90 °C", "error"],
  ["100 °C", "60 .. 120 °C", "error"],
  ["210 °C", "100 .. 110 °C", null],
])("flash point %s, heated to %s: %s", (flash, range, severity) => {
  expectFindings(text(flash, range, severity));
});

test("silent once it is cleaned off", () => {
  expectFindings(text("100 °C", "60 .. 90 °C", null, "  step clean Housing\n"));
});

test("it says how far is safe", () => {
  expect(told(text("62 °C", "60 .. 80 °C", "error"), "limits.flash-point")).toMatchInlineSnapshot(`
    "Solvent on Housing comes near its flash point.
      The part gets up to 80 °C. The flash point is 62 °C, and at most 45.3 °C is safe.
    → Clean the part before it is heated, or heat to at most 45.3 °C.
    &5 Solvent was put on here
    &2 The flash point of Solvent is declared here"
  `);
});
