// Ordinary shop work on drives, written as a shop would write it: nothing to find.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

test.each([
  [
    "belt change with the guard and both energies",
    `energy Supply "motor supply" { voltage 400 V AC }
energy Coast "coasting fan" { rotating }
part Pulley[motor, fan] "pulley" { driven by Supply, Coast }
part Belt "belt" { needs Pulley  driven by Supply, Coast  single use }
part Guard "guard" { mass 12 kg  encloses Belt, Pulley }
part GuardScrew[1..4] "guard screw" { needs Guard  secures Guard  thread "M8x1.25" }
tool Tester "voltage tester"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
procedure ChangeBelt "Change the belt" {
  begin with Pulley[all] are installed, Belt is installed, Guard is secured
  finish with Belt is installed, Guard is secured, Supply is live
  task Safe "Make it safe" {
    step isolate Supply, Coast
    step prove Supply dead with Tester
    step prove Coast dead
  }
  task Open "Open" {
    step loosen GuardScrew[all]
    step remove GuardScrew[all]
    step remove Guard
  }
  step discard Belt
  step clean Pulley[all]
  step inspect Pulley[all] "for worn grooves"
  step install new Belt
  step align Pulley[motor] with Pulley[fan]
  task Close "Close" {
    step install Guard
    step install GuardScrew[all]
    step tighten GuardScrew[all] to 20 N·m with Wrench
    step restore Coast
    step restore Supply
  }
  step { check "The belt runs without squeal" }
}`,
  ],
  [
    "coupling alignment: feet loosened, shims, tightened again, until it is right",
    `energy Supply "motor supply" { voltage 400 V AC }
part Motor "motor" { mass 20 kg  driven by Supply }
holes Feet "motor feet" { count 4  order 1, 4, 2, 3 }
part FootScrew[1..4] "foot screw" { seats in Feet by number  secures Motor  thread "M12x1.75"  driven by Supply }
part Shim[1..4] "shim" { seats in Feet by number }
tool Dial "dial gauge" { measures 0 .. 10 mm  resolution 0.01 mm }
tool Wrench "torque wrench" { torque 20 .. 200 N·m }
tool Tester "voltage tester"
procedure AlignCoupling "Align the coupling" {
  begin with Motor is secured, Supply is isolated
  finish with Motor is secured, Supply is isolated
  step prove Supply dead with Tester
  step Measuring { measure Offset "offset of the halves" with Dial expect 0 .. 2 mm record }
  when Offset at most 0.05 mm { go to Done }
  step loosen FootScrew[all] in reverse order
  step "Change the shims by half of the reading."
  step tighten FootScrew[all] in order to 50 %, 100 % of 80 N·m with Wrench
  step Again { check "Offset after tightening" with Dial expect at most 0.05 mm record if it fails { return to Measuring } }
  step Done "Write the readings into the sheet."
}`,
  ],
  [
    "hot bearing fit with a limit in time",
    `material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 200 °C }
part Shaft "shaft" { material Steel }
part Bearing "bearing" { material Steel  heat limit 120 °C }
part Ring "retaining ring" { needs Bearing  retains Bearing }
fit Bearing over Shaft { diameter 55 mm  interference 2 .. 30 µm  slip clearance 15 µm }
tool Heater "induction heater" { heats to 150 °C }
tool Puller "puller"
tool Feeler "feeler gauge" { measures 0.03 .. 1 mm  resolution 0.01 mm }
procedure FitBearing "Fit the bearing" {
  ambient 15 .. 25 °C
  begin with Shaft is installed
  finish with Bearing is installed, Ring is installed
  step Heating { heat Bearing to 105 .. 115 °C with Heater  takes 6 min }
  step "Slide it on." {
    needs Bearing is at least 95 °C
    install Bearing over Shaft
    takes 30 s
    within 60 s after Heating
  }
  step wait until Bearing is at most 40 °C
  step {
    check "Gap at the shoulder" with Feeler expect at most 0.03 mm record if it fails {
      remove Bearing with Puller
      return to Heating
    }
  }
  step install Ring
}`,
  ],
  [
    "bearing pulled and the seat dressed",
    `part Shaft "shaft"
part Bearing "bearing" { needs Shaft }
part Ring "retaining ring" { needs Bearing  retains Bearing }
consumable Oil "oil"
tool Puller "puller"
procedure PullBearing "Pull the bearing" {
  begin with Shaft is installed, Bearing is installed, Ring is installed
  finish with Bearing is removed, Ring is removed
  step remove Ring
  step remove Bearing with Puller
  step do "Dress the seat with a fine stone."
  step clean Shaft
  step { check "Diameter of the seat is in the sheet" if it fails { stop "Send the shaft to the lathe." } }
  step lubricate Shaft with Oil
}`,
  ],
  [
    "segments on a sprocket, turned to the bottom one by one",
    `ring Seat "seat" { count 12  numbered clockwise seen from "drive end"  position 1 at 6 o'clock  fill counterclockwise }
part Carrier "carrier"
part Segment[1..12] "segment" { seats in Seat by number  needs Carrier }
part Screw[1..12] "screw" { seats in Seat by number  needs Segment[same]  secures Segment[same]  thread "M12x1.75" }
tool Wrench "torque wrench" { torque 20 .. 200 N·m }
procedure FitSegments "Fit the segments" {
  begin with Carrier is installed
  finish with Segment[all] are secured
  repeat n from 12 down to 1 {
    step turn Seat[n] to 6 o'clock
    step install Segment[n] in Seat[n] at 6 o'clock
    step install Screw[n]
    step tighten Screw[n] by hand
  }
  step tighten Screw[all] in cross pattern to 50 %, 100 % of 80 N·m with Wrench
}`,
  ],
  [
    "coupling half heated and slid on, with its key",
    `material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 200 °C }
part Shaft "shaft" { material Steel }
part Key "key" { needs Shaft }
part Half "coupling half" { material Steel  needs Key }
fit Half over Shaft { diameter 48 mm  interference 5 .. 40 µm  slip clearance 15 µm }
tool Heater "heater" { heats to 180 °C }
procedure FitHalf "Fit the coupling half" {
  begin with Shaft is installed
  finish with Half is installed
  step install Key
  step clean Shaft, Half
  step Heating { heat Half to 140 .. 150 °C with Heater  takes 9 min }
  step {
    install Half over Shaft
    takes 20 s
    within 60 s after Heating
  }
  step wait until Half is at most 40 °C
}`,
  ],
  [
    "fan wheel on a taper with nut and tab washer",
    `part Shaft "shaft"
part Wheel "fan wheel" { mass 9 kg  needs Shaft }
part Tab "tab washer" { needs Nut  locks Nut  single use }
part Nut "nut" { needs Wheel  secures Wheel  thread "M24x2" }
tool Wrench "torque wrench" { torque 40 .. 300 N·m }
consumable Paste "assembly paste"
procedure ChangeWheel "Change the fan wheel" {
  begin with Shaft is installed, Wheel is secured, Tab is installed
  finish with Wheel is secured, Tab is installed
  step discard Tab
  step loosen Nut
  step remove Nut
  step remove Wheel
  step clean Shaft
  step lubricate Shaft with Paste
  step install Wheel
  step install Nut
  step tighten Nut to 160 N·m with Wrench
  step install new Tab
}`,
  ],
  [
    "chain tensioned with the guard on its hinges",
    `energy Supply "supply" { voltage 400 V AC }
part Chain "chain" { driven by Supply }
part Slide "tension slide" { driven by Supply }
part SlideScrew[1..2] "slide screw" { secures Slide  thread "M10x1.5"  driven by Supply }
part Door "guard door" { encloses Chain  states shut, open }
tool Tester "tester"
tool Wrench "torque wrench" { torque 10 .. 80 N·m }
procedure Tension "Tension the chain" {
  begin with Chain is installed, Slide is secured
  finish with Slide is secured, Supply is live
  step isolate Supply
  step prove Supply dead with Tester
  step loosen SlideScrew[all]
  step Pulling { do "Turn the jack screw by half a turn." }
  step { check "Slack in the middle" expect 10 .. 15 mm record if it fails { return to Pulling } }
  step tighten SlideScrew[all] to 45 N·m with Wrench
  step lubricate Chain with ChainOil
  step restore Supply
}
consumable ChainOil "chain oil"`,
  ],
  [
    "gearbox cover off and on with the hoist and new sealant",
    `part Case "gear case"
part Cover "gear case cover" { mass 60 kg  needs Case }
ring Circle "cover circle" { count 8  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part Screw[1..8] "cover screw" { seats in Circle by number  needs Cover  secures Cover  thread "M10x1.5" }
temporary part Pin[1..2] "guide pin" { seats in Circle equally spaced }
consumable Sealant "joint sealant" { cure 1 h }
tool Hoist "hoist" { lifts 250 kg }
tool Wrench "torque wrench" { torque 10 .. 80 N·m }
procedure LookInside "Look into the gear case" {
  begin with Case is installed, Cover is secured
  finish with Cover is secured, no temporary parts
  step support Cover with Hoist
  step loosen Screw[all] in reverse order
  step remove Screw[all]
  step remove Cover
  step set down Cover
  step inspect Case "for chips"
  step clean Case, Cover
  step install Pin[1] in Circle[1]
  step install Pin[2] in Circle[5]
  step apply 20 g of Sealant to Cover
  step lift Cover with Hoist
  step install Cover
  repeat n in 2, 3, 4, 6, 7, 8 { step install Screw[n] }
  step remove Pin[all]
  repeat n in 1, 5 { step install Screw[n] }
  step tighten Screw[all] in cross pattern to 30 %, 70 %, 100 % of 45 N·m with Wrench
}`,
  ],
  [
    "brake lining changed, both sides",
    `energy Air "brake air" { pressure 6 bar }
part Caliper "caliper" { driven by Air }
part Lining[left, right] "lining" { single use  driven by Air }
part Clip[left, right] "clip" { needs Lining[same]  retains Lining[same]  driven by Air }
procedure ChangeLinings "Change the brake linings" {
  begin with Caliper is installed, Lining[all] are installed, Clip[all] are installed
  finish with Lining[all] are installed, Clip[all] are installed, Air is live
  step isolate Air
  step release Air
  step prove Air dead
  step remove Clip[all]
  step discard Lining[all]
  step clean Caliper
  step install new Lining[left, right]
  step install Clip[all]
  step restore Air
  step { check "The brake opens and closes" }
}`,
  ],
  [
    "motor swapped on its hoist",
    `energy Supply "supply" { voltage 400 V AC }
part Motor "motor" { mass 85 kg  driven by Supply }
part Foot[1..4] "foot screw" { needs Motor  secures Motor  thread "M16x2"  driven by Supply }
part Cable "motor cable" { needs Motor  driven by Supply }
tool Hoist "hoist" { lifts 250 kg }
tool Tester "tester"
tool Wrench "torque wrench" { torque 40 .. 300 N·m }
procedure SwapMotor "Swap the motor" {
  begin with Motor is secured, Cable is installed
  finish with Motor is secured, Cable is installed, Supply is live
  step isolate Supply
  step prove Supply dead with Tester
  step remove Cable
  step support Motor with Hoist
  step loosen Foot[all]
  step remove Foot[all]
  step remove Motor
  step set down Motor
  step "Bring the spare motor."
  step lift Motor with Hoist
  step install Motor
  step install Foot[all]
  step tighten Foot[all] to 190 N·m with Wrench
  step install Cable
  step restore Supply
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
