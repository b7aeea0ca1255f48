// What is shown beside a limit never hides on which side of it it is: a load and a temperature are rounded up, a cold one down, a share of
// the proof load has as many digits as it takes. checks.md: m/(n·sin θ) on a leg; NIST SP 811: 1 lb is 0.453 592 37 kg.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import { limitFacts, workedOut } from "./whole-limits.ts";

const lift = (things: string, steps: string): string => `part Frame "frame" { mass 40 kg }
${things}
procedure Lift {
  ${steps}
}`;
const SLUNG = "step lift Frame with Sling on 2 legs at 60°";

test.each([
  // 40 kg/(2·sin 60°) is 23.094 01 kg.
  ["23.09 kg", "23.10 kg"],
  ["23.094 kg", "23.10 kg"],
  ["20 kg", "23.10 kg"],
])("on a leg that lifts %s", (limit, load) => {
  const text = lift(`tool Sling "sling" { each leg lifts ${limit} }`, SLUNG);
  expect(limitFacts(text)).toMatchObject([{ how: "leg", limit, legs: { load } }]);
  expect(workedOut(text)).toContainEqual(expect.stringMatching(/^1: Frame @ lift Frame: load on one leg 23\.10 kg$/));
  expect(findingsIn(text).find(({ code }) => code === "limits.overload")?.why).toContain(
    `${load} on a leg = 40 kg/(2·sin 60°)\nA leg lifts ${limit}.`,
  );
});

test("a load that comes out even stays as it is", () => {
  // sin 30° is one half.
  const text = lift('tool Sling "sling" { each leg lifts 20 kg }', SLUNG.replace("60°", "30°"));
  expect(limitFacts(text)).toMatchObject([{ legs: { load: "40 kg" }, mass: "40 kg" }]);
});

test("what hangs, in the unit of the part: 100 lb and 8 kg are 117.636 98 lb", () => {
  const text = lift(
    'part Plate "plate" { mass 100 lb }\npart Bush "bush" { mass 8 kg }\ntool Jib "jib" { lifts 53.3 kg }',
    "step install Bush on Plate\n  step lift Plate with Jib",
  );
  expect(limitFacts(text)).toMatchObject([{ how: "tool", mass: "117.7 lb" }]);
  expect(workedOut(text)).toEqual([expect.stringMatching(/ 117\.7 lb$/)]);
});

test.each([
  // M10 8.8: 58.0 mm² · 580 MPa (ISO 898-1; second), more exactly 33.634 kN; T/(K·d) of 67.28 N·m is 33.640 kN.
  ["67.28 N·m", { how: "above proof", share: "100.02 %", limit: "100 %" }],
  ["60.55 N·m", { how: "above share", share: "90.01 %", limit: "90 %" }],
  ["70 N·m", { how: "above proof", share: "104 %", limit: "100 %" }],
])("a share of the proof load that is hardly past its limit: %s", (torque, found) => {
  const text = `tool Wrench "wrench" { torque 1 .. 200 N·m }
part Cover "cover"
part Screw "screw" { secures Cover  thread "M10x1.5"  class "8.8"  nut factor 0.2 dry }
procedure Close {
  step install Cover, Screw
  step tighten Screw to ${torque} with Wrench
}`;
  expect(limitFacts(text)).toMatchObject([found]);
});

test.each<[line: string, found: string]>([
  // 148.6 °F is 64.78 °C, 148.7 °F is 64.83 °C, 149.1 °F is 65.06 °C; 31.9 °F is −0.06 °C.
  ["heat Part to 100 .. 148.6 °F with Heater", "64.8 °C"],
  ["heat Part to 100 .. 148.7 °F with Heater", "64.9 °C"],
  ["heat Part to 100 .. 149.1 °F with Heater", "65.1 °C"],
  // Nothing is added to what comes out even: 149 °F is 65 °C.
  ["heat Part to 100 .. 149 °F with Heater", "65 °C"],
  ["cool Part to 31.9 .. 40 °F", "-0.1 °C"],
  ["cool Part to 32 .. 40 °F", "0 °C"],
])("a part in somebody's hands: %s", (line, found) => {
  const text = `tool Heater "heater" { heats to 300 °C }
part Part "part" { heat limit 300 °C }
procedure Work {
  step ${line}
  step clean Part
}`;
  const why = findingsIn(text).find(({ code }) => code === "safety.missing")?.why ?? "";
  expect(why.split("\n")).toContain(`Found: ${found}`);
});

test("a rise, beside a limit in the same degrees: 25 °C and 63.05 K are 88.05 °C", () => {
  const text = `tool Heater "heater" { heats to 300 °C }
part Part "part" { heat limit 88 °C }
procedure Work {
  ambient 25 °C
  step heat Part by 63.05 K with Heater
}`;
  expect(limitFacts(text)).toMatchObject([{ kind: "overheat", hottest: "88.1 °C", limit: "88 °C" }]);
  // Even with degrees that have no end as decimals.
  const even = text.replace("63.05 K", "63.1 K");
  expect(limitFacts(even)).toMatchObject([{ kind: "overheat", hottest: "88.1 °C" }]);
});
