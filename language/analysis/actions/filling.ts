// The direction in which a ring is filled. Kept for each part on a ring that says `fill`: the positions that it holds, the arc
// from the first to the last that it filled, and the positions in that arc which were passed over, each with the node that
// did so: `held 12,13,16 arc 16..12 passed 14@57`. `told` once the direction was wrong: the rest of it is the same mistake.
import type { Part, Ring } from "#model/declarations.ts";
import { UNKNOWN } from "../cell.ts";
import { placeOf } from "../state-values.ts";
import type { Test, Update } from "../update.ts";
import { type Index, instanceName, placeKey, type Seat, type World } from "../world.ts";
import { type Move, NOTHING } from "./move.ts";

interface Filled {
  readonly held: readonly number[];
  readonly arc: { readonly first: number; readonly last: number } | null;
  readonly passed: readonly { readonly position: number; readonly by: number }[];
}

const TOLD = "told";

/**
 * The part goes into a position: the next in the direction, or the first of all. Where both its neighbours are in, there is no
 * direction, unless the position was passed over before.
 */
export function filling(world: World, part: Part, index: Index, { places, position }: Seat): Move {
  if (!saysFill(places, part)) return NOTHING;
  const variable = world.arc(places, part);
  return {
    needs: [
      {
        bad: [{ variable, test: (value) => isWrongWay(places, read(value), position) }],
        trouble: {
          kind: "direction",
          part: instanceName(part, index),
          place: `${places.name}[${position}]`,
          wanted: places.fill,
          declaredAt: places.span,
        },
      },
    ],
    updates: [
      {
        variable,
        change: (value, _, at) => {
          const now = read(value);
          if (now === null) return value;
          return isWrongWay(places, now, position) ? TOLD : written(filled(places, now, position, at));
        },
      },
    ],
  };
}

/** The part is in its position without having been put there by the procedure, unless it is in elsewhere. */
export function heldFrom(
  world: World,
  part: Part,
  seat: Seat | null,
  isElsewhere: (place: string) => boolean,
  by: number,
): readonly Update[] {
  if (seat === null || !saysFill(seat.places, part)) return [];
  const change = (value: string, place: string): string => {
    const now = read(value);
    return now === null || isElsewhere(place) ? value : written({ ...now, held: withOne(now.held, seat.position) });
  };
  return [{ variable: world.arc(seat.places, part), by, change }];
}

/** The part is taken out of the position in which it stands. */
export function unfilling(world: World, part: Part, index: Index): readonly Update[] {
  return world.seatsOf(part, index).flatMap(({ places, position }): Update[] => {
    if (!saysFill(places, part)) return [];
    const key = placeKey(places, position);
    const stands: Test = { variable: world.part(part, index, "place"), test: (value) => placeOf(value) === key };
    // Where it can stand in one position only, what is held there tells.
    const when = world.seatsOf(part, index).length === 1 ? {} : { when: [[stands]] };
    const change = (value: string): string => {
      const now = read(value);
      return now === null || !now.held.includes(position) ? value : written(emptied(places, now, position));
    };
    return [{ variable: world.arc(places, part), ...when, change }];
  });
}

/** The positions passed over in which nothing stands, in the direction of filling, each with the node that passed it. */
export function passedOver(value: string): Filled["passed"] {
  const now = read(value);
  return now === null ? [] : now.passed.filter(({ position }) => !now.held.includes(position));
}

/** The position after this one in the direction of filling. */
export function nextPosition(ring: Ring, position: number, steps = 1): number {
  return ((((position - 1 + way(ring) * steps) % ring.count) + ring.count) % ring.count) + 1;
}

/** Without a direction of its numbers none of filling is known. */
type FillRing = Ring & { readonly fill: NonNullable<Ring["fill"]>; readonly numbered: NonNullable<Ring["numbered"]> };

function saysFill(places: Seat["places"], part: Part): places is FillRing {
  return (
    places.kind === "ring" && places.fill !== null && places.numbered !== null && places.count > 1 && !part.temporary
  );
}

