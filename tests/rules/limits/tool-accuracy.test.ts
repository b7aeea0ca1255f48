// limits.tool-accuracy: the window Tlow/(1 − a) .. Thigh·(1 − a) is empty or not, worked out by hand beside each case. ±4 % of the
// reading is a common allowance (TM 1-1500-204-23-9, table 8-1; read).
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (wrench: string, torque: string, mark: string): string => `tool Wrench "wrench" { ${wrench} }
part Screw "screw" {
  thread "M10x1.5"
  nut factor 0.2 dry
}
procedure Close {
  step install Screw
  step tighten Screw to ${torque} with Wrench
${mark}}`;
const MARK = "  //   ^^^^^^^^^^^^^ limits.tool-accuracy warning\n";

test.each([
  // 39/0.96 = 40.63 > 41·0.96 = 39.36
  ["torque 8 .. 60 N·m  accuracy 4 %", "39 .. 41 N·m"],
  // 43/0.96 = 44.79 > 46.6·0.96 = 44.74
  ["torque 8 .. 60 N·m  accuracy 4 %", "43 .. 46.6 N·m"],
  // 28 + 1.2 = 29.2 > 30.3 − 1.2 = 29.1
  ["torque 8 .. 60 N·m  accuracy 2 % of full scale", "28 .. 30.3 N·m"],
])("empty: %s, %s", (wrench, torque) => {
  expectFindings(text(wrench, torque, MARK));
});

test.each([
  // 43/0.96 = 44.79 <= 46.7·0.96 = 44.83
  ["torque 8 .. 60 N·m  accuracy 4 %", "43 .. 46.7 N·m"],
  // 28 + 1.2 = 29.2 <= 30.5 − 1.2 = 29.3
  ["torque 8 .. 60 N·m  accuracy 2 % of full scale", "28 .. 30.5 N·m"],
  ["torque 8 .. 60 N·m  accuracy 4 %", "40 N·m"],
  ["torque 8 .. 60 N·m", "39 .. 41 N·m"],
])("silent: %s, %s", (wrench, torque) => {
  expectFindings(text(wrench, torque, ""));
});

test("the contract's own example: 39.1 N·m on a 400 mm arm, 38.95 to 39.23", () => {
  const adapter = 'tool Crowfoot "crowfoot" { offset 60 mm }\n';
  const wrench = (accuracy: string): string => `torque 8 .. 60 N·m  accuracy ${accuracy}  arm 400 mm`;
  const job = (accuracy: string, mark: string): string =>
    adapter + text(wrench(accuracy), "45 ± 2 N·m", mark).replace("with Wrench", "with Wrench + Crowfoot");
  expectFindings(job("4 %", ""));
  expectFindings(job("5 %", MARK));
  expect(told(job("5 %", MARK), "limits.tool-accuracy")).toMatchInlineSnapshot(`
    "Wrench is too inaccurate for the torque of Screw.
      With 5 % of error the setting would have to be at least 39.36 N·m for the low end of 45 ± 2 N·m, and at most 38.83 N·m for the high end.
    → Name a wrench that is more accurate, or widen the tolerance.
    &2 The accuracy of Wrench is declared here"
  `);
});
