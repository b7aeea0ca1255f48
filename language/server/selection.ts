// Widening a selection: word, value, line, step, task, procedure, file; each a place of the tree that is wider than the last.
import type { CstNode } from "langium";
import type { Range, SelectionRange, SelectionRangeParams } from "vscode-languageserver";
import type { Feature } from "./feature.ts";
import { tokenAt } from "./tree-at.ts";
import { type FileView, offsetOf } from "./view.ts";

export const selection: Feature = {
  capabilities: () => ({ selectionRangeProvider: true }),
  start: (session) => {
    session.connection.onSelectionRanges(({ textDocument, positions }: SelectionRangeParams, token) =>
      session.ask<SelectionRange[] | null>(
        textDocument.uri,
        token,
        (view) => positions.map((position) => selectionAt(view, offsetOf(view, position))),
        null,
      ),
    );
  },
};

/** The narrowest first, each inside its parent. */
export function selectionAt(view: FileView, offset: number): SelectionRange {
  const places = [...placesRound(view, offset)].sort((a, b) => b.end - b.start - (a.end - a.start));
  let selected: SelectionRange = { range: view.lines.range(0, view.text.length) };
  let wider = { start: 0, end: view.text.length };
  for (const { start, end } of places) {
    const isNarrower = end > start && start >= wider.start && end <= wider.end && end - start < wider.end - wider.start;
    // The client wants the position to be in each of them.
    if (!isNarrower || offset < start || offset > end) continue;
    wider = { start, end };
    const range: Range = view.lines.range(start, end);
    selected = { range, parent: selected };
  }
  return selected;
}

interface Place {
  readonly start: number;
  readonly end: number;
}

function* placesRound({ parsed, text }: FileView, offset: number): Generator<Place> {
  const token = tokenAt(parsed, offset);
  // Between two tokens only what holds both is meant.
  const isInside = token !== undefined && token.offset <= offset && offset <= token.end;
  if (isInside) {
    yield* wordIn(text, token.offset, token.end, offset);
    const quotes = /^(?:"""|")/.exec(token.text)?.[0].length ?? 0;
    if (quotes > 0) yield { start: token.offset + quotes, end: token.end - quotes };
  }
  // The outermost is the file without the blanks round it.
  for (let at: CstNode | undefined = token; at?.container !== undefined; at = at.container)
    yield { start: at.offset, end: at.end };
}

/** The word of a longer token: of a text, a comment, a line that could not be read. */
function* wordIn(text: string, start: number, end: number, offset: number): Generator<Place> {
  const from = Math.max(start, offset - LONGEST_WORD);
  const before = /[\p{L}\p{N}\p{M}_]*$/u.exec(text.slice(from, offset))?.[0].length ?? 0;
  const after = /^[\p{L}\p{N}\p{M}_]*/u.exec(text.slice(offset, Math.min(end, offset + LONGEST_WORD)))?.[0].length ?? 0;
  yield { start: offset - before, end: offset + after };
}

const LONGEST_WORD = 200;
