// `sprag check --report trace`: the matrix of sources, as somebody who audits the shop reads it. 1 lbf·ft is 1.355 817 948 N·m (NIST SP
// 811): 37 .. 43 lbf·ft is 50.2 .. 58.3 N·m, rounded inwards to whole ones as it was given.
import { expect, test } from "vitest";
import { folderWith } from "#harness/command.ts";
import { readCsv } from "#syntax/csv.ts";

const SHOP = `source Sheets "=data sheets" revision "2"
material Steel "steel" { heat limit 392 °F per Sheets "2.1" }
`;
const CLOSE = `use "shop.sprag"

source Manual "pump manual" revision "9"
tool Wrench "torque wrench" { torque 8 .. 60 N·m }
part Cover "cover" { material Steel }
part Screw[1..4] "screw" {
  secures Cover
  nut factor 0.2 dry
}
value Final = 40 ± 3 lbf·ft per Manual "6.4.9"

procedure Close "Close the cover" {
  ambient 15 .. 25 °C

  step install Cover
  task Closing "Close it" {
    per Manual "6.4"
    step PutIn "Put the screws in." {
      install Screw[all]
      takes 2 min
      per Sheets "7"
      per Manual "6.5"
    }
    step tighten Screw[all] to 30 %, 100 % of Final with Wrench
  }
}
`;
const files = { "close.sprag": CLOSE, "shop.sprag": SHOP };
const HEADS = ["Procedure", "Step", "What", "Value as written", "SI value", "Source", "Section", "Revision", "Where"];

const rowsOf = (...args: readonly string[]): readonly (readonly string[])[] => {
  const { status, out, err } = folderWith(files).sprag("check", ...args, "--report", "trace", "--format", "csv");
  expect([status, err]).toEqual([0, ""]);
  return readCsv(out).records.map(({ cells }) => cells);
};

test("every value and step of a file, in the order of the text, with what it inherits", () => {
  expect(rowsOf("close.sprag")).toEqual([
    HEADS,
    ["", "", "torque: Wrench", "8 .. 60 N·m", "8 .. 60 N·m", "none", "", "", "close.sprag:4"],
    ["", "", "nut factor: Screw", "0.2", "0.2", "none", "", "", "close.sprag:8"],
    ["", "", "value: Final", "40 ± 3 lbf·ft", "54 N·m (51 .. 58 N·m)", "pump manual", "6.4.9", "9", "close.sprag:10"],
    ["Close", "", "ambient", "15 .. 25 °C", "15 .. 25 °C", "none", "", "", "close.sprag:13"],
    ["Close", "1", "step", "", "", "none", "", "", "close.sprag:15"],
    [
      "Close",
      "2.1",
      "step: Put the screws in.",
      "",
      "",
      "=data sheets; pump manual",
      "7; 6.5",
      "2; 9",
      "close.sprag:18",
    ],
    ["Close", "2.1", "takes", "2 min", "2 min", "=data sheets; pump manual", "7; 6.5", "2; 9", "close.sprag:20"],
    ["Close", "2.2", "step", "", "", "pump manual", "6.4", "9", "close.sprag:24"],
    [
      "Close",
      "2.2",
      "torque: Screw",
      "30 % of Final",
      "16.3 N·m (15.1 .. 17.4 N·m)",
      "pump manual",
      "6.4.9",
      "9",
      "close.sprag:24",
    ],
    [
      "Close",
      "2.2",
      "torque: Screw",
      "100 % of Final",
      "54 N·m (51 .. 58 N·m)",
      "pump manual",
      "6.4.9",
      "9",
      "close.sprag:24",
    ],
  ]);
});

test("several files in the order of their paths; a cell that a spreadsheet would compute is made plain", () => {
  const { out } = folderWith(files).sprag("check", ".", "--report", "trace", "--format", "csv");
  expect(out).toContain("'=data sheets; pump manual");
  expect(out.trimEnd().split("\r\n").at(-1)).toBe(
    ",,heat limit: Steel,392 °F,200.0 °C,'=data sheets,2.1,2,shop.sprag:2",
  );
  expect(out.endsWith("\r\n")).toBe(true);
});

test("as Markdown where no format is asked for", () => {
  const { status, out } = folderWith(files).sprag("check", "shop.sprag", "--report", "trace");
  expect(status).toBe(0);
  expect(out).toMatchInlineSnapshot(`
    "# Values and steps, and their sources

    1 value, 0 of them without a source.

    | Procedure | Step | What | Value as written | SI value | Source | Section | Revision | Where |
    | --- | --- | --- | --- | --- | --- | --- | --- | --- |
    |  |  | heat limit: Steel | 392 °F | 200.0 °C | \\=data sheets | 2.1 | 2 | shop.sprag:2 |
    "
  `);
});

test("an error in the text is no reason to hold it back, and a file that is not there is one for status 2", () => {
  const faulty = { "a.sprag": 'part A "a" { heat limit 90 °C }\nprocedure P "p" { step install B }\n' };
  expect(folderWith(faulty).sprag("check", "a.sprag", "--report", "trace")).toMatchObject({ status: 0, err: "" });
  const { status, err } = folderWith(faulty).sprag("check", "b.sprag", "--report", "trace");
  expect([status, err]).toEqual([2, expect.stringContaining("b.sprag")]);
});

test.each([
  [["--report", "trace", "--format", "json"], "--format cannot be “json”. There are: md, csv."],
  [["--format", "csv"], "--format cannot be “csv”. There are: text, json, sarif, junit."],
  [["--report", "trase"], "--report cannot be “trase”. Nearest: trace."],
])("refused: %j", (args, message) => {
  const { status, err } = folderWith(files).sprag("check", "close.sprag", ...args);
  expect([status, err]).toEqual([2, expect.stringContaining(message)]);
});
