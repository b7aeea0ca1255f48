// order.declared: an `after` or `before` that the sequence breaks.
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const declared = rule({
  code: "order.declared",
  severity: "error",
  about: "declared",
  page: {
    finds:
      "A step that says “after” or “before” another, where the order of the text, or a way back or ahead, breaks that.",
    why: "Such a line is written where the order matters and does not show. When steps are moved later, it is what still knows.",
    fails: `part Shaft "pump shaft"

procedure Prepare "Prepare the shaft" {
  step CheckShaft {
    inspect Shaft
    after CleanShaft
  }
  step CleanShaft { clean Shaft }
}
`,
    mended: `part Shaft "pump shaft"

procedure Prepare "Prepare the shaft" {
  step CleanShaft { clean Shaft }
  step CheckShaft {
    inspect Shaft
    after CleanShaft
  }
}
`,
  },
  say: ({ step, other, wanted, otherSpan }) => ({
    message:
      wanted === "after"
        ? `${step} comes before ${other}, not after it.`
        : `${step} comes after ${other}, not before it.`,
    why:
      wanted === "after"
        ? wantedFound(`${other}, then ${step}`, `${step}, then ${other}`)
        : wantedFound(`${step}, then ${other}`, `${other}, then ${step}`),
    remedy: `Move one of the two, or take out “${wanted} ${other}”.`,
    related: [{ message: `${other} stands here`, span: otherSpan }],
  }),
});
