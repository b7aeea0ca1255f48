// One procedure done inside another: what it asks for, what it promises, what it touches and does not mention.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const DRIVE = `part Shaft "shaft"
part Key "key" { needs Shaft }
part ORing "O-ring" { needs Shaft }
part Motor "motor"
consumable Oil "oil"
procedure DressShaft "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed, ORing is installed
  step install Key
  step install ORing
}
`;

test.each([
  [
    "silent: what it asks for is there, and what it promises holds after",
    `${DRIVE}
procedure BuildUp "Build up" {
  finish with Key is installed, ORing is installed, Motor is installed
  step install Shaft
  step perform DressShaft
  step { needs Key is installed  install Motor }
}`,
  ],
  [
    "what it asks for is not there",
    `${DRIVE}
procedure BuildUp "Build up" {
  finish with Key is installed
  step perform DressShaft
//     ^^^^^^^^^^^^^^^^^^ order.unmet-need error
  step install Motor
}`,
  ],
  [
    "what it asks for is there on one path only",
    `${DRIVE}
option Extent "extent of work" { Full Look Part }
procedure BuildUp "Build up" {
  finish with Key is installed
  when Extent is Full or Extent is Part { step install Shaft }
  step perform DressShaft
//     ^^^^^^^^^^^^^^^^^^ order.unmet-need error
}`,
  ],
  [
    "what it touches and does not mention is not as at a start",
    `${DRIVE}
procedure BuildUp "Build up" {
  begin with Shaft is installed, Key is installed
  finish with Key is installed
  step perform DressShaft
//     ^^^^^^^^^^^^^^^^^^ order.unmet-need error
}`,
  ],
  [
    "silent: what it touches is taken out before",
    `${DRIVE}
procedure BuildUp "Build up" {
  begin with Shaft is installed, Key is installed
  finish with Key is installed
  step remove Key
  step clean Shaft
  step perform DressShaft
}`,
  ],
  [
    "after it, what it put in is in",
    `${DRIVE}
procedure BuildUp "Build up" {
  begin with Shaft is installed
  finish with Key is installed
  step perform DressShaft
  step install Key
//     ^^^^^^^^^^^ order.already-installed error
}`,
  ],
  [
    "performed twice: the second time it is not as at a start",
    `${DRIVE}
procedure BuildUp "Build up" {
  begin with Shaft is installed
  finish with Key is installed
  step perform FitKey
  step perform FitKey
//     ^^^^^^^^^^^^^^ order.unmet-need error
}
procedure FitKey "Fit the key" {
  begin with Shaft is installed
  finish with Key is installed
  step install Key
}`,
  ],
  [
    "silent: what it left and did not mention is as it leaves it",
    `${DRIVE}
procedure OilShaft "Oil the shaft" {
  begin with Shaft is installed
  step lubricate Shaft with Oil
}
procedure BuildUp "Build up" {
  begin with Shaft is installed
  step perform OilShaft
  step "Turn it by hand." { needs Shaft is lubricated }
}`,
  ],
  [
    "its options are the same as those here",
    `${DRIVE}
option Sealed "the shaft is sealed" { yes no }
procedure SealShaft "Seal the shaft" {
  begin with Shaft is installed
  when Sealed is yes { step install ORing }
}
procedure BuildUp "Build up" {
  begin with Shaft is installed
  step perform SealShaft
  when Sealed is yes { step inspect ORing }
  when Sealed is no { step "Plug the groove." { needs ORing is removed } }
}`,
  ],
  [
    "its own finish that does not hold is found there, not here",
    `${DRIVE}
procedure HalfDone "Half done" {
  begin with Shaft is installed
  finish with Key is installed
//            ^^^^^^^^^^^^^^^^ order.unfinished error
  step install ORing
}
procedure BuildUp "Build up" {
  begin with Shaft is installed
  finish with Key is installed
  step perform HalfDone
}`,
  ],
  [
    "an energy that it asks to be off is live here",
    `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
procedure Wipe "Wipe the motor" {
  begin with Motor is installed, Supply is isolated
  finish with Supply is isolated
  step clean Motor
}
procedure Service "Service the motor" {
  begin with Motor is installed
  finish with Supply is live
  step perform Wipe
//     ^^^^^^^^^^^^ order.unmet-need error
  step restore Supply
}`,
  ],
  [
    "silent: the energy is off here and put on after",
    `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
tool Tester "tester"
procedure Wipe "Wipe the motor" {
  begin with Motor is installed, Supply is isolated
  finish with Supply is isolated
  step clean Motor
}
procedure Service "Service the motor" {
  begin with Motor is installed
  step isolate Supply
  step prove Supply dead with Tester
  step perform Wipe
  step restore Supply
}`,
  ],
  [
    "silent: performed from another file",
    `use "shop/dress.sprag"
