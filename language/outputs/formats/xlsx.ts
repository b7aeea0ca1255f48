// The tables of a document as a workbook, a sheet for each: heads that stay in sight, text that is never calculated. Same document,
// same bytes.
import writeWorkbook, { type SheetData } from "write-excel-file/universal";
import type { Document } from "../document.ts";
import { harmless, type Table } from "../table.ts";
import type { Words } from "../words/en.ts";
import { steadyZip } from "./steady-zip.ts";
import { tablesIn } from "./tables.ts";

export async function documentXlsx(document: Document, words: Words): Promise<Uint8Array> {
  const tables = tablesIn(document, words);
  const names = sheetNames(tables.map(({ title }) => title));
  const sheets = tables.map((table, at) => ({
    sheet: names[at] ?? "",
    data: dataOf(table),
    columns: table.columns.map((_, column) => ({ width: widthOf(table, column) })),
    stickyRowsCount: 1,
  }));
  const blob = await writeWorkbook(sheets).toBlob();
  return steadyZip(new Uint8Array(await blob.arrayBuffer()), () => null);
}

function dataOf({ columns, rows }: Table): SheetData {
  const heads = columns.map((title) => ({ value: String(harmless(title)), type: String, fontWeight: "bold" as const }));
  return [
    heads,
    ...rows.map((row) =>
      row.map((value) => {
        if (value === "") return null;
        if (typeof value === "number") return { value, type: Number, alignVertical: "top" as const };
        return { value: String(harmless(value)), type: String, wrap: true, alignVertical: "top" as const };
      }),
    ),
  ];
}

/** Wide enough for most of its texts, in letters. */
function widthOf({ columns, rows }: Table, column: number): number {
  const lengths = rows.map((row) => String(row[column] ?? "").length);
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
