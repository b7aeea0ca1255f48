// wording.vague: words that leave open how much, how well, or whether at all.

import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const vague = rule({
  code: "wording.vague",
  severity: "information",
  about: "vague",
  page: {
    finds:
      "Words such as “as required”, “properly”, “if necessary” or “sufficient” in a sentence that gives no criterion; in a description only what it asks for, as “sufficient” does. A quantity, a mark or line, a document to look in, “until …” or what it must be enough for are criteria.",
    why: "Two people do two different things, and both have followed the procedure.",
    fails: example("Put sufficient grease on the bearing."),
    mended: example("Put 20 g of grease on the bearing."),
  },
  say: ({ words }) => ({
    message: `${quoted(words)} is for everyone to decide.`,
    why: "Two people do two different things, and both have followed the procedure.",
    remedy: "Say how much, by which limit, or how it is seen; else leave it out.",
  }),
});

function example(words: string): string {
  return `procedure GreaseBearing "Grease the bearing" {
  step "${words}"
}
`;
}
