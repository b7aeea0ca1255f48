// Turns what a rule wants changed into edits of the text that leave it laid out as the formatter would. Knows no rules.
import type { Span } from "#syntax/span.ts";
import type { Fix } from "./finding.ts";
import type { Edit, Mend } from "./rule.ts";

type TextEdit = Fix["edits"][number];

/** The mend as edits; null where the text leaves no place for it. */
export function layOut({ title, edits }: Mend, textOf: (path: string) => string | undefined): Fix | null {
  const laidOut: TextEdit[] = [];
  for (const edit of edits) {
    const made = textEdit(edit, textOf);
    if (made === null) return null;
    laidOut.push(made);
  }
  return { title, edits: laidOut };
}

function textEdit(edit: Edit, textOf: (path: string) => string | undefined): TextEdit | null {
  if ("span" in edit) return edit;
  if ("closes" in edit) return closing(textOf(edit.at.path), edit.closes, edit.at);
  const at = "takeOut" in edit ? edit.takeOut : "lastIn" in edit ? edit.lastIn : edit.lineBefore;
  const text = textOf(at.path);
  if (text === undefined) return null;
  if ("takeOut" in edit) return takenOut(text, at);
  return "lastIn" in edit
    ? lastLine(text, at, edit.newText)
    : lineBefore(text, at, [edit.newText, ...(edit.rests ?? [])]);
}

/** On a line of its own, as far in as the one that opens the block; on that line itself where the block has no other. */
function closing(text: string | undefined, opens: Span, { path, end }: Span): TextEdit {
  if (text === undefined) return { span: { path, start: end, end }, newText: "\n}" };
  const openLine = lineStart(text, opens.start);
  if (openLine === lineStart(text, end)) return { span: { path, start: end, end }, newText: " }" };
  // A comment behind the last line stays with it.
  const comment = /^[ \t]*\/\/[^\r\n]*/.exec(text.slice(end, lineEnd(text, end)))?.[0] ?? "";
  const at = end + comment.length;
  const indent = /^[ \t]*/.exec(text.slice(openLine, opens.start))?.[0] ?? "";
  return { span: { path, start: at, end: at }, newText: `${endOf(text)}${indent}}` };
}

/** Above the comments that belong to the line; only where the statement begins its line. */
function lineBefore(text: string, { path, start }: Span, words: readonly string[]): TextEdit | null {
  let at = lineStart(text, start);
  const indent = text.slice(at, start);
  if (indent.trim() !== "") return null;
  while (at > 0 && /^[ \t]*\/\//.test(text.slice(lineStart(text, at - 1), at))) at = lineStart(text, at - 1);
  const line = indent + words.join(" ");
  const newText = line.length <= WIDTH ? line : indent + words.join(`${endOf(text)}${indent}  `);
  return { span: { path, start: at, end: at }, newText: newText + endOf(text) };
}

/** Before the closing brace; only where that begins its line. */
function lastLine(text: string, { path, end }: Span, newText: string): TextEdit | null {
  const at = lineStart(text, end - 1);
  const indent = text.slice(at, end - 1);
  if (text[end - 1] !== "}" || indent.trim() !== "") return null;
  return { span: { path, start: at, end: at }, newText: `${indent}  ${newText}${endOf(text)}` };
}

/** With its whole line, or with the blanks on one side; not where a comment behind it would lose what it speaks of. */
function takenOut(text: string, { path, start, end }: Span): TextEdit | null {
  const lineAt = lineStart(text, start);
  const nextAt = lineEnd(text, end);
  const before = text.slice(lineAt, start);
  const after = text.slice(end, nextAt);
  if (/^\s*\/[/*]/.test(after)) return null;
  if (before.trim() === "" && after.trim() === "")
    return withoutLines(text, path, lineAt, Math.min(nextAt + 1, text.length));
  if (before.trim() === "") return { span: { path, start, end: end + blanksAt(after) }, newText: "" };
  return { span: { path, start: lineAt + before.trimEnd().length, end }, newText: "" };
}

/** Without whole lines, and without the blank line that is then one too many. */
function withoutLines(text: string, path: string, from: number, to: number): TextEdit {
  const isSpare = isBlankAbove(text, from) && isBlankOrEnd(text, to);
  const start = isSpare ? lineStart(text, from - 1) : from;
  // Nor is there one where the block begins.
  const isFirst = /\{[ \t]*\r?\n$/.test(text.slice(0, from));
  const next = Math.min(lineEnd(text, to) + 1, text.length);
  const end = isFirst && text.slice(to, next).trim() === "" ? next : to;
  return joined(text, path, start, end) ?? { span: { path, start, end }, newText: "" };
}

/** The formatter sets a short block of one line between its braces; null where more than that is left, or it is too long. */
function joined(text: string, path: string, from: number, to: number): TextEdit | null {
  const openAt = text.lastIndexOf("{", from - 1);
  const closeAt = text.indexOf("}", to);
  if (openAt < 0 || closeAt < 0) return null;
  const line = (text.slice(openAt + 1, from) + text.slice(to, closeAt)).trim();
  const head = text.slice(lineStart(text, openAt), openAt);
  const isShort = head.length + line.length + "{  }".length <= WIDTH;
  const isAlone =
    line !== "" && !/[\n{}]|\/[/*]/.test(line) && text.slice(closeAt + 1, lineEnd(text, closeAt)).trim() === "";
  if (!isShort || !isAlone || /^\s*(?:procedure|task|crib|\}|otherwise)\b|[{}]/.test(head)) return null;
  return { span: { path, start: openAt + 1, end: closeAt }, newText: ` ${line} ` };
}

/** As the formatter has it. */
const WIDTH = 100;

function blanksAt(text: string): number {
  return text.length - text.trimStart().length;
}

function isBlankAbove(text: string, lineAt: number): boolean {
  return lineAt > 0 && text.slice(lineStart(text, lineAt - 1), lineAt).trim() === "";
}

function isBlankOrEnd(text: string, lineAt: number): boolean {
  return /^\s*(?:\n|\}|$)/.test(text.slice(lineAt));
}

/** How the text ends its lines. */
function endOf(text: string): string {
  return text.includes("\r\n") ? "\r\n" : "\n";
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf("\n", offset - 1) + 1;
}

function lineEnd(text: string, offset: number): number {
  const at = text.indexOf("\n", offset);
  return at < 0 ? text.length : at;
}
