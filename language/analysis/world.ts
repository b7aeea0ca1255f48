// The state variables of a procedure: what each part, place, energy, fact and ring can be. Variables are made when they
// are first spoken of. Knows relations between parts, but not what actions do.
import type { Energy, Fit, Part, PartInstance, Places, Ring } from "#model/declarations.ts";
import { partInstances } from "#model/instances.ts";
import { createWatch, type Growing, growing, type Watched } from "./growing.ts";
import { type Relations, relationsAmong } from "./relations.ts";

/** An instance of a part, by number, by name, or the only one. */
export type Index = number | string | null;

/**
 * `used`: of single use, whether it may still go in. `hung`: on the hoist or on supports. `cure`: what is on it and for how long
 * it must still rest. `coats`: all that was applied to it since it was clean. `film`, `warmth`: work on it that nothing has used yet. `contents`: drained, filled or bled.
 */
export const ASPECTS = [
  "place",
  "grip",
  "surface",
  "aligned",
  "own",
  "temperature",
  "used",
  "hung",
  "cure",
  "coats",
  "film",
  "warmth",
  "contents",
] as const;
export type Aspect = (typeof ASPECTS)[number];

export interface World extends Relations {
  /** Number of the variable; it is made on first use. */
  readonly part: (part: Part, index: Index, aspect: Aspect) => number;
  readonly energy: (energy: Energy) => number;
  readonly fact: (id: string) => number;
  /** At which hour position 1 of a ring stands. */
  readonly orientation: (ring: Ring, start: string) => number;
  /** Whether it has been turned with nothing done since. */
  readonly turned: (ring: Ring) => number;
  /** Stands for all films and heat together. */
  readonly films: () => number;
  readonly isFilm: (variable: number) => boolean;
  /** Which positions of a ring that says `fill` the part has filled so far (`fill-arc.ts`). */
  readonly arc: (ring: Ring, part: Part) => number;
  readonly arcs: () => readonly { readonly ring: Ring; readonly part: Part; readonly variable: number }[];
  /** What stands in a place: instances joined by `&`, or nothing. */
  readonly holder: (places: Places, position: number) => number;
  /** Which of two steps came first. */
  readonly first: (before: string, after: string) => number;
  readonly initial: (variable: number) => string;
  /** The name of a variable, the same in every procedure; `byKey` makes the variable if need be. */
  readonly keyOf: (variable: number) => string;
  readonly byKey: (key: string, initial: string) => number;
  /** Takes over what another world knows of where parts may stand. */
  readonly adopt: (other: World) => void;
  /** Every instance that was spoken of so far, with what may stand on it and in which places beside its own it may. */
  readonly standing: () => readonly Standing[];
  readonly size: () => number;
  /** All variables of one kind made so far. */
  readonly all: (kind: Aspect | "turned") => readonly number[];
  /** Whether a loop could give the variable ever new values. */
  readonly canGrow: (variable: number) => boolean;
  /** Parts that may stand on this one. */
  readonly riders: (part: Part, index: Index) => readonly PartInstance[];
  readonly mayRide: (carrier: PartInstance, part: Part, index: Index) => void;
  /** The numbered places in which the part may stand: its own, and those it is put in somewhere. */
  readonly seatsOf: (part: Part, index: Index) => readonly Seat[];
  readonly maySit: (part: Part, index: Index, places: Places, position: number) => void;
  /** Fits that name the part, each with the part on its other side. */
  readonly fits: (part: Part, index: Index) => readonly FitSide[];
  /** Instances of parts that the energy drives. */
  readonly driven: (energy: Energy) => readonly PartInstance[];
  /** Every instance of every temporary part. */
  readonly temporaryParts: () => readonly PartInstance[];
  /** Parts that hang somewhere in the procedure. */
  readonly hanging: () => readonly PartInstance[];
  /** What one person may lift by the shop's own rule, in kg; null where it has none. */
  readonly liftingLimit: number | null;
  /** Whether the procedure itself names the part. */
  readonly isSpokenOf: (part: Part) => boolean;
  /** What the procedure does somewhere, as `clean path#Cover`; all of it is known before anything is followed. */
  readonly foresee: (what: string) => void;
  readonly isForeseen: (what: string) => boolean;
  readonly foreseen: () => readonly string[];
  /** What secures or locks the part whose place the variable is, or locks the one whose grip it is; nothing for others. */
  readonly fastening: (variable: number) => readonly PartInstance[];
  readonly partOf: (key: string) => { readonly part: Part; readonly index: Index } | undefined;
  readonly parts: readonly Part[];
  /** Makes something, and tells later whether all that the world answered meanwhile is still so: it grows as it is spoken of. */
  readonly watched: <Made>(make: () => Made) => Watched<Made>;
}

