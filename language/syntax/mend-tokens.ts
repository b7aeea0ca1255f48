// From text to tokens that are worth parsing: strings and comments left open, curly quotes, characters that mean nothing and numbers
// written otherwise are told here and read as they were meant. Knows no statement.
import type { ILexingError, IToken } from "chevrotain";
import { readCurlyStrings } from "./curly-strings.ts";
import type { SpragLexer } from "./lexer.ts";
import { readLongNumbers } from "./long-numbers.ts";
import { readPlusMinus, tellNumbers } from "./mend-numbers.ts";
import { limitNesting } from "./nesting.ts";
import { hasOpenString, readOpenStrings } from "./open-strings.ts";
import { readOpenTextBlocks } from "./open-text-blocks.ts";
import { readOpenUnits } from "./open-units.ts";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { openerOf, typeName } from "./statements.ts";
import { lineEnd } from "./text-line.ts";
import { readUnitsBelow } from "./units-below.ts";
import { endOf } from "./virtual-token.ts";

export interface MendedTokens {
  readonly tokens: readonly IToken[];
  /** Comments. */
  readonly hidden: readonly IToken[];
  readonly problems: readonly SyntaxProblem[];
}

export function mendTokens(grammar: Recogniser, lexer: SpragLexer, text: string, path: string): MendedTokens {
  const lexed = lexer.read(text);
  const problems: SyntaxProblem[] = [];
  const note = (problem: SyntaxProblem) => problems.push(problem);
  let tokens: readonly IToken[] = lexed.tokens;
  let errors: readonly ILexingError[] = lexed.errors;
  if (errors.length > 0) ({ tokens, errors } = readCurlyStrings({ grammar, text, path, note }, tokens, errors));
  if (hasOpenString(tokens)) ({ tokens, errors } = readOpenTextBlocks({ lexer, text, path, note }, tokens, errors));
  if (hasOpenString(tokens)) tokens = readOpenStrings({ lexer, text, path, note }, tokens);
  ({ tokens, errors } = readUnitsBelow({ grammar, text, path, note }, tokens, errors));
  ({ tokens, errors } = readOpenUnits({ text, path, note }, tokens, errors));
  tokens = dropOpenComments(tokens, text, path, note);
  tokens = dropSecondBraces(tokens, path, note);
  ({ tokens, errors } = readLongNumbers({ grammar, text, path, note }, tokens, errors));
  if (errors.length > 0) tokens = tellCharacters(grammar, tokens, errors, text, path, note);
  tokens = readPlusMinus(grammar, tokens, path, note);
  tokens = tellNumbers(grammar, tokens, text, path, note);
  return { tokens: limitNesting(grammar, tokens, path, note), hidden: lexed.hidden, problems };
}

type Note = (problem: SyntaxProblem) => void;

/* ---- comments ---- */

/** `/*` without its end swallows the rest of its line, no more: what follows is likelier meant. */
function dropOpenComments(tokens: readonly IToken[], text: string, path: string, note: Note): readonly IToken[] {
  const opens = (at: number) =>
    typeName(tokens[at]) === "/" &&
    typeName(tokens[at + 1]) === "*" &&
    endOf(tokens[at] as IToken) === tokens[at + 1]?.startOffset;
  if (!tokens.some((_, at) => opens(at))) return tokens;
  let droppedLine = -1;
  return tokens.filter((token, at) => {
    if (token.startLine === droppedLine) return false;
    if (!opens(at)) return true;
    droppedLine = token.startLine ?? -1;
    const start = token.startOffset;
    const end = lineEnd(text, start);
    note({
      kind: "unclosed",
      what: "comment",
      header: "/*",
      span: { path, start, end: start + 2 },
      closeAt: { path, start: end, end },
    });
    return false;
  });
}

/* ---- braces ---- */

