// units.reversed-range: a range whose low end lies above its high end.
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const reversedRange = rule({
  code: "units.reversed-range",
  severity: "error",
  about: "quantity: reversed range",
  page: {
    finds: "A range whose first end lies above its second, after conversion to one unit.",
    why: "Nothing lies between 42 and 38. One of the two ends is mistyped, or they are the wrong way round.",
    fails: "value CoverTorque = 42 .. 38 N·m\n",
    mended: "value CoverTorque = 38 .. 42 N·m\n",
  },
  say: ({ problem: { high, low, mended } }) => ({
    message: "The low end of this range lies above its high end.",
    why: wantedFound(mended, `${low} .. ${high}`),
    remedy: `Write ${mended}, or correct the end that is mistyped.`,
  }),
  fix: ({ span, problem: { mended } }) => [{ title: `Write ${mended}`, edits: [{ span, newText: mended }] }],
});
