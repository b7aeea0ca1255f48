// Which way a rule goes on, asked of the functions that the parser generator has worked out for Langium's parser: whether an
// optional part follows, or which of several does. Knows where the generator keeps them, and no rule.
import { EOF, type ILookaheadStrategy, type IToken } from "chevrotain";
import type { LangiumParser } from "langium";

/** The tokens, and the one to be read next. */
export interface Reading {
  readonly tokens: readonly IToken[];
  readonly at: number;
}
/** Whether what is asked of follows; the number of the choice, or undefined where none fits. */
export type Guess = (reading: Reading) => boolean | number | undefined;

/** The choices and optional parts of one rule, each to be asked for once, in the order in which Langium builds a rule. */
export interface Guesses {
  readonly choice: () => Guess;
  readonly option: () => Guess;
  readonly many: () => Guess;
  readonly some: () => Guess;
}

// Chevrotain's keys: the sort of the part, and its number among those of this sort in the rule.
const SORTS = { choice: 1 << 8, option: 2 << 8, many: 3 << 8, some: 4 << 8 };

export function guessesOf(parser: LangiumParser, rule: string): Guesses {
  const { wrapper } = parser as unknown as { readonly wrapper: Generated };
  const ofRule = wrapper.lookAheadFuncsCache[wrapper.fullRuleNameToShort[`${rule}\u200B`] as number] ?? [];
  let [choices, options, loops] = [1, 1, 1];
  const guess = (key: number): Guess => {
    const look = ofRule[key];
    if (look === undefined) throw new Error(`No way to look ahead in ${rule}`);
    const ahead = new Ahead();
    return (reading) => {
      ahead.reading = reading;
      return look.call(ahead);
    };
  };
  return {
    choice: () => guess(SORTS.choice | choices++),
    option: () => guess(SORTS.option | options++),
    many: () => guess(SORTS.many | loops++),
    some: () => guess(SORTS.some | loops++),
  };
}

/**
 * Lets a parser that is not finished yet work out each of these functions when it is first called: most texts call a part of them only,
 * and all together take longer than reading a short text.
 */
export function lookAheadLate(parser: LangiumParser): void {
  const { wrapper } = parser as unknown as { readonly wrapper: { lookaheadStrategy: ILookaheadStrategy } };
  const { lookaheadStrategy: atOnce } = wrapper;
  wrapper.lookaheadStrategy = {
    validate: (options) => atOnce.validate(options),
    initialize: (options) => atOnce.initialize?.(options),
    buildLookaheadForAlternation: (options) => late(() => atOnce.buildLookaheadForAlternation(options)),
    buildLookaheadForOptional: (options) => late(() => atOnce.buildLookaheadForOptional(options)),
  };
}

function late<This, Args extends unknown[], Found>(
  build: () => (this: This, ...args: Args) => Found,
): (this: This, ...args: Args) => Found {
  let built: ((this: This, ...args: Args) => Found) | undefined;
  return function (...args) {
    built ??= build();
    return built.apply(this, args);
  };
}

interface Generated {
  readonly fullRuleNameToShort: Readonly<Record<string, number>>;
  readonly lookAheadFuncsCache: readonly (readonly (((this: Ahead) => boolean | number | undefined) | undefined)[])[];
}

/** What stands behind the last token. */
export const END_OF_TEXT: IToken = {
  image: "",
  startOffset: Number.NaN,
  tokenType: EOF,
  tokenTypeIdx: EOF.tokenTypeIdx as number,
};

/** What the functions see of a parser. */
class Ahead {
  reading: Reading = { tokens: [], at: 0 };

  LA(distance: number): IToken {
    return this.reading.tokens[this.reading.at + distance - 1] ?? END_OF_TEXT;
  }

  LA_FAST(distance: number): IToken {
    return this.reading.tokens[this.reading.at + distance - 1] ?? END_OF_TEXT;
  }
}
