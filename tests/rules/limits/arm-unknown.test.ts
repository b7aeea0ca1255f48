// limits.arm-unknown: no setting without an arm, where the adapter changes it; at 90° it does not (NAVEDTRA 14315, read).
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const text = (wrench: string, adapter: string, mark: string): string => `tool Wrench "wrench" { ${wrench} }
tool Crowfoot "crowfoot" { ${adapter} }
part Screw "screw" {
  thread "M10x1.5"
  nut factor 0.2 dry
}
procedure Close {
  step install Screw
  step tighten Screw to 45 N·m with Wrench + Crowfoot
${mark}}`;
const MARK = "  //   ^^^^^^^^^^^^^ limits.arm-unknown error\n";

test("no arm, and an adapter in line or at an angle", () => {
  expectFindings(text("torque 8 .. 60 N·m", "offset 60 mm", MARK));
  expectFindings(text("torque 8 .. 60 N·m", "offset 60 mm  angle 45°", MARK));
  const more = text("torque 8 .. 40 N·m", "offset 60 mm", `${MARK}  //   ^^^^^^^^^^^^^ limits.tool-range\n`);
  expectFindings(more);
  expect(told(more, "limits.arm-unknown")).toMatchInlineSnapshot(`
    "No setting can be worked out: Wrench declares no arm.
      Crowfoot changes the torque at the bolt. By how much depends on the length from the drive to the middle of the grip.
    → Declare “arm” and the length for Wrench.
    &1 Wrench is declared here"
  `);
});

test("silent: an arm, or an adapter that changes nothing", () => {
  expectFindings(text("torque 8 .. 60 N·m  arm 400 mm", "offset 60 mm", ""));
  expectFindings(text("torque 8 .. 60 N·m", "offset 60 mm  angle 90°", ""));
});
