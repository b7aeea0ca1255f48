// Rings: the direction in which they are filled, the clock positions they stand at, numbers that go round.
import { expect, test } from "vitest";
import { compare } from "./compare.ts";

const SEATS = `ring Seat "segment seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 6 o'clock  fill counterclockwise }
part Segment[1..8] "segment" { seats in Seat by number }
part Screw[1..8] "segment screw" { seats in Seat by number  needs Segment[same]  secures Segment[same]  thread "M8x1.25" }
`;

const FREE = `ring Seat "segment seat" { count 8  numbered clockwise seen from "drive end"  position 1 at 6 o'clock }
part Segment[1..8] "segment" { seats in Seat by number }
`;

test.each([
  [
    "direction: up, where the ring is filled down",
    `${SEATS}
procedure Fill "Fill the ring" {
  finish with Segment[1..3] are installed
  step install Segment[1]
  step install Segment[2]
//     ^^^^^^^^^^^^^^^^^^ order.direction error
  step install Segment[3]
}`,
  ],
  [
    "direction, silent: down, all the way",
    `${SEATS}
procedure Fill "Fill the ring" {
  finish with Segment[all] are installed
  repeat n from 8 down to 1 { step install Segment[n] }
}`,
  ],
  [
    "direction, silent: down, from the middle and round",
    `${SEATS}
procedure Fill "Fill the ring" {
  finish with Segment[all] are installed
  repeat n from 5 down to 1 { step install Segment[n] }
  repeat n from 8 down to 6 { step install Segment[n] }
}`,
  ],
  [
    "direction, silent: all at once go in that direction",
    `${SEATS}
procedure Fill "Fill the ring" {
  finish with Segment[all] are installed
  step install Segment[all]
}`,
  ],
  [
    "direction: a repeat that counts up, once",
    `${SEATS}
procedure Fill "Fill the ring" {
  finish with Segment[all] are installed
  repeat n from 1 to 8 { step install Segment[n] }
//                            ^^^^^^^^^^^^^^^^^^ order.direction error
}`,
  ],
  [
    "direction: one skipped and never filled",
    `${SEATS}
procedure Fill "Fill the ring" {
  finish with Segment[8] is installed
  step install Segment[8]
  step install Segment[7]
  step install Segment[5]
//     ^^^^^^^^^^^^^^^^^^ order.direction error
  step install Segment[4]
}`,
  ],
  [
    "direction, silent: a screw after each segment",
    `${SEATS}
procedure Fill "Fill the ring" {
  finish with Segment[all] are installed, Screw[all] are loose
  repeat n from 8 down to 1 {
    step install Segment[n]
    step install Screw[n]
  }
}`,
  ],
  [
    "direction, silent: the ring says nothing of it",
    `${FREE}
procedure Fill "Fill the ring" {
  finish with Segment[all] are installed
  step install Segment[1]
  step install Segment[5]
  step install Segment[2..4]
  step install Segment[6..8]
}`,
  ],
  [
    "direction, silent: taken out upwards",
    `${SEATS}
procedure Empty "Empty the ring" {
  begin with Segment[all] are installed
  finish with Segment[all] are removed
  repeat n from 1 to 8 { step remove Segment[n] }
}`,
  ],
  [
    "direction, silent: one worn segment changed",
    `${SEATS}
procedure Change "Change segment 4" {
  begin with Segment[all] are installed
  finish with Segment[all] are installed
  step remove Segment[4]
  step install Segment[4]
}`,
  ],
  [
    "direction, silent: only one is fitted",
    `${SEATS}
procedure Fit "Fit the first segment" {
  finish with Segment[3] is installed
  step install Segment[3]
}`,
  ],
  [
    "direction: in one branch",
    `${SEATS}
option Left "the work goes to the left" { yes no }
procedure Fill "Fill two seats" {
  finish with Segment[3, 4] are installed
  when Left is yes {
    step install Segment[4]
    step install Segment[3]
  } otherwise {
    step install Segment[3]
    step install Segment[4]
//       ^^^^^^^^^^^^^^^^^^ order.direction error
  }
}`,
  ],
  [
    "direction, allowed",
    `${SEATS}
procedure Fill "Fill two seats" {
  finish with Segment[1..2] are installed
  step install Segment[1]
  step install Segment[2]
//     ^^^^^^^^^^^^^^^^^^ order.direction error allowed
    allow order.direction because "The last two go in from the other side."
}`,
  ],
  [
    "position: not turned there",
    `${FREE}
procedure Fill "Fill the ring" {
  finish with Segment[1..2] are installed
  step install Segment[1] at 6 o'clock
  step install Segment[2] at 6 o'clock
//     ^^^^^^^^^^^^^^^^^^ order.position error
}`,
  ],
  [
    "position, silent: turned each time",
    `${FREE}
procedure Fill "Fill the ring" {
  finish with Segment[all] are installed
  repeat n from 1 to 8 {
    step turn Seat[n] to 6 o'clock
    step install Segment[n] in Seat[n] at 6 o'clock
  }
}`,
  ],
  [
    "position, silent: seat 5 of eight is opposite to seat 1",
    `${FREE}
procedure Fill "Fill seat 5" {
  finish with Segment[5] is installed
  step install Segment[5] in Seat[5] at 12 o'clock
}`,
  ],
  [
    "position, silent: seat 3 of eight, clockwise from 6 o'clock",
    `${FREE}
procedure Fill "Fill seat 3" {
  finish with Segment[3] is installed
  step install Segment[3] at 9 o'clock
}`,
  ],
  [
    "position: seat 3 on the other side",
    `${FREE}
procedure Fill "Fill seat 3" {
  finish with Segment[3] is installed
  step install Segment[3] at 3 o'clock
//     ^^^^^^^^^^^^^^^^^^ order.position error
}`,
  ],
  [
    "position, silent: counterclockwise numbers, seat 3 at the right",
    `ring Seat "seat" { count 8  numbered counterclockwise seen from "drive end"  position 1 at 6 o'clock }
part Segment[1..8] "segment" { seats in Seat by number }
procedure Fill "Fill seat 3" {
  finish with Segment[3] is installed
  step install Segment[3] at 3 o'clock
}`,
  ],
  [
    "position: turned in one branch only",
    `${FREE}
option Turned "the ring can be turned" { yes no }
procedure Fill "Fill seat 2" {
  finish with Segment[2] is installed
  when Turned is yes { step turn Seat[2] to 6 o'clock }
  step install Segment[2] at 6 o'clock
//     ^^^^^^^^^^^^^^^^^^ order.position error
}`,
  ],
  [
    "position: the turn was forgotten in a later pass",
    `${FREE}
procedure Fill "Fill the ring" {
  finish with Segment[1..3] are installed
  step turn Seat[1] to 6 o'clock
  repeat n from 1 to 3 { step install Segment[n] at 6 o'clock }
//                            ^^^^^^^^^^^^^^^^^^ order.position error
}`,
  ],
  [
    "position, silent: the turn to put one place at the top",
    `${FREE}
procedure Fill "Fill seat 2" {
  finish with Segment[2] is installed
  step turn Seat to put Seat[6] at 12 o'clock
  step install Segment[2] at 6 o'clock
}`,
  ],
  [
    "wrong-place in a named hole, and a place that is taken",
    `ring Circle "circle" { count 4  numbered clockwise seen from "above"  position 1 at 12 o'clock }
part Bolt[1..4] "bolt" { seats in Circle by number }
temporary part Pin[1..2] "pin" { seats in Circle equally spaced }
procedure Fit "Fit pins and bolts" {
  finish with Bolt[2, 4] are installed
  step install Pin[1] in Circle[1]
  step install Bolt[2] in Circle[3]
//     ^^^^^^^^^^^^^^^ order.wrong-place error
  step install Pin[2] in Circle[1]
//     ^^^^^^^^^^^^^^ order.occupied error
  step remove Pin[all]
  step install Bolt[4]
}`,
  ],
  [
    "silent: a number that goes round the ring",
    `${FREE}
procedure Look "Look at the joints" {
  begin with Segment[all] are installed
  repeat n from 1 to 8 { step inspect Segment[n], Segment[n + 1] "for contact" }
  repeat n from 1 to 8 { step inspect Segment[n - 1] "for wear" }
}`,
  ],
])("%s", (_title, text) => {
  const { found, wanted } = compare(text);
  expect(found).toBe(wanted);
});
