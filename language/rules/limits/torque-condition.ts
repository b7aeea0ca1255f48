// limits.torque-condition: a torque stated for another condition of the thread than the one it is in.
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";

export const torqueCondition = rule({
  code: "limits.torque-condition",
  severity: "error",
  about: "torque condition",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A torque stated for dry threads on a fastener that was lubricated or coated before; one stated for a lubricant on a dry fastener; one stated for another lubricant. Dry is what was cleaned, or put in with nothing on it. Silent about a fastener that was in at the start and that nothing is said of.",
    why: "The same torque clamps far more on a greased thread than on a dry one: the bolt may stretch for good. The other way round, the joint is slack although the wrench clicked.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
consumable Grease "assembly grease"
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step lubricate Screw with Grease
  step tighten Screw to 45 ± 4 N·m with Wrench
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
consumable Grease "assembly grease"
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m with Grease per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step lubricate Screw with Grease
  step tighten Screw to 45 ± 4 N·m with Wrench
}
`,
    source:
      "A manual's table takes a tenth off the torque for oiled threads and a fifth for plated ones (TM 9-2320-362-14P, read).",
  },
  say: ({ part, stated, found, torque, fitting, declaredAt }) => {
    const isFor = "dry" in stated ? "dry threads" : `threads with ${stated.with ?? "a lubricant"}`;
    const on = "dry" in found ? "dry" : `with ${found.with ?? "a lubricant that is not named"}`;
    return {
      message: `${part} is ${"dry" in found ? "dry" : "not dry"}, the torque is for ${isFor}.`,
      why: `The torque, ${show(torque)}, is stated for ${isFor}. The thread is ${on} here.`,
      remedy:
        fitting === null
          ? `${"dry" in stated ? "Clean the thread before this" : `Put ${stated.with ?? "the lubricant"} on the thread before this`}, or declare the torque for the thread as it is.`
          : `Tighten to the torque for the thread as it is: ${show(fitting)}.`,
      related: [{ message: "The torque is stated here", span: declaredAt }],
    };
  },
  fix: (fact) => (fact.fitting === null ? [] : putInstead(`Tighten to ${show(fact.fitting)}`, fact)),
});
