// One mistake each, in less common places: hoists, allows, loops, readings, fits that a branch leaves cold.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";
import { DRIVE, HEAVY, SHOP } from "./shops.ts";

test.each([
  [
    "unsupported: a heavy motor on its feet, loosened for alignment",
    `${HEAVY}
procedure Align "Align" {
  begin with Motor is secured
  finish with Motor is secured
  step loosen Foot[all]
//     ^^^^^^^^^^^^^^^^ order.unsupported warning
  step do "Shift the motor with the jack screws."
  step tighten Foot[all] to 190 N·m with Wrench
}`,
  ],
  [
    "unsupported: the hoist takes the next load before the motor has its screws",
    `${HEAVY}
procedure Fit "Fit" {
  finish with Motor is secured, Box is installed
  step lift Motor with Hoist
  step install Motor
  step lift Box with Hoist
//     ^^^^^^^^ order.unsupported warning
  step install Box
  step install Foot[all]
  step tighten Foot[all] to 190 N·m with Wrench
}`,
  ],
  [
    "the shop's own limit",
    `threshold lifting 20 kg
part Plate "plate" { mass 21 kg }
part Screw[1..2] "screw" { needs Plate  secures Plate  thread "M8x1.25" }
procedure Open "Open" {
  finish with Screw[all] are loose
  begin with Plate is secured
  step loosen Screw[all]
//     ^^^^^^^^^^^^^^^^^ order.unsupported warning
}`,
  ],
  [
    "energised: turning, aligning, filling, bleeding, lifting",
    `${DRIVE}
procedure Work "Work" {
  begin with Motor is installed, Pulley is installed
  step align Motor with Pulley
//     ^^^^^^^^^^^ order.energised error
}`,
  ],
  [
    "energised: filling",
    `${DRIVE}
procedure Work "Work" {
  begin with Motor is installed
  step fill Motor with 1 L of Oil
//     ^^^^^^^^^^ order.energised error
}`,
  ],
  [
    "energised: heating",
    `${DRIVE}
tool Heater "heater" { heats to 150 °C }
procedure Work "Work" {
  begin with Motor is installed
  step heat Motor to 60 .. 80 °C with Heater
//     ^^^^^^^^^^ order.energised error
}`,
  ],
  [
    "needs of a clock position",
    `${DRIVE}
procedure Work "Work" {
  finish with Tooth[3] is installed
  step { needs Seat[3] at 6 o'clock  install Tooth[3] }
//             ^^^^^^^^^^^^^^^^^^^^ order.unmet-need error
}`,
  ],
  [
    "endless: the otherwise goes back for ever",
    `${DRIVE}
procedure Work "Work" {
  step Begin { inspect Motor }
  when Extent is Look { step "Write." } otherwise { return to Begin }
//                                                  ^^^^^^^^^^^^^^^ flow.endless error
}`,
  ],
  [
    "endless: back over a check that has no other way",
    `${DRIVE}
procedure Work "Work" {
  step Begin { inspect Motor }
  step { check "It is warm" if it fails { return to Begin } }
  when Extent is Full { return to Begin }
//                      ^^^^^^^^^^^^^^^ flow.endless error
}`,
  ],
  [
    "unused allow of a new code",
    `${DRIVE}
procedure Work "Work" {
  begin with Motor is installed
  step {
    inspect Motor
    allow order.energised because "Looking only."
//  ^^^^^^^^^^^^^^^^^^^^^ trace.unused-allow warning
  }
}`,
  ],
  [
    "an allow at the head of a task",
    `${DRIVE}
procedure Work "Work" {
  begin with Motor is installed
  task Live "Live work" {
    allow order.energised because "Under permit 12."
    step clean Motor
//       ^^^^^^^^^^^ order.energised error allowed
  }
}`,
  ],
  [
    "an allow in the task before does not reach this one",
    `${DRIVE}
procedure Work "Work" {
  begin with Motor is installed
  task Live "Live work" {
    allow order.energised because "Under permit 12."
//  ^^^^^^^^^^^^^^^^^^^^^ trace.unused-allow warning
    step inspect Motor
  }
  task Rest "The rest" { step clean Motor }
//                            ^^^^^^^^^^^ order.energised error
}`,
  ],
  [
    "one energised mistake each for two energies",
    `energy A "supply" { voltage 400 V AC }
energy B "air" { pressure 6 bar }
part Motor "motor" { driven by A }
part Brake "brake" { driven by B }
procedure Work "Work" {
  begin with Motor is installed, Brake is installed
  step clean Motor
//     ^^^^^^^^^^^ order.energised error
  step clean Brake
//     ^^^^^^^^^^^ order.energised error
  step lubricate Motor with Oil
}
consumable Oil "oil"`,
  ],
  [
    "energised: a rework that goes back too short",
    `${DRIVE}
procedure Work "Work" {
  begin with Motor is installed
  step Off { isolate Supply }
  step prove Supply dead with Tester
  step Wipe { clean Motor }
//            ^^^^^^^^^^^ order.energised error
  step restore Supply
  step { check "It runs without noise" if it fails { return to Wipe } }
}`,
  ],
  [
    "empty: a task with no name",
    `procedure Work "Work" {
  task "Later" { }
//     ^^^^^^^ flow.empty warning
  step "Write."
}`,
  ],
  [
    "reused: a trial with the gasket in, then the same gasket",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is installed, Gasket is installed
  step install new Gasket
  step install Cover
  step remove Cover
  step remove Gasket
  step clean Gasket
  step install Gasket
//     ^^^^^^^^^^^^^^ order.reused error
  step install Cover
}`,
  ],
  [
    "unmet-need: a fact that only a check's failing way gives",
    `${SHOP}
procedure Work "Work" {
  step {
    check "It is clean" if it fails {
      do "Wipe it."
    }
  }
  step "Go on." { needs Done }
//                      ^^^^ order.unmet-need error
}`,
  ],
  [
    "bad-jump: a jump from one task of any order into another",
    `${SHOP}
procedure Work "Work" {
  in any order {
    task A "A" { step One "One." }
    task B "B" { step { check "It is so" if it fails { return to One } } }
//                                                     ^^^^^^^^^^^^^ flow.bad-jump error
  }
}`,
  ],
  [
    "endless: two jumps that lead to each other",
    `${SHOP}
procedure Work "Work" {
  step One { inspect Motor }
  when Extent is Look { go to Three }
  step Two { inspect Case }
  step Three { inspect Cover }
  when Extent is Look { return to One }
//                      ^^^^^^^^^^^^^ flow.endless error
  step "Write."
}`,
  ],
  [
    "left-behind: one pin by an index from a repeat",
    `${SHOP}
procedure Work "Work" {
  repeat n from 1 to 2 { step install Pin[n] }
//                            ^^^^^^^^^^^^^^ order.left-behind error
  step remove Pin[1]
}`,
  ],
  [
    "unfinished: three values, one forgotten, and a need behind it",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is installed
//            ^^^^^^^^^^^^^^^^^^ order.unfinished error
  when Extent is Full { step install Cover }
  otherwise when Extent is Part { step install Cover }
}`,
  ],
  [
    "not-final: a loosened guard and a forgotten plug",
    `part Plug "drain plug" { thread "M22x1.5" }
part Sump "sump"
consumable Oil "oil"
procedure Work "Work" {
  begin with Sump is installed, Plug is tightened
  step loosen Plug
  step remove Plug
//     ^^^^^^^^^^^ order.not-final warning
  step drain Sump
  step fill Sump with 2 L of Oil
}`,
  ],
  [
    "too-late: the wait until something is so",
    `part Bearing "bearing" { heat limit 120 °C }
tool Heater "heater" { heats to 150 °C }
procedure Work "Work" {
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step wait until Bearing is at most 80 °C
  step {
    install Bearing
    takes 20 s
    within 5 min after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late warning
  }
}`,
  ],
  [
    "too-late: heated all first, the first gets cold",
    `part Bearing[1..3] "bearing" { heat limit 120 °C }
tool Heater "heater" { heats to 150 °C }
procedure Work "Work" {
  finish with Bearing[all] are installed
  step Heating { heat Bearing[1] to 90 .. 110 °C with Heater  takes 6 min }
  step heat Bearing[2] to 90 .. 110 °C with Heater takes 6 min
  step {
    install Bearing[1..2]
    takes 20 s
    within 2 min after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
  step install Bearing[3]
}`,
  ],
  [
    "locked: the right one only",
    `part Foot[left, right] "foot"
part Nut[left, right] "nut" { needs Foot[same]  secures Foot[same]  thread "M8x1.25" }
part Tab[left, right] "tab" { needs Nut[same]  locks Nut[same] }
procedure Work "Work" {
  begin with Foot[all] are secured, Tab[all] are installed
  finish with Nut[all] are loose, Tab[left] is removed
  step remove Tab[left]
  step loosen Nut[left]
  step loosen Nut[right]
//     ^^^^^^^^^^^^^^^^^ order.locked error
}`,
  ],
  [
    "cold-fit: press is named, but install is written in one branch",
    `part Hub "hub"
part Gear "gear"
fit Gear over Hub { diameter 50 mm  interference 5 .. 20 µm  slip clearance 10 µm }
tool Press "press" { force 100 kN }
option Kept "kept" { yes no }
procedure Work "Work" {
  begin with Hub is installed
  finish with Gear is installed
  when Kept is yes { step press Gear over Hub with Press } otherwise { step install Gear over Hub }
//                                                                          ^^^^^^^^^^^^ order.cold-fit error
}`,
  ],
  [
    "cold-fit: not said where it goes, the fit tells it",
    `part Hub "hub"
part Gear "gear"
fit Gear over Hub { diameter 50 mm  interference 5 .. 20 µm  slip clearance 10 µm }
procedure Work "Work" {
  begin with Hub is installed
  finish with Gear is installed
  step install Gear
//     ^^^^^^^^^^^^ order.cold-fit error
}`,
  ],
  [
    "unmet-need: performed in one branch only",
    `${SHOP}
procedure CloseIt "Close" {
  begin with Case is installed, Gasket is installed
  finish with Cover is installed
  step install Cover
}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is installed
  when Kept is no { step install new Gasket }
  step perform CloseIt
//     ^^^^^^^^^^^^^^^ order.unmet-need error
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
