// What the values and hazards of an action depend on beside what the action itself needs and changes: on this, too, it depends in
// which order work may be done. Has to follow what the checks beside it and in `hazards/` look at; knows no limit.
import type { PartInstance } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import { partInstances } from "#model/instances.ts";
import { isHung } from "../actions/loads.ts";
import { handledIn } from "../hazards/handling.ts";
import { instanceKey, type World } from "../world.ts";
import { partsOf } from "./at-node.ts";

export interface LookedAt {
  readonly variables: readonly number[];
  /** Whether it matters what time has passed. */
  readonly time: boolean;
}

export function lookedAt(world: World, line: ExpandedAction): LookedAt {
  const { variables, time } = ofValues(world, line);
  return { variables: [...variables, ...ofHazards(world, line)], time };
}

/** How hot it is what hands are on, whether what is carried is held, what energies are laid open. What comes along is moved anyhow. */
function ofHazards(world: World, line: ExpandedAction): readonly number[] {
  const hot = handledIn(line)
    .filter(({ part }) => !part.damaged)
    .map(({ part, index }) => world.part(part, index, "temperature"));
  const { verb } = line.action;
  const takesOut = verb === "remove" || verb === "discard";
  if (!takesOut && verb !== "install" && verb !== "press") return hot;
  const parts = partsOf(line);
  const held = parts.filter((own) => isHung(world, own)).map(({ part, index }) => world.part(part, index, "hung"));
  if (!takesOut) return [...hot, ...held];
  const open = parts
    .flatMap(({ part, index }) => world.targets("encloses", part, index))
    .flatMap(({ part }) => part.drivenBy);
  return [...hot, ...held, ...open.map((energy) => world.energy(energy))];
}

function ofValues(world: World, line: ExpandedAction): LookedAt {
  const parts = partsOf(line);
  const films = (of: PartInstance): readonly number[] => [
    world.part(of.part, of.index, "surface"),
    world.part(of.part, of.index, "coats"),
  ];
  switch (line.action.verb) {
    case "tighten":
      return untimed(parts.flatMap((own) => [own, ...threadPartners(world, own)].flatMap(films)));
    case "heat":
      return untimed(parts.flatMap(films));
    case "install":
      return {
        variables: parts.flatMap((own) => spacedWith(own).map(({ part, index }) => world.part(part, index, "place"))),
        time: parts.some((own) => coolsOnTheWay(world, own)),
      };
    case "lift":
    case "support":
      return untimed(parts.flatMap((own) => load(world, own)));
    default:
      return NOTHING;
  }
}

const NOTHING: LookedAt = { variables: [], time: false };

function untimed(variables: readonly number[]): LookedAt {
  return { variables, time: false };
}

/** What a fastener may be screwed on, or share its place with. */
function threadPartners(world: World, own: PartInstance): readonly PartInstance[] {
  const key = instanceKey(own.part, own.index);
  const carriers = world
    .standing()
    .filter(({ riders }) => riders.all.some(({ part, index }) => instanceKey(part, index) === key));
  const seats = world.seatsOf(own.part, own.index);
  const sharing = world.parts
    .filter((part) => part !== own.part && seats.length > 0)
    .flatMap(partInstances)
    .filter((other) =>
      world
        .seatsOf(other.part, other.index)
        .some(({ places, position }) => seats.some((seat) => seat.places === places && seat.position === position)),
    );
  return [...carriers, ...sharing];
}

/** The others of a part that is to sit equally spaced. */
function spacedWith({ part, index }: PartInstance): readonly PartInstance[] {
  if (part.seats?.rule !== "equally spaced") return [];
  return partInstances(part).filter((other) => other.index !== index);
}

function coolsOnTheWay(world: World, { part, index }: PartInstance): boolean {
  return world.fits(part, index).some(({ mate }) => part.cools !== null || mate.part.cools !== null);
}

/** Where all stands that may hang with a part. */
function load(world: World, lifted: PartInstance): readonly number[] {
  const seen = new Map<string, PartInstance>();
  const carriers = [lifted];
  for (const { part, index } of carriers)
    for (const rider of world.riders(part, index)) {
      const key = instanceKey(rider.part, rider.index);
      if (seen.has(key)) continue;
      seen.set(key, rider);
      carriers.push(rider);
    }
  return [...seen.values()].map(({ part, index }) => world.part(part, index, "place"));
}
