// What holds a heavy part, and what has to cure before it is closed over or put to work.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const HEAVY = `part Frame "frame"
part Cover "gearbox cover" { mass 48 kg }
part Screw[1..4] "cover screw" { secures Cover  thread "M12x1.75" }
part Lid "lid" { mass 6 kg }
part LidScrew[1..2] "lid screw" { secures Lid  thread "M6x1" }
tool Hoist "chain hoist" { lifts 250 kg }
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
`;

const SEAL = `consumable Sealant "joint sealant" { cure 30 min }
consumable Locker "thread locker" { cure 3 h }
energy Supply "pump supply" { voltage 400 V AC }
part Housing "housing" { driven by Supply }
part Cover "housing cover" { encloses Housing }
part Nameplate "nameplate" { needs Housing }
tool Tester "voltage tester"
`;

test.each([
  [
    "unsupported: the last screws of a heavy cover",
    `${HEAVY}
procedure Open "Open the gearbox" {
  begin with Cover is secured
  finish with Cover is removed, Screw[all] are removed
  step loosen Screw[all]
//     ^^^^^^^^^^^^^^^^^ order.unsupported warning
  step remove Screw[all]
  step remove Cover
}`,
  ],
  [
    "unsupported, silent: the hoist holds it",
    `${HEAVY}
procedure Open "Open the gearbox" {
  begin with Cover is secured
  finish with Cover is removed, Screw[all] are removed
  step support Cover with Hoist
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
  step set down Cover
}`,
  ],
  [
    "unsupported, silent: held up to the last screw, the others loosened before",
    `${HEAVY}
procedure Open "Open the gearbox" {
  begin with Cover is secured
  finish with Cover is removed, Screw[all] are removed
  step loosen Screw[1..3]
  step support Cover with Hoist
  step loosen Screw[4]
  step remove Screw[all]
  step remove Cover
  step set down Cover
}`,
  ],
  [
    "unsupported: the fourth of four, at that one",
    `${HEAVY}
procedure Slacken "Slacken the cover" {
  begin with Cover is secured
  finish with Screw[all] are loose
  step loosen Screw[1..3]
  step loosen Screw[4]
//     ^^^^^^^^^^^^^^^ order.unsupported warning
}`,
  ],
  [
    "unsupported, silent: one screw stays tight",
    `${HEAVY}
procedure Swap "Change three screws" {
  begin with Cover is secured
  finish with Cover is secured
  step loosen Screw[1..3]
  step remove Screw[1..3]
  step install Screw[1..3]
  step tighten Screw[1..3] to 80 N·m with Wrench
}`,
  ],
  [
    "unsupported, silent: a lid that one person holds",
    `${HEAVY}
procedure Open "Open the lid" {
  begin with Lid is secured
  finish with Lid is removed, LidScrew[all] are removed
  step loosen LidScrew[all]
  step remove LidScrew[all]
  step remove Lid
}`,
  ],
  [
    "unsupported, silent: no mass is known",
    `part Panel "panel"
part PanelScrew[1..2] "panel screw" { secures Panel  thread "M6x1" }
procedure Open "Take the panel off" {
  begin with Panel is secured
  finish with Panel is removed, PanelScrew[all] are removed
  step loosen PanelScrew[all]
  step remove PanelScrew[all]
  step remove Panel
}`,
  ],
  [
    "unsupported, silent: the usual way on, with the hoist until screws are in",
    `${HEAVY}
procedure Close "Close the gearbox" {
  finish with Cover is secured
  step lift Cover with Hoist
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 80 N·m with Wrench
}`,
  ],
  [
    "unsupported: the hoist is let go before any screw is in",
    `${HEAVY}
procedure Close "Close the gearbox" {
  finish with Cover is secured
  step lift Cover with Hoist
  step install Cover
  step set down Cover
//     ^^^^^^^^^^^^^^ order.unsupported warning
  step install Screw[all]
  step tighten Screw[all] to 80 N·m with Wrench
}`,
  ],
  [
    "unsupported, silent: let go when two screws are in",
    `${HEAVY}
procedure Close "Close the gearbox" {
  finish with Cover is secured
  step lift Cover with Hoist
  step install Cover
  step install Screw[1, 3]
  step set down Cover
  step install Screw[2, 4]
  step tighten Screw[all] to 80 N·m with Wrench
}`,
  ],
  [
    "unsupported, silent: lifted and set down on the bench",
    `${HEAVY}
procedure Move "Move the cover to the bench" {
  step lift Cover with Hoist
  step set down Cover
  step clean Cover
}`,
  ],
  [
    "unsupported: set down before the screws are out, in one branch",
    `${HEAVY}
