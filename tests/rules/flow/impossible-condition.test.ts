// flow.impossible-condition: branches that no choice and no state leads into.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const OPTION = 'option Extent "extent of work" { Full Reseal }';

test("a case that was ruled out further out", () => {
  const text = `${OPTION}

procedure Overhaul "Overhaul the valve" {
  step "Look after the seat." {
    when Extent is Full {
      do "Lap the seat."
      when Extent is Reseal { do "Keep the disc." }
      //   ^^^^^^^^^^^^^^^^ flow.impossible-condition
    }
  }
}`;
  expectFindings(text);
  expect(told(text, "flow.impossible-condition")).toMatchInlineSnapshot(`
    "“Extent is Reseal” can never hold here.
      What leads here leaves no such case.
    → Correct the condition, or take the branch out."
  `);
});

test("a contradiction in itself", () => {
  expectFindings(`${OPTION}

procedure Overhaul "Overhaul the valve" {
  step "Look after the seat." {
    when Extent is Full and Extent is Reseal { do "Lap the seat." }
    //   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ flow.impossible-condition
  }
}`);
});

test("an otherwise when all cases are named", () => {
  const text = `${OPTION}

procedure Overhaul "Overhaul the valve" {
  step "Look after the seat." {
    when Extent is Full { do "Lap the seat." }
    otherwise when Extent is Reseal { do "Keep the disc." }
    otherwise { do "Ask." }
  //^^^^^^^^^ flow.impossible-condition
  }
}`;
  expectFindings(text);
  expect(told(text, "flow.impossible-condition")).toMatchInlineSnapshot(`
    "This “otherwise” is never taken.
      The cases before it cover all there is.
    → Take it out, or correct the conditions before it."
  `);
});

test("silent: cases that each can be", () => {
  expectFindings(`${OPTION}
option Kept "the disc is kept" { yes no }

procedure Overhaul "Overhaul the valve" {
  step "Look after the seat." {
    when Extent is Full and Kept is no { do "Lap the seat." }
    otherwise when Extent is Reseal or Kept is yes { do "Keep the disc." }
  }
  step "Look after the stem." {
    when Extent is Full { do "Turn the stem." } otherwise { do "Wipe the stem." }
    when Extent is not Full { do "Oil the stem." }
  }
}`);
});

test("a state that cannot be so there", () => {
  expectFindings(`part Cover "bearing cover"

procedure Look "Look at the cover" {
  step {
    install Cover
    when Cover is removed { do "Look into the housing." }
    //   ^^^^^^^^^^^^^^^^ flow.impossible-condition
  }
}`);
});

test("silent: taken in one pass of a repeat, in no later one", () => {
  expectFindings(`${OPTION}
part Seal "shaft seal"

procedure Overhaul "Overhaul the valve" {
  repeat n from 1 to 3 {
    step "Turn to port {n}."
    when Extent is Reseal { stop "Send the valve back." }
    when Seal is removed { step install Seal } otherwise { step inspect Seal }
  }
}`);
});

test("in a repeat, told once where no pass takes it", () => {
  expectFindings(`${OPTION}
part Seal "shaft seal"

procedure Overhaul "Overhaul the valve" {
  repeat n from 1 to 3 {
    step "Turn to port {n}."
    when Extent is Full {
      step {
        do "Lap the seat."
        when Extent is Reseal { do "Keep the disc." }
        //   ^^^^^^^^^^^^^^^^ flow.impossible-condition
      }
    }
  }
  step inspect Seal
}`);
});
