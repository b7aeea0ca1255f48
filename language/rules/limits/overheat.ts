// limits.overheat: a heating above what the part, what it touches, or what is on it bears.
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const overheat = rule({
  code: "limits.overheat",
  severity: "error",
  about: "overheat",
  subject: ({ part, of }) => `${base(part)} ${base(of)}`,
  page: {
    finds:
      "A heating range whose high end lies above a heat limit: that of the part, else of its material, of a part it is fitted to at that time, or of a consumable that was put on it.",
    why: "A bearing that gets too hot loses its hardness and looks as good as before. Grease burns, adhesive lets go.",
    fails: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 200 °C }
part Bearing "drive-end bearing" { heat limit 120 °C per Manual "6.4.2" }

procedure HeatBearing "Heat the bearing" {
  step heat Bearing to 105 .. 130 °C with Heater
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 200 °C }
part Bearing "drive-end bearing" { heat limit 120 °C per Manual "6.4.2" }

procedure HeatBearing "Heat the bearing" {
  step heat Bearing to 105 .. 115 °C with Heater
}
`,
    source:
      "Published limits for heating a bearing differ (121, 130 and 135 °C), so that the limit is what the part declares, with its own source.",
  },
  say: ({ part, of, as, hottest, limit, declaredAt }) => ({
    message:
      as === "part" || as === "material" ? `${part} gets too hot.` : `${of} gets too hot when ${part} is heated.`,
    why: `${wantedFound(`at most ${show(limit).replace(/^at most /, "")}`, show(hottest))}${WHY[as](part, of)}`,
    remedy: "Lower the high end of the range, or heat in another way.",
    related: [{ message: `The heat limit of ${of} is declared here`, span: declaredAt }],
  }),
  fix: (fact) => (fact.instead === null ? [] : putInstead(`Heat to ${fact.instead.text}`, fact)),
});

const WHY: Readonly<Record<"part" | "material" | "mate" | "consumable", (part: string, of: string) => string>> = {
  part: () => "",
  material: (part, of) => `\n${part} is made of ${of} and has no limit of its own.`,
  mate: (part, of) => `\n${of} touches ${part} and gets as hot.`,
  consumable: (part, of) => `\n${of} is on ${part}.`,
};
