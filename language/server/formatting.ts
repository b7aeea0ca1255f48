// Layout on request: the whole file, some lines, or what was just typed. The formatter's own small edits, never the text as a
// whole, so that the cursor stays where it is. Knows no layout.
import type { FormattingOptions, TextEdit as LspEdit } from "vscode-languageserver";
import { formatEdits, type TextEdit } from "#syntax/format.ts";
import type { Position, Range } from "#syntax/lines.ts";
import { type ParsedFile, parseText } from "#syntax/parse.ts";
import type { Feature } from "./feature.ts";
import { depthOf, statementEdits, statementOf } from "./statement-layout.ts";
import { nodeAt, tokensOf } from "./tree-at.ts";
import { type FileView, offsetOf, rangeOf } from "./view.ts";

export const formatting: Feature = {
  capabilities: () => ({
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "}", moreTriggerCharacter: ["\n"] },
  }),
  start: (session) => {
    const { connection } = session;
    connection.onDocumentFormatting(({ textDocument: { uri } }, token) =>
      session.ask<LspEdit[]>(uri, token, (view) => [...fileEdits(view)], []),
    );
    connection.onDocumentRangeFormatting(({ textDocument: { uri }, range }, token) =>
      session.ask<LspEdit[]>(uri, token, (view) => [...rangeEdits(view, range)], []),
    );
    connection.onDocumentOnTypeFormatting(({ textDocument: { uri }, position, ch, options }, token) =>
      session.ask<LspEdit[]>(uri, token, (view) => [...typedEdits(view, position, ch, options)], []),
    );
  },
};

/** Nothing where the file has any problem of form. */
function fileEdits(view: FileView): readonly LspEdit[] {
  return editsOf(view).map((edit) => lspEdit(view, edit));
}

/** Only lines that the range touches change; in a file with problems, only declarations and procedures without any. */
function rangeEdits(view: FileView, range: Range): readonly LspEdit[] {
  // A selection of whole lines ends before the first character of the next.
  const isWhole = range.end.character === 0 && range.end.line > range.start.line;
  return editsIn(view, range.start.line, isWhole ? range.end.line - 1 : range.end.line);
}

/** After a closing brace its block; after a new line the line before it, and how far in the new one begins. */
function typedEdits(
  view: FileView,
  position: Position,
  typed: string,
  { tabSize, insertSpaces }: FormattingOptions,
): readonly LspEdit[] {
  if (typed === "}") {
    const first = lineOfOpening(view, position);
    return first === null ? [] : typedStatement(view, position, first, position.line);
  }
  const { line } = position;
  const before = { line: line - 1, character: view.lines.text(line - 1).length };
  const finished = line === 0 ? [] : typedStatement(view, before, line - 1, line - 1);
  return [...finished, ...indentation(view, line, insertSpaces ? " ".repeat(tabSize) : "\t")];
}

/** Only the statement that ends at the position is read: the writer goes on typing meanwhile. */
function typedStatement(view: FileView, position: Position, first: number, last: number): readonly LspEdit[] {
  const statement = statementOf(nodeAt(view.parsed, offsetOf(view, position)));
  const cst = statement?.$cstNode;
  if (statement === undefined || cst === undefined) return [];
  const { text, path, lines } = view;
  const depth = depthOf(statement);
  const place = { start: cst.offset, end: cst.end };
  const edits = asFileHas(text, statementEdits(text, path, place, depth)).map((edit) => lspEdit(view, edit));
  const { line, character } = lines.position(cst.offset);
  const isReadable = edits.length > 0 || parseText(text.slice(cst.offset, cst.end), path).damage.length === 0;
  const blanks = lines.text(line).slice(0, character);
  if (isReadable && blanks.trim() === "" && blanks !== INDENT.repeat(depth))
    edits.unshift({
      range: { start: { line, character: 0 }, end: { line, character } },
      newText: INDENT.repeat(depth),
    });
  return edits.filter((edit) => isBetween(edit, first, last));
}

const INDENT = "  ";

/** Edits whose lines all lie between two lines, both included. */
function editsIn(view: FileView, first: number, last: number): readonly LspEdit[] {
  return editsOf(view, first, last)
    .map((edit) => lspEdit(view, edit))
    .filter((edit) => isBetween(edit, first, last));
}

