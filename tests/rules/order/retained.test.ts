// order.retained: what holds a part in place, tight or loose.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const SCREWED = `part Cover "bearing cover"
part Screw[1..4] "cover screw" { secures Cover }
`;

test("a part that another retains", () => {
  const text = `part Bearing "drive-end bearing"
part SnapRing "snap ring" { retains Bearing }

procedure TakeOut "Take the bearing out" {
  begin with Bearing is installed, SnapRing is installed
  finish with Bearing is removed
  step remove Bearing
  //   ^^^^^^^^^^^^^^ order.retained error
}`;
  expectFindings(text);
  expect(told(text, "order.retained")).toMatchInlineSnapshot(`
    "SnapRing holds Bearing in place.
      SnapRing is in place from the start.
    → Remove SnapRing first.
    @5 At the start: SnapRing is installed.
    &2 SnapRing retains Bearing, as declared here"
  `);
});

test("a cover whose screws are tight: one finding for all of them", () => {
  const text = `${SCREWED}
procedure Open "Open the housing" {
  begin with Cover is secured
  finish with Cover is removed
  step remove Cover
  //   ^^^^^^^^^^^^ order.retained error
}`;
  expectFindings(text);
  expect(told(text, "order.retained")).toMatchInlineSnapshot(`
    "Screw[1] is tightened and holds Cover.
      Screw[1] is tightened from the start.
    → Loosen and remove Screw[1] first.
    @5 At the start: Screw[1] is tightened.
    &2 Screw[1] secures Cover, as declared here"
  `);
});

test("loose screws that are still in are a warning", () => {
  const text = `${SCREWED}
procedure Open "Open the housing" {
  begin with Cover is secured
  finish with Cover is removed
  step loosen Screw[all]
  step remove Cover
  //   ^^^^^^^^^^^^ order.retained warning
}`;
  expectFindings(text);
  expect(told(text, "order.retained")).toMatchInlineSnapshot(`
    "Screw[1] is loose but still in Cover.
      Screw[1] is loose since step 1.
    → Remove Screw[1] first.
    @7 Step 1: Screw[1] is loose.
    &2 Screw[1] secures Cover, as declared here"
  `);
});

test("some loose, one tight: the graver of the two", () => {
  expectFindings(`${SCREWED}
procedure Open "Open the housing" {
  begin with Cover is secured
  finish with Cover is removed
  step loosen Screw[1..3]
  step remove Cover
  //   ^^^^^^^^^^^^ order.retained error
}`);
});

test("silent: all screws out, or none ever in", () => {
  expectFindings(`${SCREWED}
procedure Open "Open the housing" {
  begin with Cover is secured
  finish with Cover is removed
  step loosen Screw[all]
  step remove Screw[all]
  step remove Cover
}`);
  expectFindings(`${SCREWED}
procedure Try "Try the cover" {
  finish with Cover is removed, Screw[all] are removed
  step install Cover
  step remove Cover
}`);
});

test("silent: the ring is out, and what it retains may be put in", () => {
  expectFindings(`part Bearing "drive-end bearing"
part SnapRing "snap ring" { retains Bearing }

procedure Change "Change the bearing" {
  begin with Bearing is installed, SnapRing is installed
  step remove SnapRing
  step remove Bearing
  step install new Bearing
  step install SnapRing
}`);
});

test("on one option the screws stay in", () => {
  const text = `${SCREWED}option Extent "extent of work" { Full Look }

procedure Open "Open the housing" {
  begin with Cover is secured
  finish with Cover is removed
  when Extent is Full {
    step loosen Screw[all]
    step remove Screw[all]
  }
  step remove Cover
  //   ^^^^^^^^^^^^ order.retained
}`;
  expectFindings(text);
  expect(told(text, "order.retained")).toContain("This happens when Extent is Look.");
});
