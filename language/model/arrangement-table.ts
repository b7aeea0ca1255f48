// The table of an arrangement as text: which column says what, and each row as a part with its position and what it weighs. Knows
// no ring: whether the positions are there is for others.
import { evaluate } from "#quantity/expression.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { readQuantityText } from "#quantity/quantity-text.ts";
import { cmp, ZERO } from "#quantity/rational.ts";
import { readUnit } from "#quantity/unit.ts";
import { type Csv, type CsvRecord, readCsv } from "#syntax/csv.ts";

export interface ArrangementRow {
  /** Of the table, from 1. */
  readonly line: number;
  readonly serial: string;
  /** As it stands there; null where the cell is empty or there is no such column. */
  readonly position: number | null;
  /** Whether it has to stay in its position. */
  readonly fixed: boolean;
  /** A mass, or a mass moment. */
  readonly weight: Quantity;
}

export type Column = "position" | "serial" | "mass" | "moment" | "fixed";

/** What can be wrong with a table; `line` from 1. */
export type TableProblem =
  | { readonly what: "empty" }
  | { readonly what: "no column"; readonly column: "serial" | "mass"; readonly found: readonly string[] }
  | { readonly what: "column twice"; readonly column: Column }
  | { readonly what: "unclosed quote"; readonly line: number }
  | {
      readonly what: "header unit";
      readonly column: Column;
      readonly unit: string;
      readonly nearest: readonly string[];
    }
  | { readonly what: "no serial"; readonly line: number }
  | { readonly what: "no position"; readonly line: number; readonly text: string }
  | { readonly what: "fixed nowhere"; readonly line: number; readonly serial: string }
  | {
      readonly what: "no value" | "no unit" | "decimal mark" | "not above zero" | "wrong kind";
      readonly line: number;
      readonly column: "mass" | "moment";
      readonly text: string;
    };

export interface ReadTable {
  readonly csv: Csv;
  /** Index of the column that says it; absent where none does. */
  readonly columns: Readonly<Partial<Record<Column, number>>>;
  /** Empty where something is wrong. */
  readonly rows: readonly ArrangementRow[];
  /** The first of each sort, and how many more there are of it. */
  readonly problems: readonly { readonly problem: TableProblem; readonly more: number }[];
}

/** Reads a table whose first line names its columns. Total. */
export function readTable(text: string): ReadTable {
  const csv = readCsv(text);
  const [header, ...records] = csv.records;
  const nothing = (problem: TableProblem) => ({ csv, columns: {}, rows: [], problems: [{ problem, more: 0 }] });
  if (csv.unclosed !== null) return nothing({ what: "unclosed quote", line: csv.unclosed });
  if (header === undefined || records.length === 0) return nothing({ what: "empty" });
  const told: TableProblem[] = [];
  const columns = columnsOf(header, told);
  const weighed = columns.moment ?? columns.mass;
  if (columns.serial === undefined || weighed === undefined || told.length > 0)
    return { csv, columns: indices(columns), rows: [], problems: together(told) };
  const reading: Reading = {
    columns,
    weighed,
    column: columns.moment === undefined ? "mass" : "moment",
    comma: csv.separator !== "," && records.some(({ cells }) => /\d,\d/.test(cells[weighed.at] ?? "")),
    isComma: csv.separator === ",",
    width: header.cells.length,
    told,
  };
  const rows = records.flatMap((record) => rowOf(record, reading) ?? []);
  return { csv, columns: indices(columns), rows: told.length > 0 ? [] : rows, problems: together(told) };
}

interface Found {
  readonly at: number;
  readonly unit: string | null;
}
type Columns = Partial<Record<Column, Found>>;

/** What a column may be called, small letters. */
const NAMES: Readonly<Record<string, Column>> = {
  position: "position",
  "pos.": "position",
  pos: "position",
  serial: "serial",
  "serial number": "serial",
  "serial no.": "serial",
  "serial no": "serial",
  label: "serial",
  mass: "mass",
  weight: "mass",
  moment: "moment",
  "mass moment": "moment",
  fixed: "fixed",
};

const KINDS = { mass: "mass", moment: "mass moment" } as const satisfies Partial<Record<Column, Kind>>;

