// One shop, with its library in a file of its own, and one procedure of many kinds of lines: what the tests of single changes start from.
export const LIBRARY = `source Manual "pump manual" revision "7"
source Rules "safety rules" revision "2"
role Fitter "fitter"
role Inspector "inspector"
material Steel "steel" {
  expansion 11.7 µm/(m·K)
  heat limit 200 °C per Manual "2.1"
}
consumable Grease "grease" { hazard skin }
consumable Oil "oil" { hazard skin }
tool Wrench "torque wrench" {
  torque 8 .. 90 N·m
  accuracy 4 %
}
tool LongWrench "long torque wrench" {
  torque 8 .. 90 N·m
  accuracy 4 %
}
tool Heater "heater" { heats to 150 °C }
tool Feeler "feeler gauge" {
  measures 0.03 .. 1 mm
  resolution 0.01 mm
}
energy Supply "motor supply" { voltage 400 V AC }
threshold burn 55 °C per Rules "4.1"
threshold cold -5 °C per Rules "4.2"
option Extent "extent of work" {
  Full "full overhaul"
  Part "partial overhaul"
}
fact Signed "the sheet is signed"
`;

export const MAIN = `use "used/library.sprag"

ring Circle "cover circle" {
  count 4
  numbered clockwise seen from "the drive end"
  position 1 at 12 o'clock
}
part Shaft "shaft" { material Steel }
part Bearing "bearing" {
  material Steel
  heat limit 120 °C per Manual "5.1"
}
part Cover "cover" {
  mass 8 kg
  needs Bearing
  encloses Bearing
}
part Screw[1..4] "cover screw" {
  seats in Circle by number
  needs Cover
  secures Cover
  thread "M10x1.5"
  class "8.8"
  nut factor 0.20 dry per Manual "7.1"
  torque 45 ± 4 N·m dry per Manual "6.4"
}
fit Bearing over Shaft {
  diameter 55 mm
  interference 2 .. 30 µm
  slip clearance 15 µm
} per Manual "5.3"
value Final = 45 ± 4 N·m per Manual "6.4"
term "cover" not "lid"

procedure Close "Close the housing" {
  document "WI-1" revision "A" dated 2026-01-12
  applies to "P-1" serial 10 .. 99
  based on Manual revision "7"
  ambient 15 .. 25 °C
  crew 2
  begin with Shaft is installed, Signed
  finish with Cover is secured
  note "Keep the parts in order."

  task Fitting "Fit the bearing" {
    warning burn "The bearing is hot." avoid "Do not touch it." wear "gloves"
    caution overheating "Too much heat makes it soft." avoid "Watch the thermometer."

    step Warm {
      heat Bearing to 105 .. 115 °C with Heater
      takes 6 min
      why "It widens."
      per Manual "5.3"
    }
    step Slide "Slide the bearing home." {
      install Bearing over Shaft
      within 60 s after Warm
      takes 30 s
      per Manual "5.3"
    }
    step wait until Bearing is at most 40 °C
    step Gap {
      check "Gap at the shoulder" with Feeler expect at most 0.05 mm record
      critical
      sign Fitter
      hold for Inspector
      per Manual "5.4"
    }
  }

  task Closing "Close the cover" {
    warning skin "Grease irritates the skin." avoid "Wipe it off." wear "nitrile gloves"

    step PlaceCover {
      install Cover
      needs Bearing is installed
      per Manual "6.1"
    }
    step Look "Look at the seat." {
      inspect Cover "for scratches"
    }
    repeat n in 1, 3, 2, 4 { step install Screw[n] per Manual "6.2" }
    step Torque {
      tighten Screw[all] in cross pattern to 50 %, 100 % of Final with Wrench
      critical
      sign Fitter
      hold for Inspector
      takes 4 min
      per Manual "6.4"
    }
    step Record {
      record "torque used" 41 .. 49 N·m with Wrench
      by Fitter
    }
  }
}
`;
