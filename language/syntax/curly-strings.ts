// Texts in typographic or single quotes, as word processors and programs write them: read as strings, told once for each.
import type { ILexingError, IToken } from "chevrotain";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";

const OPENING = "“„”«‘‚";
const CLOSING = '”“»’"';

interface Source {
  readonly grammar: Recogniser;
  readonly text: string;
  readonly path: string;
  readonly note: (problem: SyntaxProblem) => void;
}

/** @returns the tokens with such texts as strings, and the errors that remain */
export function readCurlyStrings(
  source: Source,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
): { readonly tokens: readonly IToken[]; readonly errors: readonly ILexingError[] } {
  const found: CurlyText[] = [];
  const rest: ILexingError[] = [];
  for (const error of errors) {
    const last = found[found.length - 1];
    if (last !== undefined && error.offset < last.end) continue;
    const end = closingQuote(source.text, error.offset);
    if (end === 0) rest.push(error);
    else found.push({ start: error.offset, end, line: error.line ?? 1, column: error.column ?? 1 });
  }
  if (found.length === 0) return { tokens, errors };
  let next = 0;
  const outside = tokens.filter(({ startOffset }) => {
    while (next < found.length && (found[next] as CurlyText).end <= startOffset) next++;
    return next === found.length || startOffset < (found[next] as CurlyText).start;
  });
  const strings = found.map((curly) => stringToken(source, curly));
  return { tokens: [...outside, ...strings].sort((a, b) => a.startOffset - b.startOffset), errors: rest };
}

interface CurlyText {
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly column: number;
}

/** The end of the text (exclusive) that such a quote at `offset` opens on its line, or 0. */
function closingQuote(text: string, offset: number): number {
  const single = text[offset] === "'" && /\s/.test(text[offset - 1] ?? " ");
  if (!single && !OPENING.includes(text[offset] ?? " ")) return 0;
  const closing = single ? "'’" : CLOSING;
  for (let at = offset + 1; at < text.length && text[at] !== "\n" && text[at] !== "\r"; at++) {
    if (closing.includes(text[at] as string)) return at + 1;
  }
  return 0;
}

function stringToken({ grammar, text, path, note }: Source, { start, end, line, column }: CurlyText): IToken {
  const written = text.slice(start, end);
  const image = `"${written.slice(1, -1)}"`;
  note({ kind: "character", span: { path, start, end }, character: written, instead: image });
  const type = grammar.type("STRING");
  return {
    image,
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx as number,
    startOffset: start,
    endOffset: end - 1,
    startLine: line,
    endLine: line,
    startColumn: column,
    endColumn: column + image.length - 1,
  };
}
