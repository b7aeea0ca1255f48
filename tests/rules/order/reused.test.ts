// order.reused: what is for single use goes in again, or is tightened again after it was loosened.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SEAL = `part Seal "shaft seal" { single use }
`;
const BOLT = `part Head "head"
part Bolt[1..2] "stretch bolt" {
  secures Head
  single use
}
`;

test("taken out and put in again", () => {
  const text = `${SEAL}
procedure ChangeSeal "Change the seal" {
  begin with Seal is installed
  step remove Seal
  step install Seal
  //   ^^^^^^^^^^^^ order.reused error
}`;
  expectFindings(text);
  expect(told(text, "order.reused")).toMatchInlineSnapshot(`
    "Seal is for single use and goes in a second time.
      Seal is a used one since step 1, where it was removed.
    → Take a new one: “install new Seal”.
    @5 Step 1: Seal is removed.
    + Make it “install new Seal”"
  `);
});

test("discarded, and then put in all the same", () => {
  expectFindings(`${SEAL}
procedure ChangeSeal "Change the seal" {
  begin with Seal is installed
  step discard Seal
  step install Seal
  //   ^^^^^^^^^^^^ order.reused
}`);
});

test("silent: a new one, the first one, or a part that may be used again", () => {
  expectFindings(`${SEAL}
procedure ChangeSeal "Change the seal" {
  begin with Seal is installed
  step remove Seal
  step install new Seal
}`);
  expectFindings(`${SEAL}part Plug "plug"

procedure FitSeal "Fit the seal" {
  begin with Plug is installed
  step remove Plug
  step install Seal
  step install Plug
}`);
});

test("tightened again after it was loosened", () => {
  const text = `${BOLT}
procedure Retighten "Tighten the head again" {
  begin with Head is secured
  step loosen Bolt[all]
  step tighten Bolt[all]
  //   ^^^^^^^^^^^^^^^^^ order.reused
}`;
  expectFindings(text);
  expect(told(text, "order.reused")).toMatchInlineSnapshot(`
    "Bolt[1] is for single use and is tightened a second time.
      Bolt[1] is a used one since step 1, where it was loosened.
      The same holds for Bolt[2].
    → Remove Bolt[1] and “install new Bolt[1]” before this.
    @9 Step 1: Bolt[1] is loosened."
  `);
});

test("silent: tightened in steps, or set by an angle in between", () => {
  expectFindings(`${BOLT}
procedure Fit "Fit the head" {
  step install Head, Bolt[all]
  step tighten Bolt[all] by hand
  step tighten Bolt[all] to seat
  step loosen Bolt[all] by 1/4 turn
  step tighten Bolt[all]
}`);
});

test("silent: loosened, taken out, and new ones put in", () => {
  expectFindings(`${BOLT}
procedure ChangeBolts "Change the bolts" {
  begin with Head is secured
  step loosen Bolt[all]
  step discard Bolt[all]
  step install new Bolt[all]
  step tighten Bolt[all]
}`);
});

test("one mistake, one finding: the tightening after it is not told again", () => {
  expectFindings(`${BOLT}
procedure ChangeBolts "Take the bolts out and in" {
  begin with Head is secured
  step loosen Bolt[all]
  step remove Bolt[all]
  step install Bolt[all]
  //   ^^^^^^^^^^^^^^^^^ order.reused
  step tighten Bolt[all]
}`);
});

test("on the way back of a rework, where the word “new” mends it", () => {
  const text = `${SEAL}
procedure FitSeal "Fit the seal" {
  step Fit { install Seal }
  //         ^^^^^^^^^^^^ order.reused
  step {
    check "The seal sits flat" if it fails {
      remove Seal
      return to Fit
    }
  }
}`;
  expectFindings(text);
  expectFindings(text.replace(/ +\/\/ .*\n/, "").replace("install Seal", "install new Seal"));
});

test("on one option, and one of two seals", () => {
  const text = `part Seal[1..2] "shaft seal" { single use }
option Extent "extent of work" { Full Look }

procedure Reseal "Change the seals" {
  begin with Seal[all] are installed
  when Extent is Full {
    step remove Seal[1]
    step inspect Seal[2]
    step install Seal[1]
    //   ^^^^^^^^^^^^^^^ order.reused
  }
}`;
  expectFindings(text);
  expect(told(text, "order.reused")).toContain("This happens when Extent is Full.");
  expect(told(text, "order.reused")).not.toContain("+ ");
});

test("the fix puts in “new”; not where other parts would be new with it, nor for a press", () => {
  const shop = `${SEAL}part Ring "ring"
part Housing "housing"
`;
  const text = (line: string) => `${shop}
procedure ChangeSeal "Change the seal" {
  begin with Housing is installed, Seal is installed, Ring is installed
  step remove Seal, Ring
  step install Ring
  step ${line}
}
`;
  const [found] = findingsIn(text("install Seal"));
  const mended = found === undefined ? "" : withFix(text("install Seal"), found);
  expect(mended).toBe(text("install new Seal"));
  expect(findingsIn(mended)).toEqual([]);

  const both = text("install Seal, Ring").replace("  step install Ring\n", "");
  for (const other of [both, text("press Seal in Housing")]) {
    const findings = findingsIn(other);
    expect(findings.map(({ code, fixes }) => [code, fixes])).toEqual([["order.reused", undefined]]);
  }
});
