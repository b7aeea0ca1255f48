// Ordinary shop work on pumps, valves and lubrication, written as a shop would write it: nothing to find.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

test.each([
  [
    "mechanical seal changed",
    `energy Supply "pump supply" { voltage 400 V AC }
energy Line "line pressure" { pressure 4 bar }
part Shaft "shaft" { driven by Supply }
part Seal "shaft seal" { needs Shaft  single use  driven by Supply, Line }
part Plate "seal plate" { needs Seal  encloses Seal  driven by Supply, Line }
part Screw[1..4] "plate screw" { needs Plate  secures Plate  thread "M8x1.25"  driven by Supply, Line }
consumable Soap "soap water"
tool Tester "tester"
tool Gauge "pressure gauge"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
procedure ChangeSeal "Change the shaft seal" {
  begin with Shaft is installed, Seal is installed, Plate is secured
  finish with Seal is installed, Plate is secured, Supply is live, Line is live
  step isolate Supply
  step prove Supply dead with Tester
  step isolate Line
  step release Line
  step prove Line dead with Gauge
  step loosen Screw[all]
  step remove Screw[all]
  step remove Plate
  step discard Seal
  step clean Shaft
  step lubricate Shaft with Soap
  step install new Seal
  step install Plate
  step install Screw[all]
  step tighten Screw[all] in cross pattern to 20 N·m with Wrench
  step restore Line
  step { check "The seal stays dry" if it fails { stop "Isolate again. Call the engineer." } }
  step restore Supply
}`,
  ],
  [
    "gearbox drained, flushed and filled",
    `part Case "gear case"
part DrainPlug "drain plug" { needs Case  thread "M22x1.5" }
part Washer "sealing washer" { needs Case  single use }
consumable Oil "gear oil"
tool Pan "oil pan"
tool Wrench "torque wrench" { torque 10 .. 100 N·m }
procedure ChangeOil "Change the oil" {
  begin with Case is installed, Washer is installed, DrainPlug is tightened
  finish with DrainPlug is tightened, Washer is installed
  step loosen DrainPlug
  step remove DrainPlug
  step drain Case into Pan
  step discard Washer
  step clean DrainPlug
  step install new Washer
  step install DrainPlug
  step tighten DrainPlug to 50 N·m with Wrench
  step fill Case with 3 L of Oil
  step wait 10 min
  step { check "Level at the middle of the glass" if it fails { fill Case with 0.2 L of Oil } }
}`,
  ],
  [
    "globe valve overhauled, to three extents",
    `option Extent "extent of work" { Full Discs Reseal }
energy Line "line pressure" { pressure 6 bar }
part Body "body"
part Seat "seat ring" { needs Body  driven by Line }
part Disc "disc" { needs Seat  driven by Line }
part Gasket "gasket" { needs Body  single use  driven by Line }
part Bonnet "bonnet" { mass 14 kg  needs Disc, Gasket  encloses Disc, Seat, Gasket  driven by Line }
part Screw[1..6] "bonnet screw" { needs Bonnet  secures Bonnet  thread "M12x1.75"  driven by Line }
tool Wrench "torque wrench" { torque 20 .. 120 N·m }
tool Gauge "pressure gauge"
procedure Overhaul "Overhaul the valve" {
  begin with Body is installed, Seat is installed, Disc is installed, Gasket is installed, Bonnet is secured
  finish with Bonnet is secured, Line is live
  step isolate Line
  step release Line
  step prove Line dead with Gauge
  step loosen Screw[all]
  step remove Screw[all]
  step remove Bonnet
  step discard Gasket
  when Extent is Full {
    step remove Disc
    step Lap { do "Lap the seat for two minutes." }
    step { check "One closed ring of blue" if it fails { return to Lap } }
    step install Disc
  } otherwise when Extent is Discs {
    step remove Disc
    step install new Disc
  } otherwise {
    step inspect Disc, Seat "for scores"
  }
  step install new Gasket
  step install Bonnet
  step install Screw[all]
  step tighten Screw[all] in cross pattern to 30 %, 60 %, 100 % of 60 N·m with Wrench
  step restore Line
}`,
  ],
  [
    "stem packing set: drawn together, relaxed, tightened",
    `part Stem "stem"
part Packing "packing" { needs Stem  single use }
part Gland "gland" { needs Packing  encloses Packing }
part Nut[1..2] "gland nut" { needs Gland  secures Gland  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 2 .. 30 N·m }
procedure Repack "Pack the stem" {
  begin with Stem is installed, Packing is installed, Gland is secured
  finish with Gland is secured
  step loosen Nut[all]
  step remove Nut[all]
  step remove Gland
  step discard Packing
  step clean Stem
  step install new Packing
  step install Gland
  step install Nut[all]
  step tighten Nut[all] to 7 N·m to seat with Wrench
  step wait 10 min
  step loosen Nut[all]
  step tighten Nut[all] to 9 N·m with Wrench
}`,
  ],
  [
    "impeller changed, with its nut and lock",
    `part Shaft "shaft"
part Key "key" { needs Shaft }
part Impeller "impeller" { mass 12 kg  needs Shaft, Key }
part Nut "impeller nut" { needs Impeller  secures Impeller  thread "M16x1.5" }
part Lock "lock tab" { needs Nut  locks Nut  single use }
part Volute "volute" { mass 18 kg  encloses Impeller, Nut, Lock }
part Screw[1..8] "volute screw" { needs Volute  secures Volute  thread "M10x1.5" }
tool Wrench "torque wrench" { torque 20 .. 200 N·m }
procedure ChangeImpeller "Change the impeller" {
  begin with Shaft is installed, Key is installed, Impeller is secured, Lock is installed, Volute is secured
  finish with Impeller is secured, Lock is installed, Volute is secured
  step loosen Screw[all]
  step remove Screw[all]
  step remove Volute
  step discard Lock
  step loosen Nut
  step remove Nut
  step remove Impeller
  step inspect Key, Shaft "for wear"
  step install new Impeller
  step install Nut
  step tighten Nut to 90 N·m with Wrench
  step install new Lock
  step install Volute
  step install Screw[all]
  step tighten Screw[all] in cross pattern to 50 %, 100 % of 45 N·m with Wrench
}`,
  ],
  [
    "oil filter changed",
    `energy Oil "oil pressure" { pressure 3 bar }
part Bowl "filter bowl" { driven by Oil }
part Element "filter element" { single use  driven by Oil }
part ORing "bowl O-ring" { single use  driven by Oil }
procedure ChangeFilter "Change the oil filter" {
  begin with Element is installed, ORing is installed, Bowl is installed
  finish with Element is installed, ORing is installed, Bowl is installed, Oil is live
  step isolate Oil
  step release Oil
  step prove Oil dead
  step remove Bowl
  step discard Element, ORing
  step clean Bowl
  step install new Element, ORing
  step install Bowl
  step restore Oil
  step { check "The bowl stays dry" }
}`,
  ],
  [
    "pipe flange opened and closed, bolt by bolt across",
    `ring Circle "flange circle" { count 8  numbered clockwise seen from "upstream"  position 1 at 12 o'clock }
energy Line "line" { pressure 10 bar }
part Spool "pipe spool" { mass 15 kg  driven by Line }
part Gasket "gasket" { single use  driven by Line }
part Bolt[1..8] "flange bolt" { seats in Circle by number  secures Spool  thread "M16x2"  driven by Line }
tool Wrench "torque wrench" { torque 40 .. 300 N·m }
consumable Grease "bolt grease"
procedure Joint "Renew the flange gasket" {
  begin with Spool is secured, Gasket is installed
  finish with Spool is secured, Gasket is installed, Line is live
  step isolate Line
  step release Line
  step prove Line dead
  step loosen Bolt[all] in reverse order
  step remove Bolt[5..8]
  step discard Gasket
  step clean Spool
  step install new Gasket
  step lubricate Bolt[5..8] with Grease
  step install Bolt[5..8]
  step tighten Bolt[all] in cross pattern to 30 %, 60 %, 100 % of 150 N·m with Wrench
  step tighten Bolt[all] in circular pattern to 150 N·m with Wrench
  step restore Line
}`,
  ],
  [
    "bush cooled in and sleeve pressed on",
    `material Bronze "bronze" { expansion 17.8 µm/(m·K)  heat limit 180 °C }
material Steel "steel" { expansion 11.7 µm/(m·K)  heat limit 200 °C }
part Housing "housing" { material Steel }
part Shaft "shaft" { material Steel }
part Bush "bush" { material Bronze }
part Sleeve "sleeve" { material Steel }
fit Housing over Bush { diameter 60 mm  interference 8 .. 30 µm  slip clearance 10 µm }
fit Sleeve over Shaft { diameter 45 mm  interference 4 .. 20 µm  slip clearance 15 µm }
tool Press "press" { force 100 kN }
procedure Prepare "Fit bush and sleeve" {
  begin with Housing is installed, Shaft is installed
  finish with Bush is installed, Sleeve is installed
  step clean Housing, Shaft
  step Chill { cool Bush to -40 .. -30 °C  takes 60 min }
  step "Push the bush in." {
    install Bush in Housing
    takes 30 s
    within 2 min after Chill
  }
  step press Sleeve over Shaft with Press
}`,
  ],
  [
    "shaft seal greased and stored parts preserved",
    `part Shaft "shaft"
part Seal "lip seal" { needs Shaft  single use }
consumable Grease "grease"
consumable Preserver "preserving oil"
procedure Preserve "Preserve the shaft" {
  begin with Shaft is installed
  finish with Seal is installed
  step clean Shaft
  step lubricate Shaft with Grease
  step install new Seal on Shaft
  step clean Seal
  step apply Preserver to Shaft
}`,
  ],
  [
    "joint sealed with sealant that cures before the start",
    `energy Supply "supply" { voltage 400 V AC }
consumable Sealant "sealant" { cure 2 h }
part Housing "pump housing" { driven by Supply }
part Cover "cover" { needs Housing  driven by Supply }
part Screw[1..6] "screw" { needs Cover  secures Cover  thread "M8x1.25"  driven by Supply }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
tool Tester "tester"
procedure Seal "Seal the cover" {
  begin with Housing is installed, Cover is secured
  finish with Cover is secured, Supply is live
  step isolate Supply
  step prove Supply dead with Tester
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
  step clean Housing, Cover
  step apply 10 g of Sealant to Cover
  step install Cover
  step install Screw[all]
  step tighten Screw[all] in cross pattern to 24 N·m with Wrench
  step wait 2 h
  step restore Supply
}`,
  ],
  [
    "pump aligned, filled, bled and started, with one procedure inside",
    `fact Primed "the pump is primed"
energy Supply "supply" { voltage 400 V AC  off }
part Pump "pump"
part Motor "motor" { driven by Supply }
consumable Water "water"
procedure Prime "Prime the pump" {
  begin with Pump is installed
  finish with Primed
  step fill Pump with Water
  step bleed Pump
  step "Close the vent." { gives Primed }
}
procedure Start "Start the pump" {
  begin with Pump is installed, Motor is installed
  finish with Supply is live
  step align Motor with Pump
  step perform Prime
  step { needs Primed  restore Supply }
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
