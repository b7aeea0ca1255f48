// Units that stand on the line below their number: told, and read as the number's unit all the same.
import type { ILexingError, IToken } from "chevrotain";
import { scanUnit } from "#quantity/scan.ts";
import type { SyntaxProblem } from "./problem.ts";
import type { Recogniser } from "./recognise.ts";
import { opensLine, typeName } from "./statements.ts";
import { asOneToken, endOf } from "./virtual-token.ts";

interface Source {
  readonly grammar: Recogniser;
  readonly text: string;
  readonly path: string;
  readonly note: (problem: SyntaxProblem) => void;
}

/** No line begins with a plain word where the one above ends with a bare number; so a unit there is the number's. */
export function readUnitsBelow(
  source: Source,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
): { readonly tokens: readonly IToken[]; readonly errors: readonly ILexingError[] } {
  if (!tokens.some((_, at) => unitEnd(source.text, tokens, at) > 0)) return { tokens, errors };
  const out: IToken[] = [];
  const ranges: { readonly start: number; readonly end: number }[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as IToken;
    const end = unitEnd(source.text, tokens, at);
    if (end === 0) {
      out.push(token);
      continue;
    }
    out.push(asUnit(source, tokens[at - 1] as IToken, token, end));
    while (at + 1 < tokens.length && (tokens[at + 1] as IToken).startOffset < end) at++;
    ranges.push({ start: token.startOffset, end });
  }
  return {
    tokens: out,
    errors: errors.filter(({ offset }) => !ranges.some(({ start, end }) => offset >= start && offset < end)),
  };
}

/** The end of the unit that begins at a token, or 0 where it is none or stands in its place. */
function unitEnd(text: string, tokens: readonly IToken[], at: number): number {
  const token = tokens[at] as IToken;
  if (typeName(token) !== "ID" || typeName(tokens[at - 1]) !== "NUMBER" || !opensLine(tokens, at)) return 0;
  const unit = scanUnit(text, token.startOffset);
  return unit?.known === true && unit.end >= endOf(token) ? unit.end : 0;
}

function asUnit({ grammar, text, path, note }: Source, number: IToken, first: IToken, end: number): IToken {
  const found = text.slice(first.startOffset, end);
  note({
    kind: "unexpected",
    span: { path, start: first.startOffset, end },
    found,
    expected: [],
    within: "",
    after: number.image,
    slip: { name: "unit on next line", mended: null },
  });
  const last: IToken = {
    ...first,
    image: found,
    endOffset: end - 1,
    endColumn: (first.startColumn ?? 1) + found.length - 1,
  };
  return asOneToken(grammar.type("UNIT"), text, first, last);
}
