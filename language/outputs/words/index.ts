// The languages that outputs are written in, by code.
import { de } from "./de.ts";
import { en, type Words } from "./en.ts";

/** Code of BCP 47 to fixed words. */
export const WORDS: ReadonlyMap<string, Words> = new Map([
  ["en", en],
  ["de", de],
]);
