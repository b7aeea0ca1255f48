// Energies: work on what is live, isolation that is not proved, and what is put on again while it is open.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const DRIVE = `energy Supply "motor supply" { voltage 400 V AC }
energy Air "brake air" { pressure 6 bar }
part Motor "motor" { driven by Supply }
part Brake "brake" { driven by Supply, Air }
part Guard "belt guard" { encloses Motor }
part GuardScrew[1..2] "guard screw" { secures Guard  thread "M8x1.25" }
tool Tester "voltage tester"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
`;

test.each([
  [
    "energised: cleaning a live motor",
    `${DRIVE}
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  step clean Motor
//     ^^^^^^^^^^^ order.energised error
}`,
  ],
  [
    "energised: one finding, and then it is taken as off",
    `${DRIVE}
procedure Work "Work on the motor" {
  begin with Motor is installed
  finish with Motor is installed
  step clean Motor
//     ^^^^^^^^^^^ order.energised error
  step remove Motor
  step install Motor
}`,
  ],
  [
    "energised: installing where the energy is live",
    `${DRIVE}
procedure Fit "Fit the motor" {
  step install Motor
//     ^^^^^^^^^^^^^ order.energised error
}`,
  ],
  [
    "energised, silent: looking is not work",
    `${DRIVE}
procedure Look "Look at the motor" {
  begin with Motor is installed
  step inspect Motor "for rust"
  step measure "temperature of the frame" with Tester
  step { check "It runs without noise" }
}`,
  ],
  [
    "energised, silent: the motor lies on the bench",
    `${DRIVE}
procedure Bench "Clean the motor on the bench" {
  step clean Motor
}`,
  ],
  [
    "energised, silent: off from the start",
    `energy Heating "jacket heating" { voltage 230 V AC  off }
part Jacket "jacket" { driven by Heating }
procedure Wipe "Wipe the jacket" {
  begin with Jacket is installed
  step clean Jacket
}`,
  ],
  [
    "energised, silent: isolated before the procedure begins",
    `${DRIVE}
procedure Wipe "Wipe the motor" {
  begin with Motor is installed, Supply is isolated
  finish with Supply is isolated
  step clean Motor
}`,
  ],
  [
    "energised: only one of two is off",
    `${DRIVE}
procedure Wipe "Wipe the brake" {
  begin with Brake is installed
  step isolate Supply
  step prove Supply dead with Tester
  step clean Brake
//     ^^^^^^^^^^^ order.energised error
  step restore Supply
}`,
  ],
  [
    "energised: restored too early",
    `${DRIVE}
procedure Work "Work on the motor" {
  begin with Motor is installed
  step isolate Supply
  step prove Supply dead with Tester
  step clean Motor
  step restore Supply
  step lubricate Motor with Grease
//     ^^^^^^^^^^^^^^^ order.energised error
}
consumable Grease "grease"`,
  ],
  [
    "energised: isolated in one branch only",
    `${DRIVE}
option Live "the work is done live" { yes no }
procedure Work "Work on the motor" {
  begin with Motor is installed
  finish with Motor is installed
  when Live is no {
    step isolate Supply
    step prove Supply dead with Tester
  }
  step clean Motor
//     ^^^^^^^^^^^ order.energised error
  when Live is no { step restore Supply }
}`,
  ],
  [
    "energised, silent: isolated, proved, worked on, restored",
    `${DRIVE}
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  step isolate Supply
  step prove Supply dead with Tester
  step clean Motor
  step restore Supply
}`,
  ],
  [
    "energised: in a repeat, once",
    `energy Supply "heater supply" { voltage 400 V AC }
part Rod[1..3] "heating rod" { driven by Supply }
procedure Wipe "Wipe the rods" {
  begin with Rod[all] are installed
  repeat n from 1 to 3 { step clean Rod[n] }
//                            ^^^^^^^^^^^^ order.energised error
}`,
  ],
  [
    "energised, silent: a part that nothing drives, beside a live one",
    `${DRIVE}
