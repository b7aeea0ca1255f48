// wording.long-sentence: more words in one sentence than are taken in at the bench.

import { rule } from "../rule.ts";

export const longSentence = rule({
  code: "wording.long-sentence",
  severity: "information",
  about: "long sentence",
  page: {
    finds:
      "A sentence of more than 20 words in an instruction, or of more than 25 in a note, a reason or what a statement warns of. A number with its unit counts as one word, and so does a word with a hyphen. Titles and labels are left alone, and so are texts that are not English.",
    why: "Whoever works reads a line, looks away, and does what is still in mind. The end of a long sentence is not.",
    fails: example(
      `step "Turn the jack screw by hand until the belt hangs slack between the two pulleys and the mark on the arm stands below the line."`,
    ),
    mended: example(`step "Turn the jack screw by hand until the belt hangs slack between the two pulleys."`),
    source: "At most 20 words in an instruction, 25 in a description: ASD-STE100, rules 5.1 and 6.2 (second hand).",
  },
  say: ({ most, use, words }) => ({
    message: `This sentence has ${words} words.`,
    why:
      use === "instruction"
        ? `An instruction of more than ${most} words is not remembered on the way to the work.`
        : `More than ${most} words in a sentence are hard to take in at the bench.`,
    remedy: "Make two sentences of it, or leave out what the reader does not need here.",
  }),
});

function example(step: string): string {
  return `procedure SlackenBelt "Slacken the belt" {
  ${step}
}
`;
}
