// order.missing-support: what a part needs under it, on every path.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const SHOP = `part Bearing "drive-end bearing"
part Cover "bearing cover" { needs Bearing }
`;

test("the wrong way round", () => {
  const text = `${SHOP}
procedure CloseUp "Close the housing" {
  step install Cover
  //   ^^^^^^^^^^^^^ order.missing-support
  step install Bearing
}`;
  expectFindings(text);
  expect(told(text, "order.missing-support")).toMatchInlineSnapshot(`
    "Cover needs Bearing, which is not installed.
      Wanted: Bearing is installed
      Found: Bearing is not installed yet
    → Install Bearing before this. It comes in step 2, too late.
    @4 At the start: Bearing is removed.
    &2 Cover needs Bearing, as declared here
    &6 Bearing is installed only here"
  `);
});

test("taken out again before, and never put in", () => {
  const text = `${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing
  step remove Bearing
  step install Cover
  //   ^^^^^^^^^^^^^ order.missing-support
}`;
  expectFindings(text);
  expect(told(text, "order.missing-support")).toMatchInlineSnapshot(`
    "Cover needs Bearing, which is not installed.
      Wanted: Bearing is installed
      Found: Bearing is out since step 2
    → Install Bearing before this.
    @6 Step 2: Bearing is removed.
    &2 Cover needs Bearing, as declared here"
  `);
});

test("silent: in before, in from the start, or put in by the same action before it", () => {
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing
  step install Cover
}`);
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  begin with Bearing is installed
  step install Cover
}`);
  expectFindings(`${SHOP}
procedure CloseUp "Close the housing" {
  step install Bearing, Cover
}`);
});

test("silent: a part may go onto its support on the bench", () => {
  expectFindings(`part Shaft "pump shaft"
part Bearing "drive-end bearing" { needs Shaft }

procedure Assemble "Put the shaft together" {
  step install Bearing on Shaft
  step install Shaft
}`);
});

test("two supports that are missing are two findings", () => {
  expectFindings(`part Bearing "drive-end bearing"
part Gasket "gasket"
part Cover "bearing cover" { needs Bearing, Gasket }

procedure CloseUp "Close the housing" {
  step install Cover
  //   ^^^^^^^^^^^^^ order.missing-support
  //   ^^^^^^^^^^^^^ order.missing-support
  step install Bearing, Gasket
}`);
});

test("like-numbered partners: only the one without is told", () => {
  expectFindings(`ring Circle "bolt circle" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Washer[1..4] "washer" { seats in Circle by number }
part Screw[1..4] "screw" {
  seats in Circle by number
  needs Washer[same]
}

procedure Fit "Fit the screws" {
  repeat n in 1, 2, 3 { step install Washer[n] }
  step install Screw[1]
  step install Screw[4]
  //   ^^^^^^^^^^^^^^^^ order.missing-support
}`);
});

test("on the option where its support is left out", () => {
  const text = `${SHOP}option Kept "the bearing is kept" { yes no }

procedure CloseUp "Close the housing" {
  when Kept is no { step install Bearing }
  step install Cover
  //   ^^^^^^^^^^^^^ order.missing-support
}`;
  expectFindings(text);
  expect(told(text, "order.missing-support")).toContain("This happens when Kept is yes.");
});

test("one mistake brings no train of others: the support is not put in by it", () => {
  expectFindings(`part Bearing "drive-end bearing"
part Cover "bearing cover" { needs Bearing }
part Guard "guard" { needs Cover }

procedure CloseUp "Close the housing" {
  step install Cover
  //   ^^^^^^^^^^^^^ order.missing-support
  step install Guard
}`);
});
