// Where a new line goes at the top of a file: behind a statement, or as a paragraph before one. Never into a comment, nor above what
// stands before that statement. Knows no statement.
import { tokensOf } from "./tree-at.ts";
import type { FileView } from "./view.ts";
import type { TextChange } from "./workspace-edit.ts";

type Edit = Omit<TextChange, "path">;

/** Behind the line that a statement ends on, with the remark there; right behind the statement where that line goes on. */
export function lineBehind(view: FileView, end: number, line: string): Edit {
  const lineEnd = lineEndOf(view.text);
  const rest = /^[^\r\n]*/.exec(withoutComments(view, end, view.text.length))?.[0] ?? "";
  if (rest.replaceAll(COMMENT, "").trim() !== "")
    return { range: view.lines.range(end, end), newText: `${lineEnd}${line}${lineEnd}` };
  const at = end + rest.length;
  return { range: view.lines.range(at, at), newText: `${lineEnd}${line}` };
}

/** A paragraph of its own before the one that a statement begins in, with the comment that stands on it. */
export function paragraphBefore(view: FileView, start: number, line: string): Edit {
  const lineEnd = lineEndOf(view.text);
  const above = view.parsed.file.items.findLast(({ $cstNode: cst }) => cst !== undefined && cst.end <= start);
  const from = above?.$cstNode?.end ?? 0;
  const between = withoutComments(view, from, start);
  const paragraph = [...between.matchAll(/(?<=\n)[ \t]*\r?\n/g)].at(-1);
  const firstLine = from === 0 ? 0 : between.indexOf("\n") + 1;
  if (paragraph === undefined && from > 0 && firstLine === 0)
    return { range: view.lines.range(start, start), newText: `${lineEnd}${line}${lineEnd.repeat(2)}` };
  const at = from + (paragraph === undefined ? firstLine : paragraph.index + paragraph[0].length);
  return { range: view.lines.range(at, at), newText: `${line}${lineEnd.repeat(2)}` };
}

const COMMENT = "\u0001";

/** The text between two places with a sign for each of a comment, its line breaks too. */
function withoutComments({ parsed, text }: FileView, from: number, to: number): string {
  let plain = text.slice(from, to);
  for (const { hidden, offset, end } of tokensOf(parsed)) {
    if (offset >= to) break;
    if (!hidden || offset < from || text.slice(offset, end).trim() === "") continue;
    plain = plain.slice(0, offset - from) + COMMENT.repeat(end - offset) + plain.slice(end - from);
  }
  return plain;
}

function lineEndOf(text: string): string {
  return text.includes("\r\n") ? "\r\n" : "\n";
}
