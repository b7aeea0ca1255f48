// What there is to find in the own words of a file: each text is taken apart once, and looked at as its use asks for. Looks at words
// only; knows no state.
import type { Value } from "#model/declarations.ts";
import { type OwnWords, placeIn, type Wording } from "#model/own-words.ts";
import type { Item, Step } from "#model/procedure.ts";
import { actionsIn } from "./actions.ts";
import { driftIn, valuesOf } from "./drift.ts";
import { countWords, isSmallWord, type WordCount } from "./grammar-words.ts";
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
  const texts = wording.texts.map((text) => ({ ...text, sentences: sentencesOf(text.text) }));
  return { wording, texts, count: countWords(texts.flatMap(({ sentences }) => sentences)) };
}

/**
 * Everything found in some own words.
 * @param isEnglish whether the words of the file are, as a whole; of others nothing is said about how sentences are built
 */
export function wordingFactsIn({ texts, wording }: Apart, isEnglish: boolean): readonly WordingFact[] {
  const { procedure, terms, verbs } = wording;
  const values = valuesByStep(procedure?.items ?? []);
  const finder = termFinder(terms, verbs);
  return texts.flatMap((text) => [
    ...(isEnglish ? sentenceFacts(text, verbs) : []),
    ...driftFacts(text, values.get(text.step?.start ?? -1) ?? []),
    ...termFacts(text, finder),
  ]);
}

/** More words than these are hard to take in while working: ASD-STE100, rules 5.1 and 6.2 (second hand). */
const MOST_WORDS = { instruction: 20, description: 25 } as const;

interface TakenApart extends OwnWords {
  readonly sentences: readonly Sentence[];
}

function sentenceFacts(text: TakenApart, verbs: Wording["verbs"]): readonly WordingFact[] {
  if (text.use === "title") return [];
  const long = text.use === "look" ? [] : text.sentences.flatMap((sentence) => longFacts(text, sentence));
  const vague = text.sentences.flatMap((sentence) => vagueFacts(text, sentence));
  return text.use === "instruction" ? [...long, ...vague, ...orderFacts(text, verbs)] : [...long, ...vague];
}

function longFacts(text: TakenApart, { words, start, end }: Sentence): readonly WordingFact[] {
  const use = text.use === "description" ? "description" : "instruction";
  const most = MOST_WORDS[use];
  if (words.length <= most) return [];
  return [{ kind: "long sentence", span: placeIn(text, start, end), words: words.length, most, use }];
}

function vagueFacts(text: TakenApart, sentence: Sentence): readonly WordingFact[] {
  return vagueIn(text.text, sentence, text.use === "description").map(({ start, end, text: words }) => ({
    kind: "vague",
    span: placeIn(text, start, end),
    words,
  }));
}

/** Whether an instruction orders, and one thing only. A passive order is not told of as one without its verb as well. */
function orderFacts(text: TakenApart, verbs: Wording["verbs"]): readonly WordingFact[] {
  const sentences = text.sentences.map((sentence) => ({ ...sentence, ...moodOf(sentence, verbs) }));
  const passive = sentences.flatMap((sentence, index): readonly WordingFact[] => {
    const found = passiveIn(sentence, index > 0);
    if (found === null) return [];
    const [start, end] = [found.first.start, found.last.end];
    return [{ kind: "passive", span: placeIn(text, start, end), words: text.text.slice(start, end) }];
  });
  return [
    ...passive,
    ...manyActions(text, actionsIn(sentences, verbs)),
    ...(passive.length > 0 ? [] : notImperative(text, sentences[0])),
  ];
}

function manyActions(text: OwnWords, actions: readonly Word[]): readonly WordingFact[] {
  const second = actions[1];
  if (second === undefined) return [];
  const verbs = actions.map((verb) => verb.text);
  return [{ kind: "many actions", span: placeIn(text, second.start, second.end), verbs }];
}

/** What follows the first sentence may describe. */
function notImperative(text: OwnWords, first: (Sentence & Mood) | undefined): readonly WordingFact[] {
  const word = first?.words[first.at];
  if (first?.mood !== "statement" || word === undefined) return [];
  const mayBeVerb = word.number === undefined && !isSmallWord(word.lower);
  return [{ kind: "not imperative", span: placeIn(text, word.start, word.end), word: word.text, mayBeVerb }];
}

function driftFacts(text: TakenApart, values: readonly Value[]): readonly WordingFact[] {
  if (text.use !== "instruction" && text.use !== "look") return [];
  const words = text.sentences.flatMap((sentence) => sentence.words);
  return driftIn(text.text, words, values).map(({ declared, quantity, word }) => ({
    kind: "number drift",
    span: placeIn(text, word.start, word.end),
    words: word.text,
    quantity,
    declared,
  }));
}

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

/** The values of each step, by where it begins. */
function valuesByStep(items: readonly Item[]): ReadonlyMap<number, readonly Value[]> {
  const values = new Map<number, readonly Value[]>();
  for (const step of stepsIn(items)) values.set(step.span.start, valuesOf(step));
  return values;
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
