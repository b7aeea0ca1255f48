// limits.overheat and limits.no-heat-limit stand on declared values; 250 °F is 121.1 °C (29 CFR 1910.106(a)(19), read).
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const text = (parts: string, steps: string): string =>
  `source Manual "manual"  tool Heater "heater" { heats to 300 °C }
material Steel "steel" { heat limit 200 °C } per Manual "2"
consumable Grease "grease" { heat limit 150 °C } per Manual "2"
${parts}
procedure Warm {
${steps}
  step inspect Heated with Heater
}
part Plate "plate" { material Steel }
procedure Rest { step lubricate Plate with Grease }`.replace("Heated", "Bearing");
const part = (says: string): string => `part Bearing "bearing" { ${says} } per Manual "2"`;
const heat = (range: string, found: boolean): string =>
  `  step heat Bearing to ${range} with Heater${found ? `\n  //                   ${"^".repeat(range.length)} limits.overheat error` : ""}`;

test.each([
  ["heat limit 120 °C", "110 .. 120.1 °C"],
  ["material Steel", "190 .. 201 °C"],
  ["material Steel  heat limit 120 °C", "110 .. 130 °C"],
  ["heat limit 121 °C", "240 .. 250 °F"],
  ["heat limit 120 .. 130 °C", "110 .. 125 °C"],
  ["heat limit 120 °C", "at most 130 °C"],
])("above the limit: %s, %s", (says, range) => {
  expectFindings(text(part(says), heat(range, true)));
});

test.each([
  ["heat limit 120 °C", "110 .. 120 °C"],
  ["material Steel", "190 .. 200 °C"],
  ["material Steel  heat limit 220 °C", "190 .. 210 °C"],
  ["heat limit 122 °C", "240 .. 250 °F"],
  ["heat limit 120 °C", "at least 100 °C"],
])("silent: %s, %s", (says, range) => {
  expectFindings(text(part(says), heat(range, false)));
});

test("by a rise, from the high end of what it has", () => {
  const ambient = "  ambient 15 .. 25 °C\n";
  expectFindings(text(part("heat limit 120 °C"), `${ambient}  step heat Bearing by 95 K with Heater`));
  expectFindings(
    text(
      part("heat limit 120 °C"),
      `${ambient}  step heat Bearing by 96 K with Heater\n  //                   ^^^^ limits.overheat`,
    ),
  );
});

const FIT = `${part("heat limit 200 °C")}
part Shaft "shaft" { heat limit 120 °C }
fit Bearing over Shaft {
  diameter 50 mm
  interference 0 .. 10 µm
}`;

test("what touches it gets as hot, while it touches it", () => {
  const joined = "  step install Shaft\n  step install Bearing over Shaft\n";
  expectFindings(text(FIT, joined + heat("120 .. 140 °C", true)));
  expectFindings(text(FIT, joined + heat("100 .. 120 °C", false)));
  expectFindings(text(FIT, heat("120 .. 140 °C", false)));
});

test("what is on it gets as hot, until it is cleaned off", () => {
  const on = "  step lubricate Bearing with Grease\n  step inspect Bearing\n";
  expectFindings(text(part("material Steel"), on + heat("140 .. 160 °C", true)));
  expectFindings(text(part("material Steel"), `  step apply Grease to Bearing\n${heat("140 .. 160 °C", true)}`));
  expectFindings(text(part("material Steel"), on + heat("140 .. 150 °C", false)));
  expectFindings(text(part("material Steel"), `${on}  step clean Bearing\n${heat("140 .. 160 °C", false)}`));
});

test("it says so, and lowers the range", () => {
  const source = text(part("heat limit 120 °C"), heat("105 .. 130 °C", true));
  expect(told(source, "limits.overheat")).toMatchInlineSnapshot(`
    "Bearing gets too hot.
      Wanted: at most 120 °C
      Found: 130 °C
    → Lower the high end of the range, or heat in another way.
    &4 The heat limit of Bearing is declared here
    + Heat to 105 .. 120 °C"
  `);
  const plain = text(part("heat limit 120 °C"), heat("105 .. 130 °C", false));
  const [found] = findingsIn(plain);
  const mended = found === undefined ? "" : withFix(plain, found);
  expect(mended).toContain("heat Bearing to 105 .. 120 °C with");
  expect(findingsIn(mended)).toEqual([]);
});
