// safety.idle: a statement of a hazard that nothing in its scope raises.
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const idle = rule({
  code: "safety.idle",
  severity: "hint",
  about: "idle statement",
  page: {
    finds:
      "A safety statement none of whose hazards anything raises in what follows it in its step, task or procedure, of the hazards that facts can tell: burn, cold, fire, pressure, electric, lifting, crush, cutting, rotating, spring, dropped. A lift with a hoist raises lifting. Silent where work is said in own words, or a line could not be read.",
    why: "Warnings that warn of nothing are read past, and the one that matters with them. Or a fact is missing: what is not declared hot, sharp or live is not checked.",
    fails: example(""),
    mended: example(" { sharp }"),
  },
  say: ({ hazards }) => ({
    message: `Nothing that follows raises ${listed(hazards)}.`,
    why: "No part, energy or consumable that is worked with here is declared with it.",
    remedy: "Declare what raises it, say “raises” in the step, or take the statement out.",
  }),
  fix: ({ span }) => [{ title: "Take this statement out", edits: [{ takeOut: span }] }],
});

function example(properties: string): string {
  return `part Segment "tooth segment"${properties}

procedure FitSegment "Fit the segment" {
  warning cutting "The edges are sharp." avoid "Hold it by its back." wear "cut-resistant gloves"

  step install Segment
}
`;
}
