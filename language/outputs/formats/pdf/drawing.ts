// Outlines and lettering as lines and letters of a page. Knows no document.
import type { Drawing, Lettering } from "../../drawings/svg-drawing.ts";
import type { Pen } from "./pen.ts";
import type { Frame } from "./piece.ts";

/** @param scale to points of the page */
export function drawDrawing(
  pen: Pen,
  drawing: Drawing,
  left: number,
  top: number,
  scale: number,
  { widthOf }: Frame,
): void {
  for (const shape of drawing.shapes) {
    if (shape.kind === "outline") {
      const { path, fill, edge } = shape;
      pen.outline(path, left, top, scale, {
        ...(fill === null ? {} : { ground: fill }),
        ...(edge === null ? {} : { edge }),
      });
    } else {
      const { text, x, y, size, bold, colour } = shape;
      const points = size * scale;
      const start = left + x * scale - widthOf(points)(text, bold) * TIED[shape.anchor];
      pen.letters(text, start, top + y * scale, { size: points, bold, colour });
    }
  }
}

/** From where a text begins to where it is tied. */
const TIED: Readonly<Record<Lettering["anchor"], number>> = { start: 0, middle: 0.5, end: 1 };
