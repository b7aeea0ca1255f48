// The lexer of Sprag: Chevrotain's, over the tokens that Langium builds from the grammar. Knows no rule of the grammar.
import { type ILexingError, type IToken, Lexer, type TokenType } from "chevrotain";
import { SpragGrammar } from "#grammar/generated/grammar.ts";
import { SpragTokenBuilder } from "#grammar/token-builder.ts";
import { scanUnit } from "#quantity/scan.ts";

export interface SpragLexer {
  read(text: string): Lexed;
  /** By the names of terminals, and keywords as written. */
  readonly types: Readonly<Record<string, TokenType>>;
}

/** Each in the order of the text. */
export interface Lexed {
  readonly tokens: IToken[];
  readonly errors: ILexingError[];
  /** Comments. */
  readonly hidden: IToken[];
}

export function createLexer(): SpragLexer {
  const types = new SpragTokenBuilder(scanUnit).buildTokens(SpragGrammar()) as TokenType[];
  const lexer = new Lexer(types, { positionTracking: "full", skipValidations: true });
  return {
    read: (text) => {
      const { errors, groups, tokens } = lexer.tokenize(text);
      return { tokens, errors, hidden: groups.hidden ?? [] };
    },
    types: Object.fromEntries(types.map((type) => [type.name, type])),
  };
}
