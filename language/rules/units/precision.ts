// units.precision: a tolerance finer than the tool that must hold it can resolve.
import { show } from "#quantity/display.ts";
import { putInstead } from "../put-in.ts";
import { rule } from "../rule.ts";

export const precision = rule({
  code: "units.precision",
  severity: "warning",
  about: "precision",
  subject: ({ tool }) => tool,
  page: {
    finds:
      "A value with two limits that lie closer together than one step of the tool named for it. Silent where the tool declares no resolution.",
    why: "The tool shows the same number on both sides of the limit: whether the value holds cannot be seen with it.",
    fails: `tool Gauge "depth gauge" {
  measures 0 .. 100 mm
  resolution 0.02 mm
}
part Shim "shim"

procedure CheckShim "Check the shim" {
  step measure "thickness of the shim" with Gauge expect 1.00 .. 1.01 mm
  step install Shim
}
`,
    mended: `tool Gauge "depth gauge" {
  measures 0 .. 100 mm
  resolution 0.01 mm
}
part Shim "shim"

procedure CheckShim "Check the shim" {
  step measure "thickness of the shim" with Gauge expect 1.00 .. 1.01 mm
  step install Shim
}
`,
  },
  say: ({ tool, value, width, resolution, declaredAt, fitting }) => ({
    message: `${tool} cannot show whether this holds.`,
    why: `${show(value)} is ${show(width)} wide. One step of the tool is ${show(resolution)}.`,
    remedy: fitting === null ? "Name a tool that resolves more, or widen the tolerance." : `Use ${fitting}.`,
    related: [{ message: `The resolution of ${tool} is declared here`, span: declaredAt }],
  }),
  fix: (fact) => (fact.fitting === null ? [] : putInstead(`Use ${fact.fitting}`, fact)),
});
