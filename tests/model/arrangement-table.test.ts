// The table of an arrangement: its columns by name, numbers as spreadsheets of both worlds write them, and what can be wrong.
import { describe, expect, test } from "vitest";
import { readTable } from "#model/arrangement-table.ts";
import { show } from "#quantity/display.ts";
import { modelsOf, problemsIn } from "./model-of.ts";

/** `serial@position: weight`. */
function rows(text: string): readonly string[] {
  return readTable(text).rows.map(
    ({ serial, position, fixed, weight }) => `${serial}@${position ?? "-"}${fixed ? "!" : ""}: ${show(weight)}`,
  );
}

function problems(text: string): readonly string[] {
  return readTable(text).problems.map(({ problem, more }) => {
    const line = "line" in problem ? ` ${problem.line}` : "";
    return `${problem.what}${line}${more > 0 ? ` +${more}` : ""}`;
  });
}

describe("columns", () => {
  test.each([
    ["units in the cells", "position,serial,mass\n1,A,2.304 kg\n2,B,5.1 lb\n", ["A@1: 2.304 kg", "B@2: 5.1 lb"]],
    ["a unit in brackets", "position,serial,mass (kg)\n1,A,2.304\n", ["A@1: 2.304 kg"]],
    ["a unit in square brackets", "Position,Serial number,Mass [g]\n1,A,2304\n", ["A@1: 2304 g"]],
    ["a unit behind a stroke", "position,label,mass / g\n1,A,2304\n", ["A@1: 2304 g"]],
    ["a unit in words", "position,serial,mass in kg\n1,A,2.3\n", ["A@1: 2.3 kg"]],
    ["a cell's own unit before the header's", "position,serial,mass (kg)\n1,A,2304 g\n", ["A@1: 2304 g"]],
    ["moments", "position,serial,moment\n1,A,1200 g·mm\n", ["A@1: 1200 g·mm"]],
    ["moments before masses", "serial,mass,moment (g*mm)\nA,2 kg,1200\n", ["A@-: 1200 g·mm"]],
    ["a cell more than there are columns", "position,serial,mass (kg)\n1,A,2,spare\n", ["A@1: 2 kg"]],
    ["empty cells at the end", "position,serial,mass (kg)\n1,A,2,,\n", ["A@1: 2 kg"]],
    ["no position yet", "serial,mass\nA,2 kg\n", ["A@-: 2 kg"]],
    ["others beside them, in any order", "date,mass,serial,position\n2026-05-04,2 kg,A,7\n", ["A@7: 2 kg"]],
    [
      "fixed parts",
      "position,serial,mass,fixed\n1,A,2 kg,yes\n2,B,2 kg,\n3,C,2 kg,no\n",
      ["A@1!: 2 kg", "B@2: 2 kg", "C@3: 2 kg"],
    ],
    [
      "semicolons and decimal commas",
      "position;serial;mass (kg)\r\n1;A;2,304\r\n2;B;2,3\r\n",
      ["A@1: 2.304 kg", "B@2: 2.3 kg"],
    ],
    ["semicolons and points", "position;serial;mass (kg)\n1;A;2.304\n", ["A@1: 2.304 kg"]],
  ])("%s", (_, text, wanted) => {
    expect(problems(text)).toEqual([]);
    expect(rows(text)).toEqual(wanted);
  });
});

test.each([
  ["nothing", "", ["empty"]],
  ["a header alone", "position,serial,mass\n", ["empty"]],
  ["no header", "1,SG-041,2.3 kg\n2,SG-042,2.3 kg\n", ["no column", "no column"]],
  ["no serial column", "position,mass\n1,2 kg\n", ["no column"]],
  ["two mass columns", "serial,mass,weight\nA,2 kg,2 kg\n", ["column twice"]],
  ["a unit of another kind in the header", "serial,mass (mm)\nA,2\n", ["header unit"]],
  ["a unit that is none in the header", "serial,mass (kq)\nA,2\n", ["header unit"]],
  ["a quote left open", 'serial,mass\nA,"2 kg\nB,2 kg\n', ["unclosed quote 2"]],
  ["no unit anywhere", "serial,mass\nA,2\nB,3\nC,4\n", ["no unit 2 +2"]],
  ["a length for a mass", "serial,mass\nA,2 mm\n", ["wrong kind 2"]],
  ["a mass for a moment", "serial,moment\nA,2 kg\n", ["wrong kind 2"]],
  ["a mass of nothing", "serial,mass\nA,0 kg\n", ["not above zero 2"]],
  ["a mass below nothing", "serial,mass\nA,-2 kg\n", ["not above zero 2"]],
  ["a range", "serial,mass\nA,2 .. 3 kg\n", ["no value 2"]],
  ["words", "serial,mass\nA,heavy\n", ["no value 2"]],
  ["an empty cell, and a short row", "serial,mass\nA,\nB\n", ["no value 2 +1"]],
  ["no serial", "serial,mass\n,2 kg\n", ["no serial 2"]],
  ["a position in words", "position,serial,mass\nfirst,A,2 kg\n", ["no position 2"]],
  ["a fixed part without a place", "position,serial,mass,fixed\n,A,2 kg,x\n", ["fixed nowhere 2"]],
  // 2,304 g is two kilograms in one country and two grams in another.
  ["a comma within a number between commas", 'serial,mass\nA,"2,304 g"\n', ["decimal mark 2"]],
  ["a decimal comma that nobody quoted", "position,serial,mass (kg)\n1,A,2,304\n", ["decimal mark 2"]],
  ["the same with its unit", "position,serial,mass\n1,A,2,304 kg\n", ["decimal mark 2"]],
  ["both marks in one number", "serial;mass\nA;2.304,5 g\n", ["decimal mark 2"]],
  ["a point where others have commas", "serial;mass\nA;2,5 kg\nB;2.304 kg\n", ["decimal mark 3"]],
])("what is wrong: %s", (_, text, wanted) => {
  expect(problems(text)).toEqual(wanted);
  expect(rows(text)).toEqual([]);
});

describe("in an arrangement", () => {
  const text = 'part S[1..2]\nring R { count 2 }\narrangement X of S in R { radius 1 mm  from "t.csv" }';
  test("the rows are those of its table", () => {
    const model = modelsOf({ "main.sprag": text, "t.csv": "position,serial,mass\n1,A,2 kg\n2,B,2 kg\n" }).get(
      "main.sprag",
    );
    const [order] = model?.declarations.filter((one) => one.kind === "arrangement") ?? [];
    expect(order?.rows?.map(({ serial }) => serial)).toEqual(["A", "B"]);
    expect(model?.problems).toEqual([]);
  });
  test("a table that is not there is told, and what is wrong in it", () => {
    expect(problemsIn(text)).toEqual(['path «"t.csv"» absent']);
    expect(problemsIn(text, { "t.csv": "serial,mass\nA,2\nB,3\n" })).toEqual(["table «X» no unit and 1 more"]);
  });
});
