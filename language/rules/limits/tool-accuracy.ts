// limits.tool-accuracy: no setting of the wrench keeps the bolt inside its band for certain.
import { base } from "#analysis/raw-fact.ts";
import { show, showIn } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";

export const toolAccuracy = rule({
  code: "limits.tool-accuracy",
  severity: "warning",
  about: "tool accuracy",
  subject: ({ part, tool }) => `${base(part)} ${tool}`,
  page: {
    finds:
      "A final torque with a tolerance, and a wrench so inaccurate that no setting keeps the bolt inside it. Silent where no tolerance is given.",
    why: "The wrench clicks, and still nobody knows whether the bolt has its torque.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  accuracy 6 %
}
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 2 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 45 ± 2 N·m with Wrench
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  accuracy 4 %
}
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 2 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step tighten Screw to 45 ± 2 N·m with Wrench
}
`,
    source:
      "The window Tlow/(1 − a) .. Thigh·(1 − a), the wrench's error on both sides (common practice); ±4 % of the reading is what a common calibration table allows (TM 1-1500-204-23-9, table 8-1, read).",
  },
  say: ({ part, tool, torque, accuracy, least, most, declaredAt, fitting }) => ({
    message: `${tool} is too inaccurate for the torque of ${part}.`,
    why: `With ${show(accuracy)} of error the setting would have to be at least ${inUnit(least, least)} for the low end of ${show(torque)}, and at most ${inUnit(most, least)} for the high end.`,
    remedy: fitting === null ? "Name a wrench that is more accurate, or widen the tolerance." : `Use ${fitting}.`,
    related: [{ message: `The accuracy of ${tool} is declared here`, span: declaredAt }],
  }),
  fix: (fact) => (fact.fitting === null ? [] : putInstead(`Use ${fact.fitting}`, fact)),
});

type Shown = Parameters<typeof show>[0];

/** Both limits in one unit, so that they can be compared at a glance. */
function inUnit(value: Shown, like: Shown): string {
  const unit = like.nominal?.unit;
  return unit === undefined ? show(value) : showIn(value, unit, "nominal");
}
