// order.uncured: loaded, closed over or restored before the time is over; only lower ends of waits and times count.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `consumable Sealant "joint sealant" { cure 4 h }
consumable Oil "gear oil"
part Sump "oil sump"
`;
const filled = (lines: string): string => `${SHOP}
procedure CloseSump "Close and fill the sump" {
  step apply Sealant to Sump
  step install Sump
  ${lines}
}
`;
const FOUND = "step fill Sump with Oil\n  //   ^^^^^^^^^ order.uncured error";

test("filled at once", () => {
  const text = filled(FOUND);
  expectFindings(text);
  expect(told(text, "order.uncured")).toMatchInlineSnapshot(`
    "Sump is loaded before Sealant on it has cured.
      Sealant is on Sump since step 1 and needs 4 h more.
    → Wait 4 h before this, or do other work first that says how long it takes.
    @6 Step 1: Sealant is applied to Sump.
    + Put in “step wait 4 h” before this"
  `);
});

test.each([
  ["step wait 4 h"],
  ["step wait 4 .. 6 h"],
  ['step "Let it cure." { takes 4 h }'],
  ["step wait 3 h\n  step inspect Sump takes 1 h"],
  ["step {\n    wait 4 h\n    inspect Sump\n  }"],
])("silent: %s", (lines) => {
  expectFindings(filled(`${lines}\n  step fill Sump with Oil`));
});

test.each([
  ["step wait 210 min", "30 min"],
  ["step wait 3 .. 5 h", "1 h"],
  ["step inspect Sump takes 3 h", "1 h"],
  ["step inspect Sump", "4 h"],
  ["step wait until Sump is at most 40 °C", "4 h"],
  ["step wait 14370 s", "30 s"],
])("not long enough: %s", (lines, left) => {
  const text = filled(`${lines}\n  ${FOUND}`);
  expectFindings(text);
  expect(told(text, "order.uncured")).toContain(`needs ${left} more.`);
});

test("the time of the step that applies it does not count", () => {
  expectFindings(`${SHOP}
procedure CloseSump "Close and fill the sump" {
  step install Sump
  step {
    apply Sealant to Sump
    takes 5 h
  }
  ${FOUND}
}`);
});

test("the time said at the application comes before that of the consumable", () => {
  expectFindings(`${SHOP}
procedure CloseSump "Close and fill the sump" {
  step install Sump
  step apply 5 mL of Sealant to Sump cure 10 .. 15 min
  step wait 10 min
  step fill Sump with Oil
}`);
});

test("silent: no time said, or work that is no load", () => {
  expectFindings(`consumable Sealant "joint sealant"
consumable Oil "gear oil"
part Sump "oil sump"

procedure CloseSump "Close and fill the sump" {
  step apply Sealant to Sump
  step install Sump
  step fill Sump with Oil
}`);
  expectFindings(`${SHOP}part Plug "plug"

procedure CloseSump "Close the sump" {
  step apply Sealant to Sump
  step install Sump
  step inspect Sump
  step install Plug
  step fill Plug with Oil
}`);
});

test("screwed down; a coating on the screw itself is no load on it", () => {
  const text = `${SHOP}part Screw[1..2] "sump screw" { secures Sump }

procedure CloseSump "Close the sump" {
  step apply Sealant to Sump cure 4 h
  step install Sump, Screw[all]
  step tighten Screw[all]
  //   ^^^^^^^^^^^^^^^^^^ order.uncured
  step fill Sump with Oil
}`;
  expectFindings(text);
  expect(told(text, "order.uncured")).toContain("Screw[1] loads Sump before Sealant on it has cured.");
  // A joint is closed wet, unless the step itself says that it cures first.
  expectFindings(
    text
      .replace(" cure 4 h\n", "\n")
      .replace(/.*\^.*\n/, "")
      .replace("tighten Screw[all]", "tighten Screw[all]\n  step wait 4 h"),
  );
  expectFindings(`consumable Locker "thread locker" { cure 6 h }
part Sump "oil sump"
part Screw[1..2] "sump screw" { secures Sump }

procedure CloseSump "Close the sump" {
  step install Sump
  step apply Locker to Screw[all]
  step install Screw[all]
  step tighten Screw[all]
}`);
});

test("closed over by what encloses it", () => {
  const text = `consumable Adhesive "adhesive" { cure 2 h }
part Liner "liner"
part Cover "cover" { encloses Liner }

procedure CloseUp "Close up" {
  step install Liner
  step apply Adhesive to Liner
  step install Cover
  //   ^^^^^^^^^^^^^ order.uncured
}`;
  expectFindings(text);
  expect(told(text, "order.uncured")).toContain("Cover closes over Liner before Adhesive has cured.");
  expectFindings(
    text
      .replace("  //   ^^^^^^^^^^^^^ order.uncured\n", "")
      .replace("step install Cover", "step wait 2 h\n  step install Cover"),
  );
});

test("its system restored", () => {
  const text = `consumable Sealant "pipe sealant" { cure 90 s }
energy LinePressure "line pressure"
part Elbow "elbow" { driven by LinePressure }

procedure Reseal "Reseal the elbow" {
  begin with Elbow is installed
  step isolate LinePressure
  step prove LinePressure dead
  step apply Sealant to Elbow
  step restore LinePressure
  //   ^^^^^^^^^^^^^^^^^^^^ order.uncured
}`;
  expectFindings(text);
  expect(told(text, "order.uncured")).toMatchInlineSnapshot(`
    "LinePressure is restored before Sealant on Elbow has cured.
      Sealant is on Elbow since step 3 and needs 90 s more.
    → Wait 90 s before this, or do other work first that says how long it takes.
    @9 Step 3: Sealant is applied to Elbow.
    + Put in “step wait 90 s” before this"
  `);
});

test("on one option nobody waits, and that is not mended with one line", () => {
  const text = `${SHOP}option Hurry "the sump is needed today" { yes no }

procedure CloseSump "Close and fill the sump" {
  step apply Sealant to Sump
  step install Sump
  when Hurry is no { step wait 4 h }
  ${FOUND}
}`;
  expectFindings(text);
  expect(told(text, "order.uncured")).toContain("This happens when Hurry is yes.");
  expect(told(text, "order.uncured")).not.toContain("+ ");
});

test("the fix waits for what is left", () => {
  const text = filled("step wait 1 h\n  step fill Sump with Oil");
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toBe(filled("step wait 1 h\n  step wait 3 h\n  step fill Sump with Oil"));
  expect(findingsIn(mended)).toEqual([]);
});

test("no fix where both stand in one step: a line before it would come too early", () => {
  const text = filled("step {\n    apply Sealant to Sump\n    fill Sump with Oil\n  }").replace(
    "  step apply Sealant to Sump\n",
    "",
  );
  expect(findingsIn(text).map(({ code, fixes }) => [code, fixes])).toEqual([["order.uncured", undefined]]);
});
