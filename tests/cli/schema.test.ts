// The published JSON Schema against what the command prints: for all samples, and for reports that it must not let pass.
import { cpSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { OPTIONS, TWICE } from "./texts.ts";

const root = join(import.meta.dirname, "..", "..");
const schema: object = JSON.parse(readFileSync(join(root, "language", "schema", "check.schema.json"), "utf8"));
const validate = new Ajv2020({ allErrors: true, strict: true }).compile(schema);

const CRIB = `tool Wrench "torque wrench" { torque 8 .. 60 N·m }
crib MainShop "tool crib" {
  item "TW-0117" for Wrench { torque 10 .. 60 N·m  calibrated until 2027-01-31 }
}
`;

interface Loose {
  version: unknown;
  files: { path: string; findings: Record<string, unknown>[] }[];
  summary: Record<string, unknown>;
}

test("every report of the samples, faulty ones among them, is as the schema says", () => {
  const folder = folderWith();
  cpSync(join(root, "samples"), folder.path, { recursive: true });
  const report = JSON.parse(folder.sprag("check", ".", "--format", "json").out) as Loose;
  expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
  const findings = report.files.flatMap((file) => file.findings);
  // All that a finding may have does occur, so that each part of the schema has been tried.
  const parts = new Set(findings.flatMap((finding) => Object.keys(finding)));
  const known = ["code", "severity", "message", "why", "remedy", "range", "options", "procedure", "step"];
  expect([...parts].sort()).toEqual([...known, "witness", "related", "fixes", "allowed"].sort());
});

const SHARD = ["--shard", "1/1", "--crib", "crib.sprag", "--on", "2026-05-04", "--set", "Extent=Full"];

function shard(): Loose & { shard: Record<string, unknown> } {
  const folder = folderWith({ "a.sprag": OPTIONS, "crib.sprag": CRIB });
  return JSON.parse(folder.sprag("check", ".", "gone.sprag", ...SHARD, "--format", "json").out);
}

test("a shard is as the schema says, with all that it may say of itself", () => {
  const report = shard();
  expect(validate(report), JSON.stringify(validate.errors)).toBe(true);
  const known = ["number", "of", "release", "files", "inputs", "set", "crib", "troubles", "sum"];
  expect(Object.keys(report.shard)).toEqual(known);
});

test.each<[string, Record<string, unknown>]>([
  ["number", { number: 0 }],
  ["sum", { sum: "a1" }],
  ["part", { hours: 3 }],
  ["crib", { crib: { path: "/crib.sprag", on: "2026-05-04" } }],
])("the schema refuses a shard with a wrong %s", (_title, wrong) => {
  const report = shard();
  expect(validate({ ...report, shard: { ...report.shard, ...wrong } })).toBe(false);
});

test.each<[string, (report: Loose) => void]>([
  ["another version", (report) => (report.version = 2)],
  ["a part that is not known", (report) => (report.summary.hours = 3)],
  ["a count that is missing", (report) => delete report.summary.steps],
  ["a path from the machine's root", (report) => report.files.push({ path: "/a.sprag", findings: [] })],
  ["a path above the root", (report) => report.files.push({ path: "../a.sprag", findings: [] })],
  ["a severity that is not known", (report) => (anyFinding(report).severity = "fatal")],
  ["a code without a family", (report) => (anyFinding(report).code = "enclosed")],
  ["no message", (report) => delete anyFinding(report).message],
  ["a line below 0", (report) => (anyFinding(report).range = { start: { line: -1, character: 0 }, end: {} })],
  ["an empty list of fixes", (report) => (anyFinding(report).fixes = [])],
])("the schema refuses %s", (_title, spoil) => {
  const report = JSON.parse(folderWith({ "a.sprag": TWICE }).sprag("check", ".", "--format", "json").out) as Loose;
  expect(validate(report)).toBe(true);
  spoil(report);
  expect(validate(report)).toBe(false);
});

function anyFinding(report: Loose): Record<string, unknown> {
  const found = report.files.flatMap((file) => file.findings)[0];
  if (found === undefined) throw new Error("the report has no finding");
  return found;
}
