// flow.too-large: more steps, with repeats written out, than the limit.
import { rule } from "../rule.ts";

export const tooLarge = rule({
  code: "flow.too-large",
  severity: "error",
  about: "too large",
  page: {
    finds:
      "A procedure that, with its repeats written out, comes to more steps than the limit of 100,000. It is not followed any further.",
    why: "Nobody ticks a hundred thousand steps. Most often a count has a zero too many.",
    fails: `procedure Count "Count the strokes" {
  repeat n from 1 to 1_000_000 { step "Read stroke {n}." }
}
`,
    mended: `procedure Count "Count the strokes" {
  repeat n from 1 to 10 { step "Read stroke {n}." }
}
`,
  },
  say: ({ limit, wanted }) => ({
    message: "This repeat comes to too many steps.",
    why:
      wanted === null
        ? `The limit is ${grouped(limit)} steps.`
        : `It comes to ${grouped(wanted)} steps.\nThe limit is ${grouped(limit)}.`,
    remedy: "Repeat less often, or split the procedure.",
  }),
});

function grouped(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/g, ",");
}
