// Reads a quantity from a text of its own (a command's argument, a hover), in the forms the language has: a number and a
// unit, a range, a tolerance, one-sided. Names and sums are the grammar's.
import { scanUnit } from "./scan.ts";
import type { Literal, Written } from "./tree.ts";

/** A place in the text: offsets, the end exclusive. */
export interface TextSpan {
  readonly start: number;
  readonly end: number;
}

/** What was read, or where it stops to be a quantity. */
export type QuantityText =
  | { readonly ok: true; readonly written: Written<TextSpan> }
  | { readonly ok: false; readonly at: TextSpan; readonly expected: "a number" | "the end" | ".." | ")" };

type Value = Literal<TextSpan> | { readonly op: "negate"; readonly of: Literal<TextSpan>; readonly at: TextSpan };

/** Reads `40 ± 2 N·m`, `38 .. 42 N·m`, `at most 120 °C`, `40 N·m (39 .. 43 N·m)`, `-5 °C`, `1 1/2 in`. Total. */
export function readQuantityText(text: string): QuantityText {
  const cursor: Cursor = { text, offset: 0, failed: null };
  const written = readWritten(cursor);
  if (written !== null && !atEnd(cursor)) fail(cursor, "the end");
  if (cursor.failed !== null || written === null) return cursor.failed ?? failure(cursor, "a number");
  return { ok: true, written };
}

interface Cursor {
  readonly text: string;
  offset: number;
  failed: Extract<QuantityText, { ok: false }> | null;
}

function readWritten(cursor: Cursor): Written<TextSpan> | null {
  skipBlanks(cursor);
  const start = cursor.offset;
  const limit = take(cursor, /at\s+(?:least|most)(?![A-Za-z])/y);
  const value = readValue(cursor);
  if (value === null) return null;
  const at = () => ({ start, end: cursor.offset });
  if (limit !== null) return { form: limit.endsWith("least") ? "at least" : "at most", value, at: at() };
  if (take(cursor, /\.\./y) !== null) {
    const high = readValue(cursor);
    return high && { form: "range", low: value, high, at: at() };
  }
  if (take(cursor, /±|\+\/[-−]/y) !== null) {
    const tolerance = readValue(cursor);
    return tolerance && { form: "tolerance", value, tolerance, at: at() };
  }
  if (take(cursor, /\(/y) === null) return { form: "nominal", value, at: at() };
  const low = readValue(cursor);
  if (low === null || !expect(cursor, /\.\./y, "..")) return null;
  const high = readValue(cursor);
  if (high === null || !expect(cursor, /\)/y, ")")) return null;
  return { form: "nominal in range", value, low, high, at: at() };
}

const NUMBER = /\d+ \d+\/\d+(?![\d.])|\d+\/\d+(?![\d.])|\d[\d_]*(?:[.,]\d[\d_]*)?/y;

function readValue(cursor: Cursor): Value | null {
  skipBlanks(cursor);
  const start = cursor.offset;
  const negative = take(cursor, /[-−]/y) !== null;
  skipBlanks(cursor);
  const numberAt = cursor.offset;
  const number = take(cursor, NUMBER);
  if (number === null) return fail(cursor, "a number");
  const numberEnd = cursor.offset;
  skipBlanks(cursor);
  const unitAt = cursor.offset;
  const end = scanUnit(cursor.text, unitAt)?.end ?? unitAt;
  cursor.offset = end > unitAt ? end : numberEnd;
  const literal: Literal<TextSpan> = {
    op: "literal",
    number,
    unit: end > unitAt ? cursor.text.slice(unitAt, end) : null,
    at: { start: numberAt, end: cursor.offset },
    unitAt: end > unitAt ? { start: unitAt, end } : null,
  };
  return negative ? { op: "negate", of: literal, at: { start, end: cursor.offset } } : literal;
}

function take(cursor: Cursor, pattern: RegExp): string | null {
  skipBlanks(cursor);
  pattern.lastIndex = cursor.offset;
  const found = pattern.exec(cursor.text)?.[0] ?? null;
  if (found !== null) cursor.offset += found.length;
  return found;
}

function expect(cursor: Cursor, pattern: RegExp, expected: ".." | ")"): boolean {
  if (take(cursor, pattern) !== null) return true;
  fail(cursor, expected);
  return false;
}

function fail(cursor: Cursor, expected: "a number" | "the end" | ".." | ")"): null {
  cursor.failed ??= failure(cursor, expected);
  return null;
}

function failure(cursor: Cursor, expected: "a number" | "the end" | ".." | ")"): Extract<QuantityText, { ok: false }> {
  skipBlanks(cursor);
  return { ok: false, at: { start: cursor.offset, end: cursor.text.length }, expected };
}

function skipBlanks(cursor: Cursor): void {
  while (/\s/.test(cursor.text[cursor.offset] ?? "")) cursor.offset++;
}

function atEnd(cursor: Cursor): boolean {
  skipBlanks(cursor);
  return cursor.offset >= cursor.text.length;
}
