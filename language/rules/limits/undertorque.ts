// limits.undertorque: a torque that clamps with less than two fifths of the proof load.
import { base } from "#analysis/raw-fact.ts";
import { show, showLike } from "#quantity/display.ts";
import { rule } from "../rule.ts";
import { torqueRemedy } from "../wording.ts";

export const undertorque = rule({
  code: "limits.undertorque",
  severity: "information",
  about: "preload",
  finds: ({ how }) => how === "low",
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A torque whose lower end clamps with less than 40 % of the proof load of the fastener. Tightening to seat, by hand or before an angle, and a first torque that a later line raises are left aside.",
    why: "A joint that is hardly clamped works loose. Often the torque was taken from the line of another size or class.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 5 .. 60 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  thread "M10x1.5"
  class "8.8"
  nut factor 0.20 dry
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 20 ± 2 N·m with Wrench per Manual "6.4.9"
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 5 .. 60 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  thread "M10x1.5"
  class "8.8"
  nut factor 0.20 dry
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 45 ± 4 N·m with Wrench per Manual "6.4.9"
}
`,
    source:
      "F = (T − prevailing)/(K·d), the usual short form; by friction as in VDI 2230 (second hand); that a joint wants at least two fifths is common practice. An estimate: friction alone moves it by a third.",
  },
  say: ({ part, torque, preload, proof, share, limit, atLimit }) => ({
    message: `The torque for ${part} clamps it only lightly.`,
    why: `${torque.form === "at least" ? "At" : "At the lower end of"} ${show(torque).replace("at least ", "")} the preload is ${show(preload)}, ${show(share)} of the proof load of ${showLike(proof, preload)}; ${show(limit)} is usual at least.`,
    remedy: torqueRemedy(atLimit),
  }),
});
