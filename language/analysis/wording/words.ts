// A text as words with their places: a number with its unit is one word, so is a word with hyphens. Knows no grammar.
import { scanUnit } from "#quantity/scan.ts";

export interface Word {
  /** As written. */
  readonly text: string;
  /** In small letters. */
  readonly lower: string;
  /** Offsets in the text. */
  readonly start: number;
  readonly end: number;
  /** Set where it is a number: the number, and its unit if it has one. */
  readonly number?: { readonly text: string; readonly unit: string | null };
  /** The signs between it and the word before, without blanks. */
  readonly before: string;
}

/** The words of a text in order. */
export function wordsOf(text: string): readonly Word[] {
  const words: Word[] = [];
  let from = 0;
  WORD.lastIndex = 0;
  for (let found = WORD.exec(text); found !== null; found = WORD.exec(text)) {
    const start = found.index;
    const before = text.slice(from, start).replace(/\s+/g, "");
    const number = numberAt(text, start, found[0]);
    const end = number?.end ?? start + found[0].length;
    const own = text.slice(start, end);
    const word = { text: own, lower: own.toLowerCase().replaceAll("’", "'"), start, end, before };
    words.push(number === null ? word : { ...word, number: { text: number.text, unit: number.unit } });
    WORD.lastIndex = end;
    from = end;
  }
  return words;
}

/** Letters and digits with what may stand inside a word, or a loop variable in braces. */
const WORD = /\{\s*[\p{L}_][\p{L}\p{N}_]*\s*\}|\d+(?:,\d+)+(?:\.\d+)?|[\p{L}\p{N}_]+(?:[’'‐‑./-][\p{L}\p{N}_]+)*/gu;
const NUMBER = /\d+[ \u00a0]\d+\/\d+(?![\d./])|\d+\/\d+(?![\d./])|\d+(?:\.\d+)?(?![\d.]*\.\d)/y;

/** The number that a word is, or begins with and goes on with its unit: `40`, `40N·m`. A comma may part decimals or thousands. */
function numberAt(
  text: string,
  start: number,
  plain: string,
): { text: string; unit: string | null; end: number } | null {
  NUMBER.lastIndex = start;
  const number = plain.includes(",") ? undefined : NUMBER.exec(text)?.[0];
  if (number === undefined) return null;
  const after = start + number.length;
  if (after < start + plain.length) {
    const close = scanUnit(text, after);
    if (close === null || !close.known || close.end < start + plain.length) return null;
    return { text: number, unit: text.slice(after, close.end), end: close.end };
  }
  const blank = /[ \t\u00a0\u202f]/.test(text.charAt(after)) ? 1 : 0;
  const unit = scanUnit(text, after + blank);
  if (unit === null || !unit.known) return { text: number, unit: null, end: after };
  const written = text.slice(after + blank, unit.end);
  // “Put 3 in each hole.” speaks of no inches.
  if (written === "in" && blank === 1 && !ENDS_INCHES.test(text.slice(unit.end))) {
    return { text: number, unit: null, end: after };
  }
  return { text: number, unit: written, end: unit.end };
}

const ENDS_INCHES = /^(?:\s*(?:$|[.,;:)])|\s+(?:or|and|of|to|from|long|wide|deep|thick|apart|above|below)\b)/;
