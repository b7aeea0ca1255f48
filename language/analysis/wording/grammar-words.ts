// The small words of English that say how a sentence is built: articles, prepositions, conjunctions, helping verbs. Closed lists.
import { wordList } from "./word-list.ts";

/** What begins an object or a subject. */
export const DETERMINERS = wordList(`
  the a an this these those all each every both any no its their your his her our it them they you we he she another one two three four
`);
/** What can follow a verb as a part of it, or begin where, how or with what. */
export const PREPOSITIONS = wordList(`
  about above across after against along around at away back behind below beneath beside between by clockwise counterclockwise down for forward
  from home in inside into off on onto out outside over past round through to toward towards under until up upward upwards using via with without
`);
/** Conjunctions that begin a clause beside the main one. */
export const SUBORDINATORS = wordList(`
  after although as because before how if once since so than that though till unless until what when whenever where whereas whether which
  while who whose why
`);
/** Verbs that belong to a subject, where a sentence states something. */
export const FINITE = wordList(`
  is are was were isn't aren't must mustn't shall should shouldn't will won't would can can't cannot could may might has have had needs need
`);
export const BE = wordList("is are was were be been being isn't aren't gets get");
/** Those that make a statement an order. */
export const MODALS = wordList("must mustn't shall should shouldn't");

/** Whether a word is none that a shop could have as a verb of its own: `the`, `with`, `when`, `must`. */
export function isSmallWord(word: string): boolean {
  return [DETERMINERS, PREPOSITIONS, SUBORDINATORS, FINITE].some((list) => list.has(word));
}

const OPENERS = wordList(`
  please then next now first firstly second secondly third finally lastly again also always just and or but therefore otherwise instead
  thereafter afterwards afterward simultaneously only
`);
const NO_ADVERBS = wordList(
  "apply assembly supply reply rely comply family fly ply multiply anomaly belly only reassembly subassembly sub-assembly early",
);

/** Whether a word only leads up to the verb: `then`, `slowly`. */
export function isOpener(word: string): boolean {
  return OPENERS.has(word) || isAdverb(word);
}

/** Whether a word says how something is done: `slowly`. */
export function isAdverb(word: string): boolean {
  return word.length > 4 && word.endsWith("ly") && !NO_ADVERBS.has(word);
}

const ENGLISH = wordList(`
  the and with from for to until into that this its by at is are of not before after when if
`);

/** How many words there are, and how many of them are small words of English. */
export interface WordCount {
  readonly all: number;
  readonly small: number;
}

export function countWords(texts: readonly { readonly words: readonly { readonly lower: string }[] }[]): WordCount {
  let all = 0;
  let small = 0;
  for (const { words } of texts) {
    all += words.length;
    for (const { lower } of words) if (ENGLISH.has(lower)) small++;
  }
  return { all, small };
}

export function sumOf(counts: readonly WordCount[]): WordCount {
  return counts.reduce((so, count) => ({ all: so.all + count.all, small: so.small + count.small }), NO_WORDS);
}

const NO_WORDS: WordCount = { all: 0, small: 0 };

/** Whether some texts, as a whole, are English: one word in twenty or more is one of its small words. */
export function areEnglish(counts: readonly WordCount[]): boolean {
  const { all, small } = sumOf(counts);
  return small * 20 >= all;
}
