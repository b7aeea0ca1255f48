// order.occupied: two things in one position, and what may share one.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const RING = `ring Circle "pin circle" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}`;

test("two pins in one hole", () => {
  const text = `${RING}
part Pin[1..2] "dowel pin" { seats in Circle }

procedure Fit "Fit the pins" {
  step install Pin[1] in Circle[1]
  step install Pin[2] in Circle[1]
  //   ^^^^^^^^^^^^^^ order.occupied
}`;
  expectFindings(text);
  expect(told(text, "order.occupied")).toMatchInlineSnapshot(`
    "Circle[1] is taken by Pin[1].
      Pin[1] is in Circle[1] since step 1.
    → Install Pin[2] in another position, or remove Pin[1] first.
    @9 Step 1: Pin[1] is in Circle[1]."
  `);
});

test("a numbered screw where a guide pin still is", () => {
  expectFindings(`${RING}
part Screw[1..4] "screw" { seats in Circle by number }
temporary part GuidePin "guide pin" { seats in Circle }

procedure Fit "Fit the screws" {
  step install GuidePin in Circle[3]
  step install Screw[all]
  //   ^^^^^^^^^^^^^^^^^^ order.occupied
  step remove GuidePin
}`);
});

test("silent: the pin is taken out first, its screw comes last", () => {
  expectFindings(`${RING}
part Screw[1..4] "screw" { seats in Circle by number }
temporary part GuidePin "guide pin" { seats in Circle }

procedure Fit "Fit the screws" {
  step install GuidePin in Circle[3]
  repeat n in 1, 2, 4 { step install Screw[n] }
  step remove GuidePin
  step install Screw[3]
}`);
});

test("silent: a like-numbered partner stacks in one position", () => {
  expectFindings(`${RING}
part Washer[1..4] "washer" { seats in Circle by number }
part Screw[1..4] "screw" {
  seats in Circle by number
  needs Washer[same]
}

procedure Fit "Fit the screws" {
  step install Washer[all]
  step install Screw[all]
}`);
});

test("two kinds that are no partners do not share a position", () => {
  expectFindings(`${RING}
part Washer[1..4] "washer" { seats in Circle by number }
part Screw[1..4] "screw" { seats in Circle by number }

procedure Fit "Fit the screws" {
  step install Washer[2]
  step install Screw[2]
  //   ^^^^^^^^^^^^^^^^ order.occupied
}`);
});

test("holes that are no circle are taken likewise", () => {
  expectFindings(`holes Feet "pump feet" { count 4 }
part Bolt[1..4] "foot bolt" { seats in Feet }

procedure Fit "Bolt the feet down" {
  step install Bolt[1] in Feet[2]
  step install Bolt[2] in Feet[2]
  //   ^^^^^^^^^^^^^^^ order.occupied
  step install Bolt[3] in Feet[3]
}`);
});
