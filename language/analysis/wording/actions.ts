// How many actions one instruction asks for: its commands, and in each the verbs that are joined to the first. Those that are done
// together, or only look at what the other does, count as one.
import { DETERMINERS, isOpener, SUBORDINATORS } from "./grammar-words.ts";
import type { Mood } from "./mood.ts";
import type { Sentence } from "./sentences.ts";
import { isNounVerb, isPlainVerb } from "./verbs.ts";
import { wordList } from "./word-list.ts";
import type { Word } from "./words.ts";

/** The verbs of the actions that sentences ask for, in order; each with its mood. */
export function actionsIn(
  sentences: readonly (Mood & Pick<Sentence, "words">)[],
  verbs: ReadonlySet<string>,
): readonly Word[] {
  return sentences.flatMap(({ at, mood, words }) => (mood === "command" ? actionsFrom(words, at, verbs) : []));
}

/** Verbs that say how, or that something is so; none is an action beside another. */
const NO_ACTIONS = wordList(
  "allow avoid be consult continue do don't ensure follow keep leave let never note notice observe refer repeat see use wear",
);
const NO_ACTIONS_WITH: Readonly<Record<string, string>> = { make: "sure", take: "care" };
/** Looking at what another action does, or writing it down. */
const LOOKS = wordList("confirm feel listen look record verify watch write");
const LOOKS_IF = wordList("for that if whether it how");
/** What goes on while something else is done. */
const HOLDING = wordList("hold keep support steady restrain brace grip");
const AT_ONCE = wordList("simultaneously together while");
const AT_ONCE_PAIRS: Readonly<Record<string, string>> = { as: "you", same: "time" };
/** Before a noun they say where something is: “key in your pocket”. */
const PLACES = wordList("in into on over");
const PARTICLES = wordList("on off up down out in back away over into onto onwards together");

function actionsFrom(words: readonly Word[], main: number, verbs: ReadonlySet<string>): readonly Word[] {
  const first = words[main] as Word;
  if (HOLDING.has(first.lower) || words.some((_, at) => isAtOnce(words, at))) return [first];
  const found = isNoAction(words, main) ? [] : [first];
  let beside = false;
  for (let at = main + 1; at < words.length; at++) {
    const { before, lower } = words[at] as Word;
    if (isBeside(words, at, verbs)) beside = true;
    const isJoined = lower === "and" || lower === "then" || /[,;/]/.test(before);
    if (!isJoined) continue;
    const verb = behindOpeners(words, at, verbs);
    const isStrong =
      lower === "then" || before.includes(";") || (before.includes(",") && words[verb - 1]?.lower === "then");
    if (beside && !isStrong) continue;
    // “Close and lock the valves”: one act on one thing.
    const isShared = at === main + 1 && lower === "and";
    if (!isShared && isAction(words, verb, verbs) && !found.includes(words[verb] as Word))
      found.push(words[verb] as Word);
  }
  return found;
}

/** Where a clause begins that is none of the actions: “until it stops”, “to free the ring”; “if needed” is over at once. */
function isBeside(words: readonly Word[], at: number, verbs: ReadonlySet<string>): boolean {
  const [lower, next, behind] = [words[at]?.lower ?? "", words[at + 1]?.lower ?? "", words[at + 2]?.lower ?? ""];
  if (SUBORDINATORS.has(lower)) return !SHORT.has(next);
  return lower === "to" && (isPlainVerb(next, verbs) || (isNounVerb(next) && DETERMINERS.has(behind)));
}

const SHORT = wordList("needed necessary required possible applicable");

function isNoAction(words: readonly Word[], at: number): boolean {
  return NO_ACTIONS.has(words[at]?.lower ?? "") || isPair(NO_ACTIONS_WITH, words, at);
}

function isAtOnce(words: readonly Word[], at: number): boolean {
  const { lower } = words[at] as Word;
  return AT_ONCE.has(lower) || isPair(AT_ONCE_PAIRS, words, at);
}

function isPair(pairs: Readonly<Record<string, string>>, words: readonly Word[], at: number): boolean {
  const { lower } = words[at] ?? { lower: "" };
  return Object.hasOwn(pairs, lower) && pairs[lower] === words[at + 1]?.lower;
}

function behindOpeners(words: readonly Word[], from: number, verbs: ReadonlySet<string>): number {
  let at = from;
  while (isOpener(words[at]?.lower ?? "") && !isPlainVerb(words[at]?.lower ?? "", verbs)) at++;
  return at;
}

function isAction(words: readonly Word[], at: number, verbs: ReadonlySet<string>): boolean {
  const { lower } = words[at] ?? { lower: "" };
  const next = words[at + 1]?.lower ?? "";
  if (isNoAction(words, at) || HOLDING.has(lower) || LOOKS.has(lower) || (lower === "check" && LOOKS_IF.has(next)))
    return false;
  if (isPlainVerb(lower, verbs)) return true;
  const isLast = words[at + 2] === undefined || words[at + 2]?.before !== "";
  return isNounVerb(lower) && (DETERMINERS.has(next) || (PARTICLES.has(next) && (isLast || !PLACES.has(next))));
}
