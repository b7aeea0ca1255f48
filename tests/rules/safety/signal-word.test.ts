// safety.signal-word: WARNING for death or injury, CAUTION for equipment (MIL-STD-38784; second). Each built-in hazard of the language
// (language.md, “Built-in hazards”) stands here with whom it hurts, under each signal word.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const PEOPLE = [
  ...["burn", "cold", "fire", "explosion", "pressure", "electric", "lifting", "crush", "cutting", "rotating", "spring"],
  ...["fall", "dropped", "eye", "skin", "fumes", "noise"],
];
const EQUIPMENT = ["damage", "contamination", "overheating", "overtorque", "debris"];
const SIGNALS = ["danger", "warning", "caution"];

const work = (statements: string, shop = ""): string => `${shop}part Pump "pump"
procedure Look "Look" {
${statements}
  step inspect Pump
}
`;
const says = (signal: string, hazards: string): string =>
  `  ${signal} ${hazards} "It does harm." avoid "Stand back." wear "what the site asks for"`;
const found = (text: string): readonly (string | undefined)[] =>
  findingsIn(text)
    .filter(({ code }) => code === "safety.signal-word")
    .map(({ message }) => message);

test("every hazard under every signal word", () => {
  const wrong = (hazards: readonly string[]): readonly string[] =>
    hazards.flatMap((hazard) =>
      SIGNALS.filter((signal) => found(work(says(signal, hazard))).length > 0).map((signal) => `${signal} ${hazard}`),
    );
  expect(wrong(PEOPLE)).toEqual(PEOPLE.map((hazard) => `caution ${hazard}`));
  expect(wrong(EQUIPMENT)).toEqual(EQUIPMENT.flatMap((hazard) => [`danger ${hazard}`, `warning ${hazard}`]));
});

test("at the whole statement, with the word exchanged", () => {
  const text = work(`  caution fall, damage "The rail is missing." avoid "Hook the line in."
//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ safety.signal-word warning`);
  expectFindings(text);
  expect(told(text, "safety.signal-word")).toMatchInlineSnapshot(`
    "“caution” is for equipment, and fall can hurt people.
      Somebody who looks for what can hurt passes over a caution.
    → Write “warning”, or “danger” where somebody would surely be hurt.
    + Write “warning”"
  `);
  expect(told(work(says("danger", "damage, debris")), "safety.signal-word")).toMatchInlineSnapshot(`
    "“danger” is for people, and damage and debris can harm only equipment.
      Where warnings speak of equipment, they are no longer stopped at.
    → Write “caution”.
    + Write “caution”"
  `);
  const plain = work(says("caution", "fall"));
  const [finding] = findingsIn(plain);
  expect(finding === undefined ? "" : withFix(plain, finding)).toBe(work(says("warning", "fall")));
});

test.each([
  ["both, where people can be hurt", says("warning", "fall, damage")],
  ["of a warning beside it", `${says("warning", "fall")}\n${says("caution", "fall, damage")}`],
  [
    "of a warning around it",
    `${says("danger", "fall")}\n  task In "In" {\n${says("caution", "fall")}\n    step inspect Pump\n  }`,
  ],
])("silent: %s", (_title, statements) => {
  expect(found(work(statements))).toEqual([]);
});

test.each([
  ["of another hazard", `${says("warning", "noise")}\n${says("caution", "fall")}`],
  [
    "in another task",
    `  task One "One" {\n${says("warning", "fall")}\n    step inspect Pump\n  }\n${says("caution", "fall")}`,
  ],
])("a warning does not help: %s", (_title, statements) => {
  expect(found(work(statements))).toEqual(["“caution” is for equipment, and fall can hurt people."]);
});

test("silent: a hazard of the shop may be to anybody", () => {
  const shop = 'hazard Dust "dust of friction linings"\n';
  for (const signal of SIGNALS) expect(found(work(says(signal, "Dust"), shop))).toEqual([]);
  expect(found(work(says("warning", "Dust, damage"), shop))).toEqual([]);
});

test("silent where a line that cannot be read may be the warning", () => {
  expect(found(work(`  warning fall\n${says("caution", "fall")}`))).toEqual([]);
});
