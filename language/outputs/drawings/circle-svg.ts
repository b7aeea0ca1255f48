// A drawing of numbered places as SVG text: lines and letters in the colour of the text round it, so that it can be read on a light
// and on a dark ground and on paper. Pure; knows no document.
import type { CircleFigure, Mark } from "./circle-figure.ts";

/** One `svg` element. Same figure, same text. Numbers never touch each other, up to 60 places. */
export function circleSvg({ title, text, round: isRound, marks }: CircleFigure): string {
  const { width, height, places, inside } = isRound ? onCircle(marks) : inRows(marks);
  const scale = marks.length > 24 ? 1 : 1.35;
  const size = `width="${round(width * scale)}" height="${round(height * scale)}" viewBox="0 0 ${round(width)} ${round(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="places" role="img" aria-label="${escaped(`${title}. ${text}`.trim())}" ${size} fill="none" stroke="currentColor" stroke-width="1.2" font-family="system-ui, sans-serif" text-anchor="middle">`,
    `<title>${escaped(title)}</title>`,
    ...(inside === null ? [] : [inside]),
    ...places.map(placeSvg),
    "</svg>",
  ].join("");
}

/** Of the disc round a number. */
const DISC = 13;
/** Between the middles of two discs, at least. */
const APART = 2 * DISC + 6;
const MARGIN = DISC + 4;
/** From the middle of a disc to that of the number of its order. */
const INWARDS = 27;
const SMALLEST = 62;

interface Place extends Mark {
  readonly x: number;
  readonly y: number;
  /** Where the number of its order stands. */
  readonly orderX: number;
  readonly orderY: number;
}

interface Laid {
  readonly width: number;
  readonly height: number;
  readonly places: readonly Place[];
  /** What is drawn beneath the places. */
  readonly inside: string | null;
}

function onCircle(marks: readonly Mark[]): Laid {
  const chord = 2 * Math.sin(Math.PI / Math.max(marks.length, 3));
  const radius = Math.max(SMALLEST, APART / chord);
  const middle = radius + MARGIN;
  const at = (turn: number, from: number) => {
    const angle = 2 * Math.PI * turn;
    return [middle + from * Math.sin(angle), middle - from * Math.cos(angle)] as const;
  };
  return {
    width: 2 * middle,
    height: 2 * middle,
    places: marks.map((mark) => {
      const [x, y] = at(mark.turn, radius);
      const [orderX, orderY] = at(mark.turn, radius - INWARDS);
      return { ...mark, x, y, orderX, orderY };
    }),
    inside: `<circle cx="${round(middle)}" cy="${round(middle)}" r="${round(radius)}" stroke-dasharray="2 3"/>`,
  };
}

const IN_ROW = 12;

function inRows(marks: readonly Mark[]): Laid {
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
    inside: null,
  };
}

/** A position in its disc; the first to be done stands out. The ground of the page hides the line beneath. */
function placeSvg({ position, order, x, y, orderX, orderY }: Place): string {
  const isFirst = order === 1;
  const disc = `<circle cx="${round(x)}" cy="${round(y)}" r="${DISC}" style="fill:Canvas" stroke-width="${isFirst ? 3 : 1.2}"/>`;
  const number = letters(String(position), x, y, 12, 700);
  return disc + number + (order === null ? "" : letters(`${order}.`, orderX, orderY, 11, 400));
}

function letters(text: string, x: number, y: number, size: number, weight: number): string {
  // 0.36 of the size below the middle: half the height of a figure.
  return `<text x="${round(x)}" y="${round(y + size * 0.36)}" font-size="${size}" font-weight="${weight}" fill="currentColor" stroke="none">${text}</text>`;
}

function round(value: number): string {
  return String(Number(value.toFixed(2)));
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
