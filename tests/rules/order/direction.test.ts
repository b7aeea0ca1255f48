// order.direction: a ring that says how it is filled, filled out of turn or with a gap.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const ring = (fill: string, numbered = "clockwise"): string => `ring Seat "segment seat" {
  count 8
  numbered ${numbered} seen from "drive end"
  position 1 at 6 o'clock
  ${fill}
}
part Segment[1..8] "tooth segment" { seats in Seat by number }
`;
const SHOP = ring("fill counterclockwise");
const steps = (numbers: readonly number[]): string =>
  numbers.map((number) => `  step install Segment[${number}]\n`).join("");
const filled = (shop: string, ...numbers: readonly number[]): string =>
  `${shop}\nprocedure Fit "Fit the segments" {\n${steps(numbers)}}\n`;

test("the other way round", () => {
  const text = `${SHOP}
procedure Fit "Fit the segments" {
  step install Segment[5]
  step install Segment[6]
  //   ^^^^^^^^^^^^^^^^^^ order.direction error
}`;
  expectFindings(text);
  expect(told(text, "order.direction")).toMatchInlineSnapshot(`
    "Seat[6] is filled out of turn.
      Wanted: Seat filled counterclockwise, one position after the other
      Found: Segment[6] in Seat[6], behind those that are filled
    → Change the order, so that Seat is filled counterclockwise.
    &1 Seat says here how it is filled"
  `);
});

test("one is skipped: found at the one after it", () => {
  const text = `${SHOP}
procedure Fit "Fit the segments" {
  step install Segment[5]
  step install Segment[3]
  //   ^^^^^^^^^^^^^^^^^^ order.direction
  step install Segment[2]
}`;
  expectFindings(text);
  expect(told(text, "order.direction")).toMatchInlineSnapshot(`
    "Seat[4] is skipped and never filled.
      Wanted: Seat filled counterclockwise, one position after the other
      Found: Segment[3] in Seat[3], with Seat[4] still empty at the end
    → Fill Seat[4] before Seat[3].
    &1 Seat says here how it is filled"
  `);
});

test("one is passed by and filled later: found there and only there", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit the segments" {
  step install Segment[5]
  step install Segment[3]
  step install Segment[4]
  //   ^^^^^^^^^^^^^^^^^^ order.direction
  step install Segment[2]
}`);
});

test.each([
  ["from any place, round the whole ring", filled(SHOP, 3, 2, 1, 8, 7, 6, 5, 4)],
  ["a part of the ring", filled(SHOP, 2, 1, 8)],
  ["upwards where it is filled as it is numbered", filled(ring("fill clockwise"), 7, 8, 1, 2)],
  ["downwards where it is numbered the other way", filled(ring("fill clockwise", "counterclockwise"), 2, 1, 8)],
  ["any order where the ring does not say", filled(ring(""), 1, 5, 3, 7)],
])("silent: %s", (_title, text) => {
  expectFindings(text);
});

test("against the fill direction on a ring that is numbered counterclockwise", () => {
  expectFindings(`${ring("fill counterclockwise", "counterclockwise")}
procedure Fit "Fit the segments" {
  step install Segment[1]
  step install Segment[2]
  step install Segment[8]
  //   ^^^^^^^^^^^^^^^^^^ order.direction
}`);
});

test("silent: a set is worked through as the ring is filled, and so is a repeat that counts that way", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit the segments" {
  step install Segment[all]
}`);
  expectFindings(`${SHOP}
procedure Fit "Fit the segments" {
  repeat n from 8 down to 1 { step install Segment[n] }
}`);
});

test("in a repeat that counts the other way: one finding, in the first pass that does", () => {
  const text = `${SHOP}
procedure Fit "Fit the segments" {
  repeat n from 1 to 3 { step install Segment[n] }
  //                          ^^^^^^^^^^^^^^^^^^ order.direction
}`;
  expectFindings(text);
  expect(told(text, "order.direction")).toContain("This happens for n = 2.");
});

test("silent: the last one out and in again, or one from the middle", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit the segments" {
  step install Segment[4]
  step install Segment[3]
  step Last { install Segment[2] }
  step {
    check "The joint is closed" if it fails {
      remove Segment[2]
      return to Last
    }
  }
  step remove Segment[3]
  step install Segment[3]
  step install Segment[1]
}`);
});

test("silent: aids, and parts of another kind, each in turn by themselves", () => {
  expectFindings(`${SHOP}part Cap[1..8] "cap" {
  seats in Seat by number
  needs Segment[same]
}
temporary part Pin[1..2] "locating pin" { seats in Seat at 2, 6 }

procedure Fit "Fit the segments" {
  step install Pin[1] in Seat[2]
  step install Pin[2] in Seat[6]
  step remove Pin[all]
  repeat n from 8 down to 1 { step install Segment[n] }
  repeat n in 4, 3, 2 { step install Cap[n] }
}`);
});

test("on one option the other way round", () => {
  const text = `${SHOP}option Side "side to begin at" { Left Right }

procedure Fit "Fit the segments" {
  step install Segment[4]
  when Side is Left {
    step install Segment[3]
  } otherwise {
    step install Segment[5]
    //   ^^^^^^^^^^^^^^^^^^ order.direction
  }
}`;
  expectFindings(text);
  expect(told(text, "order.direction")).toContain("This happens when Side is Right.");
});
