// order.locked: turned while the lock is in, and left at the end without it.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `part Nut "shaft nut" { thread "M30x2" }
part TabWasher "tab washer" { locks Nut }
`;

test("loosened while the lock is in", () => {
  const text = `${SHOP}
procedure TakeOff "Take the nut off" {
  begin with Nut is installed, TabWasher is installed
  finish with Nut is removed, TabWasher is removed
  step loosen Nut
  //   ^^^^^^^^^^ order.locked error
  step remove TabWasher
  step remove Nut
}`;
  expectFindings(text);
  expect(told(text, "order.locked")).toMatchInlineSnapshot(`
    "Nut cannot be loosened while TabWasher locks it.
      TabWasher is in place from the start.
    → Remove TabWasher before this.
    @5 At the start: TabWasher is installed.
    &2 TabWasher locks Nut, as declared here"
  `);
});

test("tightened, and backed off by an angle, while the lock is in", () => {
  expectFindings(`${SHOP}
procedure PutOn "Put the nut on" {
  step install Nut, TabWasher
  step tighten Nut
  //   ^^^^^^^^^^^ order.locked error
}`);
  expectFindings(`${SHOP}
procedure PutOn "Put the nut on" {
  step install Nut
  step tighten Nut
  step install TabWasher
  step loosen Nut by 1/6 turn
  //   ^^^^^^^^^^ order.locked error
}`);
});

test("silent: the lock goes in after the tightening, and out before the loosening", () => {
  expectFindings(`${SHOP}
procedure Adjust "Adjust the nut" {
  begin with Nut is installed, TabWasher is installed
  step remove TabWasher
  step loosen Nut
  step tighten Nut
  step install new TabWasher
}`);
});

test("left at the end without its lock: a warning at the tightening", () => {
  const text = `${SHOP}
procedure PutOn "Put the nut on" {
  step inspect TabWasher
  step install Nut
  step tighten Nut
  //   ^^^^^^^^^^^ order.locked warning
}`;
  expectFindings(text);
  expect(told(text, "order.locked")).toMatchInlineSnapshot(`
    "Nut is left without its lock TabWasher.
      At the end Nut is in and TabWasher is out. Without its lock it can work loose in service.
    → Install TabWasher before the end, or say “finish with TabWasher is removed”.
    &2 TabWasher locks Nut, as declared here
    + Put in “step install TabWasher”"
  `);
});

test("the lock is taken out and left out: told once, at the removal, and not mended with a used one", () => {
  const text = `${SHOP}
procedure Look "Look at the tab washer" {
  begin with Nut is installed, Nut is tightened, TabWasher is installed
  step remove TabWasher
  //   ^^^^^^^^^^^^^^^^ order.locked warning
  step inspect TabWasher
}`;
  expectFindings(text);
  expect(told(text, "order.locked")).not.toContain("+ ");
});

test("“finish with” has a word on the lock: nothing, or only that it does not hold", () => {
  expectFindings(`${SHOP}
procedure PutOn "Put the nut on for a trial" {
  finish with TabWasher is removed
  step install Nut
  step tighten Nut
}`);
  expectFindings(`${SHOP}
procedure PutOn "Put the nut on" {
  finish with TabWasher is installed
  //          ^^^^^^^^^^^^^^^^^^^^^^ order.unfinished
  step install Nut
  step tighten Nut
}`);
});

test("silent: left loose on purpose, or as it was at the start", () => {
  expectFindings(`${SHOP}
procedure PutOn "Run the nut on" {
  finish with Nut is loose
  step inspect TabWasher
  step install Nut
  step tighten Nut by hand
}`);
  expectFindings(`${SHOP}
procedure Look "Look at the nut" {
  begin with Nut is installed, Nut is tightened, TabWasher is removed
  step inspect Nut
}`);
});

test("what is no fastener is left without its lock at its installation", () => {
  expectFindings(`part Pivot "pivot pin"
part Clip "spring clip" { locks Pivot }

procedure PutIn "Put the pivot in" {
  step inspect Clip
  step install Pivot
  //   ^^^^^^^^^^^^^ order.locked warning
}`);
  expectFindings(`part Pivot "pivot pin"
part Clip "spring clip" { locks Pivot }

procedure PutIn "Put the pivot in" {
  step install Pivot
  step install Clip
}`);
});

test("of four screws under one wire one finding is enough, in a set and in a repeat", () => {
  const shop = `part Cover "bearing cover"
part Screw[1..4] "cover screw" { secures Cover }
part Wire "lock wire" { locks Screw }
`;
  expectFindings(`${shop}
procedure Open "Open the housing" {
  begin with Cover is secured, Wire is installed
  step loosen Screw[all]
  //   ^^^^^^^^^^^^^^^^^ order.locked
}`);
  const repeat = `${shop}
procedure Open "Open the housing" {
  begin with Cover is secured, Wire is installed
  repeat n from 1 to 4 { step loosen Screw[n] }
  //                          ^^^^^^^^^^^^^^^ order.locked
}`;
  expectFindings(repeat);
  expect(told(repeat, "order.locked")).toContain("This happens for n = 1, and 3 more.");
});

test("on one option the lock stays in", () => {
  const text = `${SHOP}option Extent "extent of work" { Full Look }

procedure Slacken "Slacken the nut" {
  begin with Nut is installed, TabWasher is installed
  when Extent is Full { step remove TabWasher }
  step loosen Nut
  //   ^^^^^^^^^^ order.locked
  when Extent is Full { step install TabWasher }
}`;
  expectFindings(text);
  expect(told(text, "order.locked")).toContain("This happens when Extent is Look.");
});

test("the fix puts the lock in at the end", () => {
  const text = `${SHOP}
procedure PutOn "Put the nut on" {
  begin with TabWasher is removed
  step install Nut
  step tighten Nut
}
`;
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toContain("  step tighten Nut\n  step install TabWasher\n}");
  expect(findingsIn(mended)).toEqual([]);
});