part Base "base frame"
procedure Wipe "Wipe the base" {
  begin with Motor is installed, Base is installed
  step clean Base
}`,
  ],
  [
    "energised, allowed for an inspection under way",
    `${DRIVE}
procedure GreaseIt "Grease the running motor" {
  begin with Motor is installed
  step {
    lubricate Motor with Grease
//  ^^^^^^^^^^^^^^^ order.energised error allowed
    allow order.energised because "The maker asks for greasing at full speed."
  }
}
consumable Grease "grease"`,
  ],
  [
    "not-proved: isolated, and straight to work",
    `${DRIVE}
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  step isolate Supply
  step clean Motor
//     ^^^^^^^^^^^ order.not-proved information
  step restore Supply
}`,
  ],
  [
    "not-proved: one finding for several pieces of work",
    `${DRIVE}
procedure Work "Work on the motor" {
  begin with Motor is installed
  finish with Motor is installed
  step isolate Supply
  step clean Motor
//     ^^^^^^^^^^^ order.not-proved information
  step remove Motor
  step install Motor
  step restore Supply
}`,
  ],
  [
    "not-proved, warning: the other energy is proved",
    `${DRIVE}
procedure Work "Work on the brake" {
  begin with Brake is installed
  step isolate Supply
  step prove Supply dead with Tester
  step isolate Air
  step release Air
  step clean Brake
//     ^^^^^^^^^^^ order.not-proved warning
  step restore Air
  step restore Supply
}`,
  ],
  [
    "not-proved: proved, restored, isolated again",
    `${DRIVE}
procedure Work "Work on the motor twice" {
  begin with Motor is installed
  step isolate Supply
  step prove Supply dead with Tester
  step clean Motor
  step restore Supply
  step isolate Supply
  step clean Motor
//     ^^^^^^^^^^^ order.not-proved information
  step restore Supply
}`,
  ],
  [
    "not-proved, silent: nobody works on what it drives",
    `${DRIVE}
part Base "base frame"
procedure Wipe "Wipe the base" {
  begin with Motor is installed, Base is installed
  step isolate Supply
  step clean Base
  step inspect Motor
  step restore Supply
}`,
  ],
  [
    "not-proved, silent: it was off from the start",
    `energy Heating "jacket heating" { voltage 230 V AC  off }
part Jacket "jacket" { driven by Heating }
procedure Wipe "Wipe the jacket" {
  begin with Jacket is installed
  step clean Jacket
}`,
  ],
  [
    "not-proved, allowed",
    `${DRIVE}
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  step isolate Supply
  step clean Motor
//     ^^^^^^^^^^^ order.not-proved information allowed
    allow order.not-proved because "The plug is pulled and lies in sight."
  step restore Supply
}`,
  ],
  [
    "restored-open: the guard is still off",
    `${DRIVE}
procedure Service "Service the motor" {
  begin with Motor is installed, Guard is secured
  finish with Guard is secured
  step isolate Supply
  step prove Supply dead with Tester
  step loosen GuardScrew[all]
  step remove GuardScrew[all]
  step remove Guard
  step clean Motor
  step restore Supply
//     ^^^^^^^^^^^^^^ order.restored-open error
  step install Guard
  step install GuardScrew[all]
  step tighten GuardScrew[all] to 24 N·m with Wrench
}`,
  ],
  [
    "restored-open, silent: the guard is on again",
    `${DRIVE}
procedure Service "Service the motor" {
  begin with Motor is installed, Guard is secured
  finish with Guard is secured
  step isolate Supply
  step prove Supply dead with Tester
  step loosen GuardScrew[all]
  step remove GuardScrew[all]
  step remove Guard
  step clean Motor
  step install Guard
  step install GuardScrew[all]
  step tighten GuardScrew[all] to 24 N·m with Wrench
  step restore Supply
}`,
  ],
  [
    "restored-open: a foot screw is loose",
    `energy Supply "motor supply" { voltage 400 V AC }
