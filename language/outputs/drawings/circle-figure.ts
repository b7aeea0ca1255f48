// What a drawing of numbered places shows, as data: where each place stands, in which order they are worked through, and the same in
// words. Knows no format.
import type { Part, Places } from "#model/declarations.ts";
import { toNumber } from "#quantity/rational.ts";
import type { Writer } from "../writer.ts";

export interface CircleFigure {
  /** What the drawing is of. */
  readonly title: string;
  /** All that it shows, for who cannot see it. */
  readonly text: string;
  /** What its signs mean and from where it is seen; stands below it. */
  readonly legend: string;
  /** On a circle, or one beside the other where it is not known how they lie. */
  readonly round: boolean;
  readonly marks: readonly Mark[];
}

export interface Mark {
  readonly position: number;
  /** In parts of a full turn from 12 o'clock, clockwise on paper. */
  readonly turn: number;
  /** Its number in the order, from 1; null where it has none. */
  readonly order: number | null;
}

/** Of more places the numbers would run into each other. */
const MOST_DRAWN = 60;

/** The places of a part that are tightened, or `loosened`, with their order; null where there is none to be drawn. */
export function orderFigure(
  part: Part,
  order: readonly number[],
  loosened: boolean,
  writer: Writer,
): CircleFigure | null {
  const places = part.seats?.places ?? null;
  if (places === null || !order.every((position) => position <= places.count)) return null;
  const { circle, sequence } = writer.words;
  const [title, key] = loosened ? [circle.orderLoosened, circle.keyLoosened] : [circle.order, circle.keyOrder];
  const text = circle.orderText(sequence(order.map(String)));
  return figureOf(places, order, writer, title(places.title), text, [circle.keyPosition, key]);
}

/** The places of an arrangement; null where they are too many. */
export function placesFigure(places: Places, writer: Writer): CircleFigure | null {
  const { circle } = writer.words;
  return figureOf(places, [], writer, circle.positions(places.title), "", [circle.keyPosition]);
}

function figureOf(
  places: Places,
  order: readonly number[],
  writer: Writer,
  title: string,
  text: string,
  keys: readonly string[],
): CircleFigure | null {
  if (places.count < 1 || places.count > MOST_DRAWN || places.damaged) return null;
  const view = viewText(places, writer);
  const start = places.kind === "ring" && places.start !== null ? places.start : null;
  const at =
    start === null ? 0 : toNumber(start.clock.quantity.nominal?.base ?? start.clock.quantity.low?.base ?? ZERO) / 12;
  const way = places.kind === "ring" && places.numbered === "counterclockwise" ? -1 : 1;
  const marks = Array.from({ length: places.count }, (_, nth): Mark => {
    const position = nth + 1;
    const place = order.indexOf(position);
    const turn = at + (way * (position - (start?.position ?? 1))) / places.count;
    return { position, turn: ((turn % 1) + 1) % 1, order: place < 0 ? null : place + 1 };
  });
  return {
    title,
    text: [view, text].filter((one) => one !== "").join(" "),
    legend: [...keys, view].join(" "),
    round: places.kind === "ring",
    marks,
  };
}

const ZERO = { n: 0n, d: 1n };

/** `Numbered clockwise, seen from the drive end. At the start, position 1 is at 6 o'clock.` */
export function viewText(places: Places, { words, value }: Writer): string {
  const { circle } = words;
  if (places.kind === "holes") return circle.notToPlace;
  const numbered = places.numbered === null ? "" : circle.numbered(circle[places.numbered], places.seenFrom);
  const start =
    places.start === null
      ? ""
      : circle.start(String(places.start.position), value(places.start.clock.quantity, "nominal"));
  return [numbered, start].filter((one) => one !== "").join(" ");
}
