// How a change of a value is told: differences as fine as what they lie between, both widths of a band in one unit, which side of a
// limit. Source: outputs.md, Review: “old and new in both unit systems, the difference and the per cent”. Figures worked out by hand.
import { describe, expect, test } from "vitest";
import { reviewed } from "./compare-texts.ts";

function told(text: (value: string) => string, old: string, now: string): readonly string[] {
  return reviewed({ "a.sprag": text(old) }, { "a.sprag": text(now) }).changes.map(({ message }) => message);
}

const gap = (value: string): string => `tool Feeler "feeler gauge" { measures 0 .. 100 mm }
procedure Look "Look" { step { check "Gap" with Feeler expect at most ${value} record } }
`;
const bolt = (value: string): string => `part Cover "cover"
part Bolt "bolt" { secures Cover }
tool Wrench "torque wrench" { torque 1 .. 200 N·m }
procedure Close "Close" {
  begin with Cover is installed
  step install Bolt
  step tighten Bolt to ${value} with Wrench
}
`;
const heat = (value: string): string => `material Steel "steel" { heat limit 120 °C }
part Ring "ring" { material Steel }
tool Heater "heater" { heats to 200 °C }
procedure Warm "Warm" {
  warning burn "The ring is hot." avoid "Wear gloves." wear "gloves"
  step heat Ring to ${value} with Heater
}
`;

describe("differences", () => {
  test("as fine as the finer of the two values", () => {
    expect(told(gap, "0.6 mm", "6 mm")[0]).toContain(": +5.4 mm (+900 %)");
  });

  test("between two units never nothing", () => {
    // 44 N·m is 32.453 lbf·ft: 0.453 more than 32 lbf·ft, 1.4 %.
    expect(told(bolt, "40 .. 44 N·m", "28 .. 32 lbf·ft")[0]).toMatch(/high end −0\.5 lbf·ft \(−1\.4 %\)/);
  });

  test("both widths of a band in the new unit", () => {
    // 20 °F are 11.1 K.
    expect(told(heat, "200 .. 220 °F", "90 .. 110 °C")[0]).toContain("band widened from 11 K to 20 K");
    expect(told(heat, "90 .. 110 °C", "200 .. 220 °F")[0]).toContain("band narrowed from 36 °F to 20 °F");
  });

  test("widths that differ less than their last digit get one more", () => {
    // 6 N·m are 4.4254 lbf·ft.
    expect(told(bolt, "40 .. 46 N·m", "28 .. 32 lbf·ft")[0]).toContain("band narrowed from 4.4 lbf·ft to 4.0 lbf·ft");
  });
});

describe("the heat limit", () => {
  test.each([
    ["105 .. 115 °C", "105 .. 118 °C", "Ring: 5 K → 2 K below the heat limit of Steel."],
    ["105 .. 115 °C", "105 .. 125 °C", "Ring: 5 K below → 5 K above the heat limit of Steel."],
    ["105 .. 125 °C", "105 .. 115 °C", "Ring: 5 K above → 5 K below the heat limit of Steel."],
    ["105 .. 125 °C", "105 .. 130 °C", "Ring: 5 K → 10 K above the heat limit of Steel."],
  ])("%s → %s", (old, now, text) => {
    expect(told(heat, old, now)[0]).toContain(text);
  });
});

test("a value that is written another way stands once", () => {
  const messages = told(bolt, "30 %, 60 %, 100 % of 60 N·m", "18 N·m, 36 N·m, 60 N·m");
  expect(messages).toHaveLength(1);
  expect(messages[0]).toMatch(/restated, the value kept: 18 N·m [^→]*$/);
});
