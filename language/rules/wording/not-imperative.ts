// wording.not-imperative: an instruction that does not begin with what is to be done.

import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const notImperative = rule({
  code: "wording.not-imperative",
  severity: "information",
  about: "not imperative",
  page: {
    finds:
      "Own words of a step that do not begin with a verb in the imperative. A condition, a place or a means may come first. Verbs come from a closed list; those of the shop are added with “verb”. Where the lists do not tell, nothing is said. An order in the passive is told of as that (wording.passive).",
    why: "Who reads only the first words has to know what to do. A statement leaves open who does it, and whether it is still to be done.",
    fails: example("The strainer is for the fitter to clean."),
    mended: example("Clean the strainer."),
    source: "Begin with the verb: MIL-STD-2106A, appendix B (read).",
  },
  say: ({ word, mayBeVerb }) => ({
    message: `This instruction begins with ${quoted(word)}, not with what is to be done.`,
    why: "A statement leaves open who does it, and whether it is still to be done.",
    remedy: mayBeVerb
      ? `Begin with the verb. If ${quoted(word)} is one in your shop, add it to the library: verb "${word.toLowerCase()}".`
      : "Begin with the verb.",
  }),
});

function example(words: string): string {
  return `procedure CleanSump "Clean the sump" {
  step "${words}"
}
`;
}
