// safety.dual-maintenance: one technician, the same work, two systems that stand in for each other (14 CFR 121.374(c); memory).
import { expect, test } from "vitest";
import { findingsIn, told, withFix } from "#harness/check.ts";

const CODE = "safety.dual-maintenance";
const work = (lines: string): string => `role Fitter "fitter"
role Inspector "inspector"
role Lead "lead hand"
consumable Oil "oil"
option Extent { Both One }
part Main "main pump"
part Standby "standby pump" { backs up Main }
part Cooler "cooler"
part Plug "drain plug" { secures Main }
part Cap "drain cap" { secures Standby }
procedure FillUp "Fill up" {
  begin with Main is installed, Standby is installed, Cooler is installed, Plug is loose, Cap is loose
  step "Begin." by Lead sign Inspector
${lines}
}
`;
const step = (line: string, ...beside: readonly string[]): string =>
  `  step {\n    ${[line, ...beside].join("\n    ")}\n  }`;
const found = (...steps: readonly string[]): readonly string[] =>
  findingsIn(work(steps.join("\n")))
    .filter(({ code }) => code === CODE)
    .map(({ message }) => message);
const MAIN = step("fill Main with 2 L of Oil", "sign Fitter");

test.each([
  ["in two steps", [MAIN, step("fill Standby with 2 L of Oil", "sign Fitter")]],
  ["whichever backs up the other", [step("fill Standby with Oil", "sign Fitter"), MAIN]],
  ["in one step", [step("fill Main, Standby with 2 L of Oil", "sign Fitter")]],
  ["done, and signed by nobody", [step("fill Main with Oil", "by Fitter"), step("fill Standby with Oil", "by Fitter")]],
  ["held for the role that did it", [MAIN, step("fill Standby with Oil", "sign Fitter", "hold for Fitter")]],
  [
    "inspected by the one who did it",
    [MAIN, step("fill Standby with Oil", "sign Fitter"), step("inspect Main", "sign Fitter")],
  ],
])("%s", (_title, steps) => {
  expect(found(...steps)).toHaveLength(1);
});

test.each([
  ["other work", [MAIN, step("drain Standby", "sign Fitter")]],
  ["another role signs", [MAIN, step("fill Standby with 2 L of Oil", "sign Lead")]],
  ["two roles sign", [MAIN, step("fill Standby with 2 L of Oil", "sign Fitter, Lead")]],
  ["a hold at the second", [MAIN, step("fill Standby with Oil", "sign Fitter", "hold for Inspector")]],
  [
    "a hold at the first",
    [step("fill Main with Oil", "sign Fitter", "hold for Inspector"), step("fill Standby with Oil", "sign Fitter")],
  ],
  [
    "another role inspects one of them",
    [MAIN, step("fill Standby with Oil", "sign Fitter"), step("inspect Standby", "sign Inspector")],
  ],
  ["nobody is named", [step("fill Main with Oil"), step("fill Standby with Oil")]],
  ["a part that backs up nothing", [MAIN, step("fill Cooler with Oil", "sign Fitter")]],
  ["only lifted", [step("support Main by hand", "sign Fitter"), step("support Standby by hand", "sign Fitter")]],
  ["a line that may be the hold", [MAIN, step("fill Standby with Oil", "sign Fitter", "hold fro Inspector")]],
  [
    "one or the other",
    [`  when Extent is One {\n${MAIN}\n  } otherwise {\n${step("fill Standby with Oil", "sign Fitter")}\n  }`],
  ],
])("silent: %s", (_title, steps) => {
  expect(found(...steps)).toEqual([]);
});

test("work on what secures a part is work on the part", () => {
  expect(found(step("tighten Plug by hand", "sign Fitter"), step("tighten Cap by hand", "sign Fitter"))).toEqual([
    "Standby gets the same work as Main, by the fitter alone.",
  ]);
});

test("parts of one kind, in each pass of a repeat: one finding for each pair at most, none of a part with itself", () => {
  const pumps = (count: number): string => `role Fitter "fitter"
part Pump[1..${count}] "pump" { backs up Pump }
procedure P {
  begin with Pump[all] are installed
  repeat n from 1 to ${count} { step { clean Pump[n] sign Fitter } }
}`;
  const codes = (count: number) => findingsIn(pumps(count)).filter(({ code }) => code === CODE);
  expect(codes(1)).toEqual([]);
  expect(codes(2)).toHaveLength(1);
  expect(codes(3)).toHaveLength(1);
});

test("where a choice brings both, for that choice only", () => {
  const text = work(`${MAIN}\n  when Extent is Both {\n${step("fill Standby with Oil", "sign Fitter")}\n  }`);
  expect(findingsIn(text).filter(({ code }) => code === CODE)).toMatchObject([{ options: [{ Extent: "Both" }] }]);
});

test("what it says, and the hold that mends it", () => {
  const text = work(`${MAIN}\n${step("fill Standby with 2 L of Oil", "sign Fitter")}`);
  expect(told(text, CODE)).toMatchInlineSnapshot(`
    "Standby gets the same work as Main, by the fitter alone.
      One of them backs up the other. A mistake of one person in “fill” would be in both.
    → Let another role do one of them, or look at it: add “hold for”, for instance Inspector.
    &15 Main gets it here
    + Hold for Inspector
    + Hold for Lead"
  `);
  const finding = findingsIn(text).find(({ code }) => code === CODE);
  expect(finding?.fixes?.map(({ title }) => title)).toEqual(["Hold for Inspector", "Hold for Lead"]);
  const mended = withFix(text, finding as NonNullable<typeof finding>);
  expect(mended).toContain("    sign Fitter\n    hold for Inspector\n");
  expect(findingsIn(mended).filter(({ code }) => code === CODE)).toEqual([]);
  const held = findingsIn(text.replace(/sign Fitter\n {2}\}\n\}/, "sign Fitter\n    hold for Fitter\n  }\n}"));
  expect(held.find(({ code }) => code === CODE)).not.toHaveProperty("fixes");
});
