// syntax.dash-range: `38–42` for a range, whichever dash it is.
import { rule } from "../rule.ts";

export const dashRange = rule({
  code: "syntax.dash-range",
  severity: "error",
  about: "dash range",
  page: {
    finds: "A range written with a dash, a hyphen or three points. It is read as the range that was meant.",
    why: "A dash beside a number can be read as a minus sign: “38–42” and “38 - 42” look alike on a greasy print.",
    fails: 'tool Wrench "torque wrench" { torque 8–60 N·m }\n',
    mended: 'tool Wrench "torque wrench" { torque 8 .. 60 N·m }\n',
  },
  say: ({ text, mended }) => ({
    message: `The range “${text}” is written with ${/\.\.\.|…/.test(text) ? "three points" : "a dash"}.`,
    why: "A range is written with two points; a dash beside a number can be read as a minus sign.",
    remedy: `Write ${mended}.`,
  }),
  fix: ({ span, mended }) => [{ title: `Write ${mended}`, edits: [{ span, newText: mended }] }],
});
