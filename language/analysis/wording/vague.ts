// Words that leave to the reader how much, how well or whether: as data, each with what makes it exact after all.
import type { Sentence } from "./sentences.ts";

export interface Vague {
  /** As written. */
  readonly text: string;
  /** Offsets in the text the sentence stands in. */
  readonly start: number;
  readonly end: number;
}

/**
 * The vague words in a sentence that gives no criterion for them.
 * @param isDescription nothing is done there: only what it asks for can be vague
 */
export function vagueIn(text: string, sentence: Sentence, isDescription = false): readonly Vague[] {
  const own = text.slice(sentence.start, sentence.end);
  if (!ANY.test(own)) return [];
  const found: Vague[] = [];
  for (const { words, unless, asksFor } of VAGUE) {
    if (isDescription && asksFor !== true) continue;
    words.lastIndex = 0;
    for (let match = words.exec(own); match !== null; match = words.exec(own)) {
      if (unless.test(own.slice(match.index + match[0].length))) continue;
      found.push({
        text: match[0],
        start: sentence.start + match.index,
        end: sentence.start + match.index + match[0].length,
      });
    }
  }
  return found.length === 0 || hasCriterion(own, sentence) ? [] : found.sort((a, b) => a.start - b.start);
}

/** A quantity, a document or mark to look at, or what is to be reached. */
function hasCriterion(own: string, { words }: Sentence): boolean {
  return words.some(({ number }) => number?.unit != null) || CRITERION.test(own);
}

const CRITERION =
  /\b(?:per|according to|in accordance with|as (?:shown|given|listed|specified|described|marked|stated)|(?:shown|given|listed|specified|stated) in|see|refer to|until|so that|such that|table|figure|fig\.|drawing|section|chapter|to the (?:mark|line|stop))\b/i;

interface VagueWords {
  readonly words: RegExp;
  /** What follows and says enough. */
  readonly unless: RegExp;
  /** Says what has to be, also where nothing is ordered: “The gears need sufficient oil.” */
  readonly asksFor?: true;
}

const NEVER = /^(?!)/;
/** “sufficient grease to cover the teeth”, “enough for a full turn”. */
const PURPOSE = /^(?:\s+[\w-]+){0,6}?\s+(?:to\s+(?!(?:the|an?|all|both|each|every|its|this)\b)[a-z]|that\s)|^\s+for\s/;
/** “as required by table 3”. */
const AT_ONCE = /^\s+(?:to\s+[a-z]|for\s|by\s|per\s|on\s|in\s+order)/;

const VAGUE: readonly VagueWords[] = [
  { words: phrases("as (?:required|needed|necessary|appropriate|applicable|desired)"), unless: AT_ONCE },
  {
    words: phrases("(?:if|where|when|whenever|wherever) (?:required|needed|necessary|appropriate|applicable|possible)"),
    unless: AT_ONCE,
  },
  { words: phrases("as [a-z]+ as (?:possible|practicable|necessary)"), unless: NEVER },
  { words: phrases("(?:in)?sufficient(?:ly)?|(?:in)?adequate(?:ly)?|enough"), unless: PURPOSE, asksFor: true },
  {
    words: phrases(
      "properly|correctly|appropriately|suitably|satisfactorily|securely|reasonably|excessively|periodically|regularly|occasionally",
    ),
    unless: NEVER,
  },
  {
    words: phrases("proper|appropriate|suitable|satisfactory|reasonable|excessive|acceptable"),
    unless: /^\s+(?:to|for)\s/,
    asksFor: true,
  },
  { words: phrases("(?<=\\b(?:the|a|an|its|their|is|are)\\s)correct"), unless: NEVER },
  { words: phrases("(?:in )?good (?:condition|order|fit|seal)|good working (?:order|condition)"), unless: NEVER },
  {
    words: phrases(
      "too (?:much|little|tight|loose|hot|cold|long|short|worn)|regular intervals|a little|a bit of|a few|a small amount|some amount|from time to time|and so on|etc",
    ),
    unless: NEVER,
  },
];

/** Most sentences hold none of them. */
const ANY = new RegExp(VAGUE.map(({ words }) => words.source).join("|"), "i");

function phrases(alternatives: string): RegExp {
  return new RegExp(`(?<![\\w-])(?:${alternatives})(?![\\w-])`, "gi");
}
