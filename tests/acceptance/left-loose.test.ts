// What is only drawn together, left loose, or left out at the end.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const COVER = `ring Circle "cover circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Housing "housing"
part Cover "cover" { needs Housing }
part Screw[1..4] "cover screw" { seats in Circle by number  needs Cover  secures Cover  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
`;

test.each([
  [
    "left-seated, silent: the path that stops is no end",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is secured
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
  step { check "The gap is even" if it fails { stop "Call the engineer." } }
  step tighten Screw[all] to 24 N·m with Wrench
}`,
  ],
  [
    "left-seated: drawn together and left so",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is installed
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
//     ^^^^^^^^^^^^^^^^^^ order.left-seated error
}`,
  ],
  [
    "left-seated, silent: drawn together, loosened, tightened",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is secured
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
  step loosen Screw[all]
  step tighten Screw[all] to 24 N·m with Wrench
}`,
  ],
  [
    "left-seated, silent: drawn together, then tightened on",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is secured
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
  step tighten Screw[all] in cross pattern to 24 N·m with Wrench
}`,
  ],
  [
    "left-seated: one of four forgotten, one finding",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is installed
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
//     ^^^^^^^^^^^^^^^^^^ order.left-seated error
  step tighten Screw[1..3] to 24 N·m with Wrench
}`,
  ],
  [
    "left-seated: on the short way only",
    `${COVER}
option Quick "quick assembly for the trial" { yes no }
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is installed
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
//     ^^^^^^^^^^^^^^^^^^ order.left-seated error
  when Quick is no { step tighten Screw[all] to 24 N·m with Wrench }
}`,
  ],
  [
    "left-seated, silent: taken out again",
    `${COVER}
procedure Try "Try the cover on" {
  begin with Housing is installed
  finish with Cover is removed
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
}`,
  ],
  [
    "left-seated, allowed in the procedure",
    `${COVER}
procedure Close "Close the cover" {
  allow order.left-seated because "The next shift tightens after the paint is dry."
  begin with Housing is installed
  finish with Cover is installed
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 12 N·m to seat with Wrench
//     ^^^^^^^^^^^^^^^^^^ order.left-seated error allowed
}`,
  ],
  [
    "not-final: screws put in and left loose",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is installed
  step install Cover
  step install Screw[all]
//     ^^^^^^^^^^^^^^^^^^ order.not-final warning
}`,
  ],
  [
    "not-final, silent: the end says that they are loose",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is installed, Screw[all] are loose
  step install Cover
  step install Screw[all]
}`,
  ],
  [
    "not-final: tightened by hand is loose",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is installed
  step install Cover
  step install Screw[all]
  step tighten Screw[all] by hand
//     ^^^^^^^^^^^^^^^^^^ order.not-final warning
}`,
  ],
  [
    "not-final: a cover taken off and left off",
    `${COVER}
procedure Look "Look into the housing" {
  begin with Housing is installed, Cover is secured
  finish with Screw[all] are removed
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
//     ^^^^^^^^^^^^ order.not-final warning
}`,
  ],
  [
    "not-final, silent: off, and back on",
    `${COVER}
procedure Look "Look into the housing" {
  begin with Housing is installed, Cover is secured
  finish with Cover is secured
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
  step inspect Housing
  step install Cover
  step install Screw[all]
  step tighten Screw[all] to 24 N·m with Wrench
}`,
  ],
  [
    "not-final: unfinished is the more telling one",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is secured
//            ^^^^^^^^^^^^^^^^ order.unfinished error
  step install Cover
  step install Screw[all]
}`,
  ],
  [
    "not-final, silent: a transport lock that was in at the start",
    `part Rotor "rotor"
temporary part TransportLock "transport lock" { needs Rotor }
procedure Unpack "Unpack the rotor" {
  begin with Rotor is installed, TransportLock is installed
  step remove TransportLock
  step inspect Rotor
}`,
  ],
  [
    "not-final: left out in one branch",
    `${COVER}
option Extent "extent of work" { Full Look }
procedure Open "Open the cover" {
  begin with Housing is installed, Cover is secured
  finish with Screw[all] are removed
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
//     ^^^^^^^^^^^^ order.not-final warning
  when Extent is Look { step install Cover }
}`,
  ],
  [
    "not-final, silent: a part that goes in and needs no tightening",
    `part Shaft "shaft"
part Key "key" { needs Shaft }
procedure Dress "Dress the shaft" {
  begin with Shaft is installed
  step install Key
}`,
  ],
  [
    "not-final, allowed",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is installed
  step install Cover
  step install Screw[all]
//     ^^^^^^^^^^^^^^^^^^ order.not-final warning allowed
    allow order.not-final because "The trial run tightens them."
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
