// How a ring is turned: the clock position of its first place, and from that of every other. A clock position is a
// number of twelfths of a turn from 12, clockwise, seen from where the ring is numbered.
import type { Ring } from "#model/declarations.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { UNKNOWN } from "./cell.ts";
import { magnitudeNumber } from "./readings.ts";
import type { World } from "./world.ts";

/** The clock position as hours in [0, 12), to a millionth; null where none is written. */
export function clockTurns(clock: Quantity): number | null {
  const hours = magnitudeNumber(clock.nominal ?? clock.low ?? clock.high);
  return hours === null ? null : hour(hours);
}

/** The variable that says at which hour position 1 of the ring stands. */
export function orientationVariable(world: World, ring: Ring): number {
  return world.orientation(ring, startOf(ring));
}

/** The hour at which `position` stands when position 1 stands at `orientation`; null where that is unknown. */
export function placeAt(ring: Ring, position: number, orientation: string): number | null {
  if (orientation === UNKNOWN || ring.numbered === null || ring.count === 0) return null;
  const way = ring.numbered === "clockwise" ? 1 : -1;
  return hour(Number(orientation) + (way * (position - 1) * 12) / ring.count);
}

/** The orientation that brings `position` to `clock` (hours). */
export function turnedTo(ring: Ring, position: number, clock: number): string {
  if (ring.numbered === null || ring.count === 0) return UNKNOWN;
  const way = ring.numbered === "clockwise" ? 1 : -1;
  return String(hour(clock - (way * (position - 1) * 12) / ring.count));
}

function startOf(ring: Ring): string {
  const clock = ring.start === null ? null : clockTurns(ring.start.clock.quantity);
  return ring.start === null || clock === null ? UNKNOWN : turnedTo(ring, ring.start.position, clock);
}

function hour(hours: number): number {
  const turned = ((hours % 12) + 12) % 12;
  const rounded = Math.round(turned * 1e6) / 1e6;
  return rounded === 12 ? 0 : rounded;
}