/** A position of a ring or of holes. */
export interface Seat {
  readonly places: Places;
  readonly position: number;
}

export interface Standing extends PartInstance {
  readonly riders: Growing<PartInstance>;
  readonly seats: Growing<Seat>;
}

/** A part's side of a fit, and what is on the other. */
export interface FitSide {
  readonly fit: Fit;
  readonly isOuter: boolean;
  readonly mate: PartInstance;
}

/** What a person calls the instance: `Cover`, `Segment[3]`. */
export function instanceName(part: Part, index: Index): string {
  return index === null ? part.name : `${part.name}[${index}]`;
}
/** The instance's identity, also where two files use one name. */
export function instanceKey(part: Part, index: Index): string {
  return index === null ? part.id : `${part.id}[${index}]`;
}
export function placeKey(places: Places, position: number): string {
  return `${places.id}[${position}]`;
}

/** What a world is made of. `parts`: all that the procedure speaks of, and what secures or locks those; others are never in. */
export interface WorldThings {
  readonly parts: readonly Part[];
  readonly spoken: ReadonlySet<Part>;
  readonly fits: readonly Fit[];
  readonly startTemperature: string;
  readonly liftingLimit: number | null;
}

export function createWorld({ parts, spoken, fits, startTemperature, liftingLimit }: WorldThings): World {
  const initials: string[] = [];
  const kinds: string[] = [];
  const films: boolean[] = [];
  const ofKind = new Map<string, Growing<number>>();
  const allOf = (kind: string): Growing<number> => {
    const known = ofKind.get(kind) ?? growing<number>();
    ofKind.set(kind, known);
    return known;
  };
  /** Of what is no aspect of a part: its key and number, both ways. */
  const numbers = new Map<string, number>();
  const keys: (string | undefined)[] = [];
  /** Of what is an aspect of a part: whose. */
  const owners: (Known | undefined)[] = [];
  const { told, add, watched } = createWatch();
  const make = (kind: string, initial: string): number => {
    const made = initials.length;
    initials.push(initial);
    kinds.push(kind);
    films.push(FILMS.has(kind));
    add(allOf(kind), made);
    return made;
  };
  const variable = (key: string, initial: string): number => {
    const old = numbers.get(key);
    if (old !== undefined) return old;
    const made = make(kindOf(key), initial);
    keys[made] = key;
    numbers.set(key, made);
    return made;
  };
  // Asked for at every turn, so found without building a key.
  const found = new Map<Part, Map<Index, Known>>();
  const byKey = new Map<string, Known>();
  const known = (part: Part, index: Index): Known => {
    const ofPart = found.get(part) ?? new Map<Index, Known>();
    const old = ofPart.get(index);
    if (old !== undefined) return old;
    const key = instanceKey(part, index);
    const made = byKey.get(key) ?? knownOf(part, index, key);
    found.set(part, ofPart.set(index, made));
    byKey.set(key, made);
    return made;
  };
  const ofInstance = (owner: Known, aspect: Aspect, initial: string): number => {
    const made = make(aspect, initial);
    owners[made] = owner;
    owner.variables[aspect] = made;
    return made;
  };
  const keyOf = (number: number): string => {
    const owner = owners[number];
    return owner === undefined ? (keys[number] ?? "") : `${kinds[number]}:${owner.key}`;
  };
  const relations = relationsAmong(parts);
  const drivenBy = new Map<Energy, PartInstance[]>();
  for (const part of parts)
    for (const energy of part.drivenBy) drivenBy.set(energy, [...(drivenBy.get(energy) ?? []), ...partInstances(part)]);
  const fitting = fitsByPart(fits);
  const temporary = parts.filter((part) => part.temporary).flatMap(partInstances);
  /** Whether it is foreseen is whether there is a one in the list. */
  const foresights = new Map<string, Growing<true>>();
  const foresightOf = (what: string): Growing<true> => {
    const known = foresights.get(what) ?? growing<true>();
    foresights.set(what, known);
    return known;
  };
  const foresee = (what: string): void => {
    const foresight = foresightOf(what);
    if (foresight.all.length === 0) add(foresight, true);
  };
  const arcs = new Map<string, { ring: Ring; part: Part; variable: number }>();
  const held = new Map<string, number[]>();
  return {
    part: (part, index, aspect) => {
      const owner = found.get(part)?.get(index) ?? known(part, index);
      return owner.variables[aspect] ?? ofInstance(owner, aspect, initialOf(part, aspect, startTemperature));
    },
    energy: (energy) => variable(`energy:${energy.id}`, energy.off ? "off" : "live"),
    fact: (id) => variable(`fact:${id}`, "no"),
    orientation: (ring, start) => variable(`orientation:${ring.id}`, start),
    turned: (ring) => variable(`turned:${ring.id}`, ""),
    films: () => variable("films:", ""),
    isFilm: (number) => films[number] === true,
    arc: (ring, part) => {
      const key = `fill:${ring.id} ${part.id}`;
      const old = arcs.get(key);
      if (old !== undefined) return old.variable;
      const made = { ring, part, variable: variable(key, "") };
      arcs.set(key, made);
      return made.variable;
    },
    arcs: () => [...arcs.values()],
    holder: (places, position) => {
      const known = held.get(places.id)?.[position];
      if (known !== undefined) return known;
      const made = variable(`holder:${placeKey(places, position)}`, "");
      const ofPlaces = held.get(places.id) ?? [];
      ofPlaces[position] = made;
      held.set(places.id, ofPlaces);
      return made;
    },
    first: (before, after) => variable(`first:${before}>${after}`, ""),
    initial: (number) => initials[number] ?? "?",
    keyOf,
    byKey: (key, initial) => {
      const kind = kindOf(key);
      const owner = isAspect(kind) ? byKey.get(key.slice(kind.length + 1)) : undefined;
      if (owner === undefined || !isAspect(kind)) return variable(key, initial);
      return owner.variables[kind] ?? ofInstance(owner, kind, initial);
    },
    adopt: (other) => {
      for (const what of other.foreseen()) foresee(what);
      for (const { part, index, riders, seats } of other.standing()) {
        const own = known(part, index);
        for (const rider of riders.all) if (!own.riders.all.includes(rider)) add(own.riders, rider);
        for (const seat of seats.all) if (!own.seats.all.includes(seat)) add(own.seats, seat);
      }
    },
    standing: () => [...byKey.values()],
    size: () => initials.length,
    all: (kind) => told(allOf(kind)),
    canGrow: (number) => GROWING.has(kinds[number] ?? ""),
    riders: (part, index) => told(known(part, index).riders),
    mayRide: (carrier, part, index) => {
      const { riders } = known(carrier.part, carrier.index);
      if (!riders.all.some((rider) => rider.part === part && rider.index === index)) add(riders, { part, index });
    },
    seatsOf: (part, index) => {
      const { own, seats } = known(part, index);
      const others = told(seats);
      return others.length === 0 ? own : [...own, ...others];
    },
    maySit: (part, index, places, position) => {
      const { own, seats } = known(part, index);
      const isIt = (seat: Seat): boolean => seat.places === places && seat.position === position;
      if (!own.some(isIt) && !seats.all.some(isIt)) add(seats, { places, position });
    },
    ...relations,
    fits: (part, index) => fitsOf(fitting.get(part) ?? [], part, index),
    driven: (energy) => drivenBy.get(energy) ?? [],
    temporaryParts: () => temporary,
    hanging: () => told(allOf("hung")).flatMap((number) => owners[number] ?? []),
    liftingLimit,
    isSpokenOf: (part) => spoken.has(part),
    foresee,
    isForeseen: (what) => told(foresightOf(what)).length > 0,
    foreseen: () => [...foresights].flatMap(([what, { all }]) => (all.length > 0 ? [what] : [])),
    fastening: (number) => {
      const kind = kinds[number];
      const owner = owners[number];
      if (owner === undefined || (kind !== "place" && kind !== "grip")) return [];
      const { part, index } = owner;
      const locks = relations.related("locks", part, index);
      return kind === "grip" ? locks : [...relations.related("secures", part, index), ...locks];
    },
    partOf: (key) => byKey.get(key),
    parts,
    watched,
  };
}