/** `{ {`: no block begins with a block. The second goes, and with it its partner where it has one of its own. */
function dropSecondBraces(tokens: readonly IToken[], path: string, note: Note): readonly IToken[] {
  const isSecond = (at: number) => typeName(tokens[at]) === "{" && typeName(tokens[at - 1]) === "{";
  if (!tokens.some((_, at) => isSecond(at))) return tokens;
  const dropped = new Set<number>();
  let open = tokens.reduce((sum, token) => sum + ({ "{": 1, "}": -1 }[typeName(token)] ?? 0), 0);
  let told = 0;
  tokens.forEach((token, at) => {
    if (!isSecond(at) || told === MOST_TOLD) return;
    const isAlone = open > 0;
    // In a task or branch it may be a step that lost its word.
    if (!isAlone && HOLDS_STEPS.test(openerOf(tokens, at - 1))) return;
    told++;
    dropped.add(at);
    if (isAlone) open--;
    else dropped.add(closing(tokens, at));
    const place = { path, start: token.startOffset, end: endOf(token) };
    const slip = { name: "brace twice", mended: isAlone ? "" : null };
    note({ kind: "unexpected", span: place, found: "{", expected: [], within: "", after: "", slip });
  });
  return tokens.filter((_, at) => !dropped.has(at));
}

/** More than this many are told by what they leave behind. */
const MOST_TOLD = 8;
const HOLDS_STEPS = /^(?:procedure|task|repeat|when|otherwise|in any order|)$/;

/** The `}` of the `{` at `at`; the end where there is none. */
function closing(tokens: readonly IToken[], at: number): number {
  let depth = 0;
  for (let i = at; i < tokens.length; i++) {
    depth += { "{": 1, "}": -1 }[typeName(tokens[i])] ?? 0;
    if (depth === 0) return i;
  }
  return tokens.length;
}

/* ---- characters ---- */

/** One problem for a run of characters; where they stand for a word of the language, it is read in their place. */
function tellCharacters(
  grammar: Recogniser,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
  text: string,
  path: string,
  note: Note,
): readonly IToken[] {
  const put: IToken[] = [];
  const dropped = new Set<number>();
  for (const error of errors) {
    const { offset } = error;
    const written = text.slice(offset, offset + error.length);
    if (written === ">" && text[offset - 1] === "-") {
      dropped.add(offset - 1);
      note({ kind: "character", span: { path, start: offset - 1, end: offset + 1 }, character: "->", instead: null });
      continue;
    }
    // `>=` is a character that means nothing, and an equals sign.
    const isLimit = /^[<>]$/.test(written) && text[offset + 1] === "=";
    if (isLimit) dropped.add(offset + 1);
    const end = offset + error.length + (isLimit ? 1 : 0);
    const instead = MEANT[written] ?? INSTEAD[text.slice(offset, end)] ?? null;
    const isAfterDigit = /\d/.test(text[offset - 1] ?? "");
    const isComma = written === ";" && partsThings(tokens, offset);
    note({
      kind: "character",
      span: { path, start: offset, end },
      character: text.slice(offset, end),
      instead: isComma ? "," : instead !== null && /^\d/.test(instead) && isAfterDigit ? ` ${instead}` : instead,
    });
    const meant = isComma ? "," : MEANT[written];
    if (meant !== undefined && meant !== "") put.push(tokenOf(grammar, meant, written, error));
  }
  if (put.length === 0 && dropped.size === 0) return tokens;
  return [...tokens.filter((token) => !dropped.has(token.startOffset)), ...put].sort(
    (a, b) => a.startOffset - b.startOffset,
  );
}

/** Whether a number or name stands on both sides of the place, on one line: `1; 4; 2`. */
function partsThings(tokens: readonly IToken[], offset: number): boolean {
  const next = tokens.findIndex((token) => token.startOffset > offset);
  const [before, after] = [tokens[next - 1], tokens[next]];
  if (before === undefined || after === undefined || before.endLine !== after.startLine) return false;
  return /^(?:NUMBER|ID|\])$/.test(typeName(before)) && /^(?:NUMBER|ID)$/.test(typeName(after));
}

function tokenOf(grammar: Recogniser, meant: string, written: string, error: ILexingError): IToken {
  const { offset, length, line, column } = error;
  const type = grammar.type(meant);
  return {
    image: written,
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx as number,
    startOffset: offset,
    endOffset: offset + length - 1,
    startLine: line ?? 1,
    endLine: line ?? 1,
    startColumn: column ?? 1,
    endColumn: (column ?? 1) + length - 1,
  };
}

const MEANT: Readonly<Record<string, string>> = { "&&": "and", "&": "and", "||": "or", "!": "not", ";": "", "\\": "/" };

/** What a writer means by it; it is told, and not read so. */
const INSTEAD: Readonly<Record<string, string>> = {
  "≤": "at most",
  "<=": "at most",
  "<": "at most",
  "⩽": "at most",
  "≥": "at least",
  ">=": "at least",
  ">": "at least",
  "⩾": "at least",
  "×": "*",
  "÷": "/",
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
