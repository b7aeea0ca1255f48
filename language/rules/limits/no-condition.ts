// limits.no-condition: a torque on a fastener of which nobody says whether it is dry, or with what.
import { base } from "#analysis/raw-fact.ts";
import { show } from "#quantity/display.ts";
import { rule } from "../rule.ts";

export const noCondition = rule({
  code: "limits.no-condition",
  severity: "warning",
  about: "no condition",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A fastener tightened to a torque, where neither the fastener's own torque, nut factor or friction says “dry” or with what, nor a step before it cleans or lubricates the thread.",
    why: "A torque without the condition of the thread is half a value. The same torque clamps about a third more on an oiled thread than on a dry one.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 45 ± 4 N·m with Wrench
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
    source: "Nut factors of about 0.20 dry and 0.15 oiled are common figures (from memory: not verified).",
  },
  say: ({ part, torque }) => ({
    message: `Nothing says whether ${part} is dry or lubricated.`,
    why: `The torque, ${show(torque)}, clamps more on a lubricated thread than on a dry one.`,
    remedy:
      "Write “dry”, or “with” and the lubricant, behind the torque that the part declares; where it declares none, declare it.",
  }),
});
