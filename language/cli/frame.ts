// The lines of the text that a finding is about, with the place marked below. Knows no findings.
import type { Lines, Range } from "#syntax/lines.ts";
import { type Cell, cellsOf } from "./printable.ts";

export interface Paint {
  readonly gutter: (text: string) => string;
  readonly mark: (text: string) => string;
}

/** Of a longer place the first and the last line are shown. */
const MOST_LINES = 3;
/** Of a line longer than this only what lies round the place is looked at. */
const LONGEST = 4000;

/** @param width columns that a line of it may take */
export function codeFrame(lines: Lines, { start, end }: Range, width: number, paint: Paint): readonly string[] {
  // A place that ends before the first sign of a line has nothing of that line.
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  const numbers = Array.from({ length: last - start.line + 1 }, (_, at) => start.line + at);
  const shown = numbers.length > MOST_LINES ? [start.line, last] : numbers;
  const gutter = Math.max(4, String(last + 1).length);
  return shown.flatMap((line, at) => {
    const text = lines.text(line);
    const from = line === start.line ? start.character : text.length - text.trimStart().length;
    const to = line === end.line ? end.character : text.trimEnd().length;
    const { source, marks } = marked(text, from, to, width - gutter - 3);
    const gap = at > 0 && shown[at - 1] !== line - 1 ? [paint.gutter(`${" ".repeat(gutter)} …`)] : [];
    return [
      ...gap,
      `${paint.gutter(`${String(line + 1).padStart(gutter)} |`)} ${source}`.trimEnd(),
      `${paint.gutter(`${" ".repeat(gutter)} |`)} ${marks.blank}${paint.mark(marks.carets)}`,
    ];
  });
}

interface MarkedLine {
  readonly source: string;
  readonly marks: { readonly blank: string; readonly carets: string };
}

/** The line, cut round the place where it is too wide, and what stands below it. */
function marked(line: string, from: number, to: number, width: number): MarkedLine {
  const cutBefore = line.length > LONGEST ? Math.max(0, from - LONGEST / 2) : 0;
  const near = line.slice(cutBefore, cutBefore + LONGEST);
  const cells = cellsOf(near);
  const indexAt = (offset: number): number => {
    const after = cells.findIndex((cell) => cell.from > offset);
    return offset >= near.length ? cells.length : after < 0 ? cells.length - 1 : after - 1;
  };
  const startAt = indexAt(from - cutBefore);
  // A place that ends inside a character takes it in.
  const endAt = Math.max(startAt, to <= from ? startAt : indexAt(to - 1 - cutBefore) + 1);
  const window = windowRound(cells, startAt, endAt, width);
  const left = window.from > 0 || cutBefore > 0 ? "…" : "";
  const right = window.to < cells.length || cutBefore + LONGEST < line.length ? "…" : "";
  const before = widthBetween(cells, window.from, startAt);
  const place = widthBetween(cells, startAt, Math.min(endAt, cells.length, window.to));
  return {
    source: `${left}${cells
      .slice(window.from, window.to)
      .map((cell) => cell.text)
      .join("")}${right}`,
    marks: { blank: " ".repeat(left.length + before), carets: "^".repeat(Math.max(1, place)) },
  };
}

interface Window {
  readonly from: number;
  readonly to: number;
}

/** The cells that fit, the place among them: in whole if it can be, else its beginning. */
function windowRound(cells: readonly Cell[], start: number, end: number, width: number): Window {
  if (widthBetween(cells, 0, cells.length) <= width) return { from: 0, to: cells.length };
  const room = Math.max(10, width - 2);
  let from = start;
  const before = Math.max(room - widthBetween(cells, start, end), 0) / 2;
  while (from > 0 && widthBetween(cells, from - 1, start) <= before) from--;
  let to = from;
  while (to < cells.length && widthBetween(cells, from, to + 1) <= room) to++;
  return { from, to };
}

function widthBetween(cells: readonly Cell[], from: number, to: number): number {
  let width = 0;
  for (let at = from; at < to; at++) width += cells[at]?.width ?? 0;
  return width;
}
