// order.not-installed: removing, tightening or loosening what is not installed.
import { rule } from "../rule.ts";
import { cameFrom, done } from "../wording.ts";

export const notInstalled = rule({
  code: "order.not-installed",
  severity: "error",
  about: "not installed",
  page: {
    finds: "A part that is removed, tightened or loosened where it is not installed.",
    why: "At the start of a procedure every part is taken to lie on the bench, unless “begin with” says otherwise. A line that cannot be done stops the fitter, who then looks for what was missed.",
    fails: `part Cover "bearing cover"

procedure Open "Open the housing" {
  finish with Cover is removed
  step remove Cover
}
`,
    mended: `part Cover "bearing cover"

procedure Open "Open the housing" {
  begin with Cover is installed
  finish with Cover is removed
  step remove Cover
}
`,
  },
  say: ({ part, verb, by, since }) => ({
    message:
      by === null
        ? `${part} is not installed, so it cannot be ${done(verb)}.`
        : `${by} cannot be ${done(verb)}: ${part}, which it secures, is not installed.`,
    why: since.step === null ? `${part} is not installed at the start.` : `${part} is out since step ${since.step}.`,
    remedy: `Install ${part} before this, or say “begin with ${part} is installed”.`,
    witness: cameFrom(since, `${part} is removed`),
  }),
});
