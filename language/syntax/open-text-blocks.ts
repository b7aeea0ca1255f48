// `"""` without its end: the text is taken to hold the lines indented deeper than the one it begins on, and is told once at
// its opening. Knows no statement.
import type { ILexingError, IToken } from "chevrotain";
import type { SpragLexer } from "./lexer.ts";
import type { SyntaxProblem } from "./problem.ts";
import { typeName } from "./statements.ts";
import { lineEnd, lineStart } from "./text-line.ts";
import { endOf } from "./virtual-token.ts";

interface Source {
  readonly lexer: SpragLexer;
  readonly text: string;
  readonly path: string;
  readonly note: (problem: SyntaxProblem) => void;
}

/** @returns the tokens with such a text as one, and the errors that do not lie within it */
export function readOpenTextBlocks(
  source: Source,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
): { readonly tokens: readonly IToken[]; readonly errors: readonly ILexingError[] } {
  const at = tokens.findIndex((_, index) => opensTextBlock(tokens, index));
  const open = tokens[at];
  // Of several, the first would have ended at the next: only the last can be open.
  if (open === undefined) return { tokens, errors };
  const { lexer, note, path, text } = source;
  const start = open.startOffset;
  const end = likelyEnd(text, start);
  const span = { path, start, end: start + 3 };
  note({ kind: "unclosed", what: "long text", header: '"""', span, closeAt: { path, start: end, end } });
  const [read] = lexer.read(`${text.slice(start, end)}"""`).tokens;
  if (read === undefined) return { tokens, errors };
  const firstLine = open.startLine ?? 1;
  const token: IToken = {
    ...read,
    image: text.slice(start, end),
    startOffset: start,
    endOffset: end - 1,
    startLine: firstLine,
    startColumn: open.startColumn ?? 1,
    endLine: firstLine + (read.endLine ?? 1) - 1,
  };
  return {
    tokens: [...tokens.slice(0, at), token, ...tokens.slice(at).filter(({ startOffset }) => startOffset >= end)],
    errors: errors.filter(({ offset }) => offset < start || offset >= end),
  };
}

/** `""` and a quotation mark right behind it. */
function opensTextBlock(tokens: readonly IToken[], at: number): boolean {
  const [empty, next] = [tokens[at], tokens[at + 1]];
  if (empty === undefined || next === undefined || empty.image !== '""') return false;
  return typeName(next) === "STRING" && endOf(empty) === next.startOffset;
}

/** Behind the last line that is indented deeper than the one on which the text begins, and holds no brace. */
function likelyEnd(text: string, start: number): number {
  const depth = indentation(text, lineStart(text, start));
  let end = lineEnd(text, start);
  for (let line = nextLine(text, end); line < text.length; line = nextLine(text, lineEnd(text, line))) {
    const written = text.slice(line, lineEnd(text, line));
    if (written.trim() === "") continue;
    if (indentation(text, line) <= depth || /[{}"]/.test(written)) break;
    end = lineEnd(text, line);
  }
  return end;
}

function indentation(text: string, from: number): number {
  let at = from;
  while (text[at] === " " || text[at] === "\t") at++;
  return at - from;
}

function nextLine(text: string, end: number): number {
  return end + (text.startsWith("\r\n", end) ? 2 : 1);
}
