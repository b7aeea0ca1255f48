// Parts for single use: put in again, tightened again, and the new ones.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const JOINT = `part Flange "pipe flange"
part Gasket "flange gasket" { needs Flange  single use }
part Bolt[1..2] "stretch bolt" { needs Flange  secures Flange  thread "M10x1.5"  single use }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
`;

test.each([
  [
    "the old gasket goes back",
    `${JOINT}
procedure Reseal "Reseal the flange" {
  begin with Flange is installed, Gasket is installed
  finish with Gasket is installed
  step remove Gasket
  step clean Flange
  step install Gasket
//     ^^^^^^^^^^^^^^ order.reused error
}`,
  ],
  [
    "silent: a new one goes in",
    `${JOINT}
procedure Reseal "Reseal the flange" {
  begin with Flange is installed, Gasket is installed
  finish with Gasket is installed
  step discard Gasket
  step clean Flange
  step install new Gasket
}`,
  ],
  [
    "silent: the first one needs no “new”",
    `${JOINT}
procedure Seal "Seal the flange" {
  begin with Flange is installed
  finish with Gasket is installed
  step install Gasket
}`,
  ],
  [
    "what was thrown away goes back",
    `${JOINT}
procedure Reseal "Reseal the flange" {
  begin with Flange is installed, Gasket is installed
  finish with Gasket is installed
  step discard Gasket
  step install Gasket
//     ^^^^^^^^^^^^^^ order.reused error
}`,
  ],
  [
    "the new one taken out and put back",
    `${JOINT}
procedure Reseal "Reseal the flange" {
  begin with Flange is installed
  finish with Gasket is installed
  step install new Gasket
  step remove Gasket
  step install Gasket
//     ^^^^^^^^^^^^^^ order.reused error
}`,
  ],
  [
    "silent: a rework that takes a new one each time",
    `${JOINT}
procedure Reseal "Reseal the flange" {
  begin with Flange is installed
  finish with Gasket is installed
  step Fitting { install new Gasket }
  step {
    check "The gasket lies flat" if it fails {
      discard Gasket
      return to Fitting
    }
  }
}`,
  ],
  [
    "a rework that takes the same one again",
    `${JOINT}
procedure Reseal "Reseal the flange" {
  begin with Flange is installed
  finish with Gasket is installed
  step Fitting { install Gasket }
//               ^^^^^^^^^^^^^^ order.reused error
  step {
    check "The gasket lies flat" if it fails {
      remove Gasket
      return to Fitting
    }
  }
}`,
  ],
  [
    "a stretch bolt loosened and tightened again",
    `${JOINT}
procedure Retighten "Tighten the flange again" {
  begin with Flange is secured
  finish with Flange is secured
  step loosen Bolt[all]
  step tighten Bolt[all] to 40 N·m with Wrench
//     ^^^^^^^^^^^^^^^^^ order.reused error
}`,
  ],
  [
    "silent: a stretch bolt tightened in stages",
    `${JOINT}
procedure Tighten "Tighten the flange" {
  begin with Flange is installed
  finish with Flange is secured
  step install new Bolt[all]
  step tighten Bolt[all] to 20 N·m, 40 N·m with Wrench
}`,
  ],
  [
    "silent: stretch bolts replaced",
    `${JOINT}
procedure Replace "Replace the bolts" {
  begin with Flange is secured
  finish with Flange is secured
  step loosen Bolt[all]
  step discard Bolt[all]
  step install new Bolt[all]
  step tighten Bolt[all] to 40 N·m with Wrench
}`,
  ],
  [
    "only where the seals are kept",
    `${JOINT}
option SealsKept "the seals are kept" { yes no }
procedure Reseal "Reseal the flange" {
  begin with Flange is installed, Gasket is installed
  finish with Gasket is installed
  step remove Gasket
  when SealsKept is yes { step install Gasket } otherwise { step install new Gasket }
//                             ^^^^^^^^^^^^^^ order.reused error
}`,
  ],
  [
    "one of two stretch bolts goes back",
    `${JOINT}
procedure Replace "Replace the bolts" {
  begin with Flange is secured
  finish with Flange is secured
  step loosen Bolt[all]
  step remove Bolt[all]
  step install new Bolt[1]
  step install Bolt[2]
//     ^^^^^^^^^^^^^^^ order.reused error
  step tighten Bolt[all] to 40 N·m with Wrench
}`,
  ],
  [
    "silent: a part of many lives goes back",
    `part Shaft "shaft"
part Key "key" { needs Shaft }
procedure Refit "Refit the key" {
  begin with Shaft is installed, Key is installed
  finish with Key is installed
  step remove Key
  step clean Key
  step install Key
}`,
  ],
  [
    "comes out with what it sits on, and goes back",
    `part Valve "valve insert"
part ORing "O-ring" { single use }
procedure Refit "Refit the insert" {
  finish with Valve is installed, ORing is installed
  step install ORing on Valve
  step install Valve
}`,
  ],
  [
    "allowed for the trial",
    `${JOINT}
procedure Try "Try the flange" {
  begin with Flange is installed, Gasket is installed
  finish with Gasket is installed
  step remove Gasket
  step install Gasket
//     ^^^^^^^^^^^^^^ order.reused error allowed
    allow order.reused because "Trial only, water at no pressure."
}`,
  ],
  [
    "a named instance put back",
    `part Plug[left, right] "plug"
part Ring[left, right] "sealing ring" { needs Plug[same]  single use }
procedure Refit "Refit the rings" {
  begin with Plug[all] are installed, Ring[all] are installed
  finish with Ring[all] are installed
  step remove Ring[all]
  step install new Ring[left]
  step install Ring[right]
//     ^^^^^^^^^^^^^^^^^^^ order.reused error
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
