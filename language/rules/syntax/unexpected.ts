// syntax.unexpected: anything that does not fit or stands in the wrong place, with what could stand there.
import { rule } from "../rule.ts";
import { mendTitle, sayMisplaced, sayUnexpected, sayWholeNumber } from "../slip-wording.ts";

export const unexpected = rule({
  code: "syntax.unexpected",
  severity: "error",
  about: ["unexpected", "misplaced", "whole number"],
  page: {
    finds:
      "A word or sign that does not fit where it stands, or one that is missing. The statement it stands in is left out of all further checks; everything else is checked as usual.",
    why: "A line that cannot be read cannot be checked, and a fitter could read it in two ways.",
    fails: 'ring CoverCircle "cover bolt circle" {\n  count 8\n  position 1 12 o\'clock\n}\n',
    mended: 'ring CoverCircle "cover bolt circle" {\n  count 8\n  position 1 at 12 o\'clock\n}\n',
  },
  say: (problem) => {
    if (problem.kind === "misplaced") return sayMisplaced(problem);
    return problem.kind === "whole number" ? sayWholeNumber(problem) : sayUnexpected(problem);
  },
  fix: (problem) => {
    if (problem.kind !== "unexpected") return [];
    const title = mendTitle(problem);
    if (title === null) return [];
    return [{ title, edits: [{ span: problem.span, newText: problem.slip?.mended ?? "" }] }];
  },
});
