// limits.overload: a lift above what the tool may lift, or the people.
import type { LoadFact } from "#analysis/limits/limit-fact.ts";
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { factorsText, listed } from "../wording.ts";

export const overload = rule({
  code: "limits.overload",
  severity: "error",
  about: "overload",
  gravity: ({ how }) => (how === "hands with care" ? "warning" : "error"),
  subject: ({ how, part, tool }) => `${base(part)} ${tool ?? (how === "leg angle" ? "on legs" : "by hand")}`,
  page: {
    finds:
      "A part lifted or supported with all that is installed on it, above what the tool lifts; or lifted by hand above 23 kg for each of the crew, or what the shop sets with “threshold lifting”. A warning above two thirds of that sum for two people, above half for three and more; one person is counted where no crew is declared. A hand lift that says its reach, its heights or how far the body is turned has a lower limit. On a sling, as “on 2 legs at 60°”, the load on one leg is held against “each leg lifts”; more than two legs count as two, and an angle under 30° to the horizontal is refused.",
    why: "A hoist that is overloaded drops what hangs on it. A back that is overloaded does not come back.",
    fails: `tool Hoist "chain hoist" { lifts 25 kg }
part Cover "bearing cover" { mass 31 kg }

procedure LiftCover "Lift the cover" {
  warning lifting, crush "The cover is heavy and can swing." avoid "Stay out from under it."

  step lift Cover with Hoist
  step install Cover
}
`,
    mended: `tool Hoist "chain hoist" { lifts 250 kg }
part Cover "bearing cover" { mass 31 kg }

procedure LiftCover "Lift the cover" {
  warning lifting, crush "The cover is heavy and can swing." avoid "Stay out from under it."

  step lift Cover with Hoist
  step install Cover
}
`,
    source:
      "23 kg for one person, times 25 cm/H, 1 − 0.003·|V − 75 cm|, 0.82 + 4.5 cm/D and 1 − 0.0032·A for reach, height, travel and twist, none left beyond 63 cm, 175 cm, 175 cm and 135°: NIOSH 94-110 (second hand). What several may lift together: HSE guidance (read). m/(n·sin θ) on a leg: ASME B30.9 (from memory: not verified). Masses as declared; attachment and centre of gravity are not looked at.",
  },
  say: (fact) => ({
    message: messageOf(fact),
    why: whyOf(fact),
    remedy: remedyOf(fact),
    ...(fact.limitAt === null ? {} : { related: [{ message: "The limit is declared here", span: fact.limitAt }] }),
  }),
  fix: (fact) => (fact.fitting === null ? [] : putInstead(`Use ${fact.fitting}`, fact)),
});

type Overload = Extract<LoadFact, { kind: "overload" }>;

function messageOf({ how, part, tool, people, legs }: Overload): string {
  switch (how) {
    case "tool":
      return `${part} is too heavy for ${tool}.`;
    case "leg":
      return `${part} is too heavy for a leg of ${tool}.`;
    case "leg angle":
      return `${part} may not hang on legs at ${legs === null ? "" : show(legs.angle)}.`;
    default:
      return `${part} is ${how === "hands" ? "too " : ""}heavy for ${people === 1 ? "one person" : `${people} people`}.`;
  }
}

/** With the computation in one line, in the writer's units. */
function whyOf({ how, mass, with: on, limit, legs, lowered }: Overload): string {
  const load = `The load is ${show(mass)}${on.length === 0 ? "" : `, with ${listed(on, "and")} on it`}.`;
  const most = `The limit is ${bare(limit)}.`;
  if (how === "leg angle")
    return `Legs hang at ${show(limit)} to the horizontal. The flatter they are, the more each of them carries.`;
  if (legs !== null && legs.load !== null) {
    const carrying = Math.min(legs.count, 2);
    const counted = carrying < legs.count ? ` Of ${legs.count} legs two may have to carry all.` : "";
    const one = `${show(legs.load)} on a leg = ${show(mass)}/(${carrying}·sin ${show(legs.angle)})`;
    return `${load}${counted}\n${one}\nA leg lifts ${show(limit)}.`;
  }
  if (lowered === null) return `${load} ${most}`;
  return `${load} ${most}\nOne person may lift ${bare(lowered.one)} so. Lowered by: ${factorsText(lowered.factors)}`;
}

function bare(limit: Quantity): string {
  return show(limit).replace(/^at most /, "");
}

function remedyOf({ how, fitting, lowered }: Overload): string {
  if (fitting !== null) return `Use ${fitting}.`;
  switch (how) {
    case "tool":
      return "Name a tool that lifts as much.";
    case "leg":
      return "Hang it on steeper legs, or name a sling that lifts as much.";
    case "leg angle":
      return "Hang it on longer legs, so that they stand steeper.";
    default:
      return lowered === null
        ? "Lift it with a hoist, or with more people."
        : "Take it closer and turn less; or lift it with a hoist, or with more people.";
  }
}
