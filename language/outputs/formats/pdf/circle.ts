// A drawing of numbered places as lines and letters of a page. Knows no document.
import type { CircleFigure } from "../../drawings/circle-figure.ts";
import { DISC, type Laid, type Place } from "../../drawings/circle-layout.ts";
import type { Pen } from "./pen.ts";
import type { Frame, Piece } from "./piece.ts";

/** The tallest that it is drawn. */
const TALLEST = 380;

/** As large as on a screen, and never wider than the frame. */
export function circlePiece({ title, text }: CircleFigure, laid: Laid, frame: Frame): Piece {
  // A pixel of a screen is three quarters of a point.
  const scale = Math.min(laid.scale * 0.75, frame.width / laid.width, TALLEST / laid.height);
  const tag = { type: "Figure", parent: frame.tag, alt: `${title}. ${text}`.trim() };
  return {
    gap: 6,
    height: laid.height * scale,
    keep: true,
    draw: (pen, top) =>
      pen.within(tag, () => {
        const x = (value: number): number => frame.left + value * scale;
        const y = (value: number): number => top + value * scale;
        if (laid.ring !== null) {
          const edge = { width: 0.9, dash: true };
          pen.disc(x(laid.ring.x), y(laid.ring.y), laid.ring.radius * scale, { edge });
        }
        for (const place of laid.places) drawPlace(pen, place, { x, y, scale }, frame);
      }),
  };
}

interface Scaled {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly scale: number;
}

/** A position in its disc; the first to be done stands out. */
function drawPlace(pen: Pen, place: Place, { x, y, scale }: Scaled, { widthOf }: Frame): void {
  const edge = { width: place.order === 1 ? 2.2 : 0.9 };
  pen.disc(x(place.x), y(place.y), DISC * scale, { ground: "#ffffff", edge });
  const letters = (text: string, at: readonly [number, number], size: number, bold: boolean): void => {
    const points = size * scale;
    const [middleX, middleY] = [x(at[0]), y(at[1])];
    // 0.36 of the size below the middle: half the height of a figure.
    pen.letters(text, middleX - widthOf(points)(text, bold) / 2, middleY + points * 0.36, { size: points, bold });
  };
  letters(String(place.position), [place.x, place.y], 12, true);
  if (place.order !== null) letters(`${place.order}.`, [place.orderX, place.orderY], 11, false);
}
