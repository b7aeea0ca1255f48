// How well the rules on sentences do on the held-out set, which was written and labelled before them and without sight of them:
// precision and recall of each, as printed. What the labels leave open counts for neither.
import { expect, test } from "vitest";
import { findingsIn } from "#harness/check.ts";
import { RULES } from "#rules/index.ts";
import { HELD_OUT } from "./held-out.ts";

/** The least recall of each, a little below what was measured, so that a change that loses much is seen. */
const LEAST_RECALL: Readonly<Record<string, number>> = {
  "wording.long-sentence": 0.98,
  "wording.many-actions": 0.87,
  "wording.not-imperative": 0.84,
  "wording.passive": 0.97,
  "wording.vague": 0.91,
};
const codes = Object.keys(LEAST_RECALL);

/** The set as one procedure, a sentence on each line from the second on. */
const lines = HELD_OUT.map(({ as, text }) => {
  const quoted = `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"').replaceAll("\n", "\\n")}"`;
  return as === "instruction" ? `  step ${quoted}` : `  note ${quoted}`;
});
const found = findingsIn(['procedure HeldOut "Held out" {', ...lines, "}"].join("\n"));
const foundOn = (line: number): readonly string[] =>
  found.filter(({ range }) => range.start.line === line).map(({ code }) => code);

interface Measured {
  readonly code: string;
  readonly right: number;
  readonly falseAlarms: readonly string[];
  readonly missed: readonly string[];
}

const measured = codes.map((code): Measured => {
  const counted = HELD_OUT.map((one, index) => ({ ...one, isFound: foundOn(index + 1).includes(code) })).filter(
    ({ open }) => !open.some((left) => left === code),
  );
  const isWrong = ({ wrong }: (typeof counted)[number]): boolean => wrong.some((label) => label === code);
  return {
    code,
    right: counted.filter((one) => one.isFound && isWrong(one)).length,
    falseAlarms: counted.filter((one) => one.isFound && !isWrong(one)).map(({ text }) => text),
    missed: counted.filter((one) => !one.isFound && isWrong(one)).map(({ text }) => text),
  };
});
const precisionOf = ({ falseAlarms, right }: Measured): number => right / Math.max(1, right + falseAlarms.length);
const recallOf = ({ missed, right }: Measured): number => right / Math.max(1, right + missed.length);

test("the set is large enough, and its sentences can be read", () => {
  expect(HELD_OUT.length).toBeGreaterThanOrEqual(200);
  expect(found.filter(({ code }) => /^(?:syntax|names)\./.test(code))).toEqual([]);
  for (const { right, missed } of measured) expect(right + missed.length).toBeGreaterThan(20);
});

test.each(measured)("$code", (one) => {
  const { code, falseAlarms, missed, right } = one;
  const [precision, recall] = [precisionOf(one), recallOf(one)];
  console.log(
    `${code}: right ${right}, false alarms ${falseAlarms.length}, missed ${missed.length}; precision ${precision.toFixed(3)}, recall ${recall.toFixed(3)}`,
  );
  const severity = RULES.find((rule) => rule.code === code)?.severity;
  // A rule that is less sure than that only hints.
  if (severity !== "hint") expect(precision).toBeGreaterThanOrEqual(0.9);
  expect(recall).toBeGreaterThanOrEqual(LEAST_RECALL[code] ?? 1);
});