function isBetween({ range: { start, end } }: LspEdit, first: number, last: number): boolean {
  return (
    start.line >= first && (end.line <= last || (end.line === last + 1 && end.character === 0 && start.line <= last))
  );
}

/** The formatter's edits, each without what stays the same, line ends left as the file has them. */
function editsOf(view: FileView, first = 0, last = Number.POSITIVE_INFINITY): readonly TextEdit[] {
  const { parsed, text } = view;
  const isSound = parsed.problems.length === 0 && parsed.damage.length === 0;
  if (!isSound && last === Number.POSITIVE_INFINITY) return [];
  const all = isSound ? formatEdits(parsed) : soundItems(view, first, last).flatMap((at) => itemEdits(parsed, at));
  return asFileHas(text, all);
}

function asFileHas(text: string, edits: readonly TextEdit[]): readonly TextEdit[] {
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  return edits.flatMap(({ span, newText }) => {
    const made = lineEnd === "\n" ? newText : newText.replace(/\r?\n/g, lineEnd);
    return trimmed(text, { span, newText: made });
  });
}

/** Declarations and procedures in these lines in which everything could be read. */
function soundItems({ parsed, lines }: FileView, first: number, last: number): readonly Place[] {
  const [from, to] = [lines.offset(first), lines.offset(last + 1)];
  return parsed.file.items.flatMap(({ $cstNode: cst }) => {
    if (cst === undefined || cst.end <= from || cst.offset >= to) return [];
    const isHurt = [...parsed.problems, ...parsed.damage].some(
      ({ span }) => span.start < cst.end && span.end > cst.offset,
    );
    return isHurt ? [] : [{ start: cst.offset, end: cst.end }];
  });
}

interface Place {
  readonly start: number;
  readonly end: number;
}

/** A declaration or procedure is laid out the same whatever stands round it. */
function itemEdits({ text, path }: ParsedFile, { start, end }: Place): readonly TextEdit[] {
  const own = parseText(text.slice(start, end), path);
  return formatEdits(own)
    .filter(({ span }) => span.start < end - start)
    .map(({ span, newText }) => ({
      span: { path, start: span.start + start, end: span.end + start },
      newText,
    }));
}

/** Without the beginning and the end that the old and the new text share; nothing where that is all. */
function trimmed(text: string, { span, newText }: TextEdit): readonly TextEdit[] {
  let { start, end } = span;
  let [from, to] = [0, newText.length];
  while (start < end && from < to && text[start] === newText[from]) {
    start++;
    from++;
  }
  while (end > start && to > from && text[end - 1] === newText[to - 1]) {
    end--;
    to--;
  }
  return start === end && from === to ? [] : [{ span: { ...span, start, end }, newText: newText.slice(from, to) }];
}

/** The line on which the block begins that ends at the position; null where none does, as in a text or comment. */
function lineOfOpening(view: FileView, position: Position): number | null {
  const offset = offsetOf(view, position);
  const open: number[] = [];
  for (const { text, offset: at } of tokensOf(view.parsed)) {
    if (at >= offset) break;
    if (text === "{") open.push(at);
    if (text !== "}") continue;
    const opening = open.pop() ?? at;
    if (at + 1 === offset) return view.lines.position(opening).line;
  }
  return null;
}

/** How far in a line begins: as the last line above that is not empty, and by the braces at the end of that and its own start. */
function indentation(view: FileView, line: number, level: string): readonly LspEdit[] {
  let above = line - 1;
  while (above >= 0 && view.lines.text(above).trim() === "") above--;
  if (above < 0) return [];
  const [before, own] = [view.lines.text(above), view.lines.text(line)];
  const blanks = /^[ \t]*/.exec(own)?.[0] ?? "";
  let wanted = /^[ \t]*/.exec(before)?.[0] ?? "";
  if (/\{\s*(?:\/\/.*)?$/.test(before)) wanted += level;
  if (own.slice(blanks.length).startsWith("}")) wanted = wanted.slice(0, Math.max(0, wanted.length - level.length));
  if (wanted === blanks) return [];
  return [{ range: { start: { line, character: 0 }, end: { line, character: blanks.length } }, newText: wanted }];
}

function lspEdit(view: FileView, { span, newText }: TextEdit): LspEdit {
  return { range: rangeOf(view, span), newText };
}