option Short "the hoist is needed elsewhere" { yes no }
procedure Open "Open the gearbox" {
  begin with Cover is secured
  finish with Cover is removed, Screw[all] are removed
  step support Cover with Hoist
  when Short is yes { step set down Cover }
  step loosen Screw[all]
//     ^^^^^^^^^^^^^^^^^ order.unsupported warning
  step remove Screw[all]
  step remove Cover
  when Short is no { step set down Cover }
}`,
  ],
  [
    "unsupported, allowed: it stands on its feet",
    `${HEAVY}
procedure Slacken "Slacken the cover" {
  begin with Cover is secured
  finish with Screw[all] are loose
  step loosen Screw[all]
//     ^^^^^^^^^^^^^^^^^ order.unsupported warning allowed
    allow order.unsupported because "The cover lies flat on its joint."
}`,
  ],
  [
    "uncured: closed over at once",
    `${SEAL}
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  step apply Sealant to Housing
  step install Cover
//     ^^^^^^^^^^^^^ order.uncured error
}`,
  ],
  [
    "uncured, silent: waited for",
    `${SEAL}
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  step apply Sealant to Housing
  step wait 30 min
  step install Cover
}`,
  ],
  [
    "uncured: waited too short",
    `${SEAL}
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  step apply Sealant to Housing
  step wait 20 min
  step install Cover
//     ^^^^^^^^^^^^^ order.uncured error
}`,
  ],
  [
    "uncured, silent: two waits together are enough",
    `${SEAL}
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  step apply Sealant to Housing
  step wait 20 min
  step inspect Housing "for squeezed-out sealant"
  step wait 10 min
  step install Cover
}`,
  ],
  [
    "uncured: its own longer time counts",
    `${SEAL}
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  step apply 5 g of Sealant to Housing cure 2 h
  step wait 1 h
  step install Cover
//     ^^^^^^^^^^^^^ order.uncured error
}`,
  ],
  [
    "uncured: the pump is started",
    `${SEAL}
procedure Seal "Seal the housing" {
  begin with Housing is installed
  step isolate Supply
  step prove Supply dead with Tester
  step apply Sealant to Housing
  step wait 5 min
  step restore Supply
//     ^^^^^^^^^^^^^^ order.uncured error
}`,
  ],
  [
    "uncured, silent: the pump is started after the time",
    `${SEAL}
procedure Seal "Seal the housing" {
  begin with Housing is installed
  step isolate Supply
  step prove Supply dead with Tester
  step apply Sealant to Housing
  step wait 45 min
  step restore Supply
}`,
  ],
  [
    "uncured, silent: the sealed face is laid on while it is wet",
    `consumable Sealant "joint sealant" { cure 30 min }
part Housing "housing"
part Cover "cover" { needs Housing }
procedure Close "Seal and close" {
  begin with Housing is installed
  finish with Cover is installed
  step apply Sealant to Cover
  step install Cover
}`,
  ],
  [
    "uncured, silent: a screw with thread locker goes in and is tightened at once",
    `consumable Locker "thread locker" { cure 3 h }
part Cover "cover"
part Screw "cover screw" { needs Cover  secures Cover  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
procedure Close "Screw the cover on" {
  begin with Cover is installed
  finish with Cover is secured
  step apply Locker to Screw
  step install Screw
  step tighten Screw to 24 N·m with Wrench
}`,
  ],
  [
    "uncured, silent: a grease has no time to cure",
    `consumable Grease "grease"
part Bearing "bearing"
part Cap "cap" { encloses Bearing }
procedure Pack "Pack the bearing" {
  begin with Bearing is installed
  finish with Cap is installed
  step apply 10 g of Grease to Bearing
  step install Cap
}`,
  ],
  [
    "uncured: only where the quick sealant is not used",
    `${SEAL}
option Quick "the quick sealant is used" { yes no }
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  when Quick is yes { step apply Sealant to Housing cure 5 min }
  otherwise { step apply Sealant to Housing }
  step wait 10 min
  step install Cover
//     ^^^^^^^^^^^^^ order.uncured error
}`,
  ],
  [
    "uncured, silent: a time declared for a step counts too",
    `${SEAL}
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  step apply Sealant to Housing
  step "Write the report at the bench." { takes 30 min }
  step install Cover
}`,
  ],
  [
    "uncured, allowed",
    `${SEAL}
procedure Close "Seal and close" {
  begin with Housing is installed, Supply is isolated
  finish with Cover is installed, Supply is isolated
  step apply Sealant to Housing
  step install Cover
//     ^^^^^^^^^^^^^ order.uncured error allowed
    allow order.uncured because "The cover has a vent, the sealant cures behind it."
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
