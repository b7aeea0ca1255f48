// A passive order: “must be removed”, “is to be cleaned”, and what a sentence that orders nothing says is done.
import { BE, isAdverb, MODALS, SUBORDINATORS } from "./grammar-words.ts";
import type { Mood } from "./mood.ts";
import { isParticiple } from "./participles.ts";
import type { Sentence } from "./sentences.ts";
import type { Word } from "./words.ts";

/** From the helping verb to the participle. */
export interface Passive {
  readonly first: Word;
  readonly last: Word;
}

/**
 * The passive order in a sentence.
 * @param onlyWithModal a plain “is removed” only describes here
 */
export function passiveIn(
  { at: main, mood, words }: Mood & Pick<Sentence, "words">,
  onlyWithModal: boolean,
): Passive | null {
  let beside = false;
  for (let at = main; at < words.length; at++) {
    const word = words[at] as Word;
    if (/[,;]/.test(word.before)) beside = false;
    if (SUBORDINATORS.has(word.lower) && at > main && !(mood === "statement" && isRelative(word.lower))) beside = true;
    if (beside) continue;
    const order = orderAt(words, at);
    const plain = order === null && mood === "statement" && !onlyWithModal && BE.has(word.lower) ? at + 1 : null;
    const last = participleAt(words, order ?? plain);
    if (last !== null) return { first: word, last };
  }
  return null;
}

function isRelative(word: string): boolean {
  return word === "that" || word === "which" || word === "who";
}

/** Behind `must be`, `is to be`, `has to be`, `needs to be`: where the participle would stand. */
function orderAt(words: readonly Word[], at: number): number | null {
  const lower = (offset: number): string => words[at + offset]?.lower ?? "";
  const not = lower(1) === "not" || lower(1) === "always" || lower(1) === "never" || lower(1) === "also" ? 1 : 0;
  if (MODALS.has(lower(0)) && lower(not + 1) === "be") return at + not + 2;
  const isOrder = /^(?:is|are|has|have|needs|need)$/.test(lower(0));
  return isOrder && lower(not + 1) === "to" && lower(not + 2) === "be" ? at + not + 3 : null;
}

function participleAt(words: readonly Word[], from: number | null): Word | null {
  if (from === null) return null;
  let at = from;
  while (BETWEEN.test(words[at]?.lower ?? "") || isAdverb(words[at]?.lower ?? "")) at++;
  const word = words[at];
  return word !== undefined && !/[,;:]/.test(word.before) && isParticiple(word.lower) ? word : null;
}

const BETWEEN = /^(?:not|then|also|now|always|never|being|been|first|again|all|both)$/;
