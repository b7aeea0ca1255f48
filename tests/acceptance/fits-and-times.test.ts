// Fits that go on hot, cold or pressed, time limits, and work that is undone before it served.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const FIT = `source Manual "pump manual" revision "1"
material Steel "carbon steel" { expansion 11.7 µm/(m·K)  heat limit 200 °C }
part Shaft "pump shaft" { material Steel }
part Bearing "bearing" { material Steel  heat limit 120 °C }
part Sleeve "sleeve" { material Steel }
part Key "key" { needs Shaft }
part Wheel "fan wheel" { material Steel }
fit Bearing over Shaft { diameter 60 mm  interference 11 .. 36 µm  slip clearance 15 µm } per Manual "3"
fit Sleeve over Shaft { diameter 45 mm  interference 4 .. 20 µm  slip clearance 10 µm } per Manual "4"
fit Wheel over Shaft { diameter 40 mm  interference -20 .. 15 µm  slip clearance 5 µm } per Manual "5"
tool Heater "induction heater" { heats to 150 °C }
tool Press "press" { force 100 kN }
`;

const STEPS = `part Shaft "shaft"
part Bearing "bearing" { heat limit 120 °C }
part Cover "cover"
consumable Cleaner "cleaner"
consumable Grease "grease"
tool Heater "induction heater" { heats to 150 °C }
`;

test.each([
  [
    "cold-fit: slid on cold",
    `${FIT}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step install Bearing over Shaft
//     ^^^^^^^^^^^^^^^ order.cold-fit error
}`,
  ],
  [
    "cold-fit, silent: hot",
    `${FIT}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step heat Bearing to 105 .. 112 °C with Heater
  step install Bearing over Shaft
}`,
  ],
  [
    "cold-fit, silent: pressed on",
    `${FIT}
procedure Fit "Fit the sleeve" {
  begin with Shaft is installed
  finish with Sleeve is installed
  step press Sleeve over Shaft with Press
}`,
  ],
  [
    "cold-fit, silent: the shaft is cooled",
    `${FIT}
procedure Fit "Fit the shaft into the bearing" {
  begin with Bearing is installed
  finish with Shaft is installed
  step cool Shaft to -75 .. -70 °C
  step install Shaft in Bearing
}`,
  ],
  [
    "cold-fit, silent: the smallest interference is not above zero",
    `${FIT}
procedure Fit "Fit the wheel" {
  begin with Shaft is installed
  finish with Wheel is installed
  step install Wheel over Shaft
}`,
  ],
  [
    "cold-fit, silent: a fit with a mate that is not there is none",
    `${FIT}
procedure Fit "Lay the bearing in its box" {
  finish with Key is installed
  begin with Shaft is installed
  step clean Bearing
  step install Key on Shaft
}`,
  ],
  [
    "cold-fit, silent: it was heated, though in an earlier task; how warm it still is, the limits tell",
    `${FIT}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  task Heating "Heat" { step heat Bearing to 105 .. 112 °C with Heater }
  task Fitting "Fit" { step install Bearing over Shaft }
}`,
  ],
  [
    "cold-fit: on the way without the heater",
    `${FIT}
option Hot "there is a heater" { yes no }
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  when Hot is yes { step heat Bearing to 105 .. 112 °C with Heater }
  step install Bearing over Shaft
//     ^^^^^^^^^^^^^^^ order.cold-fit error
}`,
  ],
  [
    "cold-fit: an ISO fit with interference",
    `material Steel "carbon steel" { expansion 11.7 µm/(m·K)  heat limit 200 °C }
part Hub "hub" { material Steel }
part Gear "gear" { material Steel }
fit Gear over Hub { diameter 50 mm  tolerance "H7/s6"  slip clearance 30 µm }
procedure Fit "Fit the gear" {
  begin with Hub is installed
  finish with Gear is installed
  step install Gear over Hub
//     ^^^^^^^^^^^^ order.cold-fit error
}`,
  ],
  [
    "cold-fit, silent: an ISO fit with play",
    `part Hub "hub"
part Gear "gear"
fit Gear over Hub { diameter 50 mm  tolerance "H7/g6"  slip clearance 0 µm }
procedure Fit "Fit the gear" {
  begin with Hub is installed
  finish with Gear is installed
  step install Gear over Hub
}`,
  ],
  [
    "cold-fit, allowed",
    `${FIT}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step install Bearing over Shaft
