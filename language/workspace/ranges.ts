// Lines and columns of places in texts. Knows no finding.
import { type Lines, linesOf, type Range } from "#syntax/lines.ts";
import type { Span } from "#syntax/span.ts";

export type RangeOf = (span: Span) => Range;

/** Each text's lines are counted once. A text that is not there is taken for an empty one. */
export function rangesIn(texts: ReadonlyMap<string, string>): RangeOf {
  const lines = new Map<string, Lines>();
  return ({ path, start, end }) => {
    const known = lines.get(path) ?? linesOf(texts.get(path) ?? "");
    lines.set(path, known);
    return known.range(start, end);
  };
}
