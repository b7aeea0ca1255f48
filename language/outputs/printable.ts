// Text of others made fit to be shown: nothing in it may move a cursor, break a file's form or turn the reading direction. Knows no
// output.
import type { Document, StepRow } from "./document.ts";
import { rowAsMade } from "./kept-rows.ts";

/** Control signs, those that part lines or turn the direction of what follows, and halves of characters. */
export const UNSHOWABLE = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/gu;

/** Signs that cannot be shown stand as their code: `<1B>`. New lines stay. */
export function printable(text: string): string {
  return text.replace(UNSHOWABLE, (sign) => (sign === "\n" ? sign : codeText(sign)));
}

export function codeText(sign: string): string {
  return `<${sign.charCodeAt(0).toString(16).toUpperCase().padStart(2, "0")}>`;
}

/** The document with every text of it printable, mostly as it is. Tabs and other line ends become what formats know. */
export function printableDocument(document: Document): Document {
  return isPrintable(document) ? document : (printableIn(document) as Document);
}

function isPrintable(value: unknown): boolean {
  if (typeof value === "string") return !UNSHOWABLE_ONCE.test(value);
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return true;
  if (Array.isArray(value)) return value.every(isPrintable);
  return isRow(value) ? isPrintableRow(value) : holdsPrintable(value);
}

function holdsPrintable(record: object): boolean {
  for (const key in record) if (!isPrintable(record[key as keyof object])) return false;
  return true;
}

/** Rows that stand in one document after the other are looked at once. */
function isPrintableRow(row: StepRow): boolean {
  const made = rowAsMade(row);
  const known = printableRows.get(made) ?? holdsPrintable(made);
  printableRows.set(made, known);
  return known;
}

const printableRows = new WeakMap<StepRow, boolean>();

function isRow(value: object): value is StepRow {
  return "kind" in value && value.kind === "step";
}

function printableIn(value: unknown): unknown {
  if (typeof value === "string") return isPrintable(value) ? value : printable(plainSpace(value));
  if (Array.isArray(value)) return value.map(printableIn);
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, printableIn(inner)]));
}

/** The same without its memory of where it was. */
const UNSHOWABLE_ONCE = new RegExp(UNSHOWABLE.source, "u");

function plainSpace(text: string): string {
  return text.replace(/\r\n?|[\u0085\u2028\u2029]/g, "\n").replaceAll("\t", " ");
}
