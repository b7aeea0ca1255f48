// limits.undertorque: at least two fifths of the proof load. 33.7 kN for M10 of class 8.8 (ISO 898-1, second): 0.4 · 33.7 kN ·
// 0.2 · 10 mm is 26.96 N·m.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (torque: string, mark: string, rest = ""): string => `tool Wrench "torque wrench" { torque 1 .. 90 N·m }
part Cover "cover"
part Screw "screw" {
  secures Cover
  thread "M10x1.5"
  class "8.8"
  nut factor 0.2 dry
}
procedure Close {
  step install Cover, Screw
  step tighten Screw to ${torque} with Wrench
${mark}${rest}}`;
const found = (torque: string): string =>
  text(torque, `  //                    ${"^".repeat(torque.length)} limits.undertorque information\n`);

test.each(["26.6 .. 30 N·m", "20 N·m", "14 lbf·ft"])("light: %s", (torque) => {
  expectFindings(found(torque));
});

test.each(["27.3 .. 30 N·m", "45 ± 4 N·m", "20.2 lbf·ft", "20 N·m then 90 ± 5°"])("silent: %s", (torque) => {
  expectFindings(text(torque, ""));
});

test("silent: to seat, by hand, and raised by a later line", () => {
  const more = "  step tighten Screw to 45 N·m with Wrench\n";
  expectFindings(text("20 N·m to seat", "", more));
  expectFindings(text("20 N·m", "", more));
  const byHand = text("20 N·m", "").replace("Screw to 20 N·m with Wrench", "Screw by hand to 20 N·m");
  expectFindings(byHand.replace(/^tool.*\n/, ""));
});

test("it shows the computation", () => {
  expect(told(found("20 ± 2 N·m"), "limits.undertorque")).toMatchInlineSnapshot(`
    "The torque for Screw clamps it only lightly.
      At the lower end of 20 ± 2 N·m the preload is 9 kN, 26.8 % of the proof load of 33.6 kN; 40 % is usual at least.
    → Tighten to at least 27.0 N·m, or compare class and nut factor with the manual."
  `);
});