/** An instance with the numbers of its variables, as far as they are made. */
interface Known extends Standing {
  readonly key: string;
  /** The position it has by its declaration. */
  readonly own: readonly Seat[];
  readonly variables: Partial<Record<Aspect, number>>;
}

function knownOf(part: Part, index: Index, key: string): Known {
  const own = ownPosition(part, index);
  return { part, index, key, own: own === null ? [] : [own], variables: {}, riders: growing(), seats: growing() };
}

function isAspect(kind: string): kind is Aspect {
  return ALL_ASPECTS.has(kind);
}

const ALL_ASPECTS: ReadonlySet<string> = new Set(ASPECTS);

function initialOf(part: Part, aspect: Aspect, startTemperature: string): string {
  switch (aspect) {
    case "place":
      return "out";
    case "grip":
      return "absent";
    case "surface":
      return "as found";
    case "aligned":
      return "no";
    case "own":
      return part.states[0] ?? "?";
    case "temperature":
      return startTemperature;
    case "used":
      return "fresh";
    case "hung":
      return "no";
    default:
      return "";
  }
}

const FILMS: ReadonlySet<string> = new Set(["film", "warmth"]);
const GROWING: ReadonlySet<string> = new Set(["temperature", "cure", "fill"]);

/** The kind of a variable: the first word of its key. */
export function kindOf(key: string): string {
  return key.slice(0, key.indexOf(":"));
}

