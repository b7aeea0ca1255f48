// Where an `allow` goes that silences a finding, and the edit that puts it there, laid out. Knows no rule.
import type { AstNode } from "langium";
import * as ast from "#grammar/generated/ast.ts";
import type { Range } from "#syntax/lines.ts";
import { depthOf, statementEdits, statementOf } from "./statement-layout.ts";
import { enclosing, nodeAt } from "./tree-at.ts";
import { type FileView, offsetOf } from "./view.ts";

/** The reason until the writer has given one; `trace.weak-allow` finds it. */
const NO_REASON = "…";

export interface AllowEdit {
  /** `for this step`. */
  readonly where: string;
  readonly edit: { readonly range: Range; readonly newText: string; readonly isSnippet: boolean };
}

/** Null where the finding stands in no procedure. */
export function allowEdit(view: FileView, range: Range, code: string, asSnippet: boolean): AllowEdit | null {
  const [start, end] = [offsetOf(view, range.start), offsetOf(view, range.end)];
  const holder = holderOf(nodeAt(view.parsed, start), start, end);
  const cst = holder?.$cstNode;
  if (holder === undefined || cst === undefined) return null;
  const at = placeIn(view.text, holder);
  if (at === null) return null;
  const allow = `${at.before}allow ${code} because "${NO_REASON}"${at.after}`;
  const text = view.text.slice(0, at.offset) + allow + view.text.slice(at.offset);
  // A step may have to be broken into lines anew.
  const laidOut = ast.isStep(holder) ? withLayout(view, text, holder, allow.length) : text;
  return { where: WHERE[holder.$type], edit: editBetween(view, laidOut, asSnippet) };
}

type Holder = ast.Step | ast.Task | ast.Procedure;
const WHERE: Readonly<Record<Holder["$type"], string>> = {
  Step: "for this step",
  Task: "for this task",
  Procedure: "for this procedure",
};

/** The smallest step, task or procedure that holds all of the place. */
function holderOf(from: AstNode, start: number, end: number): Holder | undefined {
  const holds = (node: AstNode): node is Holder =>
    (ast.isStep(node) || ast.isTask(node) || ast.isProcedure(node)) &&
    (node.$cstNode?.offset ?? end) <= start &&
    (node.$cstNode?.end ?? start) >= end;
  return enclosing(from, holds);
}

interface Place {
  readonly offset: number;
  readonly before: string;
  readonly after: string;
}

function placeIn(text: string, holder: Holder): Place | null {
  const cst = holder.$cstNode;
  if (cst === undefined) return null;
  if (ast.isStep(holder) && !holder.block) return { offset: cst.end, before: " ", after: "" };
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const indent = `${indentAt(text, cst.offset)}  `;
  if (ast.isStep(holder)) {
    const close = cst.end - 1;
    if (text[close] !== "}") return null;
    const isOwnLine = text.slice(lineStart(text, close), close).trim() === "";
    return isOwnLine
      ? { offset: lineStart(text, close), before: indent, after: lineEnd }
      : { offset: close, before: " ", after: " " };
  }
  // Behind what a procedure or task begins with, before its safety statements and steps.
  let offset: number | undefined;
  for (const item of holder.items) {
    if (!ast.isHeadLine(item) && !ast.isCitationLine(item) && !ast.isAllow(item)) break;
    offset = item.$cstNode?.end;
  }
  offset ??= openingOf(text, holder);
  return offset === undefined
    ? null
    : { offset: behindComment(text, offset), before: `${lineEnd}${indent}`, after: "" };
}

/** Behind the brace that opens the block. */
function openingOf(text: string, { $cstNode: cst, items }: ast.Task | ast.Procedure): number | undefined {
  if (cst === undefined) return undefined;
  const upTo = items[0]?.$cstNode?.offset ?? cst.end;
  const at = text.lastIndexOf("{", upTo - 1);
  return at < cst.offset ? undefined : at + 1;
}

/** A comment at the end of the line stays with what it stands behind. */
function behindComment(text: string, offset: number): number {
  const comment = /^[ \t]*(?:\/\/[^\r\n]*)/.exec(text.slice(offset, lineEndAt(text, offset)));
  return offset + (comment?.[0].length ?? 0);
}

/** The text with the step's own layout, grown by so much; as it is where it has problems of form. */
function withLayout(view: FileView, text: string, step: ast.Step, grown: number): string {
  const statement = sameLineHolder(view, step);
  const cst = statement.$cstNode;
  if (cst === undefined) return text;
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const place = { start: cst.offset, end: cst.end + grown };
  let laidOut = "";
  let from = 0;
  for (const { span, newText } of statementEdits(text, view.path, place, depthOf(statement))) {
    // Units and signs stay as they are: their spelling may be the very finding that is allowed.
    if (/\S/.test(text.slice(span.start, span.end))) continue;
    laidOut += text.slice(from, span.start) + (lineEnd === "\n" ? newText : newText.replace(/\r?\n/g, lineEnd));
    from = span.end;
  }
  return laidOut + text.slice(from);
}

/** A step may stand with others in one line, as in a short repeat: they are laid out together. */
function sameLineHolder({ lines }: FileView, step: ast.Step): AstNode {
  const lineOf = (node: AstNode): number => lines.position(node.$cstNode?.offset ?? 0).line;
  let found: AstNode = step;
  for (let next = statementAround(found); next !== undefined && lineOf(next) === lineOf(step); ) {
    found = next;
    next = statementAround(found);
  }
  return found;
}

function statementAround({ $container: holder }: AstNode): AstNode | undefined {
  const around = holder === undefined ? undefined : statementOf(holder);
  return ast.isProcedure(around) ? undefined : around;
}

/** The least that makes one text of the other. */
function editBetween(view: FileView, text: string, asSnippet: boolean): AllowEdit["edit"] {
  const before = view.text;
  let start = 0;
  while (start < before.length && before[start] === text[start]) start++;
  let tail = 0;
  const most = Math.min(before.length, text.length) - start;
  while (tail < most && before[before.length - 1 - tail] === text[text.length - 1 - tail]) tail++;
  // A snippet of several lines takes over the indentation in front of it, so there must be none.
  if (/[\r\n]/.test(text.slice(start, text.length - tail))) start = lineStart(before, start);
  const newText = text.slice(start, text.length - tail);
  const at = newText.lastIndexOf(NO_REASON);
  const isSnippet = asSnippet && at >= 0;
  return {
    range: view.lines.range(start, before.length - tail),
    newText: isSnippet
      ? `${escaped(newText.slice(0, at))}\${1:${NO_REASON}}${escaped(newText.slice(at + NO_REASON.length))}`
      : newText,
    isSnippet,
  };
}

function escaped(text: string): string {
  return text.replace(/[\\$}]/g, "\\$&");
}

function indentAt(text: string, offset: number): string {
  return /^[ \t]*/.exec(text.slice(lineStart(text, offset), offset))?.[0] ?? "";
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf("\n", offset - 1) + 1;
}

function lineEndAt(text: string, offset: number): number {
  const at = text.indexOf("\n", offset);
  return at < 0 ? text.length : at;
}
