// The arc of a ring that is being filled in one direction: which positions lie in it, which were left out, which are held.
// Written `3 2?l9 1/3,1/`: the arc from its first position to its last, in the direction of filling, a gap with the line that
// passed over it; then the positions that the part holds; then `told` once something was found.
import type { SimRing } from "./shop.ts";

interface Filling {
  /** `passed`: empty where the position was filled. */
  readonly arc: readonly { readonly position: number; readonly passed: string }[];
  readonly held: readonly number[];
  readonly told: boolean;
}

/** After a part was put in a position, and whether that went the wrong way. */
export function filledAt(
  ring: SimRing,
  text: string,
  position: number,
  by: string,
): { readonly text: string; readonly wrong: boolean } {
  const { arc, held, told } = read(text);
  const after = (next: Filling["arc"], wrong = false): { text: string; wrong: boolean } => ({
    text: written({ arc: next, held: [...held.filter((each) => each !== position), position], told: told || wrong }),
    wrong,
  });
  const [first] = arc;
  const last = arc.at(-1);
  const found = arc.find((each) => each.position === position);
  // What was held already stays as it is.
  if (told || held.includes(position)) return after(arc);
  if (found !== undefined && found.passed !== "")
    return after(
      arc.map((each) => (each === found ? { position, passed: "" } : each)),
      true,
    );
  // A single hole that is closed has no direction.
  if ([1, -1].every((steps) => held.includes(stepFrom(ring, position, steps)))) return after(arc);
  if (found !== undefined) return after(arc);
  if (first === undefined || last === undefined) return after([{ position, passed: "" }]);
  const onward = distance(ring, last.position, position);
  if (onward > distance(ring, position, first.position)) return after(arc, true);
  const between = Array.from({ length: onward - 1 }, (_, at) => stepFrom(ring, last.position, at + 1));
  const gaps = between.map((each) => ({ position: each, passed: held.includes(each) ? "" : by }));
  return after([...arc, ...gaps, { position, passed: "" }]);
}

/** After what stood in a position was taken out. */
export function emptiedAt(text: string, position: number): string {
  const { arc, held, told } = read(text);
  if (!held.includes(position)) return text;
  const left = held.filter((each) => each !== position);
  const isEnd = arc[0]?.position === position || arc.at(-1)?.position === position;
  if (!isEnd) return written({ arc, held: left, told });
  // The arc goes back to what is still held.
  const first = arc.findIndex((each) => left.includes(each.position));
  const last = arc.findLastIndex((each) => left.includes(each.position));
  return written({ arc: first < 0 ? [] : arc.slice(first, last + 1), held: left, told });
}

/** A position that is held without anybody's filling it. */
export function heldAt(text: string, position: number): string {
  const filling = read(text);
  return written({ ...filling, held: [...filling.held.filter((each) => each !== position), position] });
}

/** The line that passed over the first gap that is left; empty if there is none, or something was told before. */
export function passedOver(text: string): string {
  const { arc, held, told } = read(text);
  if (told) return "";
  return arc.find(({ position, passed }) => passed !== "" && !held.includes(position))?.passed ?? "";
}

function stepFrom({ count, fill, numbered }: SimRing, position: number, steps: number): number {
  const way = fill === numbered ? steps : -steps;
  return ((((position - 1 + way) % count) + count) % count) + 1;
}

function distance(ring: SimRing, from: number, to: number): number {
  return Array.from({ length: ring.count }, (_, steps) => steps).find(
    (steps) => stepFrom(ring, from, steps) === to,
  ) as number;
}

function read(text: string): Filling {
  const [arc = "", held = "", told = ""] = text.split("/");
  return {
    arc: (arc === "" ? [] : arc.split(" ")).map((each) => {
      const [position, passed = ""] = each.split("?");
      return { position: Number(position), passed };
    }),
    held: held === "" ? [] : held.split(",").map(Number),
    told: told !== "",
  };
}

function written({ arc, held, told }: Filling): string {
  const places = arc.map(({ position, passed }) => (passed === "" ? String(position) : `${position}?${passed}`));
  return `${places.join(" ")}/${held.toSorted((a, b) => a - b).join(",")}/${told ? "told" : ""}`;
}