/** Up or down in the numbers. */
function way(ring: Ring): 1 | -1 {
  return ring.fill === ring.numbered ? 1 : -1;
}

function distance(ring: Ring, from: number, to: number): number {
  return (((way(ring) * (to - from)) % ring.count) + ring.count) % ring.count;
}

function isWrongWay(ring: Ring, now: Filled | null, position: number): boolean {
  if (now === null || now.held.includes(position)) return false;
  if (now.passed.some((passed) => passed.position === position)) return true;
  if (isSingleHole(ring, now, position) || now.arc === null || isInside(ring, now.arc, position)) return false;
  return distance(ring, now.arc.last, position) > distance(ring, position, now.arc.first);
}

function isSingleHole(ring: Ring, { held }: Filled, position: number): boolean {
  return [1, -1].every((steps) => held.includes(nextPosition(ring, position, steps)));
}

function isInside(ring: Ring, { first, last }: NonNullable<Filled["arc"]>, position: number): boolean {
  return distance(ring, first, position) <= distance(ring, first, last);
}

/** The right way round; what lies between the last and this was passed over, where nothing stands in it. */
function filled(ring: Ring, now: Filled, position: number, at: number): Filled {
  const held = withOne(now.held, position);
  if (now.held.includes(position) || isSingleHole(ring, now, position)) return { ...now, held };
  if (now.arc === null) return { ...now, held, arc: { first: position, last: position } };
  if (isInside(ring, now.arc, position)) return { ...now, held };
  const between = Array.from({ length: distance(ring, now.arc.last, position) - 1 }, (_, step) =>
    nextPosition(ring, now.arc?.last ?? position, step + 1),
  );
  const passed = between.filter((one) => !held.includes(one)).map((one) => ({ position: one, by: at }));
  return { held, arc: { first: now.arc.first, last: position }, passed: [...now.passed, ...passed] };
}

/** An arc ends where the part still stands. */
function emptied(ring: Ring, now: Filled, position: number): Filled {
  const held = now.held.filter((one) => one !== position);
  const { arc } = now;
  if (arc === null || (position !== arc.first && position !== arc.last)) return { ...now, held };
  const left = held.filter((one) => isInside(ring, arc, one));
  const [first, last] = [Math.min, Math.max].map((end) => {
    const steps = end(...left.map((one) => distance(ring, arc.first, one)));
    return nextPosition(ring, arc.first, steps);
  });
  if (left.length === 0 || first === undefined || last === undefined) return { held, arc: null, passed: [] };
  const rest = position === arc.last ? { first: arc.first, last } : { first, last: arc.last };
  return { held, arc: rest, passed: now.passed.filter((passed) => isInside(ring, rest, passed.position)) };
}

function withOne(list: readonly number[], one: number): readonly number[] {
  return list.includes(one) ? list : [...list, one].sort((a, b) => a - b);
}

/** Null where nothing is, or needs to be, known. */
function read(value: string): Filled | null {
  if (value === UNKNOWN || value === TOLD) return null;
  const [, held = "", first, last, passed = ""] =
    /^held ([\d,]*)(?: arc (\d+)\.\.(\d+))?(?: passed (.*))?$/.exec(value) ?? [];
  return {
    held: numbers(held),
    arc: first === undefined ? null : { first: Number(first), last: Number(last) },
    passed: passed
      .split(",")
      .filter((text) => text !== "")
      .map((text) => ({ position: Number(text.split("@")[0]), by: Number(text.split("@")[1]) })),
  };
}

function numbers(text: string): readonly number[] {
  return text === "" ? [] : text.split(",").map(Number);
}

function written({ held, arc, passed }: Filled): string {
  if (held.length === 0 && arc === null) return "";
  const arcText = arc === null ? "" : ` arc ${arc.first}..${arc.last}`;
  const passedText =
    passed.length === 0 ? "" : ` passed ${passed.map(({ position, by }) => `${position}@${by}`).join(",")}`;
  return `held ${held.join(",")}${arcText}${passedText}`;
}
