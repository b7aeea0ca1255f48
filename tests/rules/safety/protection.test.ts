// safety.protection: the hazards that checks.md names, and no other; a statement in force that says what to wear is enough.
import { expect, test } from "vitest";
import { expectFindings, findingsIn, told, withFix } from "#harness/check.ts";

const WORN = ["burn", "cold", "cutting", "eye", "skin", "fumes", "noise"];
const NOT_WORN = [
  ...["fire", "explosion", "pressure", "electric", "lifting", "crush", "rotating", "spring", "fall", "dropped"],
  ...["damage", "contamination", "overheating", "overtorque", "debris"],
];

const work = (statements: string): string => `part Pump "pump"
procedure Look "Look" {
${statements}
  step inspect Pump
}
`;
const says = (hazards: string, wear = ""): string => `  warning ${hazards} "It hurts." avoid "Stand back."${wear}`;
const found = (statements: string): readonly string[] =>
  findingsIn(work(statements))
    .filter(({ code }) => code === "safety.protection")
    .map(({ message }) => message);

test("every hazard, with nothing to wear", () => {
  expect(WORN.filter((hazard) => found(says(hazard)).length === 0)).toEqual([]);
  expect(NOT_WORN.filter((hazard) => found(says(hazard)).length > 0)).toEqual([]);
  expect(WORN.filter((hazard) => found(says(hazard, ' wear "what helps"')).length > 0)).toEqual([]);
});

test("at the statement, with something to wear put in", () => {
  const text = work(`${says("eye, noise")}
//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ safety.protection warning`);
  expectFindings(text);
  expect(told(text, "safety.protection")).toMatchInlineSnapshot(`
    "Nothing to wear is named against eye and noise.
    → Add “wear” with what protects, as the shop calls it.
    + Add wear "eye protection", "hearing protection""
  `);
  const plain = work(says("eye, noise"));
  const [finding] = findingsIn(plain);
  const mended = finding === undefined ? "" : withFix(plain, finding);
  expect(mended).toContain('avoid "Stand back." wear "eye protection", "hearing protection"\n');
  expect(findingsIn(mended)).toEqual([]);
});

test("what stands in for something to wear is nothing to wear, and is not added to", () => {
  const [finding] = findingsIn(work(says("eye", ' wear "…"')));
  expect(finding).toMatchObject({ code: "safety.protection", why: "What stands behind “wear” says nothing yet." });
  expect(finding?.fixes).toBeUndefined();
});

test.each([
  ["beside it", `${says("noise", ' wear "ear muffs"')}\n${says("noise, crush")}`],
  [
    "around it",
    `${says("noise", ' wear "ear muffs"')}\n  task In "In" {\n${says("noise")}\n    step inspect Pump\n  }`,
  ],
])("silent: another statement says it, %s", (_title, statements) => {
  expect(found(statements)).toEqual([]);
});

test("only for the hazards that the other names", () => {
  expect(found(`${says("noise", ' wear "ear muffs"')}\n${says("noise, eye")}`)).toEqual([
    "Nothing to wear is named against eye.",
  ]);
});
