// Tables as spreadsheets write them, read beside csv-parse (npm), and written so that they come back as they were.
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import { csvLine, readCsv } from "#syntax/csv.ts";

const cells = (text: string): readonly (readonly string[])[] => readCsv(text).records.map((record) => record.cells);

test.each([
  ["commas", "a,b\n1,2\n"],
  ["semicolons", "a;b\r\n1;2\r\n"],
  ["tabs", "a\tb\n1\t2"],
  ["commas, with a semicolon in a cell", 'a,b,"c;d;e"\n1,2,3'],
  ["a named separator", "sep=;\na,b;c\n1,2;3"],
  ["old line ends", "a,b\r1,2\r"],
])("%s", (_, text) => {
  const { records, separator } = readCsv(text);
  expect(records.map((record) => record.cells.length)).toEqual(Array(2).fill(records[0]?.cells.length));
  expect(records[0]?.cells.length).toBeGreaterThan(1);
  expect(text).toContain(separator);
});

test("a mark before the text, blank lines, and lines of separators are passed over, and lines still count", () => {
  const { records } = readCsv("\ufeffserial,mass\n\n;\n,,\nA,1 kg\n");
  expect(records).toEqual([
    { line: 1, cells: ["serial", "mass"] },
    { line: 3, cells: [";"] },
    { line: 5, cells: ["A", "1 kg"] },
  ]);
});

test("a cell in quotes keeps separators, quotes, blanks and line ends", () => {
  expect(cells('a,b\n" 1, 2","3"" bolt"\n"two\nlines",x\n')).toEqual([
    ["a", "b"],
    [" 1, 2", '3" bolt'],
    ["two\nlines", "x"],
  ]);
  expect(readCsv('a,b\n"two\nlines",x\n1,2').records.map(({ line }) => line)).toEqual([1, 2, 4]);
  // A quote within a plain cell stands for itself.
  expect(cells('a\n3" bolt')).toEqual([["a"], ['3" bolt']]);
});

test("a quotation mark that nothing closes is told with its line", () => {
  expect(readCsv('a,b\n1,"2\n3,4\n').unclosed).toBe(2);
  expect(readCsv('a,b\n1,"2"\n').unclosed).toBeNull();
});

test("csv-parse reads the same of every table", () => {
  const cell = fc.string({ unit: fc.constantFrom("a", "1", ",", ";", '"', "\n", "ü", "."), maxLength: 6 });
  const table = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 5 });
  let compared = 0;
  fc.assert(
    fc.property(table, fc.constantFrom(",", ";"), fc.constantFrom("\n", "\r\n"), (rows, separator, end) => {
      // With a header that settles the separator, and every cell quoted.
      const lines = [["h", "h", "h"], ...rows].map((row) => row.map((one) => `"${one.replaceAll('"', '""')}"`));
      const text = lines.map((line) => line.join(separator)).join(end);
      const theirs = parse(text, { delimiter: separator, skip_empty_lines: true }) as string[][];
      expect(cells(text)).toEqual(theirs.filter((row) => row.some((one) => one !== "")));
      compared++;
    }),
  );
  console.log(`csv: ${compared} tables read as csv-parse reads them`);
  expect(compared).toBeGreaterThan(50);
});

test("what is written is read back, and no cell is a formula", () => {
  const cell = fc.string({
    unit: fc.constantFrom("a", "1", ",", ";", '"', "\n", " ", "=", "-", "@", "+"),
    maxLength: 6,
  });
  fc.assert(
    fc.property(fc.array(cell, { minLength: 2, maxLength: 4 }), fc.constantFrom(",", ";", "\t"), (row, separator) => {
      fc.pre(row.some((one) => one !== ""));
      const header = row.map(() => "h").join(separator);
      const line = csvLine(row, separator);
      expect(cells(`${header}\n${line}`)[1]).toEqual(row);
      const [theirs] = parse(line, { delimiter: separator }) as string[][];
      for (const one of theirs ?? []) expect(one).not.toMatch(/^[=@]|^[+-](?!\d+$)/);
    }),
  );
});
