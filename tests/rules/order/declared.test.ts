// order.declared: `after` and `before` against the order in which the work runs.
import { expect, test } from "vitest";
import { expectFindings, told } from "#harness/check.ts";

test("after a step that comes later", () => {
  const text = `part Shaft "pump shaft"

procedure Prepare "Prepare the shaft" {
  step CheckShaft {
    inspect Shaft
    after CleanShaft
  //^^^^^^^^^^^^^^^^ order.declared
  }
  step CleanShaft { clean Shaft }
}`;
  expectFindings(text);
  expect(told(text, "order.declared")).toMatchInlineSnapshot(`
    "CheckShaft comes before CleanShaft, not after it.
      Wanted: CleanShaft, then CheckShaft
      Found: CheckShaft, then CleanShaft
    → Move one of the two, or take out “after CleanShaft”.
    &8 CleanShaft stands here"
  `);
});

test("before a step that came earlier", () => {
  const text = `part Shaft "pump shaft"

procedure Prepare "Prepare the shaft" {
  step CheckShaft { inspect Shaft }
  step CleanShaft {
    clean Shaft
    before CheckShaft
  //^^^^^^^^^^^^^^^^^ order.declared
  }
}`;
  expectFindings(text);
  expect(told(text, "order.declared")).toMatchInlineSnapshot(`
    "CleanShaft comes after CheckShaft, not before it.
      Wanted: CleanShaft, then CheckShaft
      Found: CheckShaft, then CleanShaft
    → Move one of the two, or take out “before CheckShaft”.
    &4 CheckShaft stands here"
  `);
});

test("silent: as it says, also over tasks and several at once", () => {
  expectFindings(`part Shaft "pump shaft"

procedure Prepare "Prepare the shaft" {
  task Cleaning "Clean" {
    step CleanShaft {
      clean Shaft
      before CheckShaft, OilShaft
    }
  }
  step CheckShaft {
    inspect Shaft
    after Cleaning, CleanShaft
  }
  step OilShaft { clean Shaft }
}`);
});

test("a way back over both keeps the order, a jump over the first breaks it", () => {
  expectFindings(`part Shaft "pump shaft"

procedure Prepare "Prepare the shaft" {
  step CleanShaft { clean Shaft }
  step CheckShaft {
    check "The shaft is bright" if it fails { return to CleanShaft }
    after CleanShaft
  }
}`);
});
