// Canonical spellings for the formatter. Never changes what a text means: what is in doubt stays as written.
import type { Kind } from "./kind.ts";
import { readUnit } from "./unit.ts";

/** The canonical spelling of a unit in a place of this kind (null: unknown to the caller); as written where unknown or in doubt. */
export function canonicalUnit(text: string, wanted: Kind | null): string {
  const reading = readUnit(text, wanted);
  return reading.ok && reading.ambiguous === null ? reading.unit.text : text;
}

/** The canonical spelling of a number: plain blanks, `1 1/2`, `3/8`; digits, points and underscores stay. */
export function canonicalNumber(text: string): string {
  return text
    .trim()
    .replace(/[\s\u00a0\u202f]+/g, " ")
    .replace(/ ?\/ ?/, "/");
}
