// wording.many-actions: one step that asks for several things, one after the other.

import { rule } from "../rule.ts";
import { listed, quoted } from "../wording.ts";

export const manyActions = rule({
  code: "wording.many-actions",
  severity: "information",
  about: "many actions",
  page: {
    finds:
      "Own words of a step that ask for several actions which are not done together. What is held while something else is done, what two verbs do to one thing (“close and lock the valve”), and looking at what the first does count as one.",
    why: "A step is ticked once. Whoever is called away between two actions comes back to a tick that says both are done.",
    fails: example(`step "Drain the sump and clean the strainer."`),
    mended: example(`step "Drain the sump."
  step "Clean the strainer."`),
    source:
      "One action in each step: MIL-STD-2106A, appendix B (read). One instruction in each sentence: ASD-STE100 (second hand).",
  },
  say: ({ verbs }) => ({
    message: `This step asks for ${COUNTS[verbs.length] ?? "many"} actions: ${listed(
      verbs.map((verb) => quoted(verb.toLowerCase())),
      "and",
    )}.`,
    why: "Somebody who is called away after the first cannot see by the words what is left to do.",
    remedy: "Give each action a step of its own.",
  }),
});

const COUNTS = ["no", "one", "two", "three", "four", "five"];

function example(steps: string): string {
  return `procedure CleanSump "Clean the sump" {
  ${steps}
}
`;
}
