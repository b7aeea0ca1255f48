// limits.tool-range: a value outside the range of the tool that is named for it.
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { wantedFound } from "../wording.ts";

export const toolRange = rule({
  code: "limits.tool-range",
  severity: "error",
  about: "tool range",
  subject: ({ tool }) => tool,
  page: {
    finds:
      "A value outside the range of the tool named for it. For a wrench it is what the wrench is set to at each stage, with the prevailing torque added and the adapter taken into account; without an arm, the torque itself. A limit from zero up, no more than a tenth of the smallest size that a gauge reads, is taken to be one on how far its readings lie apart, and is left alone.",
    why: "A wrench cannot be set there, a gauge cannot show it, a heater does not get there. The job stops at the bench, or somebody guesses.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  arm 400 mm
}
tool LongWrench "long torque wrench" {
  torque 30 .. 200 N·m
  arm 550 mm
}
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 80 ± 6 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step inspect Cover "for scratches" with Wrench + LongWrench
  step tighten Screw to 80 ± 6 N·m with Wrench
}
`,
    mended: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  arm 400 mm
}
tool LongWrench "long torque wrench" {
  torque 30 .. 200 N·m
  arm 550 mm
}
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 80 ± 6 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover
  step install Screw
  step inspect Cover "for scratches" with Wrench + LongWrench
  step tighten Screw to 80 ± 6 N·m with LongWrench
}
`,
    source: "Setting with an adapter: NAVEDTRA 14315, fig. 3-44 (read).",
  },
  say: ({ how, what, tool, asked, value, range, declaredAt, fitting, explanation }) => {
    const found =
      what === "setting"
        ? `the setting ${show(value)} for ${show(asked)} (${explanation?.formula ?? ""})`
        : what === "temperature"
          ? show(value)
          : show(asked);
    return {
      message: `${tool} does not reach ${how === "above" ? "as high" : "as low"} as this.`,
      why: wantedFound(show(range), found),
      remedy: fitting === null ? "Name a tool whose range holds the value." : `Use ${fitting}.`,
      related: [{ message: `The range of ${tool} is declared here`, span: declaredAt }],
    };
  },
  fix: (fact) => (fact.fitting === null ? [] : putInstead(`Use ${fact.fitting}`, fact)),
});
