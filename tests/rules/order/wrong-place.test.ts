// order.wrong-place: parts that have a position of their own.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const RING = `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
}`;

test("by number: another position than its own", () => {
  const text = `${RING}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure Fit "Fit the segments" {
  step install Segment[1] in Seat[1]
  step install Segment[2] in Seat[3]
  //   ^^^^^^^^^^^^^^^^^^ order.wrong-place
}`;
  expectFindings(text);
  expect(told(text, "order.wrong-place")).toMatchInlineSnapshot(`
    "Segment[2] does not belong in Seat[3].
      Wanted: Segment[2] in Seat[2]
      Found: Segment[2] in Seat[3]
    → Install Segment[2] in Seat[2].
    &6 Its declaration says here where it belongs"
  `);
});

test("silent: without a place it goes to its own; without “by number” anywhere", () => {
  expectFindings(`${RING}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure Fit "Fit the segments" {
  step install Segment[all]
}`);
  expectFindings(`${RING}
part Segment[1..4] "tooth segment" { seats in Seat }

procedure Fit "Fit the segments" {
  step install Segment[1] in Seat[4]
  step install Segment[2] in Seat[3]
}`);
});

test("shifted by one in a repeat: said once, with its first pass", () => {
  const text = `${RING}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure Fit "Fit the segments" {
  repeat n from 1 to 4 { step install Segment[n] in Seat[n + 1] }
  //                          ^^^^^^^^^^^^^^^^^^ order.wrong-place
}`;
  expectFindings(text);
  expect(told(text, "order.wrong-place")).toContain("This happens for n = 1, and 3 more.");
});

test("positions that the declaration lists", () => {
  expectFindings(`${RING}
part Stop[1..2] "stop" { seats in Seat at 1, 3 }

procedure Fit "Fit the stops" {
  step install Stop[1] in Seat[3]
  step install Stop[2] in Seat[2]
  //   ^^^^^^^^^^^^^^^ order.wrong-place
}`);
});

test("another ring than the one it seats in", () => {
  expectFindings(`${RING}
holes Feet "pump feet" { count 4 }
part Segment[1..4] "tooth segment" { seats in Seat by number }
part Bolt "foot bolt" { seats in Feet }

procedure Fit "Fit the segments" {
  step install Segment[2] in Feet[2]
  //   ^^^^^^^^^^^^^^^^^^ order.wrong-place
  step install Bolt in Feet[1]
}`);
});
