// flow.bad-jump: jumps into repeats, branches and blocks in any order, and jumps the wrong way.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

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
const work = (lines: string): string => `${HEAD}procedure Work "Work" {\n${lines}\n}`;

test("return to a step that comes later, with the fix that goes there", () => {
  const text = work(`  step Look {
    check "It is dry" if it fails { return to Dry }
    //                              ^^^^^^^^^^^^^ flow.bad-jump
  }
  step "Write it down."
  step Dry "Dry it."`);
  expectFindings(text);
  expect(told(text, "flow.bad-jump")).toMatchInlineSnapshot(`
    "“return to Dry” leads forwards.
      Dry comes after this.
    → Write “go to Dry”, or name a step before this.
    &17 Dry stands here
    + Write “go to Dry”"
  `);
  const plain = text.replace(/\n.*\^.*/, "");
  const [finding] = findingsIn(plain);
  const mended = finding === undefined ? "" : withFix(plain, finding);
  expect(mended).toContain("{ go to Dry }");
  expect(findingsIn(mended)).toEqual([]);
});

test("go to a step that came before, and to its own", () => {
  const text = work(`  step Wipe "Wipe it."
  step Look {
    check "It is dry" if it fails { go to Wipe }
    //                              ^^^^^^^^^^ flow.bad-jump
    check "It is dry" if it fails { go to Look }
    //                              ^^^^^^^^^^ flow.bad-jump
  }`);
  expectFindings(text);
  expect(told(text, "flow.bad-jump")).toMatchInlineSnapshot(`
    "“go to Wipe” leads backwards.
      Wipe comes before this.
    → Write “return to Wipe”, or name a step after this.
    &13 Wipe stands here
    + Write “return to Wipe”"
  `);
});

test("into a repeat from outside, from before and from behind", () => {
  const text = work(`  step { check "It is dry" if it fails { go to Turn } }
  //                                     ^^^^^^^^^^ flow.bad-jump
  repeat n from 1 to 4 { step Turn { inspect Screw[n] } }
  step { check "It is dry" if it fails { return to Turn } }
  //                                     ^^^^^^^^^^^^^^ flow.bad-jump`);
  expectFindings(text);
  expect(told(text, "flow.bad-jump")).toMatchInlineSnapshot(`
    "This jump leads into a repeat, to Turn.
      From outside it is not said which pass is meant.
    → Lead to a step outside the repeat, or move the jump into it.
    &14 Turn stands here"
  `);
});

test("into the inner of two repeats, from the outer", () => {
  expectFindings(
    work(`  repeat n from 1 to 2 {
    repeat m from 1 to 2 { step Turn "Turn {n} {m}." }
    step { check "It is dry" if it fails { return to Turn } }
    //                                     ^^^^^^^^^^^^^^ flow.bad-jump
  }`),
  );
});

test("into a branch from outside, and from its other arm", () => {
  const text = work(`  when Extent is Full {
    step Strip "Take it apart."
  } otherwise {
    step { check "It is dry" if it fails { return to Strip } }
    //                                     ^^^^^^^^^^^^^^^ flow.bad-jump
  }
  step { check "It is dry" if it fails { return to Strip } }
  //                                     ^^^^^^^^^^^^^^^ flow.bad-jump`);
  expectFindings(text);
  expect(told(text, "flow.bad-jump")).toMatchInlineSnapshot(`
    "This jump leads into another branch, to Strip.
      That branch is done only where its condition holds.
      This happens when Extent is Reseal.
    → Lead to a step outside the branch, or move the jump into it.
    &14 Strip stands here"
  `);
});

test("into a child of a block in any order, also from another child", () => {
  const text = work(`  in any order {
    step Wipe "Wipe it."
    step { check "It is dry" if it fails { return to Wipe } }
    //                                     ^^^^^^^^^^^^^^ flow.bad-jump
  }
  step { check "It is dry" if it fails { return to Wipe } }
  //                                     ^^^^^^^^^^^^^^ flow.bad-jump`);
  expectFindings(text);
  expect(told(text, "flow.bad-jump")).toMatchInlineSnapshot(`
    "This jump leads into a block in any order, to Wipe.
      Which of its steps have been done by then is not known.
    → Lead to a step outside the block.
    &14 Wipe stands here"
  `);
});

test("nothing is said to be unreachable, or endless, because of it", () => {
  expectFindings(
    work(`  step Wipe "Wipe it."
  go to Wipe
//^^^^^^^^^^ flow.bad-jump
  step "Write it down."
  step "Sign it."`),
  );
});

test("in a repeat it is told once; in a branch for the choice that takes it", () => {
  const text = work(`  step Wipe "Wipe it."
  repeat n from 1 to 4 { step { check "It is dry" if it fails { go to Wipe } } }
  //                                                            ^^^^^^^^^^ flow.bad-jump`);
  expectFindings(text);
  const branch = work('  step Wipe "Wipe it."\n  when Extent is Full { go to Wipe }');
  expect(findingsIn(branch).map(({ code, options }) => [code, options])).toEqual([
    ["flow.bad-jump", [{ Extent: "Full" }]],
  ]);
});

test("silent: back and ahead as it should be, out of repeats, branches and blocks", () => {
  expectFindings(
    work(`  step Wipe "Wipe it."
  task Looking "Look" {
    step Look {
      check "It is dry" if it fails { return to Looking }
      check "It is dry" if it fails { return to Look }
      check "It is dry" if it fails { go to Sign }
    }
  }
  repeat n from 1 to 4 {
    step Turn { inspect Screw[n] }
    step {
      check "It is dry" if it fails { return to Turn }
      check "It is dry" if it fails { return to Wipe }
      check "It is dry" if it fails { go to Sign }
    }
    when Extent is Full {
      step { check "It is dry" if it fails { return to Turn } }
    }
  }
  when Extent is Full {
    step Strip "Take it apart."
    step { check "It is dry" if it fails { return to Strip } }
    step { check "It is dry" if it fails { go to Sign } }
  } otherwise {
    step { check "It is dry" if it fails { return to Wipe } }
  }
  in any order {
    task Left "Left side" {
      step Oil "Oil it."
      step { check "It is dry" if it fails { return to Oil } }
    }
    step { check "It is dry" if it fails { go to Sign } }
  }
  step Sign "Sign it."`),
  );
});

test("silent: into a whole task that holds a repeat", () => {
  expectFindings(
    work(`  task Turning "Turn the screws" {
    repeat n from 1 to 4 { step { inspect Screw[n] } }
  }
  step { check "It is dry" if it fails { return to Turning } }`),
  );
});
