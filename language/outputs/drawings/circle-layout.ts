// Where the places of a drawing lie, in points from its upper left corner: the same for every format. Knows no format.
import type { CircleFigure, Mark } from "./circle-figure.ts";

/** Of the disc round a number. */
export const DISC = 13;
/** Between the middles of two discs, at least. */
const APART = 2 * DISC + 6;
const MARGIN = DISC + 4;
/** From the middle of a disc to that of the number of its order. */
const INWARDS = 27;
const SMALLEST = 62;

export interface Place extends Mark {
  readonly x: number;
  readonly y: number;
  /** Where the number of its order stands. */
  readonly orderX: number;
  readonly orderY: number;
}

export interface Laid {
  readonly width: number;
  readonly height: number;
  /** How much larger it may be shown. */
  readonly scale: number;
  readonly places: readonly Place[];
  /** The line on which the places lie, drawn beneath them. */
  readonly ring: { readonly x: number; readonly y: number; readonly radius: number } | null;
}

/** Numbers never touch each other, up to 60 places. */
export function laidOut({ round: isRound, marks }: CircleFigure): Laid {
  return { ...(isRound ? onCircle(marks) : inRows(marks)), scale: marks.length > 24 ? 1 : 1.35 };
}

function onCircle(marks: readonly Mark[]): Omit<Laid, "scale"> {
  const chord = 2 * Math.sin(Math.PI / Math.max(marks.length, 3));
  const radius = Math.max(SMALLEST, APART / chord);
  const middle = radius + MARGIN;
  return {
    width: 2 * middle,
    height: 2 * middle,
    places: marks.map(({ position, turn, order }) => {
      const [across, up] = [Math.sin(2 * Math.PI * turn), Math.cos(2 * Math.PI * turn)];
      const inner = radius - INWARDS;
      const [x, y] = [middle + radius * across, middle - radius * up];
      return { position, turn, order, x, y, orderX: middle + inner * across, orderY: middle - inner * up };
    }),
    ring: { x: middle, y: middle, radius },
  };
}

const IN_ROW = 12;

function inRows(marks: readonly Mark[]): Omit<Laid, "scale"> {
  const columns = Math.min(marks.length, IN_ROW);
  const rowHeight = 2 * DISC + INWARDS + 6;
  return {
    width: 2 * MARGIN + (columns - 1) * (APART + 8),
    height: 2 * MARGIN + INWARDS + (Math.ceil(marks.length / IN_ROW) - 1) * rowHeight,
    places: marks.map((mark, nth) => {
      const x = MARGIN + (nth % IN_ROW) * (APART + 8);
      const y = MARGIN + Math.floor(nth / IN_ROW) * rowHeight;
      return { ...mark, x, y, orderX: x, orderY: y + INWARDS };
    }),
    ring: null,
  };
}

/** A length as it is written: two decimals at most. */
export function round(value: number): string {
  return String(Number(value.toFixed(2)));
}
