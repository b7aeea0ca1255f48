// Units whose parenthesis is left open, `µm/(m·K`: read as they were meant, told at the parenthesis. Knows no kind.
import type { ILexingError, IToken } from "chevrotain";
import { scanUnit } from "#quantity/scan.ts";
import type { SyntaxProblem } from "./problem.ts";
import { typeName } from "./statements.ts";
import { endOf } from "./virtual-token.ts";

interface Source {
  readonly text: string;
  readonly path: string;
  readonly note: (problem: SyntaxProblem) => void;
}

/** @returns the tokens with each such unit as one, and the errors that do not lie within it */
export function readOpenUnits(
  source: Source,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
): { readonly tokens: readonly IToken[]; readonly errors: readonly ILexingError[] } {
  const units = new Map<IToken, IToken>();
  tokens.forEach((token, at) => {
    if (typeName(token) !== "UNIT" || typeName(tokens[at + 1]) !== "/" || typeName(tokens[at + 2]) !== "(") return;
    const unit = closedUnit(source, token, tokens[at + 2] as IToken);
    if (unit !== null) units.set(token, unit);
  });
  if (units.size === 0) return { tokens, errors };
  let end = 0;
  const read = tokens.flatMap((token) => {
    if (token.startOffset < end) return [];
    const unit = units.get(token);
    if (unit !== undefined) end = endOf(unit);
    return [unit ?? token];
  });
  const spans = [...units.values()].map((unit) => [unit.startOffset, endOf(unit)] as const);
  const isOutside = ({ offset }: ILexingError) => spans.every(([from, to]) => offset < from || offset >= to);
  return { tokens: read, errors: errors.filter(isOutside) };
}

/** The unit with its parenthesis closed; null where one closes it, or closing makes no unit. */
function closedUnit({ text, path, note }: Source, unit: IToken, open: IToken): IToken | null {
  REST.lastIndex = endOf(open);
  const rest = REST.exec(text)?.[0] ?? "";
  const end = endOf(open) + rest.length;
  const image = text.slice(unit.startOffset, end);
  const found = scanUnit(`${image})`, 0);
  if (found === null || !found.known || found.end <= image.length) return null;
  const span = { path, start: open.startOffset, end: endOf(open) };
  note({ kind: "unclosed", what: "parenthesis", header: image, span, closeAt: { path, start: end, end } });
  return { ...unit, image, endOffset: end - 1 };
}

// Up to a parenthesis that closes, there is nothing to mend.
const REST = /[A-Za-zµμ°·⋅∙*.²³^0-9]+(?![A-Za-zµμ°·⋅∙*.²³^0-9)])/y;
