// A torque of which one end is given: that end is enough for what it tells, and the other is listed as not checked (checks.md: preload at
// the upper torque, at the lower torque; what could not be checked is listed). M10 8.8: F = T/(K·d), proof load 33.6 kN (ISO 898-1; second).
import { describe, expect, test } from "vitest";
import { leftOut, limitFacts, limitsAt, marginsOf, workedOut } from "./whole-limits.ts";

const job = (
  torque: string,
  values = "nut factor 0.2 dry",
  after = "",
): string => `tool Wrench "wrench" { torque 1 .. 200 N·m }
part Cover "cover"
part Screw "screw" { secures Cover  thread "M10x1.5"  class "8.8"  ${values} }
procedure Close {
  step install Cover, Screw
  step tighten Screw ${torque} with Wrench
  ${after}
}`;
const lacking = (lacks: string): string => `preload | Screw | ${lacks} | Screw @ tighten Screw`;
const NO_LOWER = [lacking("lower torque")];
const NO_UPPER = [lacking("upper torque")];

test.each<[torque: string, found: readonly object[], listed: readonly string[]]>([
  // 90 N·m/(0.2·10 mm) = 45 kN, 134 %.
  [
    "to at most 90 N·m",
    [{ how: "above proof", torque: "at most 90 N·m", preload: "45 kN", share: "134 %", atLimit: "at most 60.5 N·m" }],
    NO_LOWER,
  ],
  // 32 kN, 95.1 %.
  ["to at most 64 N·m", [{ how: "above share", preload: "32 kN", share: "95.1 %" }], NO_LOWER],
  ["to at most 60 N·m", [], NO_LOWER],
  // 10 kN, 29.7 %; two fifths are reached at 26.9 N·m.
  [
    "to at least 20 N·m",
    [{ how: "low", torque: "at least 20 N·m", preload: "10 kN", share: "29.7 %", atLimit: "at least 27.0 N·m" }],
    NO_UPPER,
  ],
  ["to at least 30 N·m", [], NO_UPPER],
  // Where slackness is not looked at, nothing is left out of it.
  ["to at most 60 N·m to seat", [], []],
  ["by hand to at most 5 N·m", [], []],
  ["to at most 90 N·m then 90°", [], []],
])("%s", (torque, found, listed) => {
  const all = limitFacts(job(torque));
  expect(all).toMatchObject(found);
  expect(all).toHaveLength(found.length);
  expect(leftOut(job(torque))).toEqual(listed);
});

test("a later line that tightens further makes the lower end of no matter", () => {
  const text = job("to at most 20 N·m", undefined, "step tighten Screw to 45 N·m with Wrench");
  expect(limitsAt(text)).toEqual([]);
  expect(leftOut(text)).toEqual([]);
});

test("what is worked out says that it is one end, and the margin is that of the upper", () => {
  expect(workedOut(job("to at most 60 N·m"))).toEqual(["2: Screw @ at most 60 N·m: preload at most 30 kN"]);
  // 30 kN of 33.63 kN.
  expect(marginsOf(job("to at most 60 N·m"))).toEqual(["2: preload Screw of Screw 89.2 %"]);
  expect(workedOut(job("to at least 30 N·m"))).toEqual(["2: Screw @ at least 30 N·m: preload at least 15 kN"]);
  expect(marginsOf(job("to at least 30 N·m"))).toEqual([]);
});

describe("the other values", () => {
  test.each<[values: string, torque: string, found: readonly string[], listed: readonly string[]]>([
    // The most that may be, 80 N·m/(0.2·10 mm), 119 %; how much less it may be is open.
    ["nut factor at least 0.2 dry", "to 80 N·m", ["preload above proof: 80 N·m"], [lacking("nut factor | dry")]],
    // 20 N·m/(0.2·10 mm) at least, 29.7 %; the most is open.
    ["nut factor at most 0.2 dry", "to 20 N·m", ["preload low: 20 N·m"], [lacking("nut factor | dry")]],
    [
      "nut factor 0.2 dry  prevailing torque at least 10 N·m",
      "to 80 N·m",
      ["preload above proof: 80 N·m"],
      [lacking("prevailing torque")],
    ],
    [
      "nut factor 0.2 dry  prevailing torque at most 5 N·m",
      "to 30 N·m",
      ["preload low: 30 N·m"],
      [lacking("prevailing torque")],
    ],
    // The lower torque only turns the nut; the upper, (90 − 25) N·m/(0.2·10 mm), is 32.5 kN, 96.6 %.
    [
      "nut factor 0.2 dry  prevailing torque 25 N·m",
      "to 20 .. 90 N·m",
      ["preload above share: 20 .. 90 N·m"],
      [lacking("torque above the prevailing torque")],
    ],
  ])("%s: %s", (values, torque, found, listed) => {
    expect(limitsAt(job(torque, values))).toEqual(found);
    expect(leftOut(job(torque, values))).toEqual(listed);
  });
});
