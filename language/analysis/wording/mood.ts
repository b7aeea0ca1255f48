// Whether a sentence orders or states: what its main clause begins with, behind a condition or what else leads up to it. Says
// “unknown” wherever the closed lists do not tell.
import { DETERMINERS, FINITE, isOpener, PREPOSITIONS, SUBORDINATORS } from "./grammar-words.ts";
import { isGerund, isNounByEnding, MEASURES, PEOPLE, QUALITIES, STATES, THINGS } from "./nouns.ts";
import { isParticiple } from "./participles.ts";
import type { Sentence } from "./sentences.ts";
import { isBaseForm, isNounVerb, isPlainVerb } from "./verbs.ts";
import { wordList } from "./word-list.ts";
import type { Word } from "./words.ts";

export interface Mood {
  readonly mood: "command" | "statement" | "unknown";
  /** The word its main clause begins with: of a command, the verb. */
  readonly at: number;
}

/** @param verbs the shop's own, in small letters */
export function moodOf({ words }: Sentence, verbs: ReadonlySet<string>): Mood {
  return clauseMood(words, 0, verbs);
}

const LEADERS: ReadonlySet<string> = new Set([
  ...SUBORDINATORS,
  ...PREPOSITIONS,
  ...wordList("during except given per prior upon within unlike"),
]);
/** What is said of something may follow these without “that”: “Check valves are closed.” */
const TAKE_CLAUSES = wordList("check feel note watch show state");

function clauseMood(words: readonly Word[], from: number, verbs: ReadonlySet<string>): Mood {
  let at = from;
  while (at < words.length - 1 && isOpener(words[at]?.lower ?? "") && !isPlainVerb(words[at]?.lower ?? "", verbs)) at++;
  const first = words[at];
  const next = words[at + 1];
  if (first === undefined) return { mood: "unknown", at: from };
  const { lower } = first;
  if (lower === "do" || lower === "don't" || lower === "be" || lower === "never" || lower === "avoid")
    return { mood: "command", at };
  if (next === undefined) return { mood: isPlainVerb(lower, verbs) ? "command" : "unknown", at };
  const isSurelyVerb = DETERMINERS.has(next.lower) || isPlainVerb(lower, verbs);
  if (!isSurelyVerb && isLabelledValue(words, at)) return { mood: "statement", at };
  if (next.before.includes(":")) return { mood: "unknown", at };
  if (isPlainVerb(lower, verbs)) return { mood: FINITE.has(next.lower) ? "statement" : "command", at };
  if (isNounVerb(lower)) return { mood: isVerbHere(words, at) ? "command" : "statement", at };
  const behind = commandBehindComma(words, at, verbs);
  if (LEADERS.has(lower) || first.number !== undefined || isGerund(lower)) {
    if (behind !== null) return { mood: "command", at: behind };
    return isGerund(lower) ? { mood: "statement", at } : statedBehindComma(words, at);
  }
  // “All plugs out, drain the oil.” leads up to its order; “The cover is heavy, lift it by the eyes.” does not.
  if (behind !== null && !(DETERMINERS.has(lower) && finiteIn(words, at + 1) !== null)) return { mood: "unknown", at };
  return { mood: isStated(words, at) ? "statement" : "unknown", at };
}

/** “Torque of the plug: 25 N·m” */
function isLabelledValue(words: readonly Word[], from: number): boolean {
  return words.some(({ before, number }, at) => at > from && before.includes(":") && number?.unit != null);
}

/** A word that is a noun too, where a clause begins. */
function isVerbHere(words: readonly Word[], at: number): boolean {
  const [first, next] = [words[at], words[at + 1]];
  if (first === undefined || next === undefined) return false;
  if (DETERMINERS.has(next.lower)) return true;
  if (FINITE.has(next.lower) || (THINGS.has(first.lower) && isWithoutVerb(words, at))) return false;
  return TAKE_CLAUSES.has(first.lower) || finiteIn(words, at + 1) === null;
}

/** “Seal faces dry and clean”, “Oil level at the line”: a thing and how it is, or its measure, with no verb at all. */
function isWithoutVerb(words: readonly Word[], at: number): boolean {
  for (let end = at + 1; end <= at + 3; end++) {
    const { before, lower } = words[end] ?? { before: ",", lower: "" };
    if (before !== "" || DETERMINERS.has(lower) || PREPOSITIONS.has(lower)) return false;
    if (MEASURES.has(lower) || STATES.has(lower)) return true;
  }
  return false;
}

/** The verb of a statement, before any clause beside the main one. */
function finiteIn(words: readonly Word[], from: number): number | null {
  for (let at = from; at < words.length; at++) {
    const { lower, before } = words[at] as Word;
    if (FINITE.has(lower) || (at > from && isThirdPerson(words, at))) return at;
    if (SUBORDINATORS.has(lower) || (at > from && /[,;:]/.test(before))) return null;
  }
  return null;
}

function commandBehindComma(words: readonly Word[], from: number, verbs: ReadonlySet<string>): number | null {
  for (let at = from + 1; at < words.length; at++) {
    if (!/[,;:–—]/.test(words[at]?.before ?? "")) continue;
    let verb = at;
    while (isOpener(words[verb]?.lower ?? "") && !isPlainVerb(words[verb]?.lower ?? "", verbs)) verb++;
    const lower = words[verb]?.lower ?? "";
    const next = words[verb + 1]?.lower ?? "";
    const isCommand =
      lower === "do" ||
      lower === "don't" ||
      lower === "never" ||
      (isPlainVerb(lower, verbs) && !FINITE.has(next)) ||
      (isNounVerb(lower) && DETERMINERS.has(next));
    if (isCommand) return verb;
  }
  return null;
}

/** Behind a condition: “If it leaks, the seal is worn.” Without a comma it is not known where the main clause begins. */
function statedBehindComma(words: readonly Word[], from: number): Mood {
  for (let at = from + 1; at < words.length; at++) {
    if (!(words[at]?.before ?? "").includes(",")) continue;
    const finite = finiteIn(words, at);
    const isList = words.slice(at, finite ?? at).some(({ lower }) => lower === "or" || lower === "and");
    if (finite !== null && !isList && !isBaseForm(words[at]?.lower ?? "")) return { mood: "statement", at };
  }
  return { mood: "unknown", at: from };
}

/** Whether a clause that begins with no verb that is known shows by something else that it is no order. */
function isStated(words: readonly Word[], at: number): boolean {
  const [first, next] = [words[at] as Word, words[at + 1] as Word];
  if (isWithoutVerb(words, at) || DETERMINERS.has(first.lower) || PEOPLE.has(first.lower) || QUALITIES.has(first.lower))
    return true;
  // “Deglaze the bore.”: a verb that is not known.
  if (DETERMINERS.has(next.lower)) return false;
  if (finiteIn(words, at + 1) !== null || isParticiple(first.lower) || isParticiple(next.lower)) return true;
  if (isNounByEnding(first.lower)) return true;
  // “Gearbox to stand level.”
  if (next.lower === "to" && isBaseForm(words[at + 2]?.lower ?? "")) return true;
  // “Workshop checks the gap.”
  return isThirdPerson(words, at + 1);
}

/** “checks the”: the -s alone may be a plural. */
function isThirdPerson(words: readonly Word[], at: number): boolean {
  const lower = words[at]?.lower ?? "";
  const base = lower.replace(/e?s$/, "");
  return (
    lower.endsWith("s") && (isBaseForm(base) || isBaseForm(`${base}e`)) && DETERMINERS.has(words[at + 1]?.lower ?? "")
  );
}
