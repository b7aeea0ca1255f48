// order.enclosed: work behind an installed part, with instances, like-numbered partners, branches, repeats and rework.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const SHOP = `consumable Grease "bearing grease"
part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }
`;

test("work on a part whose cover is on, of any kind", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing, Cover
  step lubricate Bearing with Grease
  //   ^^^^^^^^^^^^^^^^^ order.enclosed
  step inspect Bearing
  //   ^^^^^^^^^^^^^^^ order.enclosed
  step clean Bearing
  //   ^^^^^^^^^^^^^ order.enclosed
  step inspect Bearing
  //   ^^^^^^^^^^^^^^^ order.enclosed
}`);
});

test("installing behind what is installed", () => {
  expectFindings(`part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }

procedure CloseUp "Close the housing" {
  step install Cover
  step install Bearing
  //   ^^^^^^^^^^^^^^^ order.enclosed
}`);
});

test("removing what is behind a cover that is on at the start", () => {
  expectFindings(`part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }

procedure Open "Open the housing" {
  begin with Bearing is installed, Cover is installed
  finish with Bearing is removed
  step remove Bearing
  //   ^^^^^^^^^^^^^^ order.enclosed
}`);
});

test("silent: the cover is off again", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing, Cover
  step remove Cover
  step lubricate Bearing with Grease
  step install Cover
}`);
});

test("silent: the cover lies on the bench, or work is on the cover itself", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  step clean Cover
  step install Bearing
  step lubricate Bearing with Grease
  step install Cover
  step clean Cover
}`);
});

test("only what is named is enclosed: some instances", () => {
  expectFindings(`part Segment[1..4] "tooth segment"
part Guard "guard" { encloses Segment[1..2] }

procedure Fit "Fit the segments" {
  step install Segment[all]
  step install Guard
  step inspect Segment[3]
  step inspect Segment[2]
  //   ^^^^^^^^^^^^^^^^^^ order.enclosed
}`);
});

test("like-numbered partners enclose only their own", () => {
  expectFindings(`ring Circle "bolt circle" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Screw[1..4] "screw" { seats in Circle by number }
part Cap[1..4] "cap" {
  seats in Circle by number
  needs Screw[same]
  encloses Screw[same]
}

procedure Fit "Fit screws and caps" {
  step install Screw[all]
  step install Cap[2]
  step inspect Screw[1]
  step inspect Screw[2]
  //   ^^^^^^^^^^^^^^^^ order.enclosed
}`);
});

test("in a branch: the options for which it happens", () => {
  expectFindings(`${SHOP}option Extent "extent of work" { Full Reseal }

procedure CloseUp "Close the housing" {
  step install Bearing
  when Extent is Full { step install Cover }
  step lubricate Bearing with Grease
  //   ^^^^^^^^^^^^^^^^^ order.enclosed
}`);
  const text = `${SHOP}option Extent "extent of work" { Full Reseal }
procedure CloseUp "Close the housing" {
  step install Bearing
  when Extent is Full { step install Cover }
  step lubricate Bearing with Grease
}`;
  expect(told(text, "order.enclosed")).toContain("This happens when Extent is Full.");
});

test("silent: on the one option the cover is off, on the other the work is not done", () => {
  expectFindings(`${SHOP}option Extent "extent of work" { Full Reseal }

procedure CloseUp "Close the housing" {
  step install Bearing
  when Extent is Full { step install Cover }
  when Extent is Reseal { step lubricate Bearing with Grease }
}`);
});

test("in a repeat: one finding, with its first pass", () => {
  const text = `part Segment[1..4] "tooth segment"
part Guard "guard" { encloses Segment }

procedure Fit "Fit the segments" {
  step install Segment[all]
  repeat n from 1 to 4 {
    step inspect Segment[n]
    step install Guard
    step remove Guard
  }
  step install Guard
  repeat n in 2, 3, 4 { step inspect Segment[n] }
  //                         ^^^^^^^^^^^^^^^^^^ order.enclosed
}`;
  expectFindings(text);
  expect(told(text, "order.enclosed")).toMatchInlineSnapshot(`
    "Segment[2] is behind Guard and cannot be reached.
      Guard encloses Segment[2] and is in place since step 5.
      This happens for n = 2, and 2 more.
    → Do this before Guard is installed, or remove Guard first.
    @11 Step 5: Guard is installed.
    &2 Guard encloses Segment[2], as declared here"
  `);
});

test("after a rework loop: the way back leads to work behind the cover", () => {
  expectFindings(`part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step Look { inspect Bearing }
  //          ^^^^^^^^^^^^^^^ order.enclosed
  step Close {
    install Cover
  //^^^^^^^^^^^^^ order.already-installed
    check "The cover turns freely" if it fails { return to Look }
  }
}`);
});

test("silent: the rework takes the cover off first", () => {
  expectFindings(`part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }

procedure CloseUp "Close the housing" {
  step install Bearing
  step Look { inspect Bearing }
  step Close {
    install Cover
    check "The cover turns freely" if it fails {
      remove Cover
      return to Look
    }
  }
}`);
});

test("direct only: what encloses a cover does not enclose what is behind that cover", () => {
  expectFindings(`part Bearing "drive-end bearing"
part Cover "bearing cover" { encloses Bearing }
part Guard "guard" { encloses Cover }

procedure CloseUp "Close the housing" {
  step install Bearing, Cover
  step remove Cover
  step install Guard
  step inspect Bearing
  step inspect Cover
  step remove Guard
  step install Cover, Guard
  step inspect Cover
  //   ^^^^^^^^^^^^^ order.enclosed
}`);
});

test("allowed in one step, and found in the next", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing, Cover
  step {
    lubricate Bearing with Grease
  //^^^^^^^^^^^^^^^^^ order.enclosed allowed
    allow order.enclosed because "Through the side port."
  }
  step inspect Bearing
  //   ^^^^^^^^^^^^^^^ order.enclosed
}`);
});
