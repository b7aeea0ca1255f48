// How a value that is worked out came about, under the pointer: for the value, and for the tools and the verb of its line. The same
// lines as `sprag explain FILE:LINE`.
import { explanationLines } from "#outputs/explanation.ts";
import { computedValues } from "#workspace/explain-line.ts";
import type { FileView } from "../view.ts";

/** Null where nothing is worked out; the place is that of the line. */
export function computedAt(
  { workspace, path }: FileView,
  offset: number,
): { readonly text: string; readonly start: number; readonly end: number } | null {
  const values = computedValues(workspace, path).filter(({ line }) => offset >= line.start && offset <= line.end);
  const [first] = values;
  if (first === undefined) return null;
  const lines = values.map(({ of, explanation }) => explanationLines(explanation, of).join("\n"));
  return { text: `\`\`\`text\n${lines.join("\n\n")}\n\`\`\``, start: first.line.start, end: first.line.end };
}
