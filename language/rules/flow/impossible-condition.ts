// flow.impossible-condition: a `when` that is always false, or an `otherwise` that is never taken.
import { rule } from "../rule.ts";
import { quoted } from "../wording.ts";

export const impossibleCondition = rule({
  code: "flow.impossible-condition",
  severity: "warning",
  about: "impossible condition",
  page: {
    finds:
      "A “when” whose condition can never hold where it stands, or an “otherwise” that is never taken since the cases before it cover all there is.",
    why: "A branch that nobody ever takes is a case that was thought of and got lost.",
    fails: `option Extent "extent of work" { Full Reseal }

procedure Overhaul "Overhaul the valve" {
  step "Look after seat and disc." {
    when Extent is Full {
      do "Lap the seat."
      when Extent is Reseal { do "Clean the disc." }
    }
  }
}
`,
    mended: `option Extent "extent of work" { Full Reseal }

procedure Overhaul "Overhaul the valve" {
  step "Look after seat and disc." {
    when Extent is Full { do "Lap the seat." }
    when Extent is Reseal { do "Clean the disc." }
  }
}
`,
  },
  say: ({ arm, condition }) =>
    arm === "when"
      ? {
          message: `${quoted(condition)} can never hold here.`,
          why: "What leads here leaves no such case.",
          remedy: "Correct the condition, or take the branch out.",
        }
      : {
          message: "This “otherwise” is never taken.",
          why: "The cases before it cover all there is.",
          remedy: "Take it out, or correct the conditions before it.",
        },
});
