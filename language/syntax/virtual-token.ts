// Tokens that are not in the text as the parser gets them: left out ones put in, mistyped ones put right, damage as one.
import type { IToken, TokenType } from "chevrotain";

/** A token of no length before `before`; its image is empty. */
export function missingBefore(type: TokenType, before: IToken): IToken {
  return zeroLength(type, before.startOffset, before.startLine ?? 1, before.startColumn ?? 1);
}

/** A token of no length just after `after`. */
export function missingAfter(type: TokenType, after: IToken): IToken {
  return zeroLength(type, endOf(after), after.endLine ?? 1, (after.endColumn ?? 0) + 1);
}

/** The same place read as another token. */
export function readAs(type: TokenType, token: IToken, image = token.image): IToken {
  return { ...token, tokenType: type, tokenTypeIdx: type.tokenTypeIdx as number, image };
}

/** All tokens from `first` to `last` as one. */
export function asOneToken(type: TokenType, text: string, first: IToken, last: IToken): IToken {
  const image = text.slice(first.startOffset, endOf(last));
  return { ...last, ...startOf(first), tokenType: type, tokenTypeIdx: type.tokenTypeIdx as number, image };
}

/** The offset just behind a token. */
export function endOf(token: IToken): number {
  return token.startOffset + token.image.length;
}

/** Whether the token was put in and is not in the text. */
export function isMissing(token: IToken): boolean {
  return token.image === "";
}

function startOf(token: IToken) {
  const { startOffset, startLine, startColumn } = token;
  return { startOffset, startLine: startLine ?? 1, startColumn: startColumn ?? 1 };
}

function zeroLength(type: TokenType, offset: number, line: number, column: number): IToken {
  return {
    image: "",
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx as number,
    startOffset: offset,
    endOffset: offset,
    startLine: line,
    endLine: line,
    startColumn: column,
    endColumn: column,
  };
}
