// syntax.decimal-comma: `13,5 N·m` in a place that takes one value.
import { rule } from "../rule.ts";

export const decimalComma = rule({
  code: "syntax.decimal-comma",
  severity: "error",
  about: "decimal comma",
  page: {
    finds:
      "A number written with a comma where one value belongs. It is read as it was meant, so that nothing else is reported for it; where the comma may also part thousands, as in “1,000”, it is not read.",
    why: "A comma also parts the stages of a list: “13,5” could be thirteen and a half or thirteen, then five.",
    fails: 'part Cover "bearing cover" { mass 13,5 kg }\n',
    mended: 'part Cover "bearing cover" { mass 13.5 kg }\n',
  },
  say: ({ text, mended, whole }) =>
    whole === null
      ? {
          message: `“${text}” has a comma where a point belongs.`,
          why: "A comma parts the values of a list.",
          remedy: `Write ${mended}.`,
        }
      : {
          message: `The comma in “${text}” can be read in more than one way.`,
          why: "It may part thousands, stand for the decimal point, or part two values.",
          remedy: `Write ${whole} or ${mended}, whichever is meant.`,
        },
  fix: ({ span, mended, whole }) =>
    [whole, mended]
      .filter((number) => number !== null)
      .map((number) => ({ title: `Write ${number}`, edits: [{ span, newText: number }] })),
});
