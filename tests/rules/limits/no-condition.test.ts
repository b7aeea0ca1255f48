// limits.no-condition: somebody says whether the thread is dry, or with what.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (says: string, step: string, mark: string): string => `tool Wrench "torque wrench" { torque 5 .. 90 N·m }
consumable Grease "grease"
part Cover "cover"
part Screw "screw" {
  secures Cover
  ${says}
}
procedure Close {
  step inspect Cover with Wrench
  step lubricate Cover with Grease
  step install Cover, Screw
  ${step}
  step tighten Screw to 45 N·m with Wrench
${mark}}`;
const MARK = "  //   ^^^^^^^^^^^^^ limits.no-condition warning\n";

test.each([["torque 45 ± 2 N·m"], ['thread "M10x1.5"'], ["nut factor 0.2"]])("nobody says so: %s", (says) => {
  const source = text(says, "", MARK);
  expectFindings(source);
  expect(told(source, "limits.no-condition")).toContain("Nothing says whether Screw is dry or lubricated.");
});

test.each([
  ["torque 45 ± 2 N·m dry", ""],
  ["nut factor 0.2 dry", ""],
  ["friction 0.14 with Grease", ""],
  ["torque 45 ± 2 N·m", "step clean Screw"],
  ["torque 45 ± 2 N·m", "step lubricate Screw with Grease"],
  ["torque 45 ± 2 N·m", "step apply Grease to Screw"],
])("silent: %s %s", (says, step) => {
  expectFindings(text(says, step, ""));
});

test("silent: by hand, without a value, and what is no fastener", () => {
  const source = text("torque 45 ± 2 N·m", "", "");
  expectFindings(source.replace("to 45 N·m with Wrench", "by hand to 5 N·m"));
  expectFindings(source.replace("to 45 N·m with Wrench", "with Wrench"));
  expectFindings(source.replace("secures Cover\n  torque 45 ± 2 N·m", "sharp"));
});