//     ^^^^^^^^^^^^^^^ order.cold-fit error allowed
    allow order.cold-fit because "The oil injection nut widens the bore."
}`,
  ],
  [
    "too-late: the times add up to more",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step "Carry it to the bench." { takes 60 s }
  step {
    install Bearing
    takes 40 s
    within 90 s after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
}`,
  ],
  [
    "too-late, silent: the times fit",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step "Carry it to the bench." { takes 50 s }
  step {
    install Bearing
    takes 40 s
    within 90 s after Heating
  }
}`,
  ],
  [
    "too-late, silent: the time of the first step itself does not count",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 20 min }
  step {
    install Bearing
    takes 40 s
    within 60 s after Heating
  }
}`,
  ],
  [
    "too-late: a wait on the way counts",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step wait 5 min
  step {
    install Bearing
    takes 40 s
    within 90 s after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
}`,
  ],
  [
    "too-late, warning: a step on the way says no time",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step "Carry it to the bench."
  step {
    install Bearing
    takes 40 s
    within 90 s after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late warning
  }
}`,
  ],
  [
    "too-late: the upper end of a time counts",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step "Carry it to the bench." { takes 30 .. 60 s }
  step {
    install Bearing
    takes 40 s
    within 90 s after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
}`,
  ],
  [
    "too-late: on the longer branch",
    `${STEPS}
option Far "the bench is far" { yes no }
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  when Far is yes { step "Carry it to the other hall." { takes 3 min } }
  step {
    install Bearing
    takes 40 s
    within 90 s after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
}`,
  ],
  [
    "too-late, silent: a rework heats it again",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step Fitting {
    install Bearing
    takes 40 s
    within 60 s after Heating
  }
  step {
    check "It sits at the shoulder" if it fails {
      remove Bearing
      return to Heating
    }
    takes 5 min
  }
}`,
  ],
  [
    "too-late, allowed",
    `${STEPS}
procedure Fit "Fit the bearing" {
  begin with Shaft is installed
  finish with Bearing is installed
  step Heating { heat Bearing to 90 .. 110 °C with Heater  takes 6 min }
  step wait 5 min
  step {
    install Bearing
    takes 40 s
    within 90 s after Heating
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error allowed
    allow order.too-late because "The oven box keeps it hot for ten minutes."
  }
}`,
  ],
  [
    "wasted: greased, then wiped off",
    `${STEPS}
procedure Work "Work on the shaft" {
  begin with Shaft is installed
  step lubricate Shaft with Grease
  step clean Shaft with Cleaner
//     ^^^^^^^^^^^ order.wasted information
}`,
  ],
  [
    "wasted, silent: cleaned, greased",
    `${STEPS}
procedure Work "Work on the shaft" {
  begin with Shaft is installed
  step clean Shaft with Cleaner
  step lubricate Shaft with Grease
}`,
  ],
  [
    "wasted, silent: greased, used, cleaned",
    `${STEPS}
procedure Work "Work on the shaft" {
  begin with Shaft is installed
  finish with Bearing is installed
  step lubricate Shaft with Grease
  step install Bearing on Shaft
  step clean Shaft with Cleaner
}`,
  ],
  [
    "wasted: turned, then turned again",
    `ring Seat "seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
procedure Turn "Turn the ring" {
  step turn Seat[3] to 6 o'clock
  step turn Seat[4] to 6 o'clock
//     ^^^^^^^^^^^^ order.wasted information
}`,
  ],
  [
    "wasted, silent: turned, looked at, turned again",
    `ring Seat "seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Tooth[1..8] "tooth" { seats in Seat by number }
procedure Turn "Look at the teeth" {
  begin with Tooth[all] are installed
  step turn Seat[3] to 6 o'clock
  step inspect Tooth[3] "for wear"
  step turn Seat[4] to 6 o'clock
  step inspect Tooth[4] "for wear"
}`,
  ],
  [
    "wasted, silent: turned, words, turned again",
    `ring Seat "seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
procedure Turn "Look at the seats" {
  repeat n from 1 to 8 {
    step turn Seat[n] to 6 o'clock
    step "Look at seat {n} with the lamp."
  }
}`,
  ],
  [
    "wasted: heated, then cooled, with nothing between",
    `${STEPS}
procedure Work "Warm the bearing" {
  step heat Bearing to 90 .. 110 °C with Heater
  step cool Bearing to 15 .. 25 °C
//     ^^^^^^^^^^^^ order.wasted information
}`,
  ],
  [
    "wasted, silent: greased in one branch, cleaned in the other",
    `${STEPS}
option Stored "the shaft goes to the store" { yes no }
procedure Work "Work on the shaft" {
  begin with Shaft is installed
  when Stored is yes { step lubricate Shaft with Grease } otherwise { step clean Shaft }
}`,
  ],
  [
    "wasted, silent: flushed with oil",
    `${STEPS}
part Sump "sump"
consumable Oil "oil"
procedure Flush "Flush the sump" {
  begin with Sump is installed
  step fill Sump with 2 L of Oil
  step drain Sump
  step fill Sump with 3 L of Oil
}`,
  ],
  [
    "wasted, allowed",
    `${STEPS}
procedure Work "Work on the shaft" {
  begin with Shaft is installed
  step lubricate Shaft with Grease
  step clean Shaft with Cleaner
//     ^^^^^^^^^^^ order.wasted information allowed
    allow order.wasted because "The grease lifts the old varnish."
}`,
  ],
  [
    "wasted, silent: a rework that cleans and greases again",
    `${STEPS}
procedure Work "Work on the shaft" {
  begin with Shaft is installed
  step Wash { clean Shaft with Cleaner }
  step lubricate Shaft with Grease
  step { check "The film is even" if it fails { return to Wash } }
}`,
  ],
  [
    "wasted, silent: heated to come off, then cooled in the bath",
    `${STEPS}
procedure Take "Take the bearing off" {
  begin with Shaft is installed, Bearing is installed
  finish with Bearing is removed
  step heat Bearing to 90 .. 110 °C with Heater
  step remove Bearing
  step cool Bearing to 15 .. 25 °C
}`,
  ],
  [
    "too-late, silent: a wait that the limit leaves room for",
    `${STEPS}
procedure Glue "Spread and close" {
  finish with Cover is installed
  step Spread { apply Grease to Cover  takes 2 min }
  step wait 3 min
  step {
    install Cover
    takes 1 min
    within 5 min after Spread
  }
}`,
  ],
  [
    "too-late: the check on the way that may come back without the first step",
    `${STEPS}
procedure Glue "Spread and close" {
  finish with Cover is installed
  step Spread { apply Grease to Cover  takes 2 min }
  step Smooth { do "Smooth the film."  takes 1 min }
  step Even { check "The film is even" if it fails { return to Smooth }  takes 1 min }
  step {
    install Cover
    takes 1 min
    within 3 min after Spread
//  ^^^^^^^^^^^^^^^^^^^^^^^^^ order.too-late error
  }
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
