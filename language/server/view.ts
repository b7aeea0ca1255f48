// A file as a feature sees it: its text, tree and model at one moment, and the folder round it. Features are functions of
// this and of a place; none of them keeps anything.
import type { FileModel } from "#model/procedure.ts";
import { type Lines, linesOf, type Position, type Range } from "#syntax/lines.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import type { Span } from "#syntax/span.ts";
import type { Workspace } from "#workspace/workspace.ts";
import type { Folder } from "./folder.ts";

export interface FileView {
  readonly folder: Folder;
  readonly workspace: Workspace;
  readonly uri: string;
  /** From the folder's root, with `/`. */
  readonly path: string;
  readonly text: string;
  readonly lines: Lines;
  readonly parsed: ParsedFile;
  readonly model: FileModel;
}

/** The file at a path of the folder, or null where it is not known. */
export function viewOf(folder: Folder, workspace: Workspace, path: string): FileView | null {
  const parsed = workspace.loaded.parsed.get(path);
  const model = workspace.loaded.models.get(path);
  if (parsed === undefined || model === undefined) return null;
  return { folder, workspace, uri: folder.uriOf(path), path, text: parsed.text, lines: linesIn(parsed), parsed, model };
}

/** Where a place in any file of the folder is. */
export function locationOf(view: FileView, span: Span): { readonly uri: string; readonly range: Range } {
  return { uri: view.folder.uriOf(span.path), range: rangeOf(view, span) };
}

export function rangeOf(view: FileView, { path, start, end }: Span): Range {
  const parsed = view.workspace.loaded.parsed.get(path);
  return (parsed === undefined ? linesOf("") : linesIn(parsed)).range(start, end);
}

/** The offset of a position, inside the text whatever the position says. */
export function offsetOf(view: FileView, { line, character }: Position): number {
  const start = view.lines.offset(line);
  return Math.min(start + Math.max(character, 0), start + view.lines.text(line).length);
}

const linesKnown = new WeakMap<ParsedFile, Lines>();

function linesIn(parsed: ParsedFile): Lines {
  const known = linesKnown.get(parsed) ?? linesOf(parsed.text);
  linesKnown.set(parsed, known);
  return known;
}
