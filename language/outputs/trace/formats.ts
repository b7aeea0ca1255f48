// The matrix of sources as Markdown for a reader, and as CSV for a spreadsheet. Knows no procedure.
import { csvLine } from "#syntax/csv.ts";
import { inline, paragraphs, table } from "../checklist/md-markup.ts";
import type { Words } from "../words/en.ts";
import type { Matrix } from "./matrix.ts";

export const MATRIX_FORMATS: ReadonlyMap<string, (matrix: Matrix, words: Words) => string> = new Map([
  ["md", markdown],
  ["csv", csv],
]);

function markdown({ heads, rows, values, withoutSource }: Matrix, { trace }: Words): string {
  return `${paragraphs([`# ${inline(trace.title)}`, inline(trace.sum(values, withoutSource)), table(heads, rows)])}\n`;
}

function csv({ heads, rows }: Matrix): string {
  return [heads, ...rows].map((cells) => `${csvLine(cells, ",")}\r\n`).join("");
}
