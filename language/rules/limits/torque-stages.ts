// limits.torque-stages: stages of a torque that fall, or that end short of the final value.
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const torqueStages = rule({
  code: "limits.torque-stages",
  severity: "error",
  about: "torque stages",
  subject: ({ part }) => part,
  page: {
    finds:
      "Stages of tightening in which one is lower than the one before it, or in which the last is not the final value: all of what the shares are of, or the torque that the part declares. The last stage may be repeated. Silent where a later line tightens the same fastener further.",
    why: "Stages bring a joint down evenly. One that falls does nothing, for the fastener is tighter already, and a last one that stops short leaves the joint loose.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 45 ± 4 N·m, 30 N·m, 45 ± 4 N·m with Wrench
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 30 N·m, 45 ± 4 N·m with Wrench
}
`,
    source: "Rising passes up to the full torque are the practice of ASME PCC-1 (second hand).",
  },
  say: ({ how, part, stage, other }) =>
    how === "falls"
      ? {
          message: `The stages for ${part} fall.`,
          why: `${show(stage)} comes after ${show(other)}. The fastener is tighter than that already.`,
          remedy: "Put the stages in rising order.",
        }
      : {
          message: `The last stage for ${part} is not the final torque.`,
          why: wantedFound(show(other), show(stage)),
          remedy: `End with the final torque, ${show(other)}.`,
        },
  fix: (fact) => (fact.instead === null ? [] : putInstead(`Write the stages “${fact.instead.text}”`, fact)),
});
