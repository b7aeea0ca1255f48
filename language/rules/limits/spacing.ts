// limits.spacing: parts that are to sit equally far apart, and do not.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const spacing = rule({
  code: "limits.spacing",
  severity: "error",
  about: "spacing",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A part that seats “equally spaced” on a ring, put into a position that is not in step with those that are in, or into a ring whose count does not divide by as many as the procedure puts in.",
    why: "Guide pins side by side let the cover tilt and jam. Weights that are not spaced shake the machine.",
    fails: `ring CoverCircle "cover bolt circle" {
  count 8
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Cover "bearing cover"
temporary part GuidePin[1..2] "guide pin" { seats in CoverCircle equally spaced }

procedure CloseCover "Close the cover" {
  step install GuidePin[1] in CoverCircle[1]
  step install GuidePin[2] in CoverCircle[4]
  step install Cover
  step remove GuidePin[all]
}
`,
    mended: `ring CoverCircle "cover bolt circle" {
  count 8
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Cover "bearing cover"
temporary part GuidePin[1..2] "guide pin" { seats in CoverCircle equally spaced }

procedure CloseCover "Close the cover" {
  step install GuidePin[1] in CoverCircle[1]
  step install GuidePin[2] in CoverCircle[5]
  step install Cover
  step remove GuidePin[all]
}
`,
    source: "As many parts can be equally spaced on a ring as divide its count (arithmetic).",
  },
  say: ({ part, place, ring, count, wanted, with: other, could, declaredAt }) => ({
    message:
      other === null
        ? `${wanted} of these cannot be equally spaced on ${ring}.`
        : `${part} and ${other.part} are not equally spaced.`,
    why:
      other === null
        ? `${ring} has ${count} positions, and ${wanted} does not divide ${count}.`
        : `${other.part} is in ${other.place}, and ${part} goes into ${place}. On ${count} positions ${wanted} of them stand ${count / wanted} apart.`,
    remedy:
      other === null
        ? "Put in as many as divide the count, or seat the part without “equally spaced”."
        : `Put ${part} into ${ring}[${listed(could.map(String))}].`,
    related: [{ message: "Equal spacing is asked for here", span: declaredAt }],
  }),
});
