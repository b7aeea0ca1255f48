// limits.no-heat-limit: a part that is heated says, or its material says, what it bears.
import { test } from "vitest";
import { expectFindings } from "#harness/check.ts";

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
