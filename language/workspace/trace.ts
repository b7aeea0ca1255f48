// The matrix of sources of some files as text: what a checker of the checkers wants to see. Knows no format.
import { tracedIn } from "#analysis/trace/traced.ts";
import { MATRIX_FORMATS } from "#outputs/trace/formats.ts";
import { matrixOf } from "#outputs/trace/matrix.ts";
import { en } from "#outputs/words/en.ts";
import type { Span } from "#syntax/span.ts";
import { rangesIn } from "./ranges.ts";
import type { Workspace } from "./workspace.ts";

/** The formats of {@link traceMatrix}. */
export const TRACE_FORMATS: readonly string[] = [...MATRIX_FORMATS.keys()];

/** Every value and step of these files with what it cites, in the order of their paths; null where there is no such format. */
export function traceMatrix({ loaded, snapshot }: Workspace, paths: readonly string[], format: string): string | null {
  const write = MATRIX_FORMATS.get(format);
  if (write === undefined) return null;
  const rangeOf = rangesIn(snapshot.texts);
  const placeOf = (span: Span): string => `${span.path}:${rangeOf(span).start.line + 1}`;
  const models = [...paths].sort().flatMap((path) => loaded.models.get(path) ?? []);
  return write(
    matrixOf(
      models.flatMap((model) => tracedIn(model)),
      placeOf,
      en,
    ),
    en,
  );
}
