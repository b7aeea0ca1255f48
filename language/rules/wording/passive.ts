// wording.passive: an instruction that says what is done, not what to do.

import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const passive = rule({
  code: "wording.passive",
  severity: "information",
  about: "passive",
  page: {
    finds:
      "An order in the passive in the own words of a step: “must be removed”, “is to be cleaned”, “is tightened”. A condition that leads up to the order, and what is to be checked, may be in the passive.",
    why: "The passive does not say who does it, and “is tightened” can be read as done already.",
    fails: example("The strainer must be cleaned."),
    mended: example("Clean the strainer."),
    source: "Instructions in the imperative, not in the passive: ASD-STE100, rule 3.6 (second hand).",
  },
  say: ({ words }) => ({
    message: `${quoted(words)} does not say who does it.`,
    why: "The passive can also be read as done already.",
    remedy: "Begin with the verb, as in “Clean the strainer.”",
  }),
});

function example(words: string): string {
  return `procedure CleanSump "Clean the sump" {
  step "${words}"
}
`;
}
