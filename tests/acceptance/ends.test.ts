// The end of a procedure: what must hold, what may not stay behind, and one mistake told once.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const BOX = `part Bearing "bearing"
part Cover "cover" { encloses Bearing }
temporary part Pin[1..2] "guide pin"
temporary part Plug "transport plug" { needs Bearing }
option Extent "extent of work" { Full Part Look }
`;

test.each([
  [
    "left-behind: closed over, told there and not again at the end",
    `${BOX}
part Lid "lid" { encloses Plug }
procedure Close "Close" {
  begin with Bearing is installed
  finish with Lid is installed, no temporary parts
  step install Plug
//     ^^^^^^^^^^^^ order.left-behind error
  step install Lid
}`,
  ],
  [
    "left-behind: one of two pins",
    `${BOX}
procedure Close "Close" {
  begin with Bearing is installed
  finish with Cover is installed, no temporary parts
  step install Pin[all]
//     ^^^^^^^^^^^^^^^^ order.left-behind error
  step install Cover
  step remove Pin[1]
}`,
  ],
  [
    "left-behind, silent: the end says that it stays",
    `${BOX}
procedure Ship "Make ready for the road" {
  begin with Bearing is installed
  finish with Plug is installed
  step install Plug
}`,
  ],
  [
    "left-behind: for two of three values",
    `${BOX}
procedure Close "Close" {
  begin with Bearing is installed
  finish with Cover is installed
  step install Pin[1]
//     ^^^^^^^^^^^^^^ order.left-behind error
  step install Cover
  when Extent is Full { step remove Pin[1] }
}`,
  ],
  [
    "left-behind, silent: taken out on every path",
    `${BOX}
procedure Close "Close" {
  begin with Bearing is installed
  finish with Cover is installed
  step install Pin[1]
  step install Cover
  when Extent is Full { step remove Pin[1] } otherwise { step remove Pin[1] }
}`,
  ],
  [
    "left-behind, silent: only a path that stops leaves it in",
    `${BOX}
procedure Close "Close" {
  begin with Bearing is installed
  finish with Cover is installed
  step install Pin[1]
  step { check "The holes line up" if it fails { stop "Call the engineer." } }
  step install Cover
  step remove Pin[1]
}`,
  ],
  [
    "unfinished: promised and not done",
    `${BOX}
procedure Close "Close" {
  finish with Bearing is installed, Cover is installed
//                                  ^^^^^^^^^^^^^^^^^^ order.unfinished error
  step install Bearing
}`,
  ],
  [
    "unfinished: on one of three ways",
    `${BOX}
procedure Close "Close" {
  finish with Bearing is installed
//            ^^^^^^^^^^^^^^^^^^^^ order.unfinished error
  when Extent is Full or Extent is Part { step install Bearing }
}`,
  ],
  [
    "unfinished: a check without a jump leads past it",
    `${BOX}
procedure Close "Close" {
  finish with Bearing is installed
//            ^^^^^^^^^^^^^^^^^^^^ order.unfinished error
  step install Bearing
  step { check "It sits well" if it fails { remove Bearing } }
}`,
  ],
  [
    "unfinished, silent: the same, with the way back",
    `${BOX}
procedure Close "Close" {
  finish with Bearing is installed
  step Fitting { install Bearing }
  step { check "It sits well" if it fails { remove Bearing  return to Fitting } }
}`,
  ],
  [
    "unfinished: an energy that should be live again",
    `energy Supply "supply" { voltage 400 V AC }
procedure Off "Switch off" {
  finish with Supply is live
  step isolate Supply
//     ^^^^^^^^^^^^^^ order.left-behind error
}`,
  ],
  [
    "one mistake: a part that is not in, removed, is told once",
    `${BOX}
procedure Open "Open" {
  finish with Bearing is removed
  step remove Bearing
//     ^^^^^^^^^^^^^^ order.not-installed error
  step clean Bearing
}`,
  ],
  [
    "one mistake: a cover put on too early, told once",
    `${BOX}
part Seal "seal"
part Lid "lid" { needs Bearing, Seal }
procedure Close "Close" {
  finish with Lid is installed
  step install Bearing
  step install Lid
//     ^^^^^^^^^^^ order.missing-support error
  step inspect Lid
}`,
  ],
  [
    "one mistake: a retained part, then on with the work",
    `part Bearing "bearing"
part Snap "snap ring" { retains Bearing }
procedure Change "Change the bearing" {
  begin with Bearing is installed, Snap is installed
  finish with Bearing is installed, Snap is installed
  step remove Bearing
//     ^^^^^^^^^^^^^^ order.retained error
  step clean Bearing
  step install Bearing
}`,
  ],
  [
    "retained, warning: a fastener that is only loose",
    `part Cover "cover"
part Screw[1..2] "screw" { secures Cover  thread "M8x1.25" }
procedure Open "Open" {
  begin with Cover is secured
  finish with Cover is removed
  step loosen Screw[all]
  step remove Cover
//     ^^^^^^^^^^^^ order.retained warning
}`,
  ],
  [
    "retained: a fastener that is still tight",
    `part Cover "cover"
part Screw[1..2] "screw" { secures Cover  thread "M8x1.25" }
procedure Open "Open" {
  begin with Cover is secured
  finish with Cover is removed
  step loosen Screw[1]
  step remove Cover
//     ^^^^^^^^^^^^ order.retained error
}`,
  ],
  [
    "two mistakes in one action are two findings",
    `part Bearing "bearing"
part Seal "seal"
part Cover "cover" { encloses Bearing }
part Cap "cap" { needs Seal }
procedure Work "Work" {
  begin with Bearing is installed, Cover is installed
  finish with Cap is installed
  step clean Bearing
//     ^^^^^^^^^^^^^ order.enclosed error
  step install Cap
//     ^^^^^^^^^^^ order.missing-support error
}`,
  ],
  [
    "silent: no word of an end, and nothing open",
    `${BOX}
procedure Look "Look" {
  begin with Bearing is installed
  step inspect Bearing
  step clean Bearing
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
