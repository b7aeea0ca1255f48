// limits.no-tool: a value that has to be met, and no tool that can meet it.
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";
import { listed } from "../wording.ts";

export const noTool = rule({
  code: "limits.no-tool",
  severity: "warning",
  about: "no tool",
  page: {
    finds:
      "A torque, a check or measurement with limits, or a heating, with no tool named for it, or only tools that are declared to do something else. Tightening by hand, records without a gauge, and tools that say nothing of themselves are left aside.",
    why: "Without a tool the value is a wish: nobody can know whether it was met, and the crib cannot be asked for what is needed.",
    fails: `source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Cover "bearing cover"
part Screw "cover screw" {
  secures Cover
  torque 45 ± 4 N·m dry per Manual "6.4.9"
}

procedure CloseCover "Close the cover" {
  step install Cover with Wrench
  step install Screw
  step tighten Screw to 45 ± 4 N·m
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
  say: ({ what, value, named, fitting }) => ({
    message:
      named.length === 0 ? `No tool is named for ${FOR[what]}.` : `${listed(named, "and")} cannot do ${FOR[what]}.`,
    why: `${show(value)} has to be met.`,
    remedy:
      fitting !== null
        ? `Name a tool for it, such as ${fitting}.`
        : named.length === 0
          ? `Name ${A[what]} with “with”.`
          : `Name ${A[what]} that can.`,
  }),
  fix: ({ what, addAt, fitting, options, inOrder }) =>
    addAt === null || fitting === null || what === "reading"
      ? []
      : putInstead(`Add “with ${fitting}”`, {
          instead: { span: { ...addAt, start: addAt.end }, text: ` with ${fitting}` },
          ...(options === undefined ? {} : { options }),
          ...(inOrder === undefined ? {} : { inOrder }),
        }),
});

const FOR = { torque: "the torque", reading: "the measurement", heating: "the heating" } as const;
const A = { torque: "a torque wrench", reading: "a gauge", heating: "a heater" } as const;
