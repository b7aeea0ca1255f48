// Shops that several acceptance cases work in.

export const HEAVY = `part Motor "motor" { mass 85 kg }
part Foot[1..4] "foot screw" { needs Motor  secures Motor  thread "M16x2" }
part Box "gearbox" { mass 60 kg }
tool Wrench "torque wrench" { torque 5 .. 220 N·m }
tool Hoist "hoist" { lifts 250 kg }
`;

export const DRIVE = `energy Supply "motor supply" { voltage 400 V AC }
energy Spring "brake spring" { spring }
part Motor "motor" { mass 18 kg  driven by Supply }
part Brake "brake" { driven by Spring }
part Pulley "pulley" { needs Motor }
ring Seat "seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 6 o'clock  fill counterclockwise }
part Tooth[1..8] "tooth" { seats in Seat by number }
tool Tester "tester"
tool Hoist "hoist" { lifts 250 kg }
consumable Oil "oil"
fact OilIn "oil in"
option Extent "extent" { Full Part Look }
`;

export const SHOP = `option Extent "extent" { Full Part Look }
option Kept "kept" { yes no }
energy Supply "motor supply" { voltage 400 V AC }
energy Air "air" { pressure 6 bar }
part Motor "motor" { driven by Supply }
part Case "case"
part Cover "cover" { needs Case  encloses Motor }
part Screw[1..4] "screw" { needs Cover  secures Cover  thread "M8x1.25" }
part Gasket "gasket" { needs Case  single use }
temporary part Pin[1..2] "pin"
fact Done "done"
tool Tester "tester"
tool Wrench "torque wrench" { torque 5 .. 120 N·m }
tool Depth "depth gauge" { measures 0 .. 25 mm }
tool Heater "heater" { heats to 150 °C }
consumable Oil "oil"
`;
