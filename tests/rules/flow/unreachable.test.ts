// flow.unreachable: steps behind stops and jumps, and in branches that nothing takes.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("behind a stop, once for all of them", () => {
  const text = `option Cracked "the housing is cracked" { yes no }

procedure Look "Look at the housing" {
  when Cracked is yes {
    step "Mark the crack."
    stop "Send the housing back."
    step Wipe "Wipe the housing."
  //^^^^^^^^^ flow.unreachable
    step "Close the box."
  }
  step "Write the report."
}`;
  expectFindings(text);
  expect(told(text, "flow.unreachable")).toMatchInlineSnapshot(`
    "No path leads to this and 1 more step.
      The work stops before it.
    → Move the step before the stop, or put the stop under a condition.
    &6 The work stops here"
  `);
});

test("behind a way back that is always taken", () => {
  const text = `part Shaft "pump shaft"

procedure Look "Look at the shaft" {
  step Look { inspect Shaft }
  step { check "It is clean" if it fails { stop "Clean it first." } }
  stop "Hand it over."
  step "Write the report."
//^^^^^^^^^^^^^^^^^^^^^^^^ flow.unreachable
}`;
  expectFindings(text);
});

test("silent: a stop or jump under a condition, or in a check", () => {
  expectFindings(`option Cracked "the housing is cracked" { yes no }

procedure Look "Look at the housing" {
  step Begin "Wipe the housing."
  step { check "It is dry" if it fails { return to Begin } }
  when Cracked is yes { stop "Send the housing back." }
  step "Write the report."
}`);
});

test("silent: one of two branches goes on", () => {
  expectFindings(`option Cracked "the housing is cracked" { yes no }

procedure Look "Look at the housing" {
  when Cracked is yes {
    stop "Send the housing back."
  } otherwise {
    step "Wipe the housing."
  }
  step "Write the report."
}`);
});

test("both branches stop", () => {
  expectFindings(`option Cracked "the housing is cracked" { yes no }

procedure Look "Look at the housing" {
  when Cracked is yes {
    stop "Send the housing back."
  } otherwise {
    stop "Hand it over."
  }
  step "Write the report."
//^^^^^^^^^^^^^^^^^^^^^^^^ flow.unreachable
}`);
});

test("silent: done in one pass of a repeat, in no later one", () => {
  expectFindings(`option Cracked "the housing is cracked" { yes no }

procedure Look "Look at the housing" {
  repeat n from 1 to 3 {
    step "Look at side {n}."
    when Cracked is yes {
      step "Mark the crack."
      stop "Send the housing back."
    }
  }
  step "Write the report."
}`);
});

test("after a jump out of the first pass, told once", () => {
  expectFindings(`procedure Look "Look at the housing" {
  repeat n from 1 to 3 {
    step "Look at side {n}."
    stop "Hand it over."
    step "Wipe side {n}."
  //^^^^^^^^^^^^^^^^^^^^^ flow.unreachable
  }
}`);
});

test("in a repeat that ends before it begins, in its own step or in a line", () => {
  const text = `part Screw[1..8] "cover screw"

procedure Fit "Fit the screws" {
  repeat n from 8 to 1 {
    step inspect Screw[n]
  //^^^^ flow.unreachable
    step "Oil it."
  }
  step {
    repeat n from 1 down to 8 { clean Screw[n] }
    //                          ^^^^^^^^^^^^^^ flow.unreachable
  }
}`;
  expectFindings(text);
  expect(told(text, "flow.unreachable")).toContain("Write “to” to count upwards, “down to” to count downwards.");
});

test("silent: a repeat that is done once", () => {
  expectFindings(`part Screw[1..8] "cover screw"

procedure Fit "Fit the screws" {
  repeat n from 8 to 8 { step inspect Screw[n] }
  repeat n from 1 to 3 by 5 { step clean Screw[n] }
}`);
});

test("work in any order that nobody comes to is told at its first step", () => {
  expectFindings(`part Hub "hub"

procedure Fit "Fit the hub" {
  step inspect Hub
  stop "Call the engineer."
  in any order {
    step install Hub
  //^^^^ flow.unreachable
    step remove Hub
  }
  step clean Hub
}`);
});
