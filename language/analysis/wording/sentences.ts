// A text as sentences: where they begin and end, with the abbreviations of the shop. Our own splitter, so that the same text has the
// same sentences on every machine. Knows no grammar.

import { wordList } from "./word-list.ts";
import { type Word, wordsOf } from "./words.ts";

export interface Sentence {
  readonly words: readonly Word[];
  /** From its first sign to its last, without blanks round it. */
  readonly start: number;
  readonly end: number;
}

/** The sentences of a text; an item of a list and what an empty line parts is one of its own. */
export function sentencesOf(text: string): readonly Sentence[] {
  const words = wordsOf(text);
  const ends = [...endsIn(text), text.length];
  const sentences: Sentence[] = [];
  let at = 0;
  let from = 0;
  for (const end of ends) {
    const own: Word[] = [];
    for (let word = words[at]; word !== undefined && word.start < end; word = words[++at]) own.push(word);
    const piece = text.slice(from, end);
    const start = from + piece.length - piece.trimStart().length;
    if (own.length > 0) sentences.push({ words: own, start, end: from + piece.trimEnd().length });
    from = end;
  }
  return sentences;
}

/** Abbreviations behind which no sentence ends. */
const NEVER_LAST = wordList(
  "e.g i.e cf ca vs approx fig figs no nos ref refs para paras sect sec ch app pos p pp dwg max incl excl viz mr mrs dr st",
);
/** Those that may be the last word: the sentence ends where the next word is capitalised. */
const MAYBE_LAST = wordList(
  "etc min hr hrs in ft lb lbs oz gal qt temp dia assy qty std ext int rev vol dept co inc ltd a.m p.m",
);

/** Just behind each sign that ends a sentence. */
function endsIn(text: string): readonly number[] {
  const ends: number[] = [];
  END.lastIndex = 0;
  for (let found = END.exec(text); found !== null; found = END.exec(text)) {
    const end = found.index + found[0].length;
    if (found[0].includes("\n") || isEnd(text, found.index, end)) ends.push(end);
  }
  return ends;
}

/** A full stop with the quotes and brackets behind it; an empty line; the line break before an item of a list. */
const END = /[.!?]+[”’"')\]]*(?=\s)|\n(?=\s*\n)|\n(?=\s*(?:[-–•*]|\(?[0-9a-z][.)])\s)/g;

function isEnd(text: string, stop: number, end: number): boolean {
  const next = /^\s+[“‘"'([]*(.)/su.exec(text.slice(end, end + 40))?.[1];
  if (next === undefined) return true;
  const isCapital = next !== next.toLowerCase();
  const isDigit = /[0-9{]/.test(next);
  if (!isCapital && !isDigit) return false;
  if (text.charAt(stop) !== ".") return true;
  const last = /[\p{L}\p{N}.]*$/u.exec(text.slice(Math.max(0, stop - 20), stop))?.[0] ?? "";
  const word = last.toLowerCase();
  // The initial of a name: “A. Moran”.
  if (/^\p{Lu}$/u.test(last)) return false;
  return !NEVER_LAST.has(word) && (isCapital || !MAYBE_LAST.has(word));
}
