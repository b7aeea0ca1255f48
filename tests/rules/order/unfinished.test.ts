// order.unfinished: `finish with` at the end of every path.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("promised and never done", () => {
  const text = `part Cover "bearing cover"
part Seal "shaft seal"

procedure CloseUp "Close the housing" {
  finish with Cover is installed, Seal is installed
  //                              ^^^^^^^^^^^^^^^^^ order.unfinished
  step install Cover
}`;
  expectFindings(text);
  expect(told(text, "order.unfinished")).toMatchInlineSnapshot(`
    "“Seal is installed” does not hold at the end.
      Wanted: Seal is installed
      Found: Seal is removed, from the start
    → Add the step that makes it so, or change “finish with”.
    @4 At the start: Seal is removed."
  `);
});

test("secured takes all the screws, tight", () => {
  const text = `part Cover "bearing cover"
part Screw[1..3] "cover screw" { secures Cover }

procedure CloseUp "Close the housing" {
  finish with Cover is secured
  //          ^^^^^^^^^^^^^^^^ order.unfinished
  step install Cover
  step install Screw[all]
  step tighten Screw[1..2]
}`;
  expectFindings(text);
  expect(told(text, "order.unfinished")).toMatchInlineSnapshot(`
    "“Cover is secured” does not hold at the end.
      Wanted: Cover is secured
      Found: Screw[3] is loose, since step 2
    → Add the step that makes it so, or change “finish with”.
    @7 Step 2: Screw[3] is loose."
  `);
});

test("silent: all tight; a fact given; a state of its own", () => {
  expectFindings(`part Cover "bearing cover"
part Screw[1..3] "cover screw" { secures Cover }
part Lever "lever" { states closed, open }
fact Signed "the sheet is signed"

procedure CloseUp "Close the housing" {
  finish with Cover is secured, Signed, Lever is open
  step install Cover
  step install Screw[all]
  step tighten Screw[all]
  step "Open the lever and sign." { gives Signed, Lever is open }
}`);
});

test("only on the path that leaves it out, and only at an end that is one", () => {
  const text = `part Seal "shaft seal"
option Extent "extent of work" { Full Look }

procedure CloseUp "Close the housing" {
  finish with Seal is installed
  //          ^^^^^^^^^^^^^^^^^ order.unfinished
  when Extent is Full { step install Seal }
}`;
  expectFindings(text);
  expect(told(text, "order.unfinished")).toContain("This happens when Extent is Look.");
  expectFindings(`part Seal "shaft seal"
option Extent "extent of work" { Full Look }

procedure CloseUp "Close the housing" {
  finish with Seal is installed
  when Extent is Look { stop "Look only: hand the pump back." }
  step install Seal
}`);
});

test("the choice made beforehand decides", () => {
  const text = `part Seal "shaft seal"
option Extent "extent of work" { Full Look }

procedure CloseUp "Close the housing" {
  finish with Seal is installed
  when Extent is Full { step install Seal }
}`;
  expectFindings(text, { set: { Extent: "Full" } });
});
