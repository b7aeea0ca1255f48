// A remedy carried out to the letter: the text that it leads to has no mistake of form any more. What each is to say is taken from
// the language's description: which words a line has, and in which order.
import { expect, test } from "vitest";
import { findingsIn, withFix } from "#harness/check.ts";

const shop = (line: string): string => `part Cover "cover"
part Screw[1..4] "screw" { secures Cover }
role Fitter "fitter"
role Helper "helper"
consumable Oil "oil"
tool Gauge "gauge" { measures 0 .. 10 mm }
procedure Look "Look at the cover" {
  step inspect Cover
  ${line}
}
`;
const inStep = (line: string): string => shop(`step { ${line} }`);

/** What is written; what is told; what stands there once the remedy is carried out. */
type Row = readonly [written: string, at: string, remedy: string, mended: string];

const formOf = (text: string) => findingsIn(text).filter(({ code }) => code.startsWith("syntax."));

function expectRemedy(text: string, at: string, remedy: string, mended: string): void {
  const [found, ...others] = formOf(text);
  expect(others).toEqual([]);
  expect(found?.remedy).toBe(remedy);
  const { start, end } = found?.range ?? { start: { line: -1, character: 0 }, end: { line: -1, character: 0 } };
  expect(text.split("\n")[start.line]?.slice(start.character, end.character)).toBe(at);
  expect(formOf(mended)).toEqual([]);
  // A quick fix that is offered leads to the same text, but for blanks.
  if (found?.fixes?.[0] !== undefined)
    expect(withFix(text, found).replace(/\s+/g, " ")).toBe(mended.replace(/\s+/g, " "));
}

test.each<Row>([
  ['check "No leak"', "check", "Write “step { check … }”.", 'step { check "No leak" }'],
  [
    'check "Gap" with Gauge expect at most 3 mm record',
    "check",
    "Write “step { check … }”.",
    'step { check "Gap" with Gauge expect at most 3 mm record }',
  ],
  [
    'check "No leak" record if it fails { stop "Call the shift leader." }',
    "check",
    "Write “step { check … }”.",
    'step { check "No leak" record if it fails { stop "Call the shift leader." } }',
  ],
  ['record "gap" 1 .. 2 mm', "record", "Write “step { record … }”.", 'step { record "gap" 1 .. 2 mm }'],
  ["sign Fitter", "sign", "Write “step { sign … }”.", "step { sign Fitter }"],
  ["hold for Fitter", "hold", "Write “step { hold … }”.", "step { hold for Fitter }"],
])("a step of one line: %s", (line, at, remedy, mended) => {
  expectRemedy(shop(`step ${line}`), at, remedy, shop(mended));
});

test("a step with a name and a line", () => {
  const remedy = "Write “step Leak { check … }”.";
  expectRemedy(shop('step Leak check "No leak"'), "check", remedy, shop('step Leak { check "No leak" }'));
});

test("a step that is called by such a word is offered another name", () => {
  for (const step of ['step check "Look." { inspect Cover }', "step record { inspect Cover }"])
    expect(findingsIn(shop(step)).map(({ code }) => code)).toEqual(["syntax.reserved-word"]);
});

