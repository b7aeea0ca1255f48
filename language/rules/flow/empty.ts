// flow.empty: a task, repeat, branch or block in any order that holds nothing to do.
import { rule } from "../rule.ts";

export const empty = rule({
  code: "flow.empty",
  severity: "warning",
  about: "empty",
  page: {
    finds:
      "A task, repeat, branch or “in any order” without a step, whatever notes and safety statements stand in it; inside a step, one without a line. Of one in the other, the outermost is told.",
    why: "Something was to be done here and got lost, or a heading stands on the checklist with nothing under it.",
    fails: `option Extent "extent of work" { Full Reseal }
part Seal "shaft seal"

procedure Overhaul "Overhaul the pump" {
  task Seals "Look after the seals" {
    step inspect Seal
  }
  when Extent is Full {
    note "The bearing is looked after here."
  }
}
`,
    mended: `option Extent "extent of work" { Full Reseal }
part Seal "shaft seal"

procedure Overhaul "Overhaul the pump" {
  task Seals "Look after the seals" {
    step inspect Seal
  }
  when Extent is Full {
    note "The bearing is looked after here."
    step "Feel for play in the bearing."
  }
}
`,
  },
  say: ({ what }) => ({
    message: WORDS[what],
    why: "What was to be done here is not said.",
    remedy: "Put in what is to be done, or take it out.",
  }),
});

const WORDS = {
  task: "This task holds no step.",
  repeat: "This repeat holds nothing to do.",
  when: "This branch holds nothing to do.",
  otherwise: "This branch holds nothing to do.",
  "in any order": "This block holds nothing to do.",
} as const;
