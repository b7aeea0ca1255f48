// What a text asks somebody to do, where it should only tell something: in a note, or of a hazard. Knows no statement.
import { DETERMINERS, isAdverb, PREPOSITIONS } from "./grammar-words.ts";
import { moodOf } from "./mood.ts";
import { type Sentence, sentencesOf } from "./sentences.ts";
import { isBaseForm, isNounVerb } from "./verbs.ts";
import { wordList } from "./word-list.ts";
import type { Word } from "./words.ts";

/**
 * The sentences that order an action, or forbid one. Pointing at a text or a fact is none.
 * @param verbs the shop's own, in small letters
 */
export function askedIn(text: string, verbs: ReadonlySet<string>): readonly string[] {
  return sentencesOf(text)
    .filter((sentence) => isOrder(sentence, verbs))
    .map(({ start, end }) => text.slice(start, end));
}

const POINTING = wordList("see refer note notice remember consult observe recall compare");
const FORBIDDING = wordList("do don't never avoid");

/** Only where what follows the verb cannot make a noun of it: “Screw heads are sharp.” */
function isOrder(sentence: Sentence, verbs: ReadonlySet<string>): boolean {
  const { mood, at } = moodOf(sentence, verbs);
  const verb = sentence.words[at];
  if (mood !== "command" || verb === undefined || POINTING.has(verb.lower)) return false;
  const next = sentence.words[at + 1];
  if (FORBIDDING.has(verb.lower) || next === undefined) return true;
  const { lower, number } = next;
  if (DETERMINERS.has(lower) || CLAUSES.has(lower) || isAdverb(lower)) return true;
  const rest = sentence.words.slice(at + 2);
  if (lower === "and" || lower === "or")
    return isBaseForm(rest[0]?.lower ?? "", verbs) && DETERMINERS.has(rest[1]?.lower ?? "");
  if ((verb.lower === "wear" || verb.lower === "use") && WORN.has(lower)) return true;
  if (isNounVerb(verb.lower)) return false;
  return OBJECTS.has(lower) || ((number !== undefined || PREPOSITIONS.has(lower)) && !rest.some(mayBeFinite));
}

/** “Check that the pin is out.” */
const CLAUSES = wordList("that if whether");
const WORN = wordList(
  "gloves goggles glasses boots clothing protection hearing eye face safety nitrile leather heat-resistant",
);
/** What an order may be about without an article: “Keep hands clear.” */
const OBJECTS = wordList(
  "hands fingers feet people others clothing oil grease air water power pressure parts tools only again sure clear",
);

/** “Heat in the casing rises quickly.” A plural at the very end is one, unless it is a verb: “Heat from the casing burns.” */
function mayBeFinite({ lower }: Word, at: number, { length }: readonly Word[]): boolean {
  return /[^su]s$/.test(lower) && (at < length - 1 || isBaseForm(lower.slice(0, -1)));
}
