// limits.no-tool: who has to meet a value has a tool named that can.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `source Manual "manual"
tool Wrench "wrench" { torque 8 .. 60 N·m }
tool Heater "heater" { heats to 150 °C }
tool Gauge "gauge" { measures 0 .. 10 mm }
tool Lever "lever"
part Screw "screw" {
  thread "M10x1.5"
  nut factor 0.2 dry
  heat limit 200 °C per Manual "2"
}
procedure Close {
  per Manual "3"
  begin with Screw is installed
  step inspect Screw with Wrench + Heater + Gauge + Lever
  step `;
const text = (step: string, found = ""): string =>
  `${SHOP}${step}\n${found === "" ? "" : `  //   ${"^".repeat(found.length)} limits.no-tool warning\n`}}`;

test.each([
  ["tighten Screw to 45 N·m", "tighten Screw"],
  ["tighten Screw to 45 N·m with Gauge", "tighten Screw"],
  ["heat Screw to 80 .. 90 °C", "heat Screw"],
  ["heat Screw by 60 K", "heat Screw"],
  ["heat Screw to 80 .. 90 °C with Wrench", "heat Screw"],
  ['measure "gap" expect 1 .. 2 mm', 'measure "gap"'],
  ['measure "gap" with Heater expect 1 .. 2 mm', 'measure "gap"'],
])("none: %s", (step, found) => {
  expectFindings(text(step, found));
});

test.each([
  ["tighten Screw to 45 N·m with Wrench"],
  ["tighten Screw to 45 N·m with Lever"],
  ["tighten Screw by hand"],
  ["tighten Screw by hand to 5 N·m"],
  ["tighten Screw with Lever"],
  ["heat Screw to 80 .. 90 °C with Heater"],
  ["cool Screw to -20 .. -10 °C"],
  ['measure "gap"'],
  ['measure "gap" with Lever expect 1 .. 2 mm'],
  ['{ record "gap" 1 .. 2 mm }'],
  ['{ check "gap" }'],
])("silent: %s", (step) => {
  expectFindings(text(step));
});

// Design, checks.md: a measurement with limits and no tool that can do it; what says nothing of itself may do anything.
const measuring = (step: string, found = ""): string => `tool Feeler "feeler gauge" { measures 0.03 .. 1 mm }
tool Steps "depth gauge" { resolution 0.01 mm }
tool Thermometer "thermometer" { measures 0 .. 200 °C }
tool Jug "measuring jug" { measures 0 .. 5 L }
tool Watch "stop watch" { measures 0 .. 1 h }
tool Tester "hardness tester" { measures 20 .. 70 }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
tool Lamp "lamp"
part Screw "screw"
procedure Look {
  step inspect Screw with Feeler + Steps + Thermometer + Jug + Watch + Tester + Wrench + Lamp
  step { inspect Screw
    ${step}
${found === "" ? "" : `  //${"^".repeat(found.length)} limits.no-tool warning\n`}  }
}`;

test.each([
  ['check "leak pressure" with Feeler expect at most 3 bar', 'check "leak pressure"'],
  ['check "leak pressure" with Feeler expect 3 bar', 'check "leak pressure"'],
  ['record "pressure" 1 .. 3 bar with Feeler', 'record "pressure" 1 .. 3 bar with Feeler'],
  // The unit was left out of the tool's range.
  ['check "gap" with Tester expect 30 .. 40 mm', 'check "gap"'],
  ['check "grip" with Wrench expect 10 .. 12 mm', 'check "grip"'],
])("an instrument for something else: %s", (step, found) => {
  expectFindings(measuring(step, found));
});

test.each([
  ['check "gap" with Feeler expect at most 0.5 mm'],
  // Two tools, one of which can.
  ['check "gap" with Feeler + Thermometer expect at most 80 °C'],
  // Two that are read for one value.
  ['check "flow" with Jug + Watch expect 4 .. 5 L/min'],
  ['check "rise" with Thermometer expect at most 30 K'],
  ['check "pressure" with Feeler + Lamp expect 1 .. 3 bar'],
  ['check "pressure" with Steps expect 1 .. 3 bar'],
  ['check "hardness" with Tester expect 58 .. 62'],
  ['check "torque" with Wrench expect at least 30 N·m'],
  ['record "pressure" 1 .. 3 bar'],
])("silent, an instrument: %s", (step) => {
  expectFindings(measuring(step));
});

test("a check with limits", () => {
  expectFindings(`part Screw "screw"
procedure Look {
  step {
    inspect Screw
    check "gap" expect 1 .. 2 mm
  //^^^^^^^^^^^ limits.no-tool
  }
}`);
});

test("it offers the one that fits", () => {
  const plain = text("tighten Screw to 45 N·m");
  expect(told(plain, "limits.no-tool")).toMatchInlineSnapshot(`
    "No tool is named for the torque.
      45 N·m has to be met.
    → Name a tool for it, such as Wrench.
    + Add “with Wrench”"
  `);
  const [found] = findingsIn(plain);
  const mended = found === undefined ? "" : withFix(plain, found);
  expect(mended).toContain("tighten Screw to 45 N·m with Wrench");
  expect(findingsIn(mended)).toEqual([]);
});

// “a torque … with no tool that can do it”: what is offered can do it, and who takes it gets no other finding.
test.each([
  ["too inaccurate", "tighten Screw to 70 ± 4 N·m", "torque 10 .. 200 N·m  accuracy 10 %", null],
  ["exact enough", "tighten Screw to 70 ± 4 N·m", "torque 10 .. 200 N·m  accuracy 5 %", "Other"],
  ["a stage below its range", "tighten Screw to 20 N·m, 70 N·m", "torque 30 .. 200 N·m", null],
  ["every stage in its range", "tighten Screw to 30 N·m, 70 N·m", "torque 30 .. 200 N·m", "Other"],
  ["steps too coarse", 'measure "gap" expect 20 .. 20.1 mm', "measures 0 .. 100 mm  resolution 0.5 mm", null],
  ["steps fine enough", 'measure "gap" expect 20 .. 20.1 mm', "measures 0 .. 100 mm  resolution 0.1 mm", "Other"],
])("what it offers can do it: %s", (_title, step, says, offered) => {
  const place = step.startsWith("tighten") ? "tighten Screw" : 'measure "gap"';
  const source = `tool Other "other" { ${says} }\n${text(step, place)}`;
  expectFindings(source.replace("with Wrench +", "with Other + Wrench +"));
  const remedy = told(source, "limits.no-tool");
  if (offered === null) expect(remedy).not.toContain("Other");
  else expect(remedy).toContain(`such as ${offered}.`);
});
