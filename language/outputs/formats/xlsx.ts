// The tables of a document as a workbook, a sheet for each: heads that stay in sight and stand on each printed page, text that is never
// calculated. Same document, same bytes.
import writeWorkbook, { type SheetData } from "write-excel-file/universal";
import type { Document } from "../document.ts";
import { harmless, type Table } from "../table.ts";
import type { Words } from "../words/en.ts";
import { legalXml } from "../xml.ts";
import { steadyZip } from "./steady-zip.ts";
import { tablesIn } from "./tables.ts";

export async function documentXlsx(document: Document, words: Words): Promise<Uint8Array> {
  const tables = tablesIn(document, words);
  // On each sheet as it is seen, and on each of its pages.
  const draft = document.draft ? `${words.labels.draft} ` : "";
  const names = sheetNames(tables.map(({ title }) => `${draft}${title}`));
  const sheets = tables.map((table, at) => ({
    sheet: names[at] ?? "",
    data: dataOf(table),
    columns: table.columns.map((_, column) => ({ width: widthOf(table, column) })),
    stickyRowsCount: 1,
  }));
  const blob = await writeWorkbook(sheets, FONT).toBlob();
  return steadyZip(new Uint8Array(await blob.arrayBuffer()), (path, text) => {
    if (path.startsWith("xl/worksheets/sheet")) return printable(text(), pageTexts(document, words));
    return path === "xl/workbook.xml" ? withPrintTitles(text()) : null;
  });
}

/** Named, since programs choose otherwise for what is bold and what is not. */
const FONT = { fontFamily: "Arial", fontSize: 11 };

/** A sheet across the page, as wide as one and as long as it takes, with its lines (ECMA-376-1, 18.3.1.63, 64, 70 and 82). */
function printable(sheet: string, pages: string): string {
  return sheet
    .replace(/<worksheet\b[^>]*>/, '$&<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>')
    .replace(
      "</worksheet>",
      () =>
        `<printOptions gridLines="1"/><pageMargins left="0.4" right="0.4" top="0.5" bottom="0.5" header="0.3" footer="0.3"/><pageSetup paperSize="9" orientation="landscape" fitToWidth="1" fitToHeight="0"/>${pages}</worksheet>`,
    );
}

/** What stands at the head and foot of each page (ECMA-376-1, 18.3.1.46 and 39): `&L`, `&R` a side, `&P` of `&N` the page, `&&` the sign. */
function pageTexts({ head, title, draft }: Document, words: Words): string {
  const plain = (text: string): string => text.slice(0, LONGEST).replaceAll("&", "&&");
  const top = `&L${plain(`${head.page} · ${title}`)}${draft ? `&R${plain(words.labels.draft)}` : ""}`;
  const bottom = `&L${plain(words.head.uncontrolled)}&R${words.head.pageOf("&P", "&N")}`;
  return `<headerFooter><oddHeader>${escaped(top)}</oddHeader><oddFooter>${escaped(bottom)}</oddFooter></headerFooter>`;
}

/** Of a text there, so that all of them keep within the 255 signs that a workbook has room for. */
const LONGEST = 90;

function escaped(text: string): string {
  return legalXml(text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;"));
}

/** The first row of each sheet on each of its pages (ECMA-376-1, 18.2.5). */
function withPrintTitles(workbook: string): string {
  // As they stand there they are written for XML already.
  const titles = [...workbook.matchAll(/<sheet\b[^>]*\bname="([^"]*)"/g)].map(
    ([, name = ""], at) => `<definedName name="_xlnm.Print_Titles" localSheetId="${at}">'${name}'!$1:$1</definedName>`,
  );
  return workbook.replace("<definedNames/>", () => `<definedNames>${titles.join("")}</definedNames>`);
}

function dataOf(table: Table): SheetData {
  const { columns, rows } = table;
  const widths = columns.map((_, column) => widthOf(table, column));
  const heads = columns.map((title) => ({ value: String(harmless(title)), type: String, fontWeight: "bold" as const }));
  return [
    heads,
    ...rows.map((row) => {
      const height = LINE * Math.max(...row.map((value, column) => linesIn(String(value), widths[column] ?? 10)));
      return row.map((value) => {
        if (value === "") return null;
        if (typeof value === "number") return { value, type: Number, height, alignVertical: "top" as const };
        return { value: String(harmless(value)), type: String, height, wrap: true, alignVertical: "top" as const };
      });
    }),
  ];
}

/** Of a row of one line, in points. */
const LINE = 17;

/** About as many lines as a text takes in a column; not every program works that out when it opens a file. */
function linesIn(text: string, width: number): number {
  return text.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / width)), 0);
}

/** Wide enough for most of its texts, in letters. */
function widthOf({ columns, rows }: Table, column: number): number {
  const lengths = rows.flatMap((row) => String(row[column] ?? "").split("\n")).map((line) => line.length);
  return Math.min(50, Math.max(10, (columns[column] ?? "").length + 2, ...lengths));
}

/** At most 31 signs, none of them one that a workbook keeps for itself, and each name once. */
function sheetNames(titles: readonly string[]): readonly string[] {
  const used = new Set<string>();
  return titles.map((title, at) => {
    const plain =
      title
        .replace(/[[\]:*?/\\']/g, " ")
        .trim()
        .slice(0, 28) || String(at + 1);
    const name = used.has(plain.toLowerCase()) ? `${plain} ${at + 1}` : plain;
    used.add(name.toLowerCase());
    return name;
  });
}
