// Several at once: sets, named instances, repeats in repeats, parts that are new, chosen or pressed in.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const SET = `ring Circle "circle" { count 6  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part Lid "lid"
part Screw[1..6] "screw" { seats in Circle by number  needs Lid  secures Lid  thread "M6x1" }
part Foot[left, right] "foot"
part FootScrew[left, right] "foot screw" { needs Foot[same]  secures Foot[same]  thread "M6x1" }
tool Wrench "torque wrench" { torque 2 .. 20 N·m }
`;

test.each([
  [
    "a repeat: the first pass, once",
    `${SET}
procedure Open "Open" {
  begin with Lid is installed
  repeat n from 1 to 6 { step loosen Screw[n] }
//                            ^^^^^^^^^^^^^^^ order.not-installed error
}`,
  ],
  [
    "a repeat: only the last pass goes wrong",
    `${SET}
procedure Close "Close" {
  begin with Lid is installed
  finish with Screw[all] are loose
  step install Screw[6]
  repeat n from 1 to 6 { step install Screw[n] }
//                            ^^^^^^^^^^^^^^^^ order.already-installed error
}`,
  ],
  [
    "silent: odd ones, then even ones",
    `${SET}
procedure Close "Close" {
  finish with Lid is secured
  step install Lid
  repeat n from 1 to 5 by 2 { step install Screw[n] }
  repeat n from 2 to 6 by 2 { step install Screw[n] }
  step tighten Screw[1, 4, 2, 5] to 9 N·m with Wrench
  repeat n in 3, 6 { step tighten Screw[n] to 9 N·m with Wrench }
}`,
  ],
  [
    "one of six was left out",
    `${SET}
procedure Close "Close" {
  finish with Lid is installed
  step install Lid
  step install Screw[1..5]
  step tighten Screw[all] to 9 N·m with Wrench
//     ^^^^^^^^^^^^^^^^^^ order.not-installed error
}`,
  ],
  [
    "silent: a repeat in a repeat",
    `${SET}
procedure Close "Close" {
  finish with Lid is secured
  step install Lid
  repeat k in 0, 1 {
    repeat n in 1, 3, 5 { step install Screw[n + k] }
  }
  step tighten Screw[all] to 9 N·m with Wrench
}`,
  ],
  [
    "a repeat in a repeat that meets one twice",
    `${SET}
procedure Close "Close" {
  finish with Screw[1..3] are loose
  begin with Lid is installed
  repeat k in 0, 1 {
    repeat n in 1, 2 { step install Screw[n + k] }
//                          ^^^^^^^^^^^^^^^^^^^^ order.already-installed error
  }
}`,
  ],
  [
    "silent: named instances, each with its partner",
    `${SET}
procedure Stand "Put it on its feet" {
  finish with Foot[all] are secured
  step install Foot[left, right]
  step install FootScrew[all]
  step tighten FootScrew[left] to 9 N·m with Wrench
  step tighten FootScrew[right] to 9 N·m with Wrench
}`,
  ],
  [
    "named instances: the partner of the other is in",
    `${SET}
procedure Stand "Put it on its feet" {
  finish with Foot[left] is installed, FootScrew[right] is loose
  step install Foot[left]
  step install FootScrew[right]
//     ^^^^^^^^^^^^^^^^^^^^^^^^ order.missing-support error
}`,
  ],
  [
    "named instances: the right one stays loose",
    `${SET}
procedure Stand "Put it on its feet" {
  finish with Foot[left] is secured
  step install Foot[all]
  step install FootScrew[left]
  step install FootScrew[right]
//     ^^^^^^^^^^^^^^^^^^^^^^^^ order.not-final warning
  step tighten FootScrew[left] to 9 N·m with Wrench
}`,
  ],
  [
    "a list of parts: the second of them stands in the wrong order",
    `part Washer "washer"
part Nut "nut" { needs Washer }
procedure Fit "Fit" {
  finish with Nut is installed
  step install Nut, Washer
//     ^^^^^^^^^^^^^^^^^^^ order.missing-support error
}`,
  ],
  [
    "silent: a list of parts in its order",
    `part Washer "washer"
