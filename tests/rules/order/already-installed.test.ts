// order.already-installed: what is in is put in again; and the line that can simply go.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const twice = `part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal
  step inspect Seal
  step install Seal
}
`;

test("installed twice", () => {
  expectFindings(`part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step install Seal
  step inspect Seal
  step install Seal
  //   ^^^^^^^^^^^^ order.already-installed
}`);
  expect(told(twice, "order.already-installed")).toMatchInlineSnapshot(`
    "Seal is installed already.
      Seal is in place since step 1.
    → Take this line out, or remove Seal first.
    @4 Step 1: Seal is installed.
    + Take this line out"
  `);
});

test("in from the start", () => {
  expectFindings(`part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  begin with Seal is installed
  step install Seal
  //   ^^^^^^^^^^^^ order.already-installed
}`);
});

test("silent: taken out in between, on every path", () => {
  expectFindings(`part Seal "shaft seal"
option Extent "extent of work" { Full Reseal }

procedure FitSeal "Fit the seal" {
  begin with Seal is installed
  when Extent is Full { step remove Seal } otherwise { step discard Seal }
  step install new Seal
}`);
});

test("taken out in between on one option only", () => {
  const text = `part Seal "shaft seal"
option Extent "extent of work" { Full Reseal }

procedure FitSeal "Fit the seal" {
  begin with Seal is installed
  when Extent is Full { step remove Seal }
  step install Seal
}`;
  expect(findingsIn(text)).toMatchObject([{ code: "order.already-installed", options: [{ Extent: "Reseal" }] }]);
  expect(findingsIn(text)[0]?.fixes).toBeUndefined();
});

test("in a repeat that counts round the ring", () => {
  expectFindings(`ring Circle "bolt circle" {
  count 4
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part Screw[1..4] "screw" { seats in Circle by number }

procedure Fit "Fit the screws" {
  repeat n from 1 to 5 { step install Screw[n] }
  //                          ^^^^^^^^^^^^^^^^ order.already-installed
}`);
});

test("a way back over the line that puts it in", () => {
  expectFindings(`part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step Fit { install Seal }
  //         ^^^^^^^^^^^^ order.already-installed
  step { check "The seal sits flat" if it fails { return to Fit } }
}`);
  expectFindings(`part Seal "shaft seal"

procedure FitSeal "Fit the seal" {
  step Fit { install Seal }
  step {
    check "The seal sits flat" if it fails {
      remove Seal
      return to Fit
    }
  }
}`);
});

test("silent: another instance, and the two arms of a branch", () => {
  expectFindings(`part Seal[1..2] "shaft seal"
option Extent "extent of work" { Full Reseal }

procedure FitSeal "Fit the seals" {
  step install Seal[1]
  when Extent is Full { step install Seal[2] } otherwise { step install Seal[2] }
}`);
});

test("the fix takes the line out, and leaves nothing to find", () => {
  const [found] = findingsIn(twice);
  expect(found?.fixes).toHaveLength(1);
  const mended = found === undefined ? "" : withFix(twice, found);
  expect(mended).toBe(twice.replace("  step inspect Seal\n  step install Seal\n", "  step inspect Seal\n"));
  expect(findingsIn(mended)).toEqual([]);
});

test.each([
  ["a step with words of its own", 'step "Fit the seal." { install Seal }'],
  ["a step with a name", "step FitAgain { install Seal }"],
  ["a step that says more", "step install Seal takes 3 min"],
  ["several parts at once", "step install Seal, Ring"],
])("no fix where more would go: %s", (_title, again) => {
  const text = twice.replace("  step inspect Seal\n  step install Seal", `  step inspect Seal\n  ${again}`);
  const whole = `part Ring "ring"\n${text.replace("step inspect Seal\n", "step inspect Seal\n  step clean Ring\n")}`;
  const found = findingsIn(whole).filter(({ code }) => code === "order.already-installed");
  expect(found).toHaveLength(1);
  expect(found[0]?.fixes).toBeUndefined();
});

test("one line of a step goes, the rest stays", () => {
  const text = twice.replace(
    "  step inspect Seal\n  step install Seal\n",
    '  step "Look once more." {\n    install Seal\n    inspect Seal\n  }\n',
  );
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toContain('  step "Look once more." { inspect Seal }\n');
  expect(findingsIn(mended)).toEqual([]);
});
