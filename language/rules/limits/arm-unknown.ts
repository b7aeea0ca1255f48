// limits.arm-unknown: an adapter that changes the setting, on a wrench whose arm nobody knows.
import { base } from "#analysis/raw-fact.ts";
import { rule } from "../rule.ts";

export const armUnknown = rule({
  code: "limits.arm-unknown",
  severity: "error",
  about: "arm unknown",
  subject: ({ part, wrench }) => `${base(part)} ${wrench}`,
  page: {
    finds:
      "An adapter that makes the lever longer or shorter, on a wrench that declares no arm. An adapter at 90° changes nothing and is left aside.",
    why: "With an adapter in line the bolt gets more than the wrench shows. How much more depends on the arm, so that no setting can be printed.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
tool Crowfoot "crowfoot adapter" { offset 60 mm }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 45 ± 4 N·m with Wrench + Crowfoot
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  arm 400 mm
}
tool Crowfoot "crowfoot adapter" { offset 60 mm }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 45 ± 4 N·m with Wrench + Crowfoot
}
`,
    source: "Ts = T·L/(L + E·cos α): NAVEDTRA 14315, fig. 3-44 (read).",
  },
  say: ({ wrench, adapter, declaredAt }) => ({
    message: `No setting can be worked out: ${wrench} declares no arm.`,
    why: `${adapter} changes the torque at the bolt. By how much depends on the length from the drive to the middle of the grip.`,
    remedy: `Declare “arm” and the length for ${wrench}.`,
    related: [{ message: `${wrench} is declared here`, span: declaredAt }],
  }),
});
