// A thread as it was found, several nut factors and no torque that says which is meant: only what holds for each of them is told, in
// whatever order they are declared; where they disagree, that is listed (checks.md: a rule is quiet where it can't know, and what could
// not be checked is listed). F = T/(K·d), d 10 mm; proof load of M10 8.8 58.0 mm² · 580 MPa = 33.6 kN (ISO 898-1; second).
import { describe, expect, test } from "vitest";
import { leftOut, limitFacts, limitsAt, marginsOf } from "./whole-limits.ts";

const job = (
  values: string,
  torque: string,
  steps = "step loosen Screw",
  begin = "begin with Cover is secured",
): string =>
  `tool Wrench "wrench" { torque 1 .. 200 N·m }
consumable Grease "grease"
consumable Oil "oil"
part Cover "cover"
part Screw "screw" { secures Cover  thread "M10x1.5"  class "8.8"  ${values} }
procedure Close {
  ${begin}
  ${steps}
  step tighten Screw to ${torque} with Wrench
}`;
const UNCHECKED = ["preload | Screw | torque condition | Screw @ tighten Screw"];
const DRY = "nut factor 0.2 dry";
const GREASED = "nut factor 0.12 with Grease";

describe.each([
  ["as declared", `${GREASED}  ${DRY}`],
  ["the other way round", `${DRY}  ${GREASED}`],
])("%s", (_title, factors) => {
  test.each<[torque: string, found: readonly object[], listed: readonly string[]]>([
    // 25 kN dry, 74 %; 41.7 kN greased, 124 %.
    ["50 N·m", [], UNCHECKED],
    // 40 kN dry, 119 %; 66.7 kN greased: above it in any case, and the least of the two is told.
    ["80 N·m", [{ how: "above proof", preload: "40 kN", share: "119 %", atLimit: "at most 60.5 N·m" }], []],
    // 32 kN dry, 95.1 %; 53.3 kN greased: near it at least.
    ["64 N·m", [{ how: "above share", preload: "32 kN", share: "95.1 %" }], []],
    // 10 kN dry, 29.7 %; 16.7 kN greased, 49.6 %.
    ["20 N·m", [], UNCHECKED],
    // 6.5 kN dry; 10.8 kN greased, 32.2 %: loose in any case.
    ["13 N·m", [{ how: "low", preload: "10.8 kN", share: "32.2 %" }], []],
    // 17 kN dry, 50.6 %; 28.3 kN greased, 84.2 %: in order in any case.
    ["34 N·m", [], []],
  ])("to %s", (torque, found, listed) => {
    expect(limitFacts(job(factors, torque))).toMatchObject(found);
    expect(limitFacts(job(factors, torque))).toHaveLength(found.length);
    expect(leftOut(job(factors, torque))).toEqual(listed);
  });

  test("the margin is that of the most that may be", () => {
    expect(marginsOf(job(factors, "34 N·m"))).toEqual(["2: preload Screw of Screw 84.2 %"]);
  });

  test("where it is known what is on the thread, that one counts", () => {
    const put = "step install Cover, Screw";
    expect(limitsAt(job(factors, "50 N·m", put, ""))).toEqual([]);
    expect(leftOut(job(factors, "50 N·m", put, ""))).toEqual([]);
    const greased = "step loosen Screw\n  step lubricate Screw with Grease";
    expect(limitsAt(job(factors, "50 N·m", greased))).toEqual(["preload above proof: 50 N·m"]);
  });
});

test.each([
  ["a friction beside a nut factor", `${DRY}  friction 0.08 with Grease`],
  ["the same, the other way round", `friction 0.08 with Grease  ${DRY}`],
  ["one for any condition beside one that is said", `nut factor 0.12  ${DRY}`],
  ["the same, the other way round", `${DRY}  nut factor 0.12`],
])("%s may be meant as well", (_title, values) => {
  // M10 at µ 0.08: 50 N·m/(0.16·1.5 + 0.58·9.026·0.08 + 0.08·(14.63 + 11)/4 mm) = 43 kN (VDI 2230; second).
  expect(limitsAt(job(values, "50 N·m"))).toEqual([]);
  expect(leftOut(job(values, "50 N·m"))).toEqual(UNCHECKED);
  expect(limitsAt(job(values, "80 N·m"))).toEqual(["preload above proof: 80 N·m"]);
});

test("of two things on the thread either may be what counts", () => {
  const both = "step loosen Screw\n  step apply Oil to Screw\n  step lubricate Screw with Grease";
  for (const values of [
    "nut factor 0.2 with Oil  nut factor 0.12 with Grease",
    "nut factor 0.12 with Grease  nut factor 0.2 with Oil",
  ]) {
    expect(limitsAt(job(values, "50 N·m", both))).toEqual([]);
    expect(leftOut(job(values, "50 N·m", both))).toEqual(UNCHECKED);
  }
});

test("one that is declared is the one that is meant; without a condition, what is missing is told as before", () => {
  expect(limitsAt(job(GREASED, "50 N·m"))).toEqual(["preload above proof: 50 N·m"]);
  expect(limitsAt(job("nut factor 0.12", "50 N·m"))).toEqual(
    ["preload above proof: 50 N·m", "no condition: tighten Screw"].sort(byPlace),
  );
  expect(limitsAt(job("torque 45 ± 6 N·m", "50 N·m"))).toEqual(["no condition: tighten Screw"]);
});

/** `tighten` stands before its torque. */
function byPlace(a: string, b: string): number {
  return Number(a.startsWith("preload")) - Number(b.startsWith("preload"));
}
