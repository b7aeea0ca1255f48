// flow.empty: blocks that hold nothing to do, between steps and inside them.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

const HEAD = `option Extent "extent of work" { Full Reseal }
part Screw[1..4] "cover screw"

// Uses what not every test does.
procedure Other "Other" {
  step {
    inspect Screw[1]
    when Extent is Full { inspect Screw[2] }
  }
}

`;
const work = (lines: string): string => `${HEAD}procedure Work "Work" {\n${lines}\n  step "Sign it."\n}`;

test("a task, with whatever is said in it", () => {
  const text = work(`  task Cleaning "Clean it" {
//     ^^^^^^^^ flow.empty
    warning burn "The housing is hot." avoid "Let it cool." wear "gloves"
    note "Rags are at the bench."
  }`);
  expectFindings(text);
  expect(told(text, "flow.empty")).toMatchInlineSnapshot(`
    "This task holds no step.
      What was to be done here is not said.
    → Put in what is to be done, or take it out."
  `);
});

test("a repeat, both arms of a branch, a block in any order", () => {
  const text = work(`  repeat n from 1 to 4 { }
//^^^^^^^^^^^^^^^^^^^^ flow.empty
  when Extent is Full { }
//^^^^^^^^^^^^^^^^^^^ flow.empty
  otherwise when Extent is Reseal { }
  //             ^^^^^^^^^^^^^^^^ flow.empty
  otherwise { }
//^^^^^^^^^ flow.empty
//^^^^^^^^^ flow.impossible-condition
  in any order { }
//^^^^^^^^^^^^ flow.empty`);
  expectFindings(text);
  expect(told(text, "flow.empty")).toMatchInlineSnapshot(`
    "This repeat holds nothing to do.
      What was to be done here is not said.
    → Put in what is to be done, or take it out."
  `);
});

test("only the outermost is told", () => {
  expectFindings(
    work(`  task Outer "Outer" {
//     ^^^^^ flow.empty
    task Inner "Inner" { repeat n from 1 to 4 { } }
    when Extent is Full { }
  }`),
  );
});

test("one of several in a block that holds work", () => {
  expectFindings(
    work(`  task Outer "Outer" {
    task Inner "Inner" { }
    //   ^^^^^ flow.empty
    step "Wipe it."
  }`),
  );
});

test("inside a step", () => {
  expectFindings(
    work(`  step "Look at it." {
    inspect Screw[1]
    repeat n from 2 to 4 { }
  //^^^^^^^^^^^^^^^^^^^^ flow.empty
    when Extent is Full { }
  //^^^^^^^^^^^^^^^^^^^ flow.empty
    check "It is dry" if it fails {
      in any order { }
    //^^^^^^^^^^^^ flow.empty
      do "Dry it."
    }
  }`),
  );
});

test("silent: a step, a perform, a jump or a stop is something", () => {
  expectFindings(`${HEAD}procedure Work "Work" {
  task Asking "Ask" { perform Other }
  repeat n from 1 to 4 { step { inspect Screw[n] } }
  when Extent is Full { stop "Ask the engineer." }
  when Extent is Reseal { go to Sign }
  step Sign "Sign it."
}`);
});

test("silent: in a step, a block of which only the step keeps what it says", () => {
  expectFindings(
    work(`  step "Look at it." {
    inspect Screw[1]
    when Extent is Full { record "gap" }
    when Extent is Reseal { note "Only the outer one." }
  }
  step "Look again." {
    inspect Screw[2]
    when Extent is Full { critical  hold for Inspector }
    check "It is dry" if it fails { }
  }
  role Inspector "inspector"`),
  );
});

test("silent: a block whose only line cannot be read", () => {
  expectFindings(
    work(`  when Extent is Full {
    step instal Screw[1]
    //   ^^^^^^ syntax.unexpected
  }`),
  );
});
