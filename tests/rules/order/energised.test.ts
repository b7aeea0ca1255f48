// order.energised: work on what is live, and what is no work.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const SHOP = `consumable Oil "oil"
energy MotorSupply "motor supply"
part Coupling "coupling"
part Motor "drive motor" { driven by MotorSupply }
`;
const work = (lines: string, begin = "Motor is installed, Coupling is installed"): string => `${SHOP}
procedure Work "Work on the motor" {
  begin with ${begin}
  step inspect Coupling
  ${lines}
  step lubricate Coupling with Oil
}
`;
const marked = (line: string): string => {
  const [, verb = ""] = /^step (\w+(?: Oil to)? \w+)/.exec(line) ?? [];
  return `${line}\n  //   ${"^".repeat(verb.length)} order.energised error`;
};

test("a live motor is taken out", () => {
  const text = `energy MotorSupply "motor supply"
part Motor "drive motor" { driven by MotorSupply }

procedure TakeOut "Take the motor out" {
  begin with Motor is installed
  finish with Motor is removed, MotorSupply is isolated
  step remove Motor
  //   ^^^^^^^^^^^^ order.energised error
}`;
  expectFindings(text);
  expect(told(text, "order.energised")).toMatchInlineSnapshot(`
    "Motor is worked on while MotorSupply is live.
      MotorSupply drives Motor and is live from the start.
    → Isolate MotorSupply and prove it dead before this. How it is done is for the site's lockout rules and qualified people to say.
    @4 At the start: MotorSupply is live.
    &2 MotorSupply drives Motor, as declared here
    + Put in “step isolate MotorSupply” and “step prove MotorSupply dead” before this"
  `);
});

test.each([
  ["step clean Motor"],
  ["step lubricate Motor with Oil"],
  ["step apply Oil to Motor"],
  ["step drain Motor"],
  ["step fill Motor with Oil"],
  ["step bleed Motor"],
  ["step align Motor with Coupling"],
  ["step cool Motor to 20 °C"],
])("work is: %s", (line) => {
  expectFindings(work(marked(line)));
});

test.each([
  ["inspect Motor"],
  ['check "The motor is quiet"'],
  ['measure "current"'],
  ["clean Coupling"],
  ['do "Read the name plate."'],
])("silent: %s is no work on it", (line) => {
  expectFindings(work(`step { ${line} }\n  step inspect Motor`));
});

test("on the bench it is free; putting it in at a live supply is not", () => {
  const text = work(`step clean Motor\n  ${marked("step install Motor")}`, "Coupling is installed");
  expectFindings(text);
});

test("silent: isolated and proved, off from the start, or said to be isolated", () => {
  expectFindings(
    work("step isolate MotorSupply\n  step prove MotorSupply dead\n  step clean Motor\n  step restore MotorSupply"),
  );
  expectFindings(work("step clean Motor", "Motor is installed, Coupling is installed, MotorSupply is isolated"));
  expectFindings(work("step clean Motor").replace('"motor supply"', '"motor supply" { off }'));
});

test("one mistake, one finding: nothing at the next work, nor at the end", () => {
  expectFindings(work(`${marked("step clean Motor")}\n  step bleed Motor`));
  expectFindings(
    work(`${marked("step clean Motor")}\n  step bleed Motor`).replace(
      "  step inspect Coupling",
      "  finish with MotorSupply is live\n  step inspect Coupling",
    ),
  );
});

test("restored too early: says since when", () => {
  const text = work(
    `step isolate MotorSupply\n  step prove MotorSupply dead\n  step bleed Motor\n  step restore MotorSupply\n  ${marked("step clean Motor")}`,
  );
  expectFindings(text);
  expect(told(text, "order.energised")).toContain("MotorSupply drives Motor and is live since step 5.");
});

test("two energies are two mistakes, four screws are one", () => {
  expectFindings(`energy Supply "motor supply"
energy Air "compressed air"
part Actuator "actuator" { driven by Supply, Air }

procedure Bleed "Bleed the actuator" {
  begin with Actuator is installed
  step bleed Actuator
  //   ^^^^^^^^^^^^^^ order.energised
  //   ^^^^^^^^^^^^^^ order.energised
}`);
  expectFindings(`energy Supply "motor supply"
part Screw[1..4] "terminal screw" {
  thread "M5"
  driven by Supply
}

procedure Slacken "Slacken the terminals" {
  begin with Screw[all] are installed
  step loosen Screw[all]
  //   ^^^^^^^^^^^^^^^^^ order.energised
}`);
});

test("on one option nobody isolates it", () => {
  const text = `${SHOP}option Extent "extent of work" { Full Look }

procedure Work "Work on the motor" {
  begin with Motor is installed, Coupling is installed
  when Extent is Full {
    step isolate MotorSupply
    step prove MotorSupply dead
  }
  step lubricate Motor, Coupling with Oil
  //   ^^^^^^^^^^^^^^^^^^^^^^^^^ order.energised
  when Extent is Full { step restore MotorSupply }
}`;
  expectFindings(text);
  expect(told(text, "order.energised")).toContain("This happens when Extent is Look.");
  expect(told(text, "order.energised")).not.toContain("+ ");
});

test("in any order each may come first, and a line before one of them would be a step of its own", () => {
  const text = `energy Supply "motor supply"
part Motor "drive motor" { driven by Supply }
part Brake "brake" { driven by Supply }

procedure Work "Work on the motor" {
  begin with Motor is installed, Brake is installed
  in any order {
    step clean Motor
    //   ^^^^^^^^^^^ order.energised
    step bleed Brake
    //   ^^^^^^^^^^^ order.energised
  }
}`;
  expectFindings(text);
  expect(told(text, "order.energised")).not.toContain("+ ");
});

test("the fix isolates and proves before the step, in this order", () => {
  const text = work("step clean Motor").replace(
    "  step inspect Coupling",
    "  finish with MotorSupply is isolated\n  step inspect Coupling",
  );
  const [found] = findingsIn(text);
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toContain("  step isolate MotorSupply\n  step prove MotorSupply dead\n  step clean Motor\n");
  expect(findingsIn(mended)).toEqual([]);
});

test("no fix where the step itself makes it live", () => {
  const text = work(
    "step isolate MotorSupply\n  step prove MotorSupply dead\n  step {\n    restore MotorSupply\n    clean Motor\n  }",
  );
  expect(findingsIn(text).map(({ code, fixes }) => [code, fixes])).toEqual([["order.energised", undefined]]);
});
