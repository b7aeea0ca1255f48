// wording.number-drift: half of the last digit on both sides, other units, what is compared with what.
import { expect, test } from "vitest";
import { expectFindings, findingsIn } from "#harness/check.ts";

const TOP = `part Cover "cover"
part Screw "cover screw" { secures Cover  torque 45 ± 4 N·m dry }
part Bearing "bearing" { heat limit 200 °C }
tool Wrench "torque wrench" { torque 8 .. 100 N·m }
tool Heater "heater" { heats to 150 °C }
tool Feeler "feeler gauge" { measures 0.02 .. 5 mm }

procedure P "Close the cover" {
  step install Cover
  step install Screw
`;
const drifting = (step: string): readonly string[] =>
  findingsIn(`${TOP}  step ${step}\n}\n`)
    .filter(({ code }) => code === "wording.number-drift")
    .map(({ message }) => message.replace("The words say ", "").replace(", the step says something else.", ""));
const tighten = (said: string, value = "45 ± 4 N·m"): string =>
  `"Tighten the screw ${said}." { tighten Screw to ${value} with Wrench }`;

test.each([
  [tighten("to 54 N·m"), "54 N·m"],
  [tighten("to 49.6 N·m"), "49.6 N·m"],
  [tighten("to 40 lbf·ft"), "40 lbf·ft"],
  [tighten("to 46 N·m", "45 N·m"), "46 N·m"],
  [tighten("in stages to 20 N·m", "30 %, 100 % of 45 ± 4 N·m"), "20 N·m"],
  [`"Heat it to 120 °C." { heat Bearing to 100 .. 112 °C with Heater }`, "120 °C"],
  [`"Heat it to 240 °F." { heat Bearing to 100 .. 112 °C with Heater }`, "240 °F"],
  [`"Wait 15 minutes." { wait 10 min }`, "15 minutes"],
  [`"Lap it for 3 min." { do "Lap the seat."  takes 2 min }`, "3 min"],
  [`{ check "Gap below 0.05 mm" with Feeler expect at most 0.03 mm }`, "0.05 mm"],
  [`{ check "Gap, at 0.05 mm, below the limit" with Feeler expect at most 0.03 mm }`, "0.05 mm"],
  [`{ check "Gap 0.05 mm from the wall" with Feeler expect at most 0.03 mm }`, "0.05 mm"],
  [`"Heat it to 95 to 110 °C." { heat Bearing to 100 .. 112 °C with Heater }`, "95"],
])("disagrees: %s", (step, said) => {
  expect(drifting(step)).toEqual([said]);
});

test.each([
  tighten("to 45 N·m"),
  tighten("to 49 N·m"),
  tighten("to 49.4 N·m", "45 ± 4.4 N·m"),
  tighten("to 50 N·m", "45 ± 4.5 N·m"),
  tighten("to 33 lbf·ft"),
  tighten("to 13.5 N·m, then 45 N·m", "30 %, 100 % of 45 ± 4 N·m"),
  tighten("to 45 ± 4 N·m"),
  tighten("with the 300 mm bar"),
  tighten("in 3 stages"),
  tighten("to 45,5 N·m"),
  `"Heat it to 100 to 112 °C." { heat Bearing to 100 .. 112 °C with Heater }`,
  `"Heat it by 80 K." { heat Bearing to 100 .. 112 °C with Heater }`,
  `"Lap it for 30 s at a time." { do "Lap the seat."  takes 2 min }`,
  `{ check "Gap under the 8 mm key" with Feeler expect at most 0.03 mm }`,
  `{ check "Run-out at 150 mm from the center" with Feeler expect at most 0.15 mm }`,
  `{ check "Gap at 12 mm below the edge" with Feeler expect at most 0.03 mm }`,
  `"Put 3 in each hole." { check "Gap" with Feeler expect at most 0.03 mm }`,
  `"Look at it from 2 m." { why "At 54 N·m it breaks." }`,
])("agrees, or is not compared: %s", (step) => {
  expect(drifting(step)).toEqual([]);
});

test("the number is marked, wanted and found are told", () => {
  expectFindings(`part Tank "oil tank"
consumable Oil "gear oil"

procedure P "Fill the tank" {
  begin with Tank is installed
  step "Pour in 5 L of oil." { fill Tank with 4.2 ± 0.2 L of Oil }
//              ^^^ wording.number-drift warning
}
`);
  const [found] = findingsIn(`${TOP}  step ${tighten("to 54 N·m")}\n}\n`).filter(
    ({ code }) => code === "wording.number-drift",
  );
  expect(found?.why).toBe("Wanted: 45 ± 4 N·m\nFound: 54 N·m");
});
