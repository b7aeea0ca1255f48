// The positions of a bolt circle in the order in which they are tightened or loosened. Knows no torque.
import { crossPattern } from "#engineering/bolt-circle.ts";
import type { Part, Places } from "#model/declarations.ts";
import type { Thing } from "#model/expanded.ts";

/** `reverse`: of loosening, the last that is tightened in order first. */
export type Pattern = "cross" | "circular" | "order" | "reverse";

/** Instances by number; the working order where they have none. */
export function inIndexOrder(objects: readonly Thing[]): readonly Thing[] {
  const index = (thing: Thing): number => (thing.kind === "part" && typeof thing.index === "number" ? thing.index : 0);
  return [...objects].sort((a, b) => index(a) - index(b));
}

/**
 * Positions, not numbers of fasteners; where a fastener may be in any position, all of the circle's or none. Null where no order is asked
 * for, or the places are not known.
 */
export function tighteningOrder(objects: readonly Thing[], pattern: Pattern | null): readonly number[] | null {
  if (pattern === null || objects.length < 2) return null;
  const [first] = objects;
  if (first?.kind !== "part" || objects.some((thing) => thing.kind !== "part" || thing.part !== first.part))
    return null;
  const positions = positionsOf(objects, first.part);
  if (positions === null) return null;
  const wanted = new Set(positions);
  const order = fullOrder(first.part.seats?.places ?? null, pattern, positions).filter((position) =>
    wanted.has(position),
  );
  return order.length === wanted.size ? order : null;
}

function positionsOf(objects: readonly Thing[], part: Part): readonly number[] | null {
  const numbers = objects.flatMap((thing) =>
    thing.kind === "part" && typeof thing.index === "number" ? [thing.index] : [],
  );
  if (numbers.length < objects.length) return null;
  if (part.seats === null || part.seats.rule === "by number") return numbers;
  const { places } = part.seats;
  return objects.length === places.count ? upTo(places.count) : null;
}

function fullOrder(places: Places | null, pattern: Pattern, positions: readonly number[]): readonly number[] {
  if (pattern === "reverse") return [...fullOrder(places, "order", positions)].reverse();
  const rising = places === null ? [...positions].sort((a, b) => a - b) : upTo(places.count);
  if (pattern === "cross") return crossOver(rising.length).map((at) => rising[at - 1] ?? at);
  return (pattern === "order" && places?.kind === "holes" ? places.order : null) ?? rising;
}

/** Few counts occur, each of them often. */
function crossOver(count: number): readonly number[] {
  const order = crosses.get(count) ?? crossPattern(count);
  crosses.set(count, order);
  return order;
}

const crosses = new Map<number, readonly number[]>();

function upTo(count: number): readonly number[] {
  return Array.from({ length: count }, (_, at) => at + 1);
}