part Nut "nut" { needs Washer }
procedure Fit "Fit" {
  finish with Nut is installed
  step install Washer, Nut
}`,
  ],
  [
    "silent: washers under nuts, seat by seat",
    `ring Circle "circle" { count 4  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part Washer[1..4] "washer" { seats in Circle by number }
part Nut[1..4] "nut" { seats in Circle by number  needs Washer[same] }
procedure Fit "Fit" {
  finish with Nut[all] are installed
  repeat n from 1 to 4 { step install Washer[n], Nut[n] }
}`,
  ],
  [
    "choose, silent: the chosen shim goes in",
    `tool Depth "depth gauge" { measures 0 .. 25 mm }
part Shim "shim"
procedure Fit "Fit the shim" {
  finish with Shim is installed
  step measure Gap "gap" with Depth expect 0.2 .. 1.2 mm record
  step choose Shim by Gap {
    0.2 .. 0.6 mm: 0.5 mm
    0.6 .. 1.2 mm: 1.0 mm
  }
  step install Shim
}`,
  ],
  [
    "choose, silent: a way back takes it out and measures again",
    `tool Depth "depth gauge" { measures 0 .. 25 mm }
part Shim "shim"
procedure Fit "Fit the shim" {
  finish with Shim is installed
  step Measuring { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm record }
  step choose Shim by Gap {
    0.2 .. 0.6 mm: 0.5 mm
    0.6 .. 1.2 mm: 1.0 mm
  }
  step install Shim
  step {
    check "It turns freely" if it fails {
      remove Shim
      return to Measuring
    }
  }
}`,
  ],
  [
    "choose: the way back forgets to take it out",
    `tool Depth "depth gauge" { measures 0 .. 25 mm }
part Shim "shim"
procedure Fit "Fit the shim" {
  finish with Shim is installed
  step Measuring { measure Gap "gap" with Depth expect 0.2 .. 1.2 mm record }
  step choose Shim by Gap {
    0.2 .. 0.6 mm: 0.5 mm
    0.6 .. 1.2 mm: 1.0 mm
  }
  step install Shim
//     ^^^^^^^^^^^^ order.already-installed error
  step {
    check "It turns freely" if it fails { return to Measuring }
  }
}`,
  ],
  [
    "press: into what is not there yet",
    `part Housing "housing"
part Bush "bush" { needs Housing }
tool Press "press" { force 100 kN }
procedure Fit "Press the bush in" {
  finish with Bush is installed
  step install Housing
  step press Bush in Housing with Press
  step press Bush in Housing with Press
//     ^^^^^^^^^^ order.already-installed error
}`,
  ],
  [
    "press, silent: a set of bushes",
    `part Housing "housing"
part Bush[1..3] "bush" { needs Housing }
tool Press "press" { force 100 kN }
procedure Fit "Press the bushes in" {
  begin with Housing is installed
  finish with Bush[all] are installed
  step press Bush[all] in Housing with Press
}`,
  ],
  [
    "silent: an assembly built on the bench and put in whole",
    `part Shaft "shaft"
part Bearing "bearing"
part Housing "housing"
procedure Build "Build the rotor" {
  begin with Housing is installed
  finish with Shaft is installed, Bearing is installed
  step install Bearing on Shaft
  step install Shaft in Housing
}`,
  ],
  [
    "silent: taken out with what sits on it, which then comes off on the bench",
    `part Shaft "shaft"
part Bearing "bearing"
procedure Strip "Strip the rotor" {
  finish with Shaft is removed, Bearing is removed
  step install Shaft
  step install Bearing on Shaft
  step remove Shaft
  step remove Bearing
}`,
  ],
  [
    "a loop inside a step, and its last pass",
    `${SET}
procedure Close "Close" {
  begin with Lid is installed
  finish with Lid is secured
  step "Put in the screws." {
    repeat n from 1 to 6 { install Screw[n] }
  }
  step tighten Screw[all] in cross pattern to 50 %, 100 % of 9 N·m with Wrench
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
