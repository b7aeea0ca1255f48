// safety.no-second-check: nobody inspects work that they did themselves (14 CFR 121.371(c); read).
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const work = (lines: string): string =>
  `role Fitter "fitter"
role Inspector "inspector"
role Lead "lead hand"
part Seal "seal"
procedure SealUp "Seal up" {
  step by Lead sign Fitter hold for Inspector
  step {
    install Seal
${lines}
  }
}
`.replace("step by Lead", 'step "Begin." by Lead');
const found = (...lines: readonly string[]): readonly string[] =>
  findingsIn(work(lines.map((line) => `    ${line}`).join("\n")))
    .filter(({ code }) => code === "safety.no-second-check")
    .map(({ message }) => message);

test.each([
  [["critical", "sign Fitter"], "Nobody but the fitter looks at this critical step."],
  [["critical", "sign Fitter, Lead"], "Nobody but the fitter and the lead hand looks at this critical step."],
  [["critical", "sign Fitter", "hold for Fitter"], "The hold of this critical step is for the fitter again."],
  [["critical", "by Fitter", "hold for Fitter"], "The hold of this critical step is for the fitter again."],
  [["critical", "by Fitter"], "Nobody but the fitter looks at this critical step."],
  [["critical"], "Nobody has to look at this critical step."],
])("%j", (lines, message) => {
  expect(found(...lines)).toEqual([message]);
});

test.each([
  [["sign Fitter"]],
  [["critical", "sign Fitter", "hold for Inspector"]],
  [["critical", "hold for Inspector"]],
  [["critical", "sign Fitter, Inspector", "hold for Inspector"]],
  [["critical", "sign Fitter", "by Inspector", "hold for Inspector"]],
  // Who is to hold it cannot be read, or a line that may say so.
  [["critical", "sign Fitter", "hold for Inspektor"]],
  [["critical", "sign Fiter, Inspector", "hold for Inspector"]],
  [["critical", "sign Fitter", "hold Inspector"]],
])("silent: %j", (lines) => {
  expect(found(...lines)).toEqual([]);
});

test("at the word, with a role that could hold it", () => {
  const text = work(`    critical
  //^^^^^^^^ safety.no-second-check warning
    sign Fitter`);
  expectFindings(text);
  expect(told(text, "safety.no-second-check")).toMatchInlineSnapshot(`
    "Nobody but the fitter looks at this critical step.
      A mistake here has grave results, and its maker is the last to see it.
    → Add “hold for” with a role that does not sign, such as Inspector.
    + Hold for Inspector
    + Hold for Lead"
  `);
  const plain = work("    critical\n    sign Fitter");
  const [finding] = findingsIn(plain);
  const mended = finding === undefined ? "" : withFix(plain, finding);
  expect(mended).toContain("    sign Fitter\n    hold for Inspector\n  }");
  expect(findingsIn(mended)).toEqual([]);
});

test("with no other role there is nothing to offer", () => {
  const text = `role Fitter "fitter"
part Seal "seal"
procedure SealUp "Seal up" {
  step install Seal critical sign Fitter
}
`;
  expect(told(text, "safety.no-second-check")).toMatchInlineSnapshot(`
    "Nobody but the fitter looks at this critical step.
      A mistake here has grave results, and its maker is the last to see it.
    → Declare a role that looks at it, and add “hold for” with it."
  `);
});