function columnsOf({ cells }: CsvRecord, told: TableProblem[]): Columns {
  const columns: Columns = {};
  cells.forEach((cell, at) => {
    const [, name = "", inBrackets, behind] =
      /^([^([/]*?)\s*(?:[([]\s*([^)\]]*?)\s*[)\]]|(?:\/|\bin\b)\s*(.*))?$/i.exec(cell) ?? [];
    const column = NAMES[name.toLowerCase().replace(/\s+/g, " ")];
    if (column === undefined) return;
    if (columns[column] !== undefined) told.push({ what: "column twice", column });
    const unit = inBrackets ?? behind ?? null;
    if (unit !== null && (column === "mass" || column === "moment")) {
      const reading = readUnit(unit, KINDS[column]);
      if (!reading.ok || !reading.unit.kinds.includes(KINDS[column]))
        told.push({ what: "header unit", column, unit, nearest: reading.ok ? [] : reading.nearest });
    }
    columns[column] ??= { at, unit };
  });
  if (columns.serial === undefined) told.push({ what: "no column", column: "serial", found: cells });
  if (columns.mass === undefined && columns.moment === undefined)
    told.push({ what: "no column", column: "mass", found: cells });
  return columns;
}

function indices(columns: Columns): Partial<Record<Column, number>> {
  return Object.fromEntries(Object.entries(columns).map(([column, { at }]) => [column, at]));
}

interface Reading {
  readonly columns: Columns;
  readonly weighed: Found;
  readonly column: "mass" | "moment";
  /** Whether a comma is the decimal mark. */
  readonly comma: boolean;
  /** Whether a comma stands between the cells. */
  readonly isComma: boolean;
  /** How many columns the first line names. */
  readonly width: number;
  readonly told: TableProblem[];
}

function rowOf({ cells, line }: CsvRecord, reading: Reading): ArrangementRow | null {
  const { columns, told } = reading;
  const cell = (column: Column): string => cells[columns[column]?.at ?? -1] ?? "";
  const serial = cell("serial");
  const place = cell("position");
  const position = /^\d{1,9}$/.test(place) ? Number(place) : null;
  const fixed = !/^(?:|no|n|0|false|-)$/i.test(cell("fixed"));
  if (serial === "") told.push({ what: "no serial", line });
  if (place !== "" && position === null) told.push({ what: "no position", line, text: place });
  if (fixed && place === "") told.push({ what: "fixed nowhere", line, serial });
  const weight = weightOf(weightIn(cells, reading), line, reading);
  return weight === null ? null : { line, serial, position, fixed, weight };
}

/** `1,SG-041,2,304`: a decimal comma that nobody quoted makes a cell too many, and the mass would be 2. */
function weightIn(cells: readonly string[], { isComma, weighed: { at }, width }: Reading): string {
  const [first = "", second = ""] = cells.slice(at);
  const isTorn = isComma && cells.slice(width).some((one) => one !== "") && /^\d+$/.test(first) && /^\d+/.test(second);
  return isTorn ? `${first},${second}` : first;
}

/** `2.304 kg`; `2,304` where the comma is the decimal mark, in the unit of the header. */
function weightOf(text: string, line: number, { column, comma, isComma, told, weighed }: Reading): Quantity | null {
  const tell = (
    what: Extract<TableProblem, { readonly column: "mass" | "moment"; readonly text: string }>["what"],
  ): null => {
    told.push({ what, line, column, text });
    return null;
  };
  // In a table with commas between its cells a comma within a number may part its thousands: nobody can know.
  const isUnclear = /\d,\d/.test(text) && (isComma || /\d\.\d|,.*,/.test(text));
  if (isUnclear || (comma && /\d\.\d/.test(text))) return tell("decimal mark");
  const number = comma ? text.replace(/(\d),(\d)/, "$1.$2") : text;
  const isBare = /^[-−+]?\s*[\d.]+$/.test(number);
  if (isBare && weighed.unit === null) return tell("no unit");
  const read = readQuantityText(isBare ? `${number} ${weighed.unit}` : number);
  if (!read.ok || read.written.form !== "nominal") return tell("no value");
  const kind = KINDS[column];
  const { quantity, problems } = evaluate(read.written, kind, true);
  if (problems.some((one) => one.kind === "missing unit")) return tell("no unit");
  if (quantity === null) {
    const isNegative = read.written.value.op === "negate";
    return tell(
      isNegative ? "not above zero" : problems.some((one) => one.kind === "mismatch") ? "wrong kind" : "no value",
    );
  }
  if (quantity.kind !== kind) return tell("wrong kind");
  return cmp(quantity.nominal?.base ?? ZERO, ZERO) > 0 ? quantity : tell("not above zero");
}

/** Of each sort the first. */
function together(told: readonly TableProblem[]): ReadTable["problems"] {
  const sorts = new Map<string, { readonly problem: TableProblem; more: number }>();
  for (const problem of told) {
    const sort = `${problem.what} ${"column" in problem ? problem.column : ""}`;
    const known = sorts.get(sort);
    if (known === undefined) sorts.set(sort, { problem, more: 0 });
    else known.more++;
  }
  return [...sorts.values()];
}
