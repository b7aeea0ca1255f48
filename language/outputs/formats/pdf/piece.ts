// Strips of a page: each as high as it is, never parted, drawn where it comes to stand; and how they fill pages. Knows no document.
import type { Span } from "../chapters.ts";
import type { Fill, Look, Pen, Tag } from "./pen.ts";
import { linesIn, type WidthOf } from "./wrapping.ts";

/** What is drawn together. */
export interface Piece {
  /** Above it; none at the head of a page. */
  readonly gap: number;
  readonly height: number;
  /** Stays on one page with the piece behind it. */
  readonly keep: boolean;
  /** Stands above it once more where a page begins with it. */
  readonly head?: Piece;
  /** @param above what of the gap is there */
  readonly draw: (pen: Pen, top: number, above: number) => void;
}

/** Where pieces come to stand, side by side with nothing else. */
export interface Frame {
  readonly left: number;
  readonly width: number;
  readonly tag: Tag;
  readonly widthOf: (size: number) => WidthOf;
}

/** A column of a row. */
export interface Cell {
  /** From the left of the frame. */
  readonly x: number;
  readonly width: number;
  readonly spans: readonly Span[];
  readonly look: Look;
  /** Null where it says nothing new. */
  readonly tag: Tag | null;
}

export interface RowLook {
  readonly gap?: number;
  readonly keep?: boolean;
  /** It is at least as high. */
  readonly least?: number;
  /** Above and below the text. */
  readonly margin?: number;
  /** Drawn with it, beneath the text: grounds, lines, boxes. */
  readonly with?: (pen: Pen, top: number, height: number) => void;
}

/** Room of a line for a size of one. */
const LEADING = 1.3;
/** Down to where letters stand, in a line of size one. */
const BASELINE = 0.98;
/** So many lines are never parted; a longer text is. */
const TOGETHER = 14;

/** Columns of text side by side: one piece, or several where the text is long. */
export function row(frame: Frame, cells: readonly Cell[], look: RowLook = {}): readonly Piece[] {
  const { gap = 0, keep = false, least = 0, margin = 0 } = look;
  const columns = cells.map(({ x, width, spans, look: letters, tag }) => ({
    x,
    letters,
    tag,
    lines: linesIn(spans, width, frame.widthOf(letters.size)),
  }));
  const parts = Math.ceil(Math.max(1, ...columns.map(({ lines }) => lines.length)) / TOGETHER);
  return Array.from({ length: parts }, (_, part): Piece => {
    const from = part * TOGETHER;
    const isFirst = part === 0;
    const heights = columns.map(
      ({ lines, letters: { size } }) => Math.min(lines.length - from, TOGETHER) * size * LEADING,
    );
    const height = Math.max(Math.max(0, ...heights) + 2 * margin, isFirst ? least : 0);
    return {
      gap: isFirst ? gap : 0,
      height,
      keep: keep || (isFirst && parts > 1),
      draw: (pen, top) => {
        if (isFirst) look.with?.(pen, top, height);
        for (const { x, letters, tag, lines } of columns) {
          const shown = lines.slice(from, from + TOGETHER);
          if (shown.every((line) => line.length === 0)) continue;
          const draw = (): void => drawLines(pen, shown, frame.left + x, top + margin, letters);
          if (tag === null) pen.beside(draw);
          else pen.within(tag, draw);
        }
      },
    };
  });
}

function drawLines(pen: Pen, lines: ReturnType<typeof linesIn>, left: number, top: number, look: Look): void {
  lines.forEach((line, at) => {
    const baseline = top + look.size * (at * LEADING + BASELINE);
    for (const { text, x, bold = look.bold ?? false, colour = look.colour } of line)
      pen.letters(text, left + x, baseline, { size: look.size, bold, ...(colour === undefined ? {} : { colour }) });
  });
}

/** One column of text as wide as the frame, tagged as what it is. */
export function paragraph(
  frame: Frame,
  spans: readonly Span[],
  look: Look,
  type = "P",
  rowLook: RowLook = {},
): readonly Piece[] {
  return row(frame, [{ x: 0, width: frame.width, spans, look, tag: below(frame.tag, type) }], rowLook);
}

export function below(parent: Tag, type: string): Tag {
  return { type, parent };
}

