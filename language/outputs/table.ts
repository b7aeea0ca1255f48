// A table as data, for formats that hold nothing else. Knows no format.

export interface Table {
  readonly title: string;
  readonly columns: readonly string[];
  /** As many cells as columns. */
  readonly rows: readonly (readonly TableValue[])[];
}

/** An empty text where something is to be filled in. */
export type TableValue = string | number;

/** Text that a spreadsheet would take for a formula, also in the wide letters of East Asia. */
const FORMULA = /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;

/** With an apostrophe before what would be calculated; numbers stay numbers. Source: OWASP, "CSV Injection". */
export function harmless(value: TableValue): TableValue {
  return typeof value === "string" && FORMULA.test(value) ? `'${value}` : value;
}
