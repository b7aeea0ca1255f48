// flow.endless: rework loops that nothing leads out of, and the many that something does.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told } from "#harness/check.ts";

const HEAD = `option Extent "extent of work" { Full Reseal }
option Kept "the shaft is kept" { yes no }
part Shaft "pump shaft"
tool Gauge "dial gauge"

// Uses what not every test does.
procedure Other "Other" {
  step {
    inspect Shaft
    when Extent is Full and Kept is yes { measure "runout" with Gauge }
  }
}

`;
const work = (lines: string): string => `${HEAD}procedure Work "Work" {\n${lines}\n}`;

test("a way back that is always taken", () => {
  const text = work(`  step Wipe { clean Shaft }
  step "Look at it."
  return to Wipe
//^^^^^^^^^^^^^^ flow.endless`);
  expectFindings(text);
  expect(told(text, "flow.endless")).toMatchInlineSnapshot(`
    "Nothing leads out of this loop back to Wipe.
      Whatever checks and readings say, the work comes here again.
    → Put the way back under a check that can pass, or add a stop.
    &15 The loop begins here"
  `);
});

test("a check that only leads back by another way does not help; the last jump is the one to mend", () => {
  expectFindings(
    work(`  step Wipe { clean Shaft }
  step {
    check "It is dry" if it fails { return to Wipe }
    return to Wipe
  //^^^^^^^^^^^^^^ flow.endless
  }`),
  );
});

test("for one choice only", () => {
  const text = work(`  step Wipe { clean Shaft }
  when Extent is Full { return to Wipe }
  step "Write it down."`);
  expect(findingsIn(text).map(({ code, options }) => [code, options])).toEqual([
    ["flow.endless", [{ Extent: "Full" }]],
  ]);
});

test("the way out is there for another choice than the way in", () => {
  const text = work(`  step Wipe { clean Shaft }
  when Extent is Full {
    when Extent is Full and Kept is no { stop "Scrap the shaft." }
    step { return to Wipe }
  }
  step "Write it down."`);
  expect(findingsIn(text).map(({ code, options }) => [code, options])).toEqual([
    ["flow.endless", [{ Extent: "Full", Kept: "yes" }]],
  ]);
});

test("a loop that only leads into the endless one is not told", () => {
  expectFindings(
    work(`  step Wipe { clean Shaft }
  step { check "It is dry" if it fails { return to Wipe } }
  step Turn "Turn it."
  return to Turn
//^^^^^^^^^^^^^^ flow.endless`),
  );
});

test("in each pass of a repeat, told once", () => {
  expectFindings(
    work(`  repeat n from 1 to 3 {
    step Turn "Turn it {n}."
    when Extent is Full {
      when Kept is yes { return to Turn }
      //                 ^^^^^^^^^^^^^^ flow.endless
    }
    step "Look at it."
  }`),
  );
});

test("a branch on a reading that is taken anew each time leads out", () => {
  const measured = (where: "in" | "before"): string =>
    work(`  ${where === "before" ? 'step { measure Runout "runout" with Gauge }' : ""}
  step Turn "Turn it."
  ${where === "in" ? 'step { measure Runout "runout" with Gauge }' : ""}
  when Runout at least 0.1 mm { return to Turn }
  step "Write it down."`);
  expect(findingsIn(measured("in")).map(({ code }) => code)).toEqual([]);
  expect(findingsIn(measured("before")).map(({ code }) => code)).toEqual(["flow.endless"]);
});

test("silent: a check that can pass, a stop, a way ahead out of the loop", () => {
  expectFindings(
    work(`  step Wipe { clean Shaft }
  step { check "It is dry" if it fails { return to Wipe } }
  step Turn "Turn it."
  step {
    check "It is dry" if it fails { stop "Ask the engineer." }
    return to Turn
  }`),
  );
  expectFindings(
    work(`  step Turn "Turn it."
  step {
    check "It is dry" if it fails { go to Sign }
    return to Turn
  }
  step Sign "Sign it."`),
  );
});

test("silent: behind a jump that is not followed, and around a procedure that stops or never ends", () => {
  expectFindings(
    work(`  step Turn "Turn it."
  step { check "It is dry" if it fails { return to Turn } }
  step { check "It is dry" if it fails { go to Turn } }
  //                                     ^^^^^^^^^^ flow.bad-jump`),
  );
  expectFindings(`procedure Never "Never ends" {
  step Turn "Turn it."
  return to Turn
//^^^^^^^^^^^^^^ flow.endless
}

procedure Work "Work" {
  step Wipe "Wipe it."
  step { check "It is dry" if it fails { return to Wipe } }
  perform Never
}`);
  expectFindings(`procedure Judge "Judge it" {
  step { check "It is dry" if it fails { stop "Scrap it." } }
}

procedure Work "Work" {
  step Wipe "Wipe it."
  perform Judge
  return to Wipe
}`);
});

test("around a procedure that neither stops nor fails, the loop is the caller's", () => {
  expectFindings(`procedure Judge "Judge it" {
  step "Look at it."
}

procedure Work "Work" {
  step Wipe "Wipe it."
  perform Judge
  return to Wipe
//^^^^^^^^^^^^^^ flow.endless
}`);
});
