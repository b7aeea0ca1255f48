// Outlines and lettering as shapes of a word processor. Knows no document.
import { AlignmentType, Paragraph, TextRun } from "docx";
import type { IShapeGroupChildOptions, IShapeGroupOptions } from "docx/shapes";
import type { Drawing, Lettering, Outline } from "../../drawings/svg-drawing.ts";

/** @param scale to pixels of the page */
export function drawingShapes(drawing: Drawing, scale: number, text: string): IShapeGroupOptions {
  const box = boxRound(drawing);
  const [width, height] = [Math.round(drawing.width * scale), Math.round(drawing.height * scale)];
  return {
    altText: { name: text, description: text, title: text },
    transformation: { width, height },
    children: [
      // As large as all of it, so that nothing is scaled by what the shapes happen to take.
      { ...framed(0, 0, width, height), type: "rectangle", line: { transparency: 100 } },
      ...drawing.shapes.map((shape) =>
        shape.kind === "outline" ? outlined(shape, box, scale) : lettered(shape, scale),
      ),
    ],
  };
}

export function framed(left: number, top: number, width: number, height: number) {
  const offset = { left: Math.round(left), top: Math.round(top) };
  return { transformation: { width: Math.round(width), height: Math.round(height), offset } };
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Round the whole drawing, also where it reaches beyond its edges. */
function boxRound({ width, height, shapes }: Drawing): Box {
  let [left, top, right, bottom] = [0, 0, width, height];
  for (const shape of shapes) {
    if (shape.kind !== "outline") continue;
    for (const [, x = "", y = ""] of shape.path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)) {
      [left, right] = [Math.min(left, Number(x)), Math.max(right, Number(x))];
      [top, bottom] = [Math.min(top, Number(y)), Math.max(bottom, Number(y))];
    }
  }
  return { left, top, width: right - left, height: bottom - top };
}

/** Every outline in the same box, drawn with an unseen edge: a word processor stretches a path to the box of its shape. */
function outlined({ path, fill, edge }: Outline, box: Box, scale: number): IShapeGroupChildOptions {
  const { left, top, width, height } = box;
  const edges = `M${left} ${top}H${left + width}V${top + height}H${left}Z`;
  return {
    ...framed(left * scale, top * scale, width * scale, height * scale),
    type: "custom",
    paths: [
      { path: edges, fill: false, line: false },
      { path, fill: fill !== null },
    ],
    ...(fill === null ? {} : { fill: fill.slice(1) }),
    line:
      edge === null
        ? { transparency: 100 }
        : {
            color: edge.colour.slice(1),
            width: edge.width * scale * POINTS,
            ...(edge.dash ? { dash: "dash" as const } : {}),
          },
  };
}

/** A pixel of a screen is three quarters of a point. */
const POINTS = 0.75;

const ALIGNED = { start: AlignmentType.LEFT, middle: AlignmentType.CENTER, end: AlignmentType.RIGHT } as const;
/** From the left of a box to where its text is tied. */
const TIED = { start: 0, middle: 0.5, end: 1 } as const;
/** Of letters one high: from where they stand up to the middle of their line, and the most that one takes across. */
const MIDDLE = 0.33;
const ACROSS = 1.1;

function lettered({ text, x, y, anchor, size, bold, colour }: Lettering, scale: number): IShapeGroupChildOptions {
  const letters = size * scale;
  const [width, height] = [(text.length + 1) * letters * ACROSS, letters * 1.5];
  return {
    ...framed(x * scale - width * TIED[anchor], (y - size * MIDDLE) * scale - height / 2, width, height),
    type: "rectangle",
    line: { transparency: 100 },
    ...label(text, { size: letters * POINTS, bold, colour: colour.slice(1), alignment: ALIGNED[anchor] }),
  };
}

export interface Label {
  /** In points. */
  readonly size: number;
  readonly bold: boolean;
  readonly colour?: string;
  readonly alignment?: (typeof ALIGNED)[keyof typeof ALIGNED];
}

/** A line of text in a shape, in its middle unless aligned otherwise. */
export function label(text: string, { size, bold, colour, alignment = AlignmentType.CENTER }: Label) {
  return {
    children: [
      new Paragraph({
        alignment,
        spacing: { before: 0, after: 0 },
        children: [
          new TextRun({ text, bold, size: Math.round(size * 2), ...(colour === undefined ? {} : { color: colour }) }),
        ],
      }),
    ],
    textOptions: {
      wrap: false,
      margins: { top: 0, right: 0, bottom: 0, left: 0 },
    },
  };
}
