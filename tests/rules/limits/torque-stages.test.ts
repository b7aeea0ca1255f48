// limits.torque-stages: stages rise, and the last is all of the final value.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const text = (
  stages: string,
  mark = "",
  more = "",
): string => `source Manual "manual"  tool Wrench "torque wrench" { torque 5 .. 60 N·m }
part Cover "cover"
part Screw[1..4] "screw" {
  secures Cover
  torque 45 ± 4 N·m dry
} per Manual "2"
${`${stages}${more}`.includes("Final") ? "value Final = 45 ± 4 N·m" : ""}
procedure Close {
  step install Cover, Screw[all]
  step tighten Screw[all] to ${stages} with Wrench
${mark}${more}}`;
const mark = (stages: string): string =>
  `  //                         ${"^".repeat(stages.length)} limits.torque-stages error\n`;

test.each([
  "30 %, 20 %, 100 % of Final",
  "30 %, 70 % of Final",
  "30 %, 70 %, 99.9 % of Final",
  "90 % of Final",
  "20 N·m, 15 N·m, 45 N·m",
  "20 N·m, 30 N·m",
  "30 lbf·ft, 40 N·m, 45 N·m",
  "15 N·m, 40.9 N·m",
])("falls, or stops short: %s", (stages) => {
  expectFindings(text(stages, mark(stages)));
});

test.each([
  "30 %, 70 %, 100 % of Final",
  "30 %, 100 %, 100 % of Final",
  "100 % of Final",
  "20 N·m, 20 N·m, 45 N·m",
  "29 lbf·ft, 40 N·m, 45 ± 4 N·m",
  "15 N·m, 41 N·m",
  "30 %, 50 % of Final then 90 ± 5°",
  "50 % of Final to seat",
])("silent: %s", (stages) => {
  const seat = stages.endsWith("seat") ? "  step tighten Screw[all] to Final with Wrench\n" : "";
  expectFindings(text(stages, "", seat));
});

test("silent: a later step tightens further", () => {
  expectFindings(text("30 %, 50 % of Final", "", "  step tighten Screw[all] to Final with Wrench\n"));
  expectFindings(text("10 N·m, 20 N·m", "", "  step tighten Screw[all] to Final with Wrench\n"));
});

test("a stage that could not be read is told of, and no more", () => {
  const found = findingsIn(text("30 N·m, 40 J").replaceAll("\n\n", "\n"));
  expect(found.map(({ code }) => code)).toEqual(["units.mismatch"]);
});

test("it says so, and puts the stages right", () => {
  expect(told(text("30 %, 70 %, 90 % of Final"), "limits.torque-stages")).toMatchInlineSnapshot(`
    "The last stage for Screw is not the final torque.
      Wanted: 45 ± 4 N·m
      Found: 40.5 ± 3.6 N·m
    → End with the final torque, 45 ± 4 N·m.
    + Write the stages “30 %, 70 %, 90 %, 100 % of Final”"
  `);
  const put = (stages: string): string => {
    const source = text(stages);
    const [found] = findingsIn(source).filter(({ code }) => code === "limits.torque-stages");
    return found === undefined ? "" : ((/ to (.*) with/.exec(withFix(source, found)) ?? [])[1] ?? "");
  };
  expect(put("30 %, 70 %, 90 % of Final")).toBe("30 %, 70 %, 90 %, 100 % of Final");
  expect(put("30 %, 20 %, 100 % of Final")).toBe("20 %, 30 %, 100 % of Final");
  expect(put("20 N·m, 30 N·m")).toBe("20 N·m, 30 N·m, 45 ± 4 N·m");
  expect(put("30 lbf·ft, 40 N·m, 45 N·m")).toBe("40 N·m, 30 lbf·ft, 45 N·m");
});
