// What there is to find in the own words of a file: each text is taken apart once, and looked at as its use asks for. Looks at words
// only; knows no state.
import { type OwnWords, placeIn, type Wording } from "#model/own-words.ts";
import type { Item, Step } from "#model/procedure.ts";
import { keptByText } from "../kept-by-text.ts";
import { actionsIn } from "./actions.ts";
import { driftIn, valuesOf } from "./drift.ts";
import { countWords, isSmallWord, sumOf, type WordCount } from "./grammar-words.ts";
import { type Mood, moodOf } from "./mood.ts";
import { passiveIn } from "./passive.ts";
import { type Sentence, sentencesOf } from "./sentences.ts";
import { type TermFinder, termFinder } from "./terms.ts";
import { vagueIn } from "./vague.ts";
import type { WordingFact } from "./wording-fact.ts";
import type { Word } from "./words.ts";

/** The own words of a procedure, or of what stands outside, taken apart. */
export interface Apart {
  readonly wording: Wording;
  readonly texts: readonly TakenApart[];
  readonly count: WordCount;
}

export function takeApart(wording: Wording): Apart {
  const texts = wording.texts.map((text) => ({ ...text, sentences: sentencesIn(text.text) }));
  return { wording, texts, count: sumOf(texts.map(({ sentences }) => countIn(sentences))) };
}

const sentencesIn = keptByText(sentencesOf);

/** The sentences of a text are the same as long as it is kept, so what is found in them is kept with them. */
const counts = new WeakMap<readonly Sentence[], WordCount>();

function countIn(sentences: readonly Sentence[]): WordCount {
  const known = counts.get(sentences) ?? countWords(sentences);
  counts.set(sentences, known);
  return known;
}

/**
 * Everything found in some own words.
 * @param isEnglish whether the words of the file are, as a whole; of others nothing is said about how sentences are built
 */
export function wordingFactsIn({ texts, wording }: Apart, isEnglish: boolean): readonly WordingFact[] {
  const { procedure, terms, verbs } = wording;
  const steps = stepsByStart(procedure?.items ?? []);
  const finder = termFinder(terms, verbs);
  const ofTheShop = [...verbs].join(" ");
  return texts.flatMap((text) => [
    ...(isEnglish ? sentenceFacts(text, verbs, ofTheShop) : []),
    ...driftFacts(text, steps),
    ...termFacts(text, finder),
  ]);
}

/** More words than these are hard to take in while working: ASD-STE100, rules 5.1 and 6.2 (second hand). */
const MOST_WORDS = { instruction: 20, description: 25 } as const;

interface TakenApart extends OwnWords {
  readonly sentences: readonly Sentence[];
}

type WithoutSpan<Fact> = Fact extends WordingFact ? Omit<Fact, "span"> : never;
/** What is found in the sentences of a text, by where it stands in the text. */
type Found = WithoutSpan<Exclude<WordingFact, { readonly kind: "number drift" | "replaced term" }>> & {
  readonly start: number;
  readonly end: number;
};
type Text = Pick<TakenApart, "sentences" | "text" | "use">;

/** By the use of the text and the verbs of the shop. */
const found = new WeakMap<readonly Sentence[], Map<string, readonly Found[]>>();

function sentenceFacts(text: TakenApart, verbs: Wording["verbs"], ofTheShop: string): readonly WordingFact[] {
  if (text.use === "title") return [];
  const { sentences, use } = text;
  const known = found.get(sentences) ?? new Map<string, readonly Found[]>();
  found.set(sentences, known);
  const key = `${use} ${ofTheShop}`;
  const all = known.get(key) ?? foundIn(text, verbs);
  known.set(key, all);
  return all.map(({ start, end, ...fact }) => ({ ...fact, span: placeIn(text, start, end) }));
}

function foundIn(text: Text, verbs: Wording["verbs"]): readonly Found[] {
  const long = text.use === "look" ? [] : text.sentences.flatMap((sentence) => longIn(text, sentence));
  const vague = text.sentences.flatMap((sentence) => vagueWords(text, sentence));
  return text.use === "instruction" ? [...long, ...vague, ...orderIn(text, verbs)] : [...long, ...vague];
}

