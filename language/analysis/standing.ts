// What goes along when a part is put in or taken out: the numbered place it stood in, its grip, what stands on it. Knows
// no actions and no conditions.
import type { Part, PartInstance } from "#model/declarations.ts";
import { UNKNOWN } from "./cell.ts";
import { carrierOf, isInstalled, isPlaceTaken, onPart, withoutHolder } from "./state-values.ts";
import type { Update } from "./update.ts";
import { type Index, instanceKey, type Seat, type World } from "./world.ts";

/** After this the part stands in no numbered place, but for the one that is kept. */
export function vacate(world: World, part: Part, index: Index, kept: Seat | null = null): readonly Update[] {
  const left = world
    .seatsOf(part, index)
    .filter(({ places, position }) => kept === null || places.id !== kept.places.id || position !== kept.position);
  if (left.length === 0) return [];
  const key = instanceKey(part, index);
  return left.map(({ places, position }) => ({
    variable: world.holder(places, position),
    keepsOrigin: "where supposed" as const,
    change: (held) => withoutHolder(held, key),
  }));
}

/** A fastener that is out holds nothing. */
export function release(world: World, part: Part, index: Index): readonly Update[] {
  return part.fastener ? [{ variable: world.part(part, index, "grip"), change: () => "absent" }] : [];
}

/** What stands on a part goes where the part went; to be done once the part itself is there. */
export function carry(world: World, part: Part, index: Index): readonly Update[] {
  if (world.riders(part, index).length === 0) return [];
  const updates: Update[] = [];
  const moved = new Set([instanceKey(part, index)]);
  let layer: readonly PartInstance[] = [{ part, index }];
  // Layer by layer upwards; where parts can stand on each other both ways, no pile is higher than there are parts.
  for (let height = 0; layer.length > 0 && height < moved.size; height++) {
    const next = new Map<string, PartInstance>();
    for (const carrier of layer)
      for (const rider of world.riders(carrier.part, carrier.index)) {
        updates.push(ride(world, carrier, rider, height === 0 ? null : moved));
        next.set(instanceKey(rider.part, rider.index), rider);
      }
    for (const key of next.keys()) moved.add(key);
    layer = [...next.values()];
  }
  return updates;
}

/** `moved`: the part moves only where what it stands on itself came along; null where that is the part all stand on. */
function ride(world: World, under: PartInstance, rider: PartInstance, moved: ReadonlySet<string> | null): Update {
  const carrier = instanceKey(under.part, under.index);
  return {
    variable: world.part(rider.part, rider.index, "place"),
    by: world.part(under.part, under.index, "place"),
    // That it stands there is as sure as it was, whoever only took it as so that what it stands on is in or out.
    keepsOrigin: "where supposed",
    change: (value, below, _, isTaken) => {
      const cameAlong = moved === null || moved.has(carrierOf(below) ?? "");
      if (carrierOf(value) !== carrier || !cameAlong) return value;
      return below === UNKNOWN ? UNKNOWN : onPart(carrier, isInstalled(below), isTaken || isPlaceTaken(below));
    },
  };
}
