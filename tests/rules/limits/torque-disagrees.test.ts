// limits.torque-disagrees: the final torque lies inside the declared one. 1 lbf·ft is 1.355 817 948 N·m (NIST SP 811).
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (
  declared: string,
  asked: string,
  found: boolean,
): string => `tool Wrench "torque wrench" { torque 5 .. 90 N·m }
part Cover "cover"
part Screw "screw" {
  secures Cover
  torque ${declared} dry
}
procedure Close {
  step install Cover, Screw
  step tighten Screw to ${asked} with Wrench
${found ? `  //                    ${"^".repeat(asked.length)} limits.torque-disagrees error\n` : ""}}`;

test.each([
  ["45 ± 2 N·m", "45 ± 2.1 N·m"],
  ["45 ± 2 N·m", "47.1 N·m"],
  ["45 ± 2 N·m", "42.9 N·m"],
  ["43 .. 47 N·m", "42 .. 46 N·m"],
  ["45 N·m", "46 ± 0.5 N·m"],
  ["at most 40 N·m", "40.1 N·m"],
  ["45 ± 2 N·m", "34.7 lbf·ft"],
  ["300 ± 10 lbf·in", "33 .. 36 N·m"],
])("declared %s, asked %s", (declared, asked) => {
  expectFindings(text(declared, asked, true));
});

test.each([
  ["45 ± 2 N·m", "45 ± 2 N·m"],
  ["45 ± 2 N·m", "47 N·m"],
  ["45 ± 2 N·m", "43 N·m"],
  ["43 .. 47 N·m", "44 .. 46 N·m"],
  ["45 N·m", "45 ± 3 N·m"],
  ["at most 40 N·m", "at most 40 N·m"],
  ["45 ± 2 N·m", "34.6 lbf·ft"],
  ["300 ± 10 lbf·in", "33 .. 35 N·m"],
  ["45 ± 2 N·m", "20 N·m then 90 ± 5°"],
])("silent: declared %s, asked %s", (declared, asked) => {
  expectFindings(text(declared, asked, false));
});

test("silent: by hand, to seat, and raised by a later line", () => {
  const lines = (...list: string[]): string =>
    text("45 ± 2 N·m", "45 N·m", false).replace(/ {2}step tighten.*\n/, list.map((one) => `  step ${one}\n`).join(""));
  expectFindings(lines("tighten Screw by hand to 5 N·m", "tighten Screw to 45 N·m with Wrench"));
  expectFindings(lines("tighten Screw to 20 N·m to seat with Wrench", "tighten Screw to 45 N·m with Wrench"));
  expectFindings(lines("tighten Screw to 20 N·m with Wrench", "tighten Screw to 45 N·m with Wrench"));
});

test("it says what is declared, and offers it", () => {
  expect(told(text("45 ± 2 N·m", "60 N·m", true), "limits.torque-disagrees")).toMatchInlineSnapshot(`
    "The torque for Screw is not the one declared for it.
      Wanted: 45 ± 2 N·m
      Found: 60 N·m
    → Tighten to 45 ± 2 N·m, or put the declared torque right.
    &5 The torque is declared here
    + Tighten to 45 ± 2 N·m"
  `);
});

test("of two declared torques the one for the thread as it is", () => {
  const oiled = (asked: string, mark: string): string => `tool Wrench "torque wrench" { torque 5 .. 90 N·m }
consumable Oil "oil"
part Cover "cover"
part Screw "screw" {
  secures Cover
  torque 28 .. 34 N·m dry
  torque 21 .. 26 N·m with Oil
}
procedure Close {
  step install Cover, Screw
  step lubricate Screw with Oil
  step tighten Screw to ${asked} with Wrench
${mark}}`;
  expectFindings(oiled("24 N·m", ""));
  const text = oiled("40 N·m", "  //                    ^^^^^^ limits.torque-disagrees\n");
  expectFindings(text);
  expect(told(text, "limits.torque-disagrees")).toContain("Wanted: 21 .. 26 N·m");
});
