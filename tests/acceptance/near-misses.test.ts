// Near misses: unusual, and right all the same. Rework, trials, several energies, parts changed one by one.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";
import { DRIVE, HEAVY, SHOP } from "./shops.ts";

const SEAL = `consumable Sealant "joint sealant" { cure 30 min }
part Housing "housing"
part Cover "cover" { needs Housing }
part Screw[1..2] "screw" { needs Cover  secures Cover  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
tool Hoist "hoist" { lifts 250 kg }
`;

test.each([
  [
    "sealant on the housing face, cover on and tightened at once",
    `${SEAL}
procedure Close "Close" {
  begin with Housing is installed
  finish with Cover is secured
  step apply Sealant to Housing
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 20 N·m with Wrench
}`,
  ],
  [
    "silent: one screw at a time",
    `${HEAVY}
procedure Retighten "Retighten" {
  begin with Motor is secured
  finish with Motor is secured
  repeat n from 1 to 4 {
    step loosen Foot[n]
    step tighten Foot[n] to 190 N·m with Wrench
  }
}`,
  ],
  [
    "silent: the hoist takes the next load after two screws are in",
    `${HEAVY}
procedure Fit "Fit" {
  finish with Motor is secured, Box is installed
  step lift Motor with Hoist
  step install Motor
  step install Foot[1, 3]
  step lift Box with Hoist
  step install Box
  step install Foot[2, 4]
  step tighten Foot[all] to 190 N·m with Wrench
}`,
  ],
  [
    "silent: another hoist takes the next load",
    `${HEAVY}
tool Crane "crane" { lifts 1000 kg }
procedure Fit "Fit" {
  finish with Motor is secured, Box is installed
  step lift Motor with Hoist
  step install Motor
  step lift Box with Crane
  step install Box
  step install Foot[all]
  step tighten Foot[all] to 190 N·m with Wrench
}`,
  ],
  [
    "unsupported, silent: light by itself",
    `part Plate "plate" { mass 15 kg }
part Screw[1..2] "screw" { needs Plate  secures Plate  thread "M8x1.25" }
procedure Open "Open" {
  finish with Screw[all] are loose
  begin with Plate is secured
  step loosen Screw[all]
}`,
  ],
  [
    "silent: a spring released and proved",
    `${DRIVE}
procedure Work "Work" {
  begin with Brake is installed
  step isolate Spring
  step release Spring
  step prove Spring dead
  step clean Brake
  step restore Spring
}`,
  ],
  [
    "silent: needs of a clock position, turned before",
    `${DRIVE}
procedure Work "Work" {
  finish with Tooth[3] is installed
  step turn Seat[3] to 6 o'clock
  step { needs Seat[3] at 6 o'clock  install Tooth[3] }
}`,
  ],
  [
    "silent: all out, all in again",
    `${DRIVE}
procedure Work "Work" {
  begin with Tooth[all] are installed
  finish with Tooth[all] are installed
  repeat n from 1 to 8 { step remove Tooth[n] }
  repeat n from 8 down to 1 { step install Tooth[n] }
}`,
  ],
  [
    "silent: teeth changed one at a time on a full ring, upwards",
    `${DRIVE}
procedure Work "Work" {
  begin with Tooth[all] are installed
  finish with Tooth[all] are installed
  repeat n from 1 to 8 {
    step remove Tooth[n]
    step clean Tooth[n]
    step install Tooth[n]
  }
}`,
  ],
  [
    "silent: ten things in any order",
    `part P[1..10] "plug"
procedure Work "Work" {
  finish with P[all] are installed
  in any order {
    step install P[1]
    step install P[2]
    step install P[3]
    step install P[4]
    step install P[5]
    step install P[6]
    step install P[7]
    step install P[8]
    step install P[9]
    step install P[10]
  }
}`,
  ],
  [
    "silent: a loop whose state changes has a way out",
    `${DRIVE}
part Cap "cap"
procedure Work "Work" {
  finish with Cap is installed
  step Begin { inspect Motor }
  when Cap is removed {
    step install Cap
    return to Begin
  }
}`,
  ],
  [
    "silent: a performed procedure in a repeat, over and out",
    `${DRIVE}
procedure Look "Look" {
  begin with Motor is installed
  step inspect Motor
}
procedure Work "Work" {
  begin with Motor is installed
  repeat n from 1 to 3 { perform Look }
}`,
  ],
  [
    "silent: looked at, in a rework with the energy off and on",
    `${DRIVE}
procedure Work "Work" {
  begin with Motor is installed
  step Off { isolate Supply }
  step prove Supply dead with Tester
  step clean Motor
  step restore Supply
  step { check "It runs without noise" if it fails { return to Off } }
}`,
  ],
  [
    "silent: the pin is put in and out in a repeat",
    `part Lid "lid"
temporary part Pin "pin"
procedure Work "Work" {
  repeat n from 1 to 4 {
    step install Pin
    step "Drill hole {n}."
    step remove Pin
  }
}`,
  ],
  [
    "silent: a fastener already loose at the start is tightened",
    `part Cover "cover"
part Screw[1..2] "screw" { needs Cover  secures Cover  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
procedure Work "Work" {
  begin with Cover is installed, Screw[all] are installed
  finish with Cover is secured
  step tighten Screw[all] to 20 N·m with Wrench
}`,
  ],
  [
    "silent: loosening what is only said to be in",
    `part Cover "cover"
part Screw[1..2] "screw" { needs Cover  secures Cover  thread "M8x1.25" }
procedure Work "Work" {
  begin with Cover is installed, Screw[all] are installed
  finish with Cover is removed, Screw[all] are removed
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
}`,
  ],
  [
    "silent: prove before and after, both energies, at once",
    `${SHOP}
procedure Work "Work" {
  begin with Motor is installed
  step isolate Supply, Air
  step prove Supply dead with Tester
  step prove Air dead
  step clean Motor
  step restore Air, Supply
}`,
  ],
  [
    "silent: trial assembly without sealing, stripped again, then for good",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is secured, Gasket is installed
  task Trial "Trial" {
    step install Cover
    step install Screw[1, 3]
    step tighten Screw[1, 3] by hand
    step measure Gap "gap" with Depth expect 0 .. 1 mm record
    step remove Screw[1, 3]
    step remove Cover
  }
  task Final "Final" {
    step install new Gasket
    step install Cover
    step install Screw[all]
    step tighten Screw[all] in cross pattern to 50 %, 100 % of 20 N·m with Wrench
  }
}`,
  ],
  [
    "silent: a crushed gasket left in place through a retightening",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed, Gasket is installed, Cover is secured
  finish with Cover is secured
  step loosen Screw[all]
  step tighten Screw[all] to 20 N·m with Wrench
}`,
  ],
  [
    "silent: an option decides what a check does",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Cover is installed
  step Fit { install Cover }
  step {
    check "The gap is even" if it fails {
      when Kept is yes { stop "Call the engineer." }
      remove Cover
      return to Fit
    }
  }
}`,
  ],
  [
    "silent: a jump inside one task of any order",
    `${SHOP}
procedure Work "Work" {
  in any order {
    task A "A" {
      step One { inspect Motor }
      step { check "It is so" if it fails { return to One } }
    }
    task B "B" { step "Two." }
  }
}`,
  ],
  [
    "silent: readings that get better in a loop with a stop",
    `${SHOP}
procedure Work "Work" {
  step Lap { do "Lap." }
  step measure Depth1 "depth" with Depth expect 1 .. 5 mm
  when Depth1 at least 4 mm { stop "New seat." }
  when Depth1 at least 2 mm { return to Lap }
  step "Write."
}`,
  ],
  [
    "impossible: a reading above what it can be",
    `${SHOP}
procedure Work "Work" {
  step measure Gap "gap" with Depth expect 0.2 .. 1.2 mm
  step {
    inspect Motor
    when Gap at most 0.6 mm { clean Case }
    otherwise { clean Cover }
  }
}`,
  ],
  [
    "silent: when on a part state decides between new and old",
    `${SHOP}
procedure Work "Work" {
  begin with Case is installed
  finish with Gasket is installed
  when Kept is yes { step install Gasket }
  when Gasket is removed { step install new Gasket }
}`,
  ],
  [
    "silent: only loosened, the end says so",
    `part Plug "drain plug" { thread "M22x1.5" }
procedure Work "Work" {
  begin with Plug is tightened
  finish with Plug is loose
  step loosen Plug
}`,
  ],
  [
    "silent: within in a repeat, of the same pass",
    `part Bearing[1..3] "bearing" { heat limit 120 °C }
tool Heater "heater" { heats to 150 °C }
procedure Work "Work" {
  finish with Bearing[all] are installed
  repeat n from 1 to 3 {
    step Heating { heat Bearing[n] to 90 .. 110 °C with Heater  takes 6 min }
    step {
      install Bearing[n]
      takes 20 s
      within 60 s after Heating
    }
  }
}`,
  ],
  [
    "silent: a jump leaves out the step it would come after",
    `${SHOP}
procedure Work "Work" {
  begin with Motor is installed
  when Kept is yes { go to Look }
  step Wash { clean Case }
  step Look {
    inspect Motor
    after Wash
  }
}`,
  ],
  [
    "declared, silent: what it comes after is in a branch that may not be taken",
    `${SHOP}
procedure Work "Work" {
  begin with Motor is installed
  when Kept is yes { step Wash { clean Case } }
  step Look {
    inspect Motor
    after Wash
  }
}`,
  ],
  [
    "silent: locks on named instances",
    `part Foot[left, right] "foot"
part Nut[left, right] "nut" { needs Foot[same]  secures Foot[same]  thread "M8x1.25" }
part Tab[left, right] "tab" { needs Nut[same]  locks Nut[same] }
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
procedure Work "Work" {
  finish with Foot[all] are secured, Tab[all] are installed
  step install Foot[all]
  step install Nut[all]
  step tighten Nut[left, right] to 20 N·m with Wrench
  step install Tab[left], Tab[right]
}`,
  ],
  [
    "silent: the hub goes cold into a gear that is hot",
    `part Hub "hub"
part Gear "gear" { heat limit 200 °C }
fit Gear over Hub { diameter 50 mm  interference 5 .. 20 µm  slip clearance 10 µm }
tool Heater "heater" { heats to 150 °C }
procedure Work "Work" {
  finish with Hub is installed
  begin with Gear is installed
  step heat Gear to 120 .. 140 °C with Heater
  step install Hub in Gear
}`,
  ],
  [
    "silent: a fit taken apart hot",
    `part Hub "hub"
part Gear "gear" { heat limit 200 °C }
fit Gear over Hub { diameter 50 mm  interference 5 .. 20 µm  slip clearance 10 µm }
tool Heater "heater" { heats to 150 °C }
procedure Work "Work" {
  begin with Hub is installed, Gear is installed
  finish with Gear is removed
  step heat Gear to 120 .. 140 °C with Heater
  step remove Gear
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
