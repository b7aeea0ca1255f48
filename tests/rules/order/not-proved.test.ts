// order.not-proved: work on what is isolated and not shown to be dead.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `energy MotorSupply "motor supply"
energy Air "compressed air"
part Motor "drive motor" { driven by MotorSupply }
part Brake "brake" { driven by Air }
`;
const work = (lines: string, end = "  step restore MotorSupply\n  step restore Air\n"): string => `${SHOP}
procedure Work "Work on the motor" {
  begin with Motor is installed, Brake is installed
  step isolate Air
  step isolate MotorSupply
  step inspect Brake
  ${lines}
${end}}
`;

test("isolated and never proved", () => {
  const text = work("step clean Motor\n  //   ^^^^^^^^^^^ order.not-proved information");
  expectFindings(text);
  expect(told(text, "order.not-proved")).toMatchInlineSnapshot(`
    "MotorSupply is isolated and not proved dead.
      Motor is worked on here, and “isolated” means only that the text says so.
    → Put in “prove MotorSupply dead” before this, at the place of work. How and by whom is for the site's lockout rules to say.
    @9 Step 2: MotorSupply is isolated.
    + Put in “step prove MotorSupply dead” before this"
  `);
});

test("a warning where the procedure proves another one", () => {
  const text = work(
    "step prove Air dead\n  step clean Brake\n  step clean Motor\n  //   ^^^^^^^^^^^ order.not-proved warning",
  );
  expectFindings(text);
  expect(told(text, "order.not-proved")).toContain("Another energy is proved dead in this procedure.");
});

test("proved too late is no other energy proved", () => {
  expectFindings(
    work("step clean Motor\n  //   ^^^^^^^^^^^ order.not-proved information\n  step prove MotorSupply dead"),
  );
});

test("silent: proved, only looked at, or not isolated by anybody here", () => {
  expectFindings(work("step prove MotorSupply dead\n  step clean Motor"));
  expectFindings(work('step inspect Motor\n  step { check "The motor stands still" }'));
  expectFindings(`energy Supply "motor supply"
part Motor "drive motor" { driven by Supply }

procedure Work "Work on the motor" {
  begin with Motor is installed, Supply is isolated
  step clean Motor
}`);
});

test("letting out what is stored is no proof", () => {
  expectFindings(work("step release Air\n  step bleed Brake\n  //   ^^^^^^^^^^^ order.not-proved"));
});

test("one mistake, one finding, until it is isolated again", () => {
  expectFindings(
    work(
      [
        "step clean Motor",
        "//   ^^^^^^^^^^^ order.not-proved",
        "step bleed Motor",
        "step restore MotorSupply",
        "step isolate MotorSupply",
        "step clean Motor",
        "//   ^^^^^^^^^^^ order.not-proved",
      ].join("\n  "),
    ),
  );
});

test("proved, restored for a trial and isolated again: the old proof is gone", () => {
  expectFindings(
    work(
      [
        "step prove MotorSupply dead",
        "step clean Motor",
        "step restore MotorSupply",
        "step isolate MotorSupply",
        "step bleed Motor",
        "//   ^^^^^^^^^^^ order.not-proved",
      ].join("\n  "),
    ),
  );
});

test("on one option nobody proves it", () => {
  const text = `energy Supply "motor supply"
part Motor "drive motor" { driven by Supply }
option Extent "extent of work" { Full Look }

procedure Work "Work on the motor" {
  begin with Motor is installed
  step isolate Supply
  when Extent is Full { step prove Supply dead }
  step clean Motor
  //   ^^^^^^^^^^^ order.not-proved
  step restore Supply
}`;
  expectFindings(text);
  expect(told(text, "order.not-proved")).toContain("This happens when Extent is Look.");
});

test("the fix proves it before the step, but not before an isolation in the same step", () => {
  const [found] = findingsIn(work("step clean Motor"));
  const mended = found === undefined ? "" : withFix(work("step clean Motor"), found);
  expect(mended).toBe(work("step prove MotorSupply dead\n  step clean Motor"));
  expect(findingsIn(mended)).toEqual([]);

  const inOne = work("step {\n    restore MotorSupply\n    isolate MotorSupply\n    clean Motor\n  }");
  expect(findingsIn(inOne).map(({ code, fixes }) => [code, fixes])).toEqual([["order.not-proved", undefined]]);
});
