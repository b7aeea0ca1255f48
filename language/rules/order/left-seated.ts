// order.left-seated: a fastener tightened to seat, and neither loosened nor tightened again.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";

export const leftSeated = rule({
  code: "order.left-seated",
  severity: "error",
  about: "left seated",
  subject: ({ part }) => base(part),
  page: {
    finds: "A fastener that is tightened “to seat”, and up to the end neither loosened nor tightened again.",
    why: "Tightening to seat draws the parts together and no more. Left like that, a packing is crushed, or a joint has a load that nobody asked for.",
    fails: `part Gland "gland"
part GlandNut "gland nut" { secures Gland }

procedure SetGland "Set the gland" {
  step install Gland
  step install GlandNut
  step tighten GlandNut to seat
}
`,
    mended: `part Gland "gland"
part GlandNut "gland nut" { secures Gland }

procedure SetGland "Set the gland" {
  step install Gland
  step install GlandNut
  step tighten GlandNut to seat
  step loosen GlandNut by 1/4 turn
}
`,
  },
  say: ({ part }) => ({
    message: `${part} is tightened to seat here and left like that.`,
    why: "To seat only draws the parts together. The fastener is to be loosened or tightened again after it.",
    remedy: `Loosen ${part}, or tighten it to its final value, before the end.`,
  }),
  // Of several fasteners one line would not be enough.
  fix: ({ part, mendAt, pass, options }) =>
    mendAt === null || pass.length > 0 || options !== undefined || base(part) !== part
      ? []
      : [
          {
            title: `Put in “step tighten ${part}”`,
            edits: [
              { ...("before" in mendAt ? { lineBefore: mendAt.before } : mendAt), newText: `step tighten ${part}` },
            ],
          },
        ],
});
