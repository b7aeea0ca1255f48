// Fasteners: locks, and what is loosened that was not tight.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const NUT = `part Hub "fan hub"
part Nut "hub nut" { needs Hub  secures Hub  thread "M16x1.5" }
part Tab "tab washer" { needs Nut  locks Nut }
tool Wrench "torque wrench" { torque 20 .. 120 N·m }
`;

const COVER = `ring Circle "cover circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Housing "housing"
part Cover "cover" { needs Housing }
part Screw[1..4] "cover screw" { seats in Circle by number  needs Cover  secures Cover  thread "M8x1.25" }
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
`;

test.each([
  [
    "locked: loosening under the tab that is still in",
    `${NUT}
procedure Take "Take the fan hub off" {
  begin with Hub is secured, Tab is installed
  finish with Hub is removed, Nut is removed, Tab is removed
  step loosen Nut
//     ^^^^^^^^^^ order.locked error
  step remove Tab
  step remove Nut
  step remove Hub
}`,
  ],
  [
    "locked: tightening again with the tab in",
    `${NUT}
procedure Check "Check the hub nut" {
  begin with Hub is secured, Tab is installed
  step tighten Nut to 90 N·m with Wrench
//     ^^^^^^^^^^^ order.locked error
}`,
  ],
  [
    "locked, silent: tab off, nut off, hub off",
    `${NUT}
procedure Take "Take the fan hub off" {
  begin with Hub is secured, Tab is installed
  finish with Hub is removed, Nut is removed, Tab is removed
  step remove Tab
  step loosen Nut
  step remove Nut
  step remove Hub
}`,
  ],
  [
    "locked, silent: tightened, then locked",
    `${NUT}
procedure Fit "Fit the fan hub" {
  finish with Hub is secured, Tab is installed
  step install Hub
  step install Nut
  step tighten Nut to 90 N·m with Wrench
  step install Tab
}`,
  ],
  [
    "locked, warning: tightened and never locked",
    `${NUT}
procedure Fit "Fit the fan hub" {
  finish with Hub is secured
  step install Hub
  step install Nut
  step tighten Nut to 90 N·m with Wrench
//     ^^^^^^^^^^^ order.locked warning
}`,
  ],
  [
    "locked, silent: other work on a locked hub",
    `${NUT}
procedure Wipe "Wipe the fan hub" {
  begin with Hub is secured, Tab is installed
  step clean Hub
  step inspect Nut "for rust"
}`,
  ],
  [
    "locked, silent: the tab lies on the bench and is cleaned",
    `${NUT}
procedure Take "Slacken the hub nut" {
  begin with Hub is secured, Tab is installed
  finish with Nut is loose, Tab is removed
  step remove Tab
  step clean Tab
  step loosen Nut
}`,
  ],
  [
    "locked: a plate locks two of four screws",
    `${COVER}
part Plate "lock plate" { locks Screw[1, 2] }
procedure Open "Slacken the cover" {
  begin with Cover is secured, Plate is installed
  finish with Screw[all] are loose
  step loosen Screw[3..4]
  step loosen Screw[1..2]
//     ^^^^^^^^^^^^^^^^^^ order.locked error
}`,
  ],
  [
    "locked, silent: a plate over screws that nobody turns",
    `${COVER}
part Plate "lock plate" { locks Screw[1, 2] }
procedure Turn "Turn two screws" {
  begin with Cover is secured, Plate is installed
  finish with Screw[3..4] are loose
  step loosen Screw[3..4]
}`,
  ],
  [
    "locked: in one branch only the tab is taken off",
    `${NUT}
option Kept "the hub stays" { yes no }
procedure Slacken "Slacken the nut" {
  begin with Hub is secured, Tab is installed
  finish with Nut is loose
  when Kept is no { step remove Tab }
  step loosen Nut
//     ^^^^^^^^^^ order.locked error
  when Kept is yes { step remove Tab }
}`,
  ],
  [
    "locked, allowed with a reason",
    `${NUT}
procedure Check "Check the hub nut" {
  begin with Hub is secured, Tab is installed
  step {
    tighten Nut to 90 N·m with Wrench
//  ^^^^^^^^^^^ order.locked error allowed
    allow order.locked because "The tab gives by a quarter turn."
  }
}`,
  ],
  [
    "not-tightened: a screw that only stands in its hole",
    `${COVER}
procedure Fit "Fit the cover" {
  begin with Housing is installed
  finish with Cover is installed, Screw[all] are loose
  step install Cover
  step install Screw[all]
  step loosen Screw[1]
//     ^^^^^^^^^^^^^^^ order.not-tightened error
}`,
  ],
  [
    "not-tightened: loosened twice",
    `${COVER}
procedure Open "Slacken the cover" {
  begin with Housing is installed, Cover is secured
  finish with Screw[all] are loose
  step loosen Screw[all] in reverse order
  step loosen Screw[2]
//     ^^^^^^^^^^^^^^^ order.not-tightened error
}`,
  ],
  [
    "not-tightened, silent: loosened, tightened, loosened",
    `${COVER}
procedure Shift "Shift the cover" {
  begin with Housing is installed, Cover is secured
  finish with Screw[all] are loose
  step loosen Screw[all]
  step tighten Screw[all] to 24 N·m with Wrench
  step loosen Screw[all]
}`,
  ],
  [
    "not-tightened, silent: slackened by a part turn, then out",
    `${COVER}
procedure Open "Open the cover" {
  begin with Housing is installed, Cover is secured
  finish with Cover is removed, Screw[all] are removed
  step loosen Screw[all] by 1/4 turn
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
}`,
  ],
  [
    "not-tightened: not in at all is the other code, for each of the two lines",
    `${COVER}
procedure Open "Open the cover" {
  begin with Housing is installed, Cover is installed
  finish with Cover is removed
  step loosen Screw[1]
//     ^^^^^^^^^^^^^^^ order.not-installed error
  step remove Screw[1]
//     ^^^^^^^^^^^^^^^ order.not-installed error
  step remove Cover
}`,
  ],
  [
    "not-tightened: after tightening by hand without a value",
    `${COVER}
procedure Fit "Fit the cover" {
  begin with Housing is installed
  finish with Cover is installed, Screw[all] are loose
  step install Cover
  step install Screw[all]
  step tighten Screw[all] by hand
  step loosen Screw[all]
//     ^^^^^^^^^^^^^^^^^ order.not-tightened error
}`,
  ],
  [
    "not-tightened, silent: a rework that loosens and comes back",
    `${COVER}
procedure Close "Close the cover" {
  begin with Housing is installed
  finish with Cover is secured
  step install Cover
  step install Screw[all]
  step Tightening { tighten Screw[all] in cross pattern to 24 N·m with Wrench }
  step {
    check "The gap is even" if it fails {
      loosen Screw[all]
      return to Tightening
    }
  }
}`,
  ],
  [
    "locked: the tab was taken off for the work and not put back",
    `${NUT}
procedure Check "Check the hub nut" {
  begin with Hub is secured, Tab is installed
  finish with Hub is secured
  step remove Tab
//     ^^^^^^^^^^ order.locked warning
  step loosen Nut
  step tighten Nut to 90 N·m with Wrench
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
