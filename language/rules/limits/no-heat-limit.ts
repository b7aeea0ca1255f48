// limits.no-heat-limit: a part is heated, and nobody says what it bears.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";

export const noHeatLimit = rule({
  code: "limits.no-heat-limit",
  severity: "warning",
  about: "no heat limit",
  subject: ({ part }) => base(part),
  page: {
    finds: "A part that is heated, where neither the part nor its material declares a heat limit.",
    why: "Nobody can tell whether the range is safe for the part: seals, cages and hardened steel bear less than plain steel.",
    fails: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 200 °C }
part Bearing "drive-end bearing"

procedure HeatBearing "Heat the bearing" {
  per Manual "6.4"

  step heat Bearing to 105 .. 115 °C with Heater
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 200 °C }
part Bearing "drive-end bearing" { heat limit 120 °C per Manual "6.4.2" }

procedure HeatBearing "Heat the bearing" {
  per Manual "6.4"

  step heat Bearing to 105 .. 115 °C with Heater
}
`,
  },
  say: ({ part }) => ({
    message: `No heat limit is known for ${part}.`,
    why: "Neither the part nor its material says how hot it may become, so the range cannot be checked.",
    remedy: "Declare “heat limit” and the value for the part or its material, with its source.",
  }),
});
