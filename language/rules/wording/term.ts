// wording.term: a word for which the shop has approved another.

import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const term = rule({
  code: "wording.term",
  severity: "warning",
  about: "replaced term",
  page: {
    finds:
      "A word that an approved “term” replaces, in any of its forms: plural, possessive, capital, and those of a verb. Words inside of longer ones, in codes and in quotes are left alone.",
    why: "Two words for one thing are two things to somebody who is new, or who reads in a second language.",
    fails: example("casings"),
    mended: example("housings"),
    source: "One word for one thing: ASD-STE100, rules 1.1 and 1.12 (second hand).",
  },
  say: ({ approved, term: declared, words }) => ({
    message: `${quoted(words)} is called ${quoted(approved)} here.`,
    why: "Two words for one thing are two things to somebody who is new.",
    remedy: `Write ${quoted(approved)}.`,
    related: [{ message: "The approved term", span: declared }],
  }),
  fix: ({ approved, article, span }) => [
    {
      title: `Write “${approved}”`,
      edits: [
        ...(article === null ? [] : [{ span: article.span, newText: article.text }]),
        { span, newText: approved },
      ],
    },
  ],
});

function example(word: string): string {
  return `term "housing" not "casing"

procedure LookAtHousings "Look at the housings" {
  step "Look into both ${word} with a lamp."
}
`;
}
