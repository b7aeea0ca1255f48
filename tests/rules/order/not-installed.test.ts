// order.not-installed: taking out, tightening and loosening what is not there, on some path or on all.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("removing what lies on the bench at the start", () => {
  const text = `part Cover "bearing cover"

procedure Open "Open the housing" {
  finish with Cover is removed
  step remove Cover
  //   ^^^^^^^^^^^^ order.not-installed
}`;
  expectFindings(text);
  expect(told(text, "order.not-installed")).toMatchInlineSnapshot(`
    "Cover is not installed, so it cannot be removed.
      Cover is not installed at the start.
    → Install Cover before this, or say “begin with Cover is installed”.
    @3 At the start: Cover is removed."
  `);
});

test("removing twice: said once for each, with where it went", () => {
  const text = `part Cover "bearing cover"

procedure Open "Open the housing" {
  begin with Cover is installed
  finish with Cover is removed
  step remove Cover
  step discard Cover
  //   ^^^^^^^^^^^^^ order.not-installed
}`;
  expectFindings(text);
  expect(told(text, "order.not-installed")).toMatchInlineSnapshot(`
    "Cover is not installed, so it cannot be discarded.
      Cover is out since step 1.
    → Install Cover before this, or say “begin with Cover is installed”.
    @6 Step 1: Cover is removed."
  `);
});

test("tightening and loosening a screw that is not in", () => {
  expectFindings(`part Cover "bearing cover"
part Screw "cover screw" { secures Cover }

procedure CloseUp "Close the housing" {
  step install Cover
  step tighten Screw
  //   ^^^^^^^^^^^^^ order.not-installed
  step install Screw
  step tighten Screw
  step loosen Screw
  step remove Screw
  step loosen Screw
  //   ^^^^^^^^^^^^ order.not-installed
}`);
});

test("silent: installed here, or said to be installed at the start", () => {
  expectFindings(`part Cover "bearing cover"
part Seal "shaft seal"

procedure Open "Open the housing" {
  begin with Cover is installed
  finish with Cover is removed, Seal is removed
  step remove Cover
  step install Seal
  step remove Seal
}`);
});

test("of several the one that is missing: the place is the whole action", () => {
  expectFindings(`part Screw[1..4] "cover screw"

procedure Open "Open the housing" {
  begin with Screw[1..3] are installed
  finish with Screw[all] are removed
  step remove Screw[all]
  //   ^^^^^^^^^^^^^^^^^ order.not-installed
}`);
});

test("instances by name", () => {
  expectFindings(`part Foot[left, right] "pump foot"

procedure Open "Take the feet off" {
  begin with Foot[left] is installed
  finish with Foot[all] are removed
  step remove Foot[left]
  step remove Foot[right]
  //   ^^^^^^^^^^^^^^^^^^ order.not-installed
}`);
});

test("in a repeat: the passes in which it is so", () => {
  const text = `part Screw[1..8] "cover screw"

procedure Open "Open the housing" {
  begin with Screw[1..4] are installed
  finish with Screw[all] are removed
  repeat n from 1 to 8 { step remove Screw[n] }
  //                          ^^^^^^^^^^^^^^^ order.not-installed
}`;
  expectFindings(text);
  expect(told(text, "order.not-installed")).toContain("This happens for n = 5, and 3 more.");
});

test("on one option only, and after a failed check only", () => {
  const text = `part Cover "bearing cover"
option Stripped "the pump came stripped" { yes no }

procedure Open "Open the housing" {
  begin with Cover is installed
  finish with Cover is removed
  when Stripped is yes { step remove Cover }
  step remove Cover
  //   ^^^^^^^^^^^^ order.not-installed
}`;
  expectFindings(text);
  expect(told(text, "order.not-installed")).toContain("This happens when Stripped is yes.");
  expectFindings(`part Cover "bearing cover"

procedure Open "Open the housing" {
  begin with Cover is installed
  finish with Cover is removed
  step { check "The cover is sound" if it fails { discard Cover } }
  step remove Cover
  //   ^^^^^^^^^^^^ order.not-installed
}`);
});

test("silent: a part that comes along with what carries it is out, and one that was put on the bench can be taken off", () => {
  expectFindings(`part Shaft "pump shaft"
part Bearing "drive-end bearing"

procedure Strip "Strip the shaft" {
  begin with Shaft is installed
  finish with Shaft is removed, Bearing is removed
  step install Bearing on Shaft
  step remove Shaft
  step remove Bearing
}`);
});

test("of a fastener whose part is out, both are named", () => {
  const text = `part Cover "bearing cover"
part Screw "cover screw" { secures Cover }

procedure CloseUp "Close the housing" {
  finish with Cover is secured
  step install Screw
  step tighten Screw
  //   ^^^^^^^^^^^^^ order.not-installed
  step install Cover
}`;
  expectFindings(text);
  expect(told(text, "order.not-installed")).toMatchInlineSnapshot(`
    "Screw cannot be tightened: Cover, which it secures, is not installed.
      Cover is not installed at the start.
    → Install Cover before this, or say “begin with Cover is installed”.
    @4 At the start: Cover is removed."
  `);
});
