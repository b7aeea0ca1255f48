// units.precision: two limits lie as far apart as one step of the tool, or farther.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (tool: string, limits: string, mark: string): string => `tool Gauge "gauge" { ${tool} }
part Shim "shim"
procedure Look {
  step measure "shim" with Gauge expect ${limits}
${mark}  step install Shim
}`;
const MARK = "  //   ^^^^^^^^^^^^^^ units.precision warning\n";

test.each([
  ["measures 0 .. 10 mm  resolution 0.02 mm", "1 .. 1.01 mm"],
  ["measures 0 .. 10 mm  resolution 0.02 mm", "1 ± 0.009 mm"],
  // 1 thou is 0.0254 mm.
  ["measures 0 .. 10 mm  resolution 1 thou", "1 .. 1.025 mm"],
])("finer: %s, %s", (tool, limits) => {
  expectFindings(text(tool, limits, MARK));
});

test.each([
  ["measures 0 .. 10 mm  resolution 0.02 mm", "1 .. 1.02 mm"],
  ["measures 0 .. 10 mm  resolution 0.02 mm", "1 ± 0.01 mm"],
  ["measures 0 .. 10 mm  resolution 1 thou", "1 .. 1.026 mm"],
  ["measures 0 .. 10 mm  resolution 0.02 mm", "at most 0.01 mm"],
  ["measures 0 .. 10 mm", "1 .. 1.001 mm"],
])("silent: %s, %s", (tool, limits) => {
  expectFindings(text(tool, limits, ""));
});

// Steps of a thermometer are differences: 1 °C = 1 K = 1.8 °F (NIST SP 811, read; design: engineering.md, Units).
test.each([
  ["measures 0 .. 200 °C  resolution 1 °C", "105 .. 115 °C"],
  ["measures 0 .. 200 °C  resolution 1 °C", "110 ± 0.5 °C"],
  ["measures 0 .. 200 °C  resolution 1 K", "105 .. 115 °C"],
  ["measures 32 .. 400 °F  resolution 1 °F", "220 .. 240 °F"],
  ["measures 0 .. 200 °C  resolution 1.8 °F", "110 ± 0.5 °C"],
  ["measures 0 .. 200 °C  resolution 1 °C", "at most 30 K"],
])("silent, a thermometer: %s, %s", (tool, limits) => {
  expectFindings(text(tool, limits, ""));
});

test.each([
  ["measures 0 .. 200 °C  resolution 1 °C", "110 ± 0.2 °C", "0.4 °C wide. One step of the tool is 1 °C."],
  ["measures 32 .. 400 °F  resolution 1 °F", "230 ± 0.2 °F", "0.4 °F wide. One step of the tool is 1 °F."],
  ["measures 0 .. 200 °C  resolution 1.9 °F", "110 ± 0.5 °C", "wide. One step of the tool is 1.9 °F."],
  ["measures 0 .. 200 °C  resolution 1 °C", "29.6 .. 30 K", "0.4 °C wide. One step of the tool is 1 °C."],
])("finer, a thermometer: %s, %s", (tool, limits, why) => {
  expectFindings(text(tool, limits, MARK));
  expect(told(text(tool, limits, MARK), "units.precision")).toContain(why);
});

test("it shows both widths", () => {
  expect(told(text("resolution 0.02 mm", "1 .. 1.01 mm", MARK), "units.precision")).toMatchInlineSnapshot(`
    "Gauge cannot show whether this holds.
      1 .. 1.01 mm is 0.01 mm wide. One step of the tool is 0.02 mm.
    → Name a tool that resolves more, or widen the tolerance.
    &1 The resolution of Gauge is declared here"
  `);
});
