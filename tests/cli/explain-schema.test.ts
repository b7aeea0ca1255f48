// The published JSON Schema of `sprag explain FILE:LINE --format json` against what the command prints: for every value of all
// samples, and for answers that it must not let pass.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { plainTexts, tables } from "#harness/samples.ts";
import { linesOf } from "#syntax/lines.ts";
import { computedValues, explainedText, explainLine, openWorkspace } from "#workspace/index.ts";

const root = join(import.meta.dirname, "..", "..");
const schema: object = JSON.parse(readFileSync(join(root, "language", "schema", "explain.schema.json"), "utf8"));
const validate = new Ajv2020({ allErrors: true, strict: true }).compile(schema);

interface Loose {
  version: unknown;
  path: unknown;
  line: unknown;
  values: Record<string, unknown>[];
  elsewhere?: unknown;
}

interface Term {
  readonly name: string;
  readonly symbol: string;
  readonly value: { readonly text: string; readonly kind: string; readonly nominal?: { readonly number: number } };
  readonly source?: string;
}

test("every value of every sample is as the schema says", () => {
  const texts = new Map([...plainTexts, ...tables]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "2026-05-04" });
  const parts = new Set<string>();
  let valid = 0;
  for (const [path, text] of plainTexts)
    for (const { line } of computedValues(workspace, path)) {
      const at = linesOf(text).range(line.start, line.end).start.line + 1;
      const told = JSON.parse(explainedText(path, at, explainLine(workspace, path, at), workspace)) as Loose;
      expect(validate(told), JSON.stringify(validate.errors)).toBe(true);
      for (const value of told.values) {
        for (const part of Object.keys(value)) parts.add(part);
        for (const term of [value.result, ...(value.inputs as Term[])] as Term[])
          for (const part of [...Object.keys(term), ...Object.keys(term.value)]) parts.add(part);
      }
      valid++;
    }
  expect(valid).toBeGreaterThan(20);
  // All that an answer may have does occur, so that each part of the schema has been tried.
  expect([...parts].sort()).toEqual(
    [
      ...["caution", "formula", "high", "inputs", "kind", "low", "name", "nominal", "of"],
      ...["range", "result", "source", "step", "symbol", "text", "value"],
    ].sort(),
  );
});

/* 300 lbf·ft at 18 + 6 in is 225 lbf·ft (TM 5-3810-305-23; read). */
const JOB = `tool Wrench "torque wrench" { torque 1 .. 900 lbf·ft  arm 18 in }
tool Crowfoot "crowfoot" { offset 6 in }
part Screw "screw"
procedure Close "Close" {
  step install Screw
  step tighten Screw to 300 lbf·ft with Wrench + Crowfoot
}
`;

const answer = (line: number): Loose =>
  JSON.parse(folderWith({ "job.sprag": JOB }).sprag("explain", `job.sprag:${line}`, "--format", "json").out) as Loose;

test("the command gives the numbers beside the text", () => {
  const told = answer(6);
  expect(told).toMatchObject({ version: 1, path: "job.sprag", line: 6 });
  const setting = told.values.find(({ of }) => of === "Wrench for Screw");
  const result = setting?.result as Term | undefined;
  expect(result).toMatchObject({ name: "setting", symbol: "Ts", value: { kind: "torque" } });
  expect(result?.value.nominal?.number).toBeCloseTo(225, 9);
  expect(setting?.step).toEqual({ number: "2" });
  expect(setting?.range).toEqual({ start: { line: 5, character: 24 }, end: { line: 5, character: 34 } });
});

test("where nothing is worked out it says where something is", () => {
  expect(answer(5)).toEqual({ version: 1, path: "job.sprag", line: 5, values: [], elsewhere: [6] });
  expect(validate(answer(5))).toBe(true);
});

const first = (told: Loose): Record<string, unknown> => told.values[0] ?? {};

test.each<[string, (told: Loose) => void]>([
  ["another version", (told) => (told.version = 2)],
  ["a part that is not known", (told) => (first(told).colour = "red")],
  ["a path above the root", (told) => (told.path = "../job.sprag")],
  ["line 0", (told) => (told.line = 0)],
  ["no values", (told) => delete (told as Partial<Loose>).values],
  ["no source", (told) => delete first(told).source],
  ["no inputs", (told) => (first(told).inputs = [])],
  [
    "a value of no end",
    (told) => ((first(told).result as Record<string, unknown>).value = { text: "1", kind: "mass" }),
  ],
  ["a line elsewhere that is none", (told) => (told.elsewhere = [0])],
])("the schema refuses %s", (_title, spoil) => {
  const told = answer(6);
  expect(validate(told)).toBe(true);
  spoil(told);
  expect(validate(told)).toBe(false);
});
