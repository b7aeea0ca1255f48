// limits.no-heat-limit: a part that is heated says, or its material says, what it bears.
import { expect, test } from "vitest";
import { expectFindings, findingsIn } from "#harness/check.ts";

const text = (says: string, step: string, mark = ""): string => `tool Heater "heater" { heats to 300 °C }
material Steel "steel" { heat limit 200 °C }
material Brass "brass" { expansion 18 µm/(m·K) }
part Plate "plate" { material Steel }
part Disc "disc" { material Brass }
part Ring "ring"${says}
procedure Warm {
  step inspect Plate, Disc with Heater
  step ${step}
${mark}}`;
const HEAT = "heat Ring to 80 .. 90 °C with Heater";
const MARK = "  //   ^^^^^^^^^ limits.no-heat-limit warning\n";

test("none of the part, none of its material", () => {
  expectFindings(text("", "heat Ring to 80 .. 90 °C with Heater", MARK));
  expectFindings(text(" { material Brass }", "heat Ring to 80 .. 90 °C with Heater", MARK));
  expectFindings(text("", "heat Ring by 60 K with Heater", MARK));
});

test("silent: one of either, or cooled", () => {
  expectFindings(text(" { heat limit 90 °C }", "heat Ring to 80 .. 90 °C with Heater"));
  expectFindings(text(" { material Steel }", "heat Ring to 80 .. 90 °C with Heater"));
  expectFindings(text("", "cool Ring to -30 .. -20 °C"));
});

test.each([
  ["the part's limit lost its number", text(" { heat limit °C }", HEAT)],
  ["the material's limit lost its number", text(" { material Steel }", HEAT).replace("200 °C", "°C")],
  ["the material lost its first word", text(" { material Steel }", HEAT).replace("material Steel", "Steel")],
  ["the material lost its name", text(" { material Steel }", HEAT).replace("material Steel", "material")],
  ["the material is not known", text(" { material Stel }", HEAT)],
])("silent: %s", (_, damaged) => {
  const codes = findingsIn(damaged).map(({ code }) => code);
  expect(codes).not.toContain("limits.no-heat-limit");
  expect(codes.length).toBeGreaterThan(0);
});

test("of a part whose material is not known, what it says itself counts", () => {
  const codes = findingsIn(text(" {\n  heat limit 85 °C\n  material Stel\n}", HEAT)).map(({ code }) => code);
  expect(codes).toContain("limits.overheat");
});
