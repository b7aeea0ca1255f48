// limits.too-cool-to-fit: the heated part is not large enough over its mate, or the cooled one not small enough in it.
import type { HeatFact } from "#analysis/limits/limit-fact.ts";
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, ZERO } from "#quantity/rational.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { timeText } from "../wording.ts";

export const tooCoolToFit = rule({
  code: "limits.too-cool-to-fit",
  severity: "error",
  about: "too cool to fit",
  subject: ({ part, mate }) => `${base(part)} ${base(mate)}`,
  page: {
    finds:
      "A part that is heated or cooled to go together with its mate, where the growth at the worst ends of all bands is less than the largest interference and the slip clearance. What the part loses on the way by its “cools” is taken off, for the time that “within” allows, or else that the steps take.",
    why: "The part stops halfway and seizes there. Then it comes off with a puller, or not at all.",
    fails: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 150 °C }
material Steel "carbon steel" {
  expansion 11.7 µm/(m·K)
  heat limit 200 °C per Manual "6.4.2"
}
part Shaft "pump shaft" { material Steel }
part Bearing "drive-end bearing" { material Steel }
fit Bearing over Shaft {
  diameter 60 mm
  interference 11 .. 36 µm per Manual "6.4.2"
  slip clearance 15 µm
}

procedure FitBearing "Fit the bearing" {
  ambient 15 .. 25 °C
  begin with Shaft is installed

  warning burn "The bearing can burn skin."
    avoid "Do not touch it with bare hands."
    wear "heat-resistant gloves"

  step heat Bearing to 75 .. 85 °C with Heater
  step install Bearing over Shaft
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Heater "induction heater" { heats to 150 °C }
material Steel "carbon steel" {
  expansion 11.7 µm/(m·K)
  heat limit 200 °C per Manual "6.4.2"
}
part Shaft "pump shaft" { material Steel }
part Bearing "drive-end bearing" { material Steel }
fit Bearing over Shaft {
  diameter 60 mm
  interference 11 .. 36 µm per Manual "6.4.2"
  slip clearance 15 µm
}

procedure FitBearing "Fit the bearing" {
  ambient 15 .. 25 °C
  begin with Shaft is installed

  warning burn "The bearing can burn skin."
    avoid "Do not touch it with bare hands."
    wear "heat-resistant gloves"

  step heat Bearing to 100 .. 110 °C with Heater
  step install Bearing over Shaft
}
`,
    source:
      "d·[αo(To − 20 °C) − αi(Ti − 20 °C)], thermal expansion along a straight line; lengths at 20 °C as ISO 1 has them (from memory: not verified). Measure part and mate at contact.",
  },
  say: (fact) => {
    const { how, part, mate, temperature, growth, wanted, lost, ambientTaken, installAt, fitAt } = fact;
    const heated = how === "heated";
    const taken = ambientTaken ? "\nNo ambient temperature is declared: 20 °C is taken." : "";
    return {
      message: heated ? `${part} is too cool to go over ${mate}.` : `${part} is not cold enough to go into ${mate}.`,
      why: `${heated ? `The bore is ${larger(growth)}` : `There is ${show(growth)} more room`} at ${show(temperature)}, ${show(wanted)} wanted.${lossOf(fact)}${taken}`,
      remedy: lost
        ? `Install it right after it is heated, in the same task; or declare “cools” and the rate of ${part}, so that the loss is counted.`
        : remedyOf(fact),
      related: [
        { message: `${part} and ${mate} go together here`, span: installAt },
        { message: "The fit is declared here", span: fitAt },
      ],
    };
  },
  fix: (fact) =>
    fact.instead === null ? [] : putInstead(`${fact.how === "heated" ? "Heat" : "Cool"} to ${fact.instead.text}`, fact),
});

function lossOf({ lost, cooling }: Fact): string {
  if (lost)
    return "\nIt is heated far enough, but after a wait or the end of the task nothing says how much of that is left.";
  if (cooling === null || cooling.seconds === 0) return "";
  return `\nIt loses ${show(cooling.rate)} for ${timeText(cooling.seconds)} on the way.`;
}

function larger(growth: Quantity): string {
  const end = growth.nominal ?? growth.low;
  return end !== null && cmp(end.base, ZERO) <= 0 ? "no larger" : `${show(growth)} larger`;
}

function remedyOf({ how, needed, barred }: Fact): string {
  const heated = how === "heated";
  if (needed === null) return "No temperature is enough: press the part, or compare the fit with the drawing.";
  return barred === undefined ? `${heated ? "Heat" : "Cool"} to ${show(needed)}.` : forbidden(heated, needed, barred);
}

type Fact = Omit<Extract<HeatFact, { readonly kind: "too cool to fit" }>, "pass" | "more" | "options">;
type Barred = NonNullable<Fact["barred"]>;

/** What one limit asks for and another forbids is never proposed. */
function forbidden(heated: boolean, needed: Quantity, { by, of, limit }: Barred): string {
  const wanted = `It would have to be ${heated ? "heated" : "cooled"} to ${show(needed)}`;
  return by === "part"
    ? `${wanted}, and ${of} bears no more than ${show(limit).replace(/^at most /, "")}: press the part, cool its mate as well, or compare the fit with the drawing.`
    : `${wanted}, and ${of} ${heated ? "heats" : "cools"} to ${show(limit)}: name a tool that gets there, press the part, or ${heated ? "cool" : "heat"} its mate as well.`;
}
