// Puts the graph on a page: sizes from the texts, places from dagre, downwards. Knows no format.
import { Graph, layout as placeAll } from "@dagrejs/dagre";
import type { Box, Frame, Way, WorkGraph } from "./graph.ts";
import { linesOf, widthOf } from "./text-size.ts";

/** Pixels; x and y of the middle. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PlacedBox extends Rectangle {
  readonly box: Box;
  readonly lines: readonly string[];
}

export interface PlacedWay {
  readonly way: Way;
  readonly points: readonly Point[];
  readonly lines: readonly string[];
  /** The middle of its label. */
  readonly label: Point | null;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Placed {
  readonly width: number;
  readonly height: number;
  /** Outermost first. */
  readonly frames: readonly Rectangle[];
  readonly boxes: readonly PlacedBox[];
  readonly ways: readonly PlacedWay[];
}

export const LINE = 17;
const PADDING = { x: 14, y: 9 };
/** Letters in a line. */
const WIDEST = { box: 38, label: 24 };
const DIAMOND = 22;

/** The same graph gives the same places. */
export function placed({ boxes, ways }: WorkGraph): Placed {
  const graph = new Graph({ compound: true, multigraph: true });
  graph.setGraph({ rankdir: "TB", nodesep: 36, ranksep: 30, edgesep: 20, marginx: 16, marginy: 16 });
  const texts = new Map(boxes.map((box) => [box.id, boxLines(box)]));
  const frames = framesOf(boxes);
  for (const { id } of frames) graph.setNode(id, {});
  for (const box of boxes) {
    graph.setNode(box.id, sizeOf(box, texts.get(box.id) ?? []));
    if (box.frame !== null) graph.setParent(box.id, box.frame.id);
  }
  for (const { id, frame } of frames) if (frame !== null) graph.setParent(id, frame.id);
  // A way back is laid out as one forwards, so that it turns nothing round.
  const labels = ways.map(({ label }) => (label === null ? [] : linesOf(label, WIDEST.label)));
  ways.forEach(({ from, to, back }, at) => {
    const size = sizeOfLines(labels[at] ?? [], { x: 4, y: 2 });
    graph.setEdge(back ? to : from, back ? from : to, { ...size, labelpos: "c" }, String(at));
  });
  placeAll(graph);
  const place = (id: string): Rectangle => {
    const { x, y, width, height } = graph.node(id) as Rectangle;
    return { x, y, width, height };
  };
  const { width, height } = graph.graph() as { readonly width: number; readonly height: number };
  return {
    width,
    height,
    frames: frames.map(({ id }) => place(id)),
    boxes: boxes.map((box) => ({ box, lines: texts.get(box.id) ?? [], ...place(box.id) })),
    ways: ways.map((way, at) => {
      const { from, to, back } = way;
      const edge = graph.edge(back ? to : from, back ? from : to, String(at)) as EdgePlace;
      const lines = labels[at] ?? [];
      const points = from === to ? loopOf(place(from), edge) : back ? [...edge.points].reverse() : edge.points;
      const label =
        lines.length === 0 || edge.x === undefined || edge.y === undefined ? null : { x: edge.x, y: edge.y };
      return { way, points, lines, label };
    }),
  };
}

interface EdgePlace {
  readonly points: readonly Point[];
  readonly x?: number;
  readonly y?: number;
}

/** Out of the right side of a box and back into it above; the library leaves a gap between its box and such a way. */
function loopOf({ x, y, width, height }: Rectangle, edge: EdgePlace): readonly Point[] {
  const side = x + width / 2;
  const far = Math.max(...edge.points.map((point) => point.x));
  return [
    { x: side, y: y + height / 4 },
    { x: far, y: y + height / 4 },
    { x: far, y: y - height / 4 },
    { x: side, y: y - height / 4 },
  ];
}

function framesOf(boxes: readonly Box[]): readonly Frame[] {
  const frames = new Map<string, Frame>();
  const keep = (frame: Frame | null): void => {
    if (frame === null || frames.has(frame.id)) return;
    keep(frame.frame);
    frames.set(frame.id, frame);
  };
  for (const { frame } of boxes) keep(frame);
  return [...frames.values()];
}

function boxLines({ number, text }: Box): readonly string[] {
  return linesOf(number === null ? text : `${number}  ${text}`, WIDEST.box);
}

function sizeOf({ kind }: Box, lines: readonly string[]): { readonly width: number; readonly height: number } {
  return kind === "parting" ? { width: DIAMOND, height: DIAMOND } : sizeOfLines(lines, PADDING);
}

function sizeOfLines(lines: readonly string[], padding: Point): { readonly width: number; readonly height: number } {
  if (lines.length === 0) return { width: 0, height: 0 };
  return {
    width: Math.max(...lines.map(widthOf)) + 2 * padding.x,
    height: lines.length * LINE + 2 * padding.y,
  };
}
