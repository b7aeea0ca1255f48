// A line that is missing before the step where something was found: put in only where it would be right on every path.
import type { Assignment, Origin } from "#analysis/fact.ts";
import type { Pass } from "#model/problem.ts";
import { isWithin, type Span } from "#syntax/span.ts";
import type { Mend } from "./rule.ts";

/** Another value in place of one; nothing where it would be right for some choices or orders only. */
export function putInstead(
  title: string,
  {
    instead,
    options,
    inOrder,
  }: Pick<Place, "options" | "inOrder"> & {
    readonly instead: { readonly span: Span; readonly text: string } | null;
  },
): readonly Mend[] {
  if (instead === null || options !== undefined || inOrder !== undefined) return [];
  return [{ title, edits: [{ span: instead.span, newText: instead.text }] }];
}

interface Place {
  /** Null where no line before the step would be right. */
  readonly stepSpan: Span | null;
  readonly pass: Pass;
  readonly options?: readonly Assignment[];
  readonly inOrder?: readonly Origin[];
  /** What is to be put right; made in the step itself, it would only come after the new line. */
  readonly since?: Origin;
}

/** Nothing where it holds for some passes, choices or orders only. */
export function putInBefore(
  lines: readonly string[],
  { stepSpan, pass, options, inOrder, since }: Place,
): readonly Mend[] {
  if (stepSpan === null || pass.length > 0 || options !== undefined || inOrder !== undefined) return [];
  if (since !== undefined && isWithin(since.span, stepSpan)) return [];
  return [
    {
      title: `Put in “${lines.join("” and “")}” before this`,
      edits: lines.map((newText) => ({ lineBefore: stepSpan, newText })),
    },
  ];
}