function longIn(text: Text, { words, start, end }: Sentence): readonly Found[] {
  const use = text.use === "description" ? "description" : "instruction";
  const most = MOST_WORDS[use];
  if (words.length <= most) return [];
  return [{ kind: "long sentence", start, end, words: words.length, most, use }];
}

function vagueWords({ text, use }: Text, sentence: Sentence): readonly Found[] {
  return vagueIn(text, sentence, use === "description").map(({ start, end, text: words }) => ({
    kind: "vague",
    start,
    end,
    words,
  }));
}

/** Whether an instruction orders, and one thing only. A passive order is not told of as one without its verb as well. */
function orderIn(text: Text, verbs: Wording["verbs"]): readonly Found[] {
  const sentences = text.sentences.map((sentence) => ({ ...sentence, ...moodOf(sentence, verbs) }));
  const passive = sentences.flatMap((sentence, index): readonly Found[] => {
    const inIt = passiveIn(sentence, index > 0);
    if (inIt === null) return [];
    const [start, end] = [inIt.first.start, inIt.last.end];
    return [{ kind: "passive", start, end, words: text.text.slice(start, end) }];
  });
  return [
    ...passive,
    ...manyActions(actionsIn(sentences, verbs)),
    ...(passive.length > 0 ? [] : notImperative(sentences[0])),
  ];
}

function manyActions(actions: readonly Word[]): readonly Found[] {
  const second = actions[1];
  if (second === undefined) return [];
  const verbs = actions.map((verb) => verb.text);
  return [{ kind: "many actions", start: second.start, end: second.end, verbs }];
}

/** What follows the first sentence may describe. */
function notImperative(first: (Sentence & Mood) | undefined): readonly Found[] {
  const word = first?.words[first.at];
  if (first?.mood !== "statement" || word === undefined) return [];
  const mayBeVerb = word.number === undefined && !isSmallWord(word.lower);
  return [{ kind: "not imperative", start: word.start, end: word.end, word: word.text, mayBeVerb }];
}

function driftFacts(text: TakenApart, steps: ReadonlyMap<number, Step>): readonly WordingFact[] {
  if (text.use !== "instruction" && text.use !== "look") return [];
  const words = wordsWithUnits(text.sentences);
  const step = words.length === 0 ? undefined : steps.get(text.step?.start ?? -1);
  if (step === undefined) return [];
  return driftIn(text.text, words, valuesOf(step)).map(({ declared, quantity, word }) => ({
    kind: "number drift",
    span: placeIn(text, word.start, word.end),
    words: word.text,
    quantity,
    declared,
  }));
}

/** All words, where one of them is a number with a unit, without which none is a quantity; else none. */
function wordsWithUnits(sentences: readonly Sentence[]): readonly Word[] {
  const known = measured.get(sentences);
  if (known !== undefined) return known;
  const words = sentences.flatMap((sentence) => sentence.words);
  const some = words.some(({ number }) => number !== undefined && number.unit !== null) ? words : [];
  measured.set(sentences, some);
  return some;
}

const measured = new WeakMap<readonly Sentence[], readonly Word[]>();

function termFacts(text: TakenApart, finder: TermFinder): readonly WordingFact[] {
  return finder(text.text).map(({ approved, article, end, start, term, text: words }) => ({
    kind: "replaced term",
    span: placeIn(text, start, end),
    words,
    approved,
    article: article === null ? null : { span: placeIn(text, article.start, article.end), text: article.text },
    term: term.span,
  }));
}

function stepsByStart(items: readonly Item[]): ReadonlyMap<number, Step> {
  return new Map(stepsIn(items).map((step) => [step.span.start, step]));
}

function stepsIn(items: readonly Item[]): readonly Step[] {
  return items.flatMap((item): readonly Step[] => {
    switch (item.kind) {
      case "step":
        return [item];
      case "task":
      case "repeat":
      case "any order":
        return stepsIn(item.items);
      case "when":
        return [...item.arms.flatMap((arm) => stepsIn(arm.items)), ...stepsIn(item.otherwise ?? [])];
      default:
        return [];
    }
  });
}