part Motor "motor" { driven by Supply }
part Foot[1..4] "foot screw" { secures Motor  thread "M12x1.75"  driven by Supply }
tool Wrench "torque wrench" { torque 8 .. 120 N·m }
tool Tester "voltage tester"
procedure Shift "Shift the motor" {
  begin with Motor is secured
  finish with Motor is secured
  step isolate Supply
  step prove Supply dead with Tester
  step loosen Foot[all]
  step do "Shift the motor to the mark."
  step tighten Foot[1..3] to 80 N·m with Wrench
  step restore Supply
//     ^^^^^^^^^^^^^^ order.restored-open error
  step isolate Supply
  step prove Supply dead with Tester
  step tighten Foot[4] to 80 N·m with Wrench
  step restore Supply
}`,
  ],
  [
    "restored-open: a locking pin is still in",
    `energy Fan "coasting fan" { rotating }
part Rotor "fan rotor" { driven by Fan }
temporary part LockPin "rotor lock pin" { needs Rotor  driven by Fan }
procedure Wipe "Wipe the rotor" {
  begin with Rotor is installed
  step isolate Fan
  step prove Fan dead
  step install LockPin
  step clean Rotor
  step restore Fan
//     ^^^^^^^^^^^ order.restored-open error
  step isolate Fan
  step prove Fan dead
  step remove LockPin
  step restore Fan
}`,
  ],
  [
    "restored-open, silent: the guard of another machine is off",
    `${DRIVE}
part OtherGuard "guard of the fan"
procedure Wipe "Wipe the motor" {
  begin with Motor is installed, OtherGuard is installed
  finish with OtherGuard is removed
  step isolate Supply
  step prove Supply dead with Tester
  step remove OtherGuard
  step clean Motor
  step restore Supply
}`,
  ],
  [
    "restored-open, silent: the brake air comes back while the guard of the motor is off",
    `${DRIVE}
procedure Both "Service motor and brake" {
  begin with Motor is installed, Brake is installed, Guard is installed
  finish with Guard is installed
  step isolate Supply, Air
  step prove Supply dead with Tester
  step prove Air dead
  step remove Guard
  step clean Motor, Brake
  step restore Air
  step install Guard
  step restore Supply
}`,
  ],
  [
    "restored-open: only when the guard is left off for the trial",
    `${DRIVE}
option Trial "a trial run follows" { yes no }
procedure Service "Service the motor" {
  begin with Motor is installed, Guard is installed
  finish with Guard is installed
  step isolate Supply
  step prove Supply dead with Tester
  step remove Guard
  step clean Motor
  when Trial is no { step install Guard }
  step restore Supply
//     ^^^^^^^^^^^^^^ order.restored-open error
  when Trial is yes {
    step { check "The motor turns to the left" }
    step install Guard
  }
}`,
  ],
  [
    "restored-open, allowed for the turning test",
    `${DRIVE}
procedure Service "Service the motor" {
  begin with Motor is installed, Guard is installed
  finish with Guard is installed
  step isolate Supply
  step prove Supply dead with Tester
  step remove Guard
  step clean Motor
  step {
    restore Supply
//  ^^^^^^^^^^^^^^ order.restored-open error allowed
    allow order.restored-open because "Two seconds for the sense of rotation, barrier up."
  }
  step { check "The motor turns to the left" }
  step install Guard
}`,
  ],
  [
    "left-behind: an energy left off, and its restoring forgotten in one branch",
    `${DRIVE}
option Handover "the drive is handed over" { yes no }
procedure Wipe "Wipe the motor" {
  begin with Motor is installed
  step isolate Supply
//     ^^^^^^^^^^^^^^ order.left-behind error
  step prove Supply dead with Tester
  step clean Motor
  when Handover is yes { step restore Supply }
}`,
  ],
  [
    "left-behind, silent: the end says that it stays off",
    `${DRIVE}
procedure MakeSafe "Make the motor safe" {
  finish with Supply is isolated
  step isolate Supply
  step prove Supply dead with Tester
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
