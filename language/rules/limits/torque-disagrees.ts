// limits.torque-disagrees: a final torque outside the one that the part declares.
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const torqueDisagrees = rule({
  code: "limits.torque-disagrees",
  severity: "error",
  about: "torque disagrees",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A step that tightens a fastener to a final torque outside the one declared for it. Tightening to seat or by hand, stages before an angle, and a first torque that a later line raises are left aside.",
    why: "Two values for one fastener: whoever follows the step does what the part's own data forbid, and nobody can tell which of them was meant.",
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
  step tighten Screw to 55 ± 4 N·m with Wrench
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
  step tighten Screw to 45 ± 4 N·m with Wrench
}
`,
  },
  say: ({ part, torque, declared, declaredAt }) => ({
    message: `The torque for ${part} is not the one declared for it.`,
    why: wantedFound(show(declared), show(torque)),
    remedy: `Tighten to ${show(declared)}, or put the declared torque right.`,
    related: [{ message: "The torque is declared here", span: declaredAt }],
  }),
  fix: (fact) => putInstead(`Tighten to ${show(fact.declared)}`, fact),
});