use "shop/parts.sprag"
procedure BuildUp "Build up" {
  finish with Key is installed
  step install Shaft
  step perform DressShaft
}
// file: shop/parts.sprag
part Shaft "shaft"
part Key "key" { needs Shaft }
// file: shop/dress.sprag
use "parts.sprag"
procedure DressShaft "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed
  step install Key
}`,
  ],
  [
    "performed from another file, too early",
    `use "shop/dress.sprag"
use "shop/parts.sprag"
procedure BuildUp "Build up" {
  finish with Key is installed
  step perform DressShaft
//     ^^^^^^^^^^^^^^^^^^ order.unmet-need error
}
// file: shop/parts.sprag
part Shaft "shaft"
part Key "key" { needs Shaft }
// file: shop/dress.sprag
use "parts.sprag"
procedure DressShaft "Dress the shaft" {
  begin with Shaft is installed
  finish with Key is installed
  step install Key
}`,
  ],
  [
    "silent: a branch of it that stops is no end here",
    `${DRIVE}
procedure CheckShaft "Check the shaft" {
  begin with Shaft is installed
  step { check "It runs true" if it fails { stop "Send it to the lathe." } }
}
procedure BuildUp "Build up" {
  begin with Shaft is installed
  finish with Motor is installed
  step perform CheckShaft
  step install Motor
}`,
  ],
  [
    "allowed",
    `${DRIVE}
procedure BuildUp "Build up" {
  finish with Key is installed
  step {
    perform DressShaft
//  ^^^^^^^^^^^^^^^^^^ order.unmet-need error allowed
    allow order.unmet-need because "The shaft comes in mounted."
  }
}`,
  ],
  [
    "two procedures that perform each other",
    `${DRIVE}
procedure Left "Left" {
  begin with Shaft is installed
  step inspect Shaft
  perform Right
//^^^^^^^^^^^^^ names.use-cycle error
}
procedure Right "Right" {
  begin with Shaft is installed
  step clean Shaft
  perform Left
//^^^^^^^^^^^^ names.use-cycle error
}`,
  ],
  [
    "files that use each other, with a mistake beside it",
    `use "b.sprag"
//  ^^^^^^^^^ names.use-cycle error
part Shaft "shaft"
procedure Turn "Turn" {
  step remove Shaft
//     ^^^^^^^^^^^^ order.not-installed error
  step inspect Seal
}
// file: b.sprag
use "main.sprag"
part Seal "seal"`,
  ],
  [
    "silent: stripped by one procedure, built up by another",
    `part Case "case"
part Cover "cover" { needs Case }
part Screw[1..4] "cover screw" { needs Cover  secures Cover  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
procedure Strip "Strip" {
  begin with Case is installed, Cover is secured
  finish with Cover is removed, Screw[all] are removed
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
}
procedure BuildUp "Build up" {
  begin with Case is installed, Cover is removed, Screw[all] are removed
  finish with Cover is secured
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 24 N·m with Wrench
}
procedure Overhaul "Overhaul" {
  begin with Case is installed, Cover is secured
  finish with Cover is secured
  perform Strip
  step clean Case
  perform BuildUp
}`,
  ],
  [
    "stripped and never built up",
    `part Case "case"
part Cover "cover" { needs Case }
procedure Strip "Strip" {
  begin with Case is installed, Cover is installed
  finish with Cover is removed
  step remove Cover
}
procedure Overhaul "Overhaul" {
  begin with Case is installed, Cover is installed
  finish with Cover is installed
//            ^^^^^^^^^^^^^^^^^^ order.unfinished error
  perform Strip
  step clean Case
}`,
  ],
  [
    "silent: it makes the energy safe and puts it on again by itself",
    `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
tool Tester "tester"
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  step isolate Supply
  step prove Supply dead with Tester
  step clean Motor
  step restore Supply
}
procedure Service "Service" {
  begin with Motor is installed
  finish with Supply is live
  perform Wipe
  step inspect Motor
}`,
  ],
  [
    "work after it on what it has put on again",
    `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
tool Tester "tester"
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  finish with Supply is live
  step isolate Supply
  step prove Supply dead with Tester
  step clean Motor
  step restore Supply
}
procedure Service "Service" {
  begin with Motor is installed
  perform Wipe
  step lubricate Motor with Grease
//     ^^^^^^^^^^^^^^^ order.energised error
}
consumable Grease "grease"`,
  ],
  [
    "silent: it makes safe, the work is done here, another puts it on",
    `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
tool Tester "tester"
procedure MakeSafe "Make it safe" {
  finish with Supply is isolated
  step isolate Supply
  step prove Supply dead with Tester
}
procedure PutOn "Put it on" {
  begin with Supply is isolated
  finish with Supply is live
  step restore Supply
}
procedure Service "Service" {
  begin with Motor is installed
  finish with Supply is live
  perform MakeSafe
  step clean Motor
  perform PutOn
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
