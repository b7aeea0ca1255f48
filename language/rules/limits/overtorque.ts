// limits.overtorque: a torque whose preload comes near the proof load of the fastener, or above it.
import { base } from "#analysis/raw-fact.ts";
import { show, showLike } from "#quantity/display.ts";
import { rule } from "../rule.ts";
import { torqueRemedy } from "../wording.ts";

export const overtorque = rule({
  code: "limits.overtorque",
  severity: "warning",
  about: "preload",
  finds: ({ how }) => how !== "low",
  gravity: ({ how }) => (how === "above proof" ? "error" : "warning"),
  subject: ({ part }) => base(part),
  page: {
    finds:
      "A torque whose upper end clamps with more than 90 % of the proof load of the fastener, or the share that the shop sets with “threshold preload”; an error above all of it. It is computed with the nut factor for the condition the thread is in, else with its friction, in the thread and under a hexagon head of M4 to M36. Silent where neither is declared, or no thread or class, and once an angle follows.",
    why: "Above its proof load a bolt grows for good and holds less than before. It may break while it is tightened, or later.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 120 N·m }
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
  step tighten Screw to 80 ± 5 N·m with Wrench per Manual "6.4.9"
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 120 N·m }
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
      "F = (T − prevailing)/(K·d), the usual short form; by friction as in VDI 2230 (second hand); proof loads of ISO 898-1 and SAE J429 (second hand). An estimate: friction alone moves it by a third.",
  },
  say: ({ how, part, torque, preload, proof, share, limit, atLimit }) => ({
    message:
      how === "above proof"
        ? `The torque for ${part} is above what the bolt bears.`
        : `The torque for ${part} is near what the bolt bears.`,
    why: `${torque.form === "at most" ? "At" : "At the upper end of"} ${show(torque).replace("at most ", "")} the preload is ${show(preload)}, ${show(share)} of the proof load of ${showLike(proof, preload)}; ${show(limit)} is the limit.`,
    remedy: torqueRemedy(atLimit),
  }),
});
