// limits.overload: a lift above what the tool may lift, or the people.
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const overload = rule({
  code: "limits.overload",
  severity: "error",
  about: "overload",
  gravity: ({ how }) => (how === "hands with care" ? "warning" : "error"),
  subject: ({ part, tool }) => `${base(part)} ${tool ?? "by hand"}`,
  page: {
    finds:
      "A part lifted or supported with all that is installed on it, above what the tool lifts; or lifted by hand above 23 kg for each of the crew, or what the shop sets with “threshold lifting”. A warning above two thirds of that sum for two people, above half for three and more. Where no crew is declared one person is counted.",
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
      "23 kg for one person: NIOSH 94-110 (read where others quote it); what several may lift together: HSE guidance (read). Masses as declared; attachment and centre of gravity are not looked at.",
  },
  say: ({ how, part, mass, with: on, limit, tool, people, limitAt, fitting }) => {
    const crew = people === 1 ? "one person" : `${people} people`;
    const load = `${show(mass)}${on.length === 0 ? "" : `, with ${listed(on, "and")} on it`}`;
    return {
      message:
        how === "tool"
          ? `${part} is too heavy for ${tool}.`
          : `${part} is ${how === "hands" ? "too " : ""}heavy for ${crew}.`,
      why: `The load is ${load}. The limit is ${show(limit).replace(/^at most /, "")}.`,
      remedy:
        how === "tool"
          ? fitting === null
            ? "Name a tool that lifts as much."
            : `Use ${fitting}.`
          : "Lift it with a hoist, or with more people.",
      ...(limitAt === null ? {} : { related: [{ message: "The limit is declared here", span: limitAt }] }),
    };
  },
  fix: (fact) => (fact.fitting === null ? [] : putInstead(`Use ${fact.fitting}`, fact)),
});