test.each<Row>([
  [
    'measure "gap" with Gauge record if it fails { stop "Call." }',
    "if",
    "Write “check” in place of “measure”.",
    'check "gap" with Gauge record if it fails { stop "Call." }',
  ],
  [
    'measure "gap" with Gauge expect at most 1 mm if it fails { stop "Call." }',
    "if",
    "Write “check” in place of “measure”.",
    'check "gap" with Gauge expect at most 1 mm if it fails { stop "Call." }',
  ],
  [
    'inspect Cover takes 40 s if it fails { stop "Call." }',
    "if",
    'Put it behind a check of its own: “check "what is looked at" if it fails { … }”.',
    'inspect Cover check "what is looked at" if it fails { stop "Call." } takes 40 s',
  ],
  [
    "inspect Cover by Fitter, Helper",
    ",",
    "Write “by Fitter sign Helper”, or give each a step.",
    "inspect Cover by Fitter sign Helper",
  ],
  [
    "inspect Cover by Fitter and Helper",
    "and",
    "Write “by Fitter sign Helper”, or give each a step.",
    "inspect Cover by Fitter sign Helper",
  ],
  ["fill Cover with Oil 5 L", "5 L", "Write “with 5 L of Oil”.", "fill Cover with 5 L of Oil"],
  ["apply Oil to Cover 5 mL", "5 mL", "Write “apply 5 mL of Oil”.", "apply 5 mL of Oil to Cover"],
  ["lubricate Cover using Oil", "using", "Write “with”.", "lubricate Cover with Oil"],
  [
    'measure "gap" record expect 1 mm',
    "expect",
    "Write it in this order: “expect … record …”.",
    'measure "gap" expect 1 mm record',
  ],
  [
    'check "gap" expect 1 .. 2 mm with Gauge',
    "with",
    "Write it in this order: “with … expect …”.",
    'check "gap" with Gauge expect 1 .. 2 mm',
  ],
  [
    "tighten Screw[all] to 40 N·m in cross pattern with Gauge",
    "in",
    "Write it in this order: “in … to …”.",
    "tighten Screw[all] in cross pattern to 40 N·m with Gauge",
  ],
  [
    'check "gap" with Gauge expect 1 mm max',
    "max",
    "Write “at most” before the value, and nothing behind it.",
    'check "gap" with Gauge expect at most 1 mm',
  ],
  [
    'check "gap" with Gauge expect min 1 mm',
    "1",
    "Write “at least” before the value, and nothing behind it.",
    'check "gap" with Gauge expect at least 1 mm',
  ],
  ["inspect Cover by Fitter ]", "]", "End the line before “]”.", "inspect Cover by Fitter"],
])("in a step: %s", (line, at, remedy, mended) => {
  expectRemedy(inStep(line), at, remedy, inStep(mended));
});

test("a pattern behind its place takes no tool away", () => {
  const text = `tool Wrench "wrench" { torque 5 .. 60 N·m }\n${inStep("tighten Screw[all] to 40 N·m in cross pattern with Wrench")}`;
  expect(findingsIn(text).map(({ code }) => code)).not.toContain("limits.no-tool");
});

test("several shares of a value", () => {
  const remedy = "Give each a value of its own, or write the list in the “tighten” line.";
  const values = "value Full = 40 N·m\n";
  expectRemedy(
    `${values}value Stages = 30 %, 100 % of Full\n`,
    ",",
    remedy,
    `${values}value First = 30 % of Full\nvalue Second = 100 % of Full\n`,
  );
});

test.each([
  ["use shop/tools.sprag", "shop/tools.sprag"],
  ["use tools.sprag", "tools.sprag"],
  ["use ../pump-shop/tools-2.sprag", "../pump-shop/tools-2.sprag"],
])("a path without quotation marks: %s", (line, path) => {
  expectRemedy(`${line}\n`, path, `Write "${path}".`, `use "${path}"\n`);
});

test("backslashes in a path", () => {
  const files = { "shop/b.sprag": 'part Cover "cover"\n' };
  const text = 'use "shop\\b.sprag"\nprocedure Look { step inspect Cover }\n';
  const [found] = findingsIn(text, files);
  expect(found).toMatchObject({
    code: "names.outside-workspace",
    message: "Folders in a path are parted by “/”, not by “\\”.",
    remedy: "Write “/” in place of “\\”.",
  });
  expect(findingsIn(text.replace("\\", "/"), files)).toEqual([]);
  // Unquoted, each is told in its turn, and each remedy leads on.
  let so = "use shop\\b.sprag\nprocedure Look { step inspect Cover }\n";
  for (let turn = 0; turn < 3; turn++) {
    const [next] = findingsIn(so, files);
    if (next?.fixes?.[0] !== undefined) so = withFix(so, next);
  }
  expect(findingsIn(so, files)).toEqual([]);
});

test.each([
  'use "shop/parts.sprag" "shop/parts.sprag"',
  'use "shop/parts.sprag" as Parts',
  'use "shop/parts.sprag", "shop/roles.sprag"',
  'use Parts from "shop/parts.sprag"',
  'use ("shop/parts.sprag")',
  'include "shop/parts.sprag"',
  "use shop/parts.sprag",
])("a line that is no “use” takes no name away: %s", (line) => {
  const files = {
    "shop/parts.sprag": 'part Cover "cover"\nfact Signed "the sheet is signed"\n',
    "shop/roles.sprag": 'role Fitter "fitter"\n',
  };
  const body = "procedure Look {\n  begin with Signed\n  step inspect Cover\n  step inspect Cover by Fitter\n}\n";
  const isOther = line.includes("roles") ? body : body.replace(" by Fitter", "");
  const found = findingsIn(`${line}\n${isOther}`, files);
  expect(found.map(({ code, range }) => `${code} ${range.start.line}`)).toEqual(["syntax.unexpected 0"]);
});
