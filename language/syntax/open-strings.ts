// Strings whose closing (or opening) quote is missing: ends them where the writer most likely meant, so that what stands
// behind them on the line is still read.
import type { IToken } from "chevrotain";
import type { SpragLexer } from "./lexer.ts";
import type { SyntaxProblem } from "./problem.ts";
import { typeName } from "./statements.ts";
import { endOf } from "./virtual-token.ts";

interface Source {
  readonly lexer: SpragLexer;
  readonly text: string;
  readonly path: string;
  readonly note: (problem: SyntaxProblem) => void;
}

export function hasOpenString(tokens: readonly IToken[]): boolean {
  return tokens.some(isOpen);
}

function isOpen(token: IToken): boolean {
  return typeName(token) === "STRING" && !/^"(?:\\.|[^"\\])*"$/s.test(token.image);
}

/** Reads each line that holds such a string again, and tells each once. */
export function readOpenStrings(source: Source, tokens: readonly IToken[]): IToken[] {
  const out: IToken[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as IToken;
    if (!isOpen(token)) out.push(token);
    else readAgain(source, out, token);
  }
  return out;
}

/** `out` ends with what stands before `open`; all quotes of the line decide which one lacks its partner. */
function readAgain(source: Source, out: IToken[], open: IToken): void {
  const { text, path, note } = source;
  const lineEnd = endOf(open);
  let first = open;
  while (out.length > 0 && out[out.length - 1]?.startLine === open.startLine) first = out.pop() as IToken;
  const pieces = cut(text, first.startOffset, lineEnd);
  for (const piece of pieces) {
    if (piece.missing)
      note({
        kind: "unclosed",
        what: "string",
        header: text.slice(piece.start, piece.end),
        span: { path, start: piece.start, end: piece.end },
        closeAt: { path, start: piece.end, end: piece.end },
      });
    out.push(...lexPiece(source, first, piece.start, piece.end));
  }
}

interface Piece {
  readonly start: number;
  readonly end: number;
  /** A string without its closing quote. */
  readonly missing: boolean;
}

/** Cuts the line into stretches that can be read on their own. */
function cut(text: string, start: number, end: number): Piece[] {
  const pieces: Piece[] = [];
  let plainFrom = start;
  let at = start;
  const plain = (to: number) => {
    if (to > plainFrom) pieces.push({ start: plainFrom, end: to, missing: false });
  };
  while (at < end) {
    if (text[at] !== '"') {
      at++;
      continue;
    }
    const close = closing(text, at, end);
    if (close > 0) {
      at = close;
      continue;
    }
    plain(at);
    const stop = likelyEnd(text, at, end);
    pieces.push({ start: at, end: stop, missing: true });
    plainFrom = stop;
    at = stop;
  }
  plain(end);
  return pieces;
}

/** The end (exclusive) of the string at `at`; 0 where the next quote opens another one, or none comes. */
function closing(text: string, at: number, end: number): number {
  for (let i = at + 1; i < end; i++) {
    if (text[i] === "\\") i++;
    else if (text[i] === '"') return opens(text, i, end) ? 0 : i + 1;
  }
  return 0;
}

/** A quote with a blank before it and none behind it opens a string. */
function opens(text: string, at: number, end: number): boolean {
  return /\s/.test(text[at - 1] ?? " ") && at + 1 < end && !/[\s,}]/.test(text[at + 1] ?? " ");
}

/** Up to the next quote that opens a string, less the word that leads to it; else up to a brace; else to the end. */
function likelyEnd(text: string, at: number, end: number): number {
  let stop = end;
  for (let i = at + 1; i < end; i++) {
    if (text[i] === '"' && opens(text, i, end)) {
      stop = i;
      const lead = LEADING.exec(text.slice(at + 1, i));
      if (lead !== null) stop = at + 1 + lead.index;
      break;
    }
  }
  const brace = /\s[{}]/.exec(text.slice(at + 1, stop));
  if (brace !== null) stop = at + 1 + brace.index;
  const trimmed = text.slice(at, stop).trimEnd();
  return at + Math.max(1, trimmed.length);
}

const LEADING = /\s+(?:avoid|wear|revision|because|by|for|per\s+\w+|from|figure|thread|class|grade|mark|not|,)\s*$/;

function lexPiece({ lexer, text }: Source, near: IToken, start: number, end: number): IToken[] {
  const line = near.startLine ?? 1;
  const column = (near.startColumn ?? 1) + start - near.startOffset;
  return lexer.read(text.slice(start, end)).tokens.map((token) => ({
    ...token,
    startOffset: token.startOffset + start,
    endOffset: (token.endOffset ?? token.startOffset) + start,
    startLine: line,
    endLine: line,
    startColumn: (token.startColumn ?? 1) + column - 1,
    endColumn: (token.endColumn ?? 1) + column - 1,
  }));
}
