// What `sprag new` puts into an empty folder: a small shop library and a first procedure, free of findings.

const LIBRARY = `// The shop's own library: what many procedures use. Add your tools, sources and roles here.

source Manual "P-100 maintenance manual" revision "1"

role Fitter "fitter"
role Inspector "inspector"

tool Wrench "torque wrench" {
  torque 8 .. 60 N·m
  accuracy 4 %
}
tool Hoist "chain hoist" { lifts 250 kg }
`;

const PROCEDURE = `// A first procedure. Change a line, and see what the editor says of it, or \`sprag check .\`.

use "shop.sprag"

ring CoverCircle "cover bolt circle" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}

part Housing "pump housing"
part Gasket "cover gasket" { needs Housing }
part Cover "pump cover" {
  mass 31 kg
  needs Gasket
  encloses Gasket
}
part CoverScrew[1..4] "cover screw" {
  seats in CoverCircle by number
  needs Cover
  secures Cover
  thread "M10x1.5"
  class "8.8"
  torque 45 ± 2 N·m dry per Manual "6.4"
}

value FinalTorque = 45 ± 2 N·m per Manual "6.4"

procedure CloseHousing "Close the pump housing" {
  document "WI-100-01" revision "A" dated 2026-01-12
  applies to "P-100"
  based on Manual revision "1"
  begin with Housing is installed
  finish with Cover is secured, no temporary parts

  task Fitting "Fit the cover" {
    warning lifting "The cover is heavy and can fall."
      avoid "Lift it with the hoist. Keep hands and feet clear of it."

    step install Gasket per Manual "6.2"
    step lift Cover with Hoist
    step install Cover per Manual "6.3"
    repeat n in 1, 2, 3, 4 { step install CoverScrew[n] }
  }

  task Tightening "Tighten the cover" {
    step Torque {
      tighten CoverScrew[all] in cross pattern to 30 %, 70 %, 100 % of FinalTorque with Wrench
      critical
      sign Fitter
      hold for Inspector
      per Manual "6.4"
    }
  }
}
`;

/** Texts by path, relative to the new folder. */
export function starterFiles(): ReadonlyMap<string, string> {
  return new Map([
    ["shop.sprag", LIBRARY],
    ["close-housing.sprag", PROCEDURE],
  ]);
}
