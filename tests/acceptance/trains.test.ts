// One mistake, one finding: what comes after it is not told once more.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const SHOP = `option Extent "extent" { Full Part Look }
energy Supply "motor supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
part Case "case"
part Seal "seal" { needs Case }
part Cover "cover" { needs Case, Seal  encloses Seal }
part Screw[1..4] "screw" { needs Cover  secures Cover  thread "M8x1.25" }
part Snap "snap ring" { retains Seal }
temporary part Pin "pin"
fact Done "done"
tool Tester "tester"
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
consumable Oil "oil"
consumable Sealant "sealant" { cure 1 h }
`;

test.each([
  [
    "what a step asks for is put in after it",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Seal is installed
  step "Look at the seal." { needs Seal is installed }
//                                 ^^^^^^^^^^^^^^^^^ order.unmet-need error
  step install Seal
}`,
  ],
  [
    "what a performed procedure asks for is put in after it",
    `${SHOP}
procedure Look "Look" {
  begin with Case is installed, Seal is installed
  step inspect Seal
}
procedure Work "Work" {
  begin with Case is installed
  finish with Seal is installed
  step perform Look
//     ^^^^^^^^^^^^ order.unmet-need error
  step install Seal
}`,
  ],
  [
    "the cover too early, then the seal behind it",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Seal is installed, Cover is installed
  step install Cover
//     ^^^^^^^^^^^^^ order.missing-support error
  step remove Cover
  step install Seal
  step install Cover
}`,
  ],
  [
    "the seal forgotten, and all that follows",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is secured
  step install Cover
//     ^^^^^^^^^^^^^ order.missing-support error
  step install Screw[all]
  step tighten Screw[all] to 20 N·m with Wrench
  step inspect Cover
}`,
  ],
  [
    "installed twice, then taken out once",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Seal is removed
  step install Seal
  step install Seal
//     ^^^^^^^^^^^^ order.already-installed error
  step remove Seal
}`,
  ],
  [
    "the snap ring forgotten, then put back",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed, Seal is installed, Snap is installed
  finish with Seal is installed, Snap is installed
  step remove Seal
//     ^^^^^^^^^^^ order.retained error
  step remove Snap
  step install Seal
  step install Snap
}`,
  ],
  [
    "the isolation forgotten, and a long job after it",
    `${SHOP}
procedure Work "Work" {
  begin with Motor is installed
  finish with Motor is installed
  step clean Motor
//     ^^^^^^^^^^^ order.energised error
  step lubricate Motor with Oil
  step remove Motor
  step clean Motor
  step install Motor
}`,
  ],
  [
    "the isolation forgotten, and the energy put on at the end",
    `${SHOP}
procedure Work "Work" {
  begin with Motor is installed
  finish with Supply is live
  step clean Motor
//     ^^^^^^^^^^^ order.energised error
  step restore Supply
}`,
  ],
  [
    "the lock in the way of two actions is told at both",
    `part Nut "nut" { thread "M8x1.25" }
part Tab "tab" { locks Nut }
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
procedure Work "Work" {
  begin with Nut is tightened, Tab is installed
  step loosen Nut
//     ^^^^^^^^^^ order.locked error
  step tighten Nut to 20 N·m with Wrench
//     ^^^^^^^^^^^ order.locked error
}`,
  ],
  [
    "the cover closed over wet sealant, then the start",
    `${SHOP}
part Lid "lid" { encloses Case }
part Fan "fan" { driven by Supply }
procedure Work "Work" {
  begin with Case is installed, Supply is isolated
  finish with Lid is installed, Supply is isolated
  step apply Sealant to Case
  step install Lid
//     ^^^^^^^^^^^ order.uncured error
  step remove Lid
  step install Lid
}`,
  ],
  [
    "a gasket reused, and tightened over",
    `${SHOP}
part Gasket "gasket" { needs Case  single use }
procedure Work "Work" {
  begin with Case is installed, Gasket is installed
  finish with Gasket is installed
  step remove Gasket
  step install Gasket
//     ^^^^^^^^^^^^^^ order.reused error
  step inspect Gasket
}`,
  ],
  [
    "a screw loosened twice, then taken out",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed, Seal is installed, Cover is secured
  finish with Screw[1] is removed
  step loosen Screw[1]
  step loosen Screw[1]
//     ^^^^^^^^^^^^^^^ order.not-tightened error
  step remove Screw[1]
}`,
  ],
  [
    "the last screws of a heavy part, out, off, and down",
    `part Lid "lid" { mass 60 kg }
part Bolt[1..2] "bolt" { secures Lid  thread "M8x1.25" }
procedure Work "Work" {
  begin with Lid is secured
  finish with Lid is removed, Bolt[all] are removed
  step loosen Bolt[1]
  step remove Bolt[1]
  step loosen Bolt[2]
//     ^^^^^^^^^^^^^^ order.unsupported warning
  step remove Bolt[2]
  step remove Lid
}`,
  ],
  [
    "a fact forgotten, asked for three times",
    `${SHOP}
procedure Work "Work" {
  step "One." { needs Done }
//                    ^^^^ order.unmet-need error
  step "Two." { needs Done }
  step "Three." { needs Done }
}`,
  ],
  [
    "the ring not turned, and the next place after a turn",
    `ring Seat "seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 6 o'clock }
part Tooth[1..8] "tooth" { seats in Seat by number }
procedure Work "Work" {
  finish with Tooth[2..3] are installed
  step install Tooth[2] at 6 o'clock
//     ^^^^^^^^^^^^^^^^ order.position error
  step turn Seat[3] to 6 o'clock
  step install Tooth[3] at 6 o'clock
}`,
  ],
  [
    "a wrong jump costs no more than itself",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Seal is installed
  step { check "It is clean" if it fails { return to Later } }
//                                         ^^^^^^^^^^^^^^^ flow.bad-jump error
  step Later { install Seal }
}`,
  ],
  [
    "a screw tightened before it is in",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed, Seal is installed, Cover is installed
  finish with Cover is secured
  step tighten Screw[all] to 20 N·m with Wrench
//     ^^^^^^^^^^^^^^^^^^ order.not-installed error
  step inspect Screw[1]
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
