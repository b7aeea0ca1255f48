// limits.flash-point: heating a part that carries a consumable near to its flash point, or above.
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import { rule } from "../rule.ts";

export const flashPoint = rule({
  code: "limits.flash-point",
  severity: "error",
  about: "flash point",
  gravity: ({ how }) => (how === "reached" ? "error" : "warning"),
  subject: ({ part, consumable }) => `${base(part)} ${consumable}`,
  page: {
    finds:
      "A part heated with something on it that has a flash point: an error from 15 K under the flash point upward, a warning from 16.7 K under it. What was cleaned off is gone.",
    why: "Near its flash point the vapour over a liquid catches fire from a spark. A flash point is measured in a small cup, so that a part in the shop gets a margin.",
    fails: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 150 °C }
consumable Solvent "solvent" { flash point 62 °C }
part Housing "bearing housing" { heat limit 150 °C per Manual "6.4.2" }

procedure HeatHousing "Heat the housing" {
  warning fire "Vapour of the solvent can catch fire." avoid "Keep flames and sparks away."

  step apply Solvent to Housing
  step heat Housing to 60 .. 80 °C with Heater
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 150 °C }
consumable Solvent "solvent" { flash point 62 °C }
part Housing "bearing housing" { heat limit 150 °C per Manual "6.4.2" }

procedure HeatHousing "Heat the housing" {
  warning fire "Vapour of the solvent can catch fire." avoid "Keep flames and sparks away."

  step apply Solvent to Housing
  step inspect Housing
  step clean Housing
  step heat Housing to 60 .. 80 °C with Heater
}
`,
    source:
      "29 CFR 1910.106(a)(19) has 30 °F (16.7 K) under the flash point (read); the 15 K are a rule of this project.",
  },
  say: ({ part, consumable, hottest, flashPoint: point, most, declaredAt, since }) => ({
    message: `${consumable} on ${part} comes near its flash point.`,
    why: `The part gets up to ${show(hottest)}. The flash point is ${show(point)}, and ${show(most)} is safe.`,
    remedy: `Clean the part before it is heated, or heat to ${show(most)}.`,
    related: [
      { message: `${consumable} was put on here`, span: since },
      { message: `The flash point of ${consumable} is declared here`, span: declaredAt },
    ],
  }),
});