/** Narrower from the left; never so narrow that nothing can be read. */
export function inset(frame: Frame, by: number): Frame {
  const room = Math.min(by, Math.max(0, frame.width - NARROWEST));
  return { ...frame, left: frame.left + room, width: frame.width - room };
}

const NARROWEST = 220;

export function under(frame: Frame, type: string): Frame {
  return { ...frame, tag: below(frame.tag, type) };
}

/** All in one, never parted. */
function together(pieces: readonly Piece[], padding = 0): Piece {
  const [first] = pieces;
  const height = pieces.reduce((sum, piece, at) => sum + piece.height + (at === 0 ? 0 : piece.gap), 2 * padding);
  return {
    gap: first?.gap ?? 0,
    height,
    keep: pieces.at(-1)?.keep ?? false,
    draw: (pen, top) => {
      let y = top + padding;
      pieces.forEach((piece, at) => {
        const above = at === 0 ? 0 : piece.gap;
        piece.draw(pen, y + above, above);
        y += above + piece.height;
      });
    },
  };
}

/** Stays with what comes behind it, to the last. */
export function kept(pieces: readonly Piece[]): readonly Piece[] {
  return pieces.map((piece) => ({ ...piece, keep: true }));
}

/** Kept on one page with each other, unless they are higher than that. */
export function keptTogether(pieces: readonly Piece[], most: number): readonly Piece[] {
  const height = pieces.reduce((sum, piece) => sum + piece.gap + piece.height, 0);
  if (height > most) return pieces;
  return pieces.map((piece, at) => (at < pieces.length - 1 ? { ...piece, keep: true } : piece));
}

/** With a line along the left of all of them. */
export function railed(pieces: readonly Piece[], x: number, edge: NonNullable<Fill["edge"]>): readonly Piece[] {
  return pieces.map((piece, at) => ({
    ...piece,
    draw: (pen, top, above) => {
      const from = top - (at === 0 ? 0 : above);
      pen.beside(() => pen.line(x, from, x, top + piece.height, edge));
      piece.draw(pen, top, above);
    },
  }));
}

/** On a ground with an edge, in one; with a line at the left where it is too high for that. */
export function boxed(
  pieces: readonly Piece[],
  frame: Frame,
  fill: Fill & { readonly edge: NonNullable<Fill["edge"]> },
  most: number,
  padding = 0,
): readonly Piece[] {
  const one = together(pieces, padding);
  if (one.height > most) return railed(pieces, frame.left, { ...fill.edge, width: 3 });
  return [
    {
      ...one,
      draw: (pen, top, above) => {
        pen.beside(() => pen.box(frame.left, top, frame.width, one.height, fill));
        one.draw(pen, top, above);
      },
    },
  ];
}

/** A piece on its page. */
export interface Placed {
  readonly piece: Piece;
  readonly top: number;
  readonly above: number;
}

/** Which pieces stand on which page, and how far down. Pieces that belong together are parted only where a page cannot hold them. */
export function paginate(pieces: readonly Piece[], height: number): readonly (readonly Placed[])[] {
  const pages: Placed[][] = [[]];
  let used = 0;
  const place = (piece: Piece): void => {
    const above = used === 0 ? 0 : piece.gap;
    pages.at(-1)?.push({ piece, top: used + above, above });
    used += above + piece.height;
  };
  const turn = (): void => {
    if (used > 0) pages.push([]);
    used = 0;
  };
  for (const run of runsOf(pieces)) {
    const whole = heightOf(run);
    if (used > 0 && used + whole > height) turn();
    for (const piece of run) {
      if (used > 0 && used + piece.gap + piece.height > height) turn();
      if (used === 0 && piece.head !== undefined) place(piece.head);
      place(piece);
    }
  }
  return pages;
}

/** Pieces up to one that does not keep with the next. */
function runsOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const runs: Piece[][] = [];
  let run: Piece[] = [];
  for (const piece of pieces) {
    run.push(piece);
    if (piece.keep) continue;
    runs.push(run);
    run = [];
  }
  return run.length === 0 ? runs : [...runs, run];
}

function heightOf(run: readonly Piece[]): number {
  return run.reduce((sum, piece) => sum + piece.gap + piece.height, 0);
}
