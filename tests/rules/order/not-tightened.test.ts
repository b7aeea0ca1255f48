// order.not-tightened: what is loose is loosened; what is not known to be loose may be.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const SHOP = `part Cover "bearing cover"
part Screw[1..4] "cover screw" { secures Cover }
`;

test("run in and never tightened: one finding for all of them", () => {
  const text = `${SHOP}
procedure Fit "Fit the cover" {
  finish with Screw[all] are loose
  step install Cover
  step install Screw[all]
  step loosen Screw[all]
  //   ^^^^^^^^^^^^^^^^^ order.not-tightened error
}`;
  expectFindings(text);
  expect(told(text, "order.not-tightened")).toMatchInlineSnapshot(`
    "Screw[1] is loose already.
      Screw[1] is in and not tightened since step 2, so there is nothing to loosen.
      The same holds for Screw[2], Screw[3] and Screw[4].
    → Tighten Screw[1] before this, or take this line out.
    @7 Step 2: Screw[1] is loose."
  `);
});

test("loosened twice", () => {
  expectFindings(`${SHOP}
procedure Slacken "Slacken the cover" {
  begin with Cover is secured
  step loosen Screw[all]
  step inspect Cover
  step loosen Screw[all]
  //   ^^^^^^^^^^^^^^^^^ order.not-tightened
}`);
});

test("tightened by hand is loose still", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit the cover" {
  finish with Screw[all] are loose
  step install Cover, Screw[all]
  step tighten Screw[all] by hand
  step loosen Screw[all]
  //   ^^^^^^^^^^^^^^^^^ order.not-tightened
}`);
});

test("backed off by an angle from nothing; after it the screw counts as tightened", () => {
  expectFindings(`${SHOP}
procedure Fit "Fit the cover" {
  finish with Cover is secured
  step install Cover, Screw[all]
  step loosen Screw[all] by 1/4 turn
  //   ^^^^^^^^^^^^^^^^^ order.not-tightened
}`);
});

test("silent: tight, set by an angle, seated, or in from the start with no word on how tight", () => {
  expectFindings(`${SHOP}
procedure Adjust "Adjust the cover" {
  finish with Screw[all] are loose
  step install Cover, Screw[all]
  step tighten Screw[all] to seat
  step loosen Screw[all] by 1/4 turn
  step loosen Screw[all]
}`);
  expectFindings(`${SHOP}
procedure Slacken "Slacken the cover" {
  begin with Cover is installed, Screw[all] are installed
  step loosen Screw[all]
}`);
});

test("what is out is only not installed", () => {
  expectFindings(`${SHOP}
procedure Slacken "Slacken the cover" {
  begin with Cover is installed
  step loosen Screw[1]
  //   ^^^^^^^^^^^^^^^ order.not-installed
}`);
});

test("on one option the tightening is missing", () => {
  const text = `${SHOP}option Extent "extent of work" { Full Look }

procedure Adjust "Adjust the cover" {
  finish with Screw[all] are loose
  step install Cover, Screw[all]
  when Extent is Full { step tighten Screw[all] }
  step loosen Screw[all]
  //   ^^^^^^^^^^^^^^^^^ order.not-tightened
}`;
  expectFindings(text);
  expect(told(text, "order.not-tightened")).toContain("This happens when Extent is Look.");
});

test("rework: back to the tightening is silent, back to the check is not", () => {
  expectFindings(`${SHOP}
procedure Torque "Tighten the cover" {
  begin with Cover is installed, Screw[all] are installed
  step Tightening { tighten Screw[all] }
  step {
    check "The cover lies flat" if it fails {
      loosen Screw[all]
      return to Tightening
    }
  }
}`);
  expectFindings(`${SHOP}
procedure Torque "Tighten the cover" {
  begin with Cover is installed, Screw[all] are installed
  step tighten Screw[all]
  step Look {
    check "The cover lies flat" if it fails {
      loosen Screw[all]
    //^^^^^^^^^^^^^^^^^ order.not-tightened
      return to Look
    }
  }
}`);
});

test("in a repeat that comes to one screw twice", () => {
  const text = `${SHOP}
procedure Slacken "Slacken the cover" {
  begin with Cover is secured
  repeat n in 1, 3, 1, 2, 4 { step loosen Screw[n] }
  //                               ^^^^^^^^^^^^^^^ order.not-tightened
}`;
  expectFindings(text);
  expect(told(text, "order.not-tightened")).toContain("This happens for n = 1.");
});
