// Texts that the tests of outputs share. All of it is invented.

/** A cover on a circle of eight, with most of what a checklist can show. */
export const COVER = `
source Manual "pump manual" revision "9"
role Fitter "fitter"
role Inspector "inspector"
ring Circle "cover bolt circle" { count 8 numbered clockwise seen from "drive end" position 1 at 12 o'clock }
part Base "base" { mass 80 kg }
part Gasket "gasket" { needs Base  single use }
part Cover "bearing cover" { mass 21 kg  needs Base, Gasket  encloses Gasket }
part Screw[1..8] "cover screw" { seats in Circle by number  secures Cover  needs Cover  thread "M10x1.5"  torque 45 ± 2 N·m dry per Manual "6.4" }
tool Wrench "torque wrench" { torque 8 .. 60 N·m  accuracy 4 %  arm 400 mm }
tool Feeler "feeler gauge" { measures 0.03 .. 1 mm }
tool Hoist "hoist" { lifts 250 kg }
value Final = 45 ± 2 N·m per Manual "6.4"
procedure CloseCover "Close the cover" {
  document "WI-1" revision "C" dated 2026-05-04
  applies to "P-1" serial 10 .. 20
  based on Manual revision "9"
  begin with Base is installed
  finish with Cover is secured
  danger electric "The supply can kill." avoid "Lock it off."
  task Closing "Close the cover" {
    warning lifting "The cover is heavy." avoid "Use the hoist." wear "gloves", "boots"
    step install new Gasket per Manual "6.1"
    step lift Cover with Hoist
    step Place "Lower the cover." {
      caution damage "The gasket tears." avoid "Lower it slowly."
      install Cover
      takes 3 min
    }
    repeat n in 2, 3, 4, 6, 7, 8, 1, 5 { step install Screw[n] }
    step Torque {
      tighten Screw[all] in cross pattern to 30 %, 70 %, 100 % of Final with Wrench
      critical
      sign Fitter
      hold for Inspector
    }
    step Seated {
      note "The gap shows from both sides."
      check "No gap" with Feeler expect at most 0.05 mm record if it fails {
        loosen Screw[all] in reverse order
        return to Torque
      }
      record "air temperature" 10 .. 30 °C
    }
  }
}
`;

/** A procedure around these lines. */
export function around(lines: string, declarations = ""): string {
  return `${PARTS}\n${declarations}\nprocedure Work "Do the work" {\n${lines}\n}\n`;
}

const PARTS = `
role Fitter "fitter"
ring Circle "bolt circle" { count 6 numbered clockwise seen from "above" position 1 at 12 o'clock }
holes Feet "feet" { count 4 order 1, 4, 2, 3 }
part Base "base"
part Cover "cover" { needs Base }
part Shim "shim"
part Screw[1..6] "screw" { seats in Circle by number }
part Foot[1..4] "foot screw" { seats in Feet by number }
part Plug[left, right] "plug"
tool Wrench "torque wrench" { torque 1 .. 100 N·m }
tool Depth "depth gauge" { measures 0 .. 100 mm }
consumable Oil "oil"
option Extent "extent of work" { Full "full overhaul" Reseal "reseal only" }
option Kept "the seals are kept" { yes no }
`;
