// A drawing of numbered places as shapes of a word processor. Knows no document.
import type { IShapeGroupChildOptions, IShapeGroupOptions } from "docx/shapes";
import type { CircleFigure } from "../../drawings/circle-figure.ts";
import { DISC, laidOut, type Place } from "../../drawings/circle-layout.ts";
import { framed, label } from "./drawing.ts";

/** @param widest that it may be, in pixels */
export function circleShapes(figure: CircleFigure, widest: number): IShapeGroupOptions {
  const laid = laidOut(figure);
  const scale = Math.min(laid.scale, widest / laid.width);
  const { ring, places, width, height } = laid;
  const text = `${figure.title}. ${figure.text}`.trim();
  return {
    altText: { name: figure.title, description: text, title: figure.title },
    transformation: { width: Math.round(width * scale), height: Math.round(height * scale) },
    children: [
      // As large as all of it, so that nothing is scaled by what the shapes happen to take.
      { ...shape(width / 2, height / 2, width, height), type: "rectangle", line: { transparency: 100 } },
      ...(ring === null
        ? []
        : [disc(ring.x, ring.y, ring.radius, { width: 0.75, dash: "dash" as const, color: "000000" })]),
      ...places.flatMap((place) => [numbered(place), ...orderOf(place)]),
    ],
  };
}

function shape(x: number, y: number, width: number, height: number) {
  return framed(x - width / 2, y - height / 2, width, height);
}

function disc(
  x: number,
  y: number,
  radius: number,
  line: { readonly width: number; readonly dash?: "dash"; readonly color: string },
): IShapeGroupChildOptions {
  return { ...shape(x, y, 2 * radius, 2 * radius), type: "ellipse", line };
}

/** A position in its disc; the first to be done stands out. */
function numbered({ x, y, position, order }: Place): IShapeGroupChildOptions {
  return {
    ...shape(x, y, 2 * DISC, 2 * DISC),
    type: "ellipse",
    fill: "FFFFFF",
    line: { width: order === 1 ? 2.25 : 0.75, color: "000000" },
    ...label(String(position), { size: 10, bold: true }),
  };
}

function orderOf({ orderX, orderY, order }: Place): readonly IShapeGroupChildOptions[] {
  if (order === null) return [];
  return [
    {
      ...shape(orderX, orderY, 2 * DISC, 2 * DISC - 6),
      type: "rectangle",
      line: { transparency: 100 },
      ...label(`${order}.`, { size: 10, bold: false }),
    },
  ];
}
