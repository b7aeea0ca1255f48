// From text to tokens that are worth parsing: strings and comments left open, curly quotes, characters that mean nothing,
// commas for points and dashes for `..` are told here and read as they were meant. Knows no statement.
import type { ILexingError, IToken } from "chevrotain";
import { readCurlyStrings } from "./curly-strings.ts";
import type { SpragLexer } from "./lexer.ts";
import { limitNesting } from "./nesting.ts";
import { hasOpenString, readOpenStrings } from "./open-strings.ts";
import { readOpenTextBlocks } from "./open-text-blocks.ts";
import { readOpenUnits } from "./open-units.ts";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { typeName } from "./statements.ts";
import { lineEnd } from "./text-line.ts";
import { readUnitsBelow } from "./units-below.ts";
import { endOf, readAs } from "./virtual-token.ts";

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
  const arrows = new Set<number>();
  for (const { offset, length, line, column } of errors) {
    const written = text.slice(offset, offset + length);
    if (written === ">" && text[offset - 1] === "-") {
      arrows.add(offset - 1);
      note({ kind: "character", span: { path, start: offset - 1, end: offset + 1 }, character: "->", instead: null });
      continue;
    }
    const meant = MEANT[written];
    note({
      kind: "character",
      span: { path, start: offset, end: offset + length },
      character: written,
      instead: meant ?? null,
    });
    if (meant === undefined || meant === "") continue;
    const type = grammar.type(meant);
    const token: IToken = {
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
    put.push(token);
  }
  if (put.length === 0 && arrows.size === 0) return tokens;
  return [...tokens.filter((token) => !arrows.has(token.startOffset)), ...put].sort(
    (a, b) => a.startOffset - b.startOffset,
  );
}

const MEANT: Readonly<Record<string, string>> = { "&&": "and", "&": "and", "||": "or", "!": "not", ";": "", "\\": "/" };

/* ---- numbers ---- */

/** `40 +- 2 N·m` would be a sum: it is read as `±`. */
function readPlusMinus(grammar: Recogniser, tokens: readonly IToken[], path: string, note: Note): readonly IToken[] {
  const isSign = (at: number) => {
    if (typeName(tokens[at]) !== "+") return false;
    const [before, plus, minus, after] = [tokens[at - 1], tokens[at], tokens[at + 1], tokens[at + 2]];
    if (plus === undefined || typeName(minus) !== "-" || typeName(after) !== "NUMBER") return false;
    return endOf(plus) === minus?.startOffset && /^(?:NUMBER|DECIMAL_COMMA|UNIT)$/.test(typeName(before));
  };
  if (!tokens.some((_, at) => isSign(at))) return tokens;
  return tokens.flatMap((token, at) => {
    if (isSign(at - 1)) return [];
    if (!isSign(at)) return [token];
    const place = { path, start: token.startOffset, end: endOf(token) + 1 };
    const slip = { name: "plus minus", mended: "±" };
    note({ kind: "unexpected", span: place, found: "+-", expected: [], within: "", after: "", slip });
    return [readAs(grammar.type("±"), token, "±")];
  });
}

/** Decimal commas and dashes between numbers, which the grammar reads as what they are meant to be. */
function tellNumbers(
  grammar: Recogniser,
  tokens: readonly IToken[],
  text: string,
  path: string,
  note: Note,
): readonly IToken[] {
  let read: IToken[] | null = null;
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as IToken;
    const name = typeName(token);
    if (name === "DATE" && !isDay(token.image)) noteDate(token, path, note);
    else if (name === "DECIMAL_COMMA") {
      note({
        kind: "decimal comma",
        span: span(path, token),
        text: token.image,
        mended: token.image.replace(",", "."),
      });
    } else if (name === "DASH" || isDash(tokens, at)) {
      if (name === "-") {
        read ??= [...tokens];
        read[at] = readAs(grammar.type("DASH"), token);
      }
      noteDash(tokens, at, text, path, note);
    }
  }
  return read ?? tokens;
}

/** Whether the calendar has the day. */
function isDay(date: string): boolean {
  const [year = 0, month = 0, day = 0] = date.split("-").map(Number);
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const last = month === 2 && leap ? 29 : (LAST_DAYS[month - 1] ?? 0);
  return day >= 1 && day <= last;
}

const LAST_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function noteDate(token: IToken, path: string, note: Note): void {
  const slip = { name: "no such day", mended: null };
  const place = { found: token.image, expected: [], within: "", after: "", slip };
  note({ kind: "unexpected", span: span(path, token), ...place });
}

/** `38-42`: two plain numbers with nothing between them but a hyphen are no sum that anyone would write; `2026-5-4` is a date. */
function isDash(tokens: readonly IToken[], at: number): boolean {
  return isHyphened(tokens, at) && !isHyphened(tokens, at - 2) && !isHyphened(tokens, at + 2);
}

function isHyphened(tokens: readonly IToken[], at: number): boolean {
  if (typeName(tokens[at]) !== "-") return false;
  const [before, hyphen, after] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (before === undefined || hyphen === undefined || after === undefined) return false;
  const numbers = typeName(before) === "NUMBER" && typeName(after) === "NUMBER";
  return numbers && endOf(before) === hyphen.startOffset && endOf(hyphen) === after.startOffset;
}

function noteDash(tokens: readonly IToken[], at: number, text: string, path: string, note: Note): void {
  const dash = tokens[at] as IToken;
  const before = startOfValue(tokens, at - 1) ?? dash;
  const after = tokens[at + 1];
  const isNumber = after !== undefined && /^[0-9]/.test(after.image);
  const end = endOf(isNumber ? after : dash);
  const [low, high] = [text.slice(before.startOffset, dash.startOffset).trim(), text.slice(endOf(dash), end).trim()];
  const inBrackets = typeName(tokens[at - 2]) === "[" || typeName(tokens[at - 2]) === ",";
  note({
    kind: "dash range",
    span: { path, start: before.startOffset, end },
    text: text.slice(before.startOffset, end),
    mended: inBrackets ? `${low}..${high}` : `${low} .. ${high}`.trim(),
    dash: span(path, dash),
  });
}

function startOfValue(tokens: readonly IToken[], at: number): IToken | undefined {
  const token = tokens[at];
  return token !== undefined && /UNIT$/.test(typeName(token)) ? tokens[at - 1] : token;
}

function span(path: string, token: IToken) {
  return { path, start: token.startOffset, end: endOf(token) };
}
