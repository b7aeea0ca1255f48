// The values that are worked out in the step at a line, with how each came about. Knows no wording and no format.
import { type ComputedValue, computedIn } from "#analysis/limits/limits.ts";
import { type Lines, linesOf } from "#syntax/lines.ts";
import type { Span } from "#syntax/span.ts";
import type { Workspace } from "./workspace.ts";

export type LineExplained =
  | { readonly kind: "values"; readonly values: readonly ComputedValue[] }
  | { readonly kind: "no file" }
  /** `lines`: how many there are. */
  | { readonly kind: "no line"; readonly lines: number }
  /** Nothing is worked out there; `elsewhere`: lines of the file whose steps have something, from 1. */
  | { readonly kind: "nothing"; readonly elsewhere: readonly number[] };

/** @param line from 1, as a person counts */
export function explainLine(workspace: Workspace, path: string, line: number): LineExplained {
  const text = workspace.snapshot.texts.get(path);
  if (text === undefined || !workspace.loaded.parsed.has(path)) return { kind: "no file" };
  const count = text.replace(/\n$/, "").split("\n").length;
  if (line < 1 || line > count) return { kind: "no line", lines: count };
  const lines = linesOf(text);
  const all = computedValues(workspace, path);
  const values = all.filter((value) => holds(lines, value.step?.span ?? value.line, line));
  if (values.length > 0) return { kind: "values", values };
  const elsewhere = all.map((value) => lines.range(value.line.start, value.line.end).start.line + 1);
  return { kind: "nothing", elsewhere: [...new Set(elsewhere)] };
}

/** All that is worked out in the procedures of a file. */
export function computedValues(workspace: Workspace, path: string): readonly ComputedValue[] {
  const procedures = workspace.loaded.models.get(path)?.procedures ?? [];
  return procedures.flatMap((procedure) => {
    const run = workspace.run(procedure);
    return run === null ? [] : computedIn(run).filter(({ line }) => line.path === path);
  });
}

function holds(lines: Lines, { start, end }: Span, line: number): boolean {
  const range = lines.range(start, end);
  return line - 1 >= range.start.line && line - 1 <= range.end.line;
}
