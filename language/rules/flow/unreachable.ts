// flow.unreachable: a step that no path reaches.
import { rule } from "../rule.ts";

export const unreachable = rule({
  code: "flow.unreachable",
  severity: "error",
  about: "unreachable",
  page: {
    finds:
      "A step that no path leads to: behind a stop or a jump, in a branch whose condition can never hold, or in a repeat that is done no time. It is told once for a branch, at its first step.",
    why: "Nobody will ever do this step, though it stands in the text and was approved with it.",
    fails: `option Cracked "the housing is cracked" { yes no }

procedure Look "Look at the housing" {
  when Cracked is yes {
    step "Mark the crack."
    stop "Send the housing back."
    step "Wipe the housing."
  }
  step "Write the report."
}
`,
    mended: `option Cracked "the housing is cracked" { yes no }

procedure Look "Look at the housing" {
  when Cracked is yes {
    step "Wipe the housing."
    step "Mark the crack."
    stop "Send the housing back."
  }
  step "Write the report."
}
`,
  },
  say: ({ why, cause, steps }) => ({
    message:
      steps > 1
        ? `No path leads to this and ${steps - 1} more ${steps === 2 ? "step" : "steps"}.`
        : "No path leads to this step.",
    ...SAYINGS[why],
    related: [{ message: SAYINGS[why].part, span: cause }],
  }),
});

const SAYINGS = {
  stop: {
    why: "The work stops before it.",
    remedy: "Move the step before the stop, or put the stop under a condition.",
    part: "The work stops here",
  },
  jump: {
    why: "The work goes on elsewhere before it.",
    remedy: "Move the step before the jump, or put the jump under a condition.",
    part: "The work goes on elsewhere from here",
  },
  condition: {
    why: "The condition of its branch can never hold.",
    remedy: "Correct the condition, or take the branch out.",
    part: "This can never hold",
  },
  "no pass": {
    why: "The repeat ends before it begins, so it is done no time.",
    remedy: "Write “to” to count upwards, “down to” to count downwards.",
    part: "This repeat is done no time",
  },
} as const;
