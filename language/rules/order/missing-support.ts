// order.missing-support: installing before what the part needs.
import type { Remark } from "../finding.ts";
import { putInBefore } from "../put-in.ts";
import { rule } from "../rule.ts";
import { cameFrom, wantedFound } from "../wording.ts";

export const missingSupport = rule({
  code: "order.missing-support",
  severity: "error",
  about: "missing support",
  page: {
    finds: "A part that is installed before one that it needs, by its declaration.",
    why: "The cover goes on over the bearing. With the cover on first, the bearing cannot go in any more, and the work is done twice.",
    fails: `part Bearing "drive-end bearing"
part Cover "bearing cover" { needs Bearing }

procedure CloseUp "Close the housing" {
  step install Cover
  step install Bearing
}
`,
    mended: `part Bearing "drive-end bearing"
part Cover "bearing cover" { needs Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step install Cover
}
`,
  },
  say: ({ part, needs, declaredAt, since, laterAt }) => {
    const declared: Remark = { message: `${part} needs ${needs}, as declared here`, span: declaredAt };
    const later: readonly Remark[] =
      laterAt === null ? [] : [{ message: `${needs} is installed only here`, span: laterAt.span }];
    const found = since.step === null ? `${needs} is not installed yet` : `${needs} is out since step ${since.step}`;
    return {
      message: `${part} needs ${needs}, which is not installed.`,
      why: wantedFound(`${needs} is installed`, found),
      remedy:
        laterAt?.step == null
          ? `Install ${needs} before this.`
          : `Install ${needs} before this. It comes in step ${laterAt.step}, too late.`,
      witness: cameFrom(since, `${needs} is removed`),
      related: [declared, ...later],
    };
  },
  // What was taken out, or comes later, is put in by a step that is there: where that belongs is for the writer to say.
  fix: (fact) =>
    fact.since.step === null && fact.laterAt === null ? putInBefore([`step install ${fact.needs}`], fact) : [],
});
