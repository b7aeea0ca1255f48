// The sample of the walkthrough has no finding; without its gasket it has one error; and the commands find the lines they change.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { openWorkspace } from "#workspace/index.ts";

const extension = join(import.meta.dirname, "..", "..", "extension");
const sample = readFileSync(join(extension, "media", "sample.sprag"), "utf8");
const program = readFileSync(join(extension, "client", "start", "sample.ts"), "utf8");

const lineNamed = (name: string): string => {
  const [, quoted] = new RegExp(`const ${name} = ["'](.*)\\\\n["'];`).exec(program) ?? [];
  return `${quoted}\n`;
};

function findingsIn(text: string): readonly string[] {
  const texts = new Map([["sample.sprag", text]]);
  const snapshot = { texts, present: new Set<string>(), absent: new Set<string>(), today: "2026-05-04" };
  return openWorkspace(snapshot)
    .findings(["sample.sprag"])
    .map(({ severity, code }) => `${severity} ${code}`);
}

test("as it is, nothing is found", () => {
  expect(findingsIn(sample)).toEqual([]);
});

test("without the line that is left out, there is one error", () => {
  const left = lineNamed("LINE");
  expect(sample.split(left)).toHaveLength(2);
  expect(findingsIn(sample.replace(left, "")).filter((one) => one.startsWith("error"))).toEqual([
    "error order.missing-support",
  ]);
});

test("it is known by its first line", () => {
  const [, first] = /const FIRST = "(.*)";/.exec(program) ?? [];
  expect(sample.startsWith(`${first}\n`)).toBe(true);
});

test("the line comes back to where it was", () => {
  const [left, next] = [lineNamed("LINE"), lineNamed("NEXT")];
  expect(sample.replace(left, "").replace(next, left + next)).toBe(sample);
});
