// A table as CSV, RFC 4180, as spreadsheets open it: with a byte order mark, so that they take it for UTF-8. Knows no document.
import { stringify } from "csv-stringify/browser/esm/sync";
import { harmless, type Table } from "../table.ts";

export function tableCsv({ columns, rows }: Table): string {
  return stringify(
    [columns, ...rows].map((row) => row.map(harmless)),
    { bom: true, record_delimiter: "\r\n" },
  );
}
