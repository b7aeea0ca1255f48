// order.position: whether a place stands where the text wants it when the part goes in.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 6 o'clock
}
part Segment[1..4] "tooth segment" { seats in Seat by number }
`;

test("never turned: it stands as the ring's declaration says", () => {
  const text = `${SHOP}
procedure Fit "Fit segment 2" {
  step install Segment[2] in Seat[2] at 6 o'clock
  //   ^^^^^^^^^^^^^^^^^^ order.position error
}`;
  expectFindings(text);
  expect(told(text, "order.position")).toMatchInlineSnapshot(`
    "Seat[2] does not stand at 6 o'clock.
      Wanted: Seat[2] at 6 o'clock
      Found: Seat[2] at 9 o'clock, from the start
    → Turn Seat before this: “turn Seat[2] to 6 o'clock”.
    @8 At the start: Seat[2] is at 9 o'clock.
    + Put in “step turn Seat[2] to 6 o'clock” before this"
  `);
});

test("turned elsewhere", () => {
  const text = `${SHOP}
procedure Fit "Fit segment 2" {
  step turn Seat[2] to 12 o'clock
  step install Segment[2] in Seat[2] at 6 o'clock
  //   ^^^^^^^^^^^^^^^^^^ order.position
}`;
  expectFindings(text);
  expect(told(text, "order.position")).toContain("Found: Seat[2] at 12 o'clock, since step 1");
});

test("silent: it stands there at the start, was turned there, or is said to stand there", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit segment 1" {
  step install Segment[1] in Seat[1] at 6 o'clock
  step install Segment[3] in Seat[3] at 12 o'clock
}`);
  expectFindings(`${SHOP}
procedure Fit "Fit segment 2" {
  step turn Seat to put Seat[4] at 12 o'clock
  step install Segment[2] in Seat[2] at 6 o'clock
}`);
  expectFindings(`${SHOP}
procedure Fit "Fit segment 3" {
  begin with Seat[3] at 6 o'clock
  step install Segment[3] in Seat[3] at 6 o'clock
}`);
});

test("the place it has by its number is meant where none is written", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit segments 1 and 2" {
  step install Segment[1] at 6 o'clock
  step install Segment[2] at 6 o'clock
  //   ^^^^^^^^^^^^^^^^^^ order.position
}`);
});

test("numbered the other way round, and places between the hours", () => {
  expectFindings(`ring Seat "segment seat" {
  count 16
  numbered counterclockwise seen from "drive end"
  position 1 at 6 o'clock
}
part Segment[1..16] "tooth segment" { seats in Seat by number }

procedure Fit "Fit three segments" {
  step install Segment[2] at 5.25 o'clock
  step install Segment[5] at 3 o'clock
  step install Segment[3] at 7.5 o'clock
  //   ^^^^^^^^^^^^^^^^^^ order.position
}`);
});

test("silent: nothing tells how the ring stands", () => {
  expectFindings(`ring Seat "segment seat" {
  count 4
  numbered clockwise seen from "drive end"
}
part Segment[1..4] "tooth segment" { seats in Seat by number }

procedure Fit "Fit segment 2" {
  step install Segment[2] in Seat[2] at 6 o'clock
}`);
});

test("in a repeat that turns each time, and in one that forgets it", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit the segments" {
  repeat n from 4 down to 1 {
    step turn Seat[n] to 6 o'clock
    step install Segment[n] in Seat[n] at 6 o'clock
  }
}`);
  const text = `${SHOP}
procedure Fit "Fit the segments" {
  repeat n from 4 down to 1 { step install Segment[n] in Seat[n] at 6 o'clock }
  //                               ^^^^^^^^^^^^^^^^^^ order.position
}`;
  expectFindings(text);
  expect(told(text, "order.position")).toContain("This happens for n = 4, and 2 more.");
  expect(told(text, "order.position")).not.toContain("+ ");
});

test("on one option it is not turned", () => {
  const text = `${SHOP}option Extent "extent of work" { Full Part }

procedure Fit "Fit segment 2" {
  when Extent is Full { step turn Seat[2] to 6 o'clock }
  step install Segment[2] in Seat[2] at 6 o'clock
  //   ^^^^^^^^^^^^^^^^^^ order.position
}`;
  expectFindings(text);
  expect(told(text, "order.position")).toContain("This happens when Extent is Part.");
});

test("the fix turns it there first", () => {
  const text = `${SHOP}
procedure Fit "Fit segment 2" {
  step inspect Segment[2]
  step install Segment[2] in Seat[2] at 12 o'clock
}
`;
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toContain("  step turn Seat[2] to 12 o'clock\n  step install Segment[2]");
  expect(findingsIn(mended)).toEqual([]);
});