function fitsByPart(fits: readonly Fit[]): ReadonlyMap<Part, readonly Fit[]> {
  const byPart = new Map<Part, Fit[]>();
  for (const fit of fits)
    for (const part of new Set([fit.outer?.part, fit.inner?.part])) {
      if (part === undefined) continue;
      const list = byPart.get(part);
      if (list === undefined) byPart.set(part, [fit]);
      else list.push(fit);
    }
  return byPart;
}

function fitsOf(fits: readonly Fit[], part: Part, index: Index): readonly FitSide[] {
  const means = (side: PartInstance | null): boolean =>
    side !== null && side.part === part && (side.index === null || side.index === index);
  // A side without a number is each of them.
  const instances = (side: PartInstance | null): readonly PartInstance[] =>
    side === null ? [] : side.index === null ? partInstances(side.part) : [side];
  return fits.flatMap((fit): FitSide[] => [
    ...(means(fit.outer) ? instances(fit.inner).map((mate) => ({ fit, isOuter: true, mate })) : []),
    ...(means(fit.inner) ? instances(fit.outer).map((mate) => ({ fit, isOuter: false, mate })) : []),
  ]);
}

/** The position a part has by its declaration, where it says one: by number, or the n-th of those listed. */
export function ownPosition(part: Part, index: Index): Seat | null {
  const { seats } = part;
  if (seats === null) return null;
  if (seats.rule === "by number") {
    return typeof index === "number" ? { places: seats.places, position: index } : null;
  }
  if (seats.rule === "any" || seats.rule === "equally spaced") return null;
  const nth = partInstances(part).findIndex((instance) => instance.index === index);
  const position = seats.rule[nth];
  return position === undefined ? null : { places: seats.places, position };
}
