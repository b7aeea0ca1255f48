// names.use-cycle: files, procedures or values that go round in a circle.
import { rule } from "../rule.ts";

export const useCycle = rule({
  code: "names.use-cycle",
  severity: "error",
  about: "use cycle",
  page: {
    finds:
      "Files that use each other in a circle, procedures that perform each other, and values worked out from each other.",
    why: "A procedure that performs itself, directly or through another, never comes to an end.",
    fails: `part Filter "oil filter"

procedure Look "Look over the filter" {
  step inspect Filter
  perform Bleed
}

procedure Bleed "Bleed the filter" {
  perform Look
}
`,
    mended: `part Filter "oil filter"

procedure Look "Look over the filter" {
  step inspect Filter
  perform Bleed
}

procedure Bleed "Bleed the filter" {
  step bleed Filter
}
`,
  },
  say: ({ what, names }) => ({
    message: {
      use: "These files use each other in a circle.",
      perform: "This procedure comes back to itself.",
      value: "This value is worked out from itself.",
    }[what],
    why: names.join(" → "),
    remedy: {
      use: "Move what both need into a third file.",
      perform: "Take one “perform” out of the circle.",
      value: "Give one of the values as a number.",
    }[what],
  }),
});
