// The state variables of a procedure: what each part, place, energy, fact and ring can be. Variables are made when they
// are first spoken of. Knows relations between parts, but not what actions do.
import type { Energy, Fit, Part, PartInstance, Places, Ring } from "#model/declarations.ts";
import { partInstances } from "#model/instances.ts";
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
  readonly standing: () => {
    readonly riders: ReadonlyMap<string, readonly PartInstance[]>;
    readonly seats: ReadonlyMap<string, readonly { readonly places: Places; readonly position: number }[]>;
    readonly named: ReadonlyMap<string, PartInstance>;
  };
  readonly size: () => number;
  /** All variables of one kind made so far. */
  readonly all: (kind: Aspect | "turned") => readonly number[];
  /** Whether a loop could give the variable ever new values. */
  readonly canGrow: (variable: number) => boolean;
  /** Parts that may stand on another, by the name of what carries them. */
  readonly riders: (carrier: string) => readonly { readonly part: Part; readonly index: Index }[];
  readonly mayRide: (carrier: string, part: Part, index: Index) => void;
  /** The numbered places in which the part may stand: its own, and those it is put in somewhere. */
  readonly seatsOf: (part: Part, index: Index) => readonly { readonly places: Places; readonly position: number }[];
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
  readonly foreseen: () => ReadonlySet<string>;
  /** What secures or locks the part whose place the variable is, or locks the one whose grip it is; nothing for others. */
  readonly fastening: (variable: number) => readonly PartInstance[];
  readonly partOf: (key: string) => { readonly part: Part; readonly index: Index } | undefined;
  readonly parts: readonly Part[];
  /** Makes something, and tells later whether all that the world answered meanwhile is still so: it grows as it is spoken of. */
  readonly watched: <Made>(make: () => Made) => Watched<Made>;
}

export interface Watched<Made> {
  readonly made: Made;
  readonly holds: () => boolean;
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
  const numbers = new Map<string, number>();
  const initials: string[] = [];
  const keys: string[] = [];
  const films: boolean[] = [];
  const ofKind = new Map<string, number[]>();
  const carried = new Map<string, { part: Part; index: Index }[]>();
  const named = new Map<string, { part: Part; index: Index }>();
  const variable = (key: string, initial: string): number => {
    const known = numbers.get(key);
    if (known !== undefined) return known;
    const made = initials.length;
    initials.push(initial);
    keys.push(key);
    numbers.set(key, made);
    films.push(FILMS.has(kindOf(key)));
    listIn(ofKind, kindOf(key)).push(made);
    return made;
  };
  let answers: (() => boolean)[] | null = null;
  const growing = <One>(list: One[]): readonly One[] => {
    const { length } = list;
    answers?.push(() => list.length === length);
    return list;
  };
  // Asked for at every turn, so found without building a key.
  const found = new Map<Part, Map<Index, Partial<Record<Aspect, number>>>>();
  const remember = (part: Part, index: Index, aspect: Aspect, number: number): void => {
    const ofPart = found.get(part) ?? new Map<Index, Partial<Record<Aspect, number>>>();
    found.set(part, ofPart);
    ofPart.set(index, { ...ofPart.get(index), [aspect]: number });
  };
  const seats = new Map<string, { places: Places; position: number }[]>();
  const seatsOf = (part: Part, index: Index): { places: Places; position: number }[] =>
    listIn(seats, instanceKey(part, index));
  const relations = relationsAmong(parts);
  const drivenBy = new Map<Energy, PartInstance[]>();
  for (const part of parts)
    for (const energy of part.drivenBy) drivenBy.set(energy, [...(drivenBy.get(energy) ?? []), ...partInstances(part)]);
  const temporary = parts.filter((part) => part.temporary).flatMap(partInstances);
  const foreseen = new Set<string>();
  const arcs = new Map<string, { ring: Ring; part: Part; variable: number }>();
  return {
    part: (part, index, aspect) => {
      const known = found.get(part)?.get(index)?.[aspect];
      if (known !== undefined) return known;
      const key = instanceKey(part, index);
      const before = initials.length;
      const made = variable(`${aspect}:${key}`, initialOf(part, aspect, startTemperature));
      if (made === before) named.set(key, { part, index });
      remember(part, index, aspect, made);
      return made;
    },
    energy: (energy) => variable(`energy:${energy.id}`, energy.off ? "off" : "live"),
    fact: (id) => variable(`fact:${id}`, "no"),
    orientation: (ring, start) => variable(`orientation:${ring.id}`, start),
    turned: (ring) => variable(`turned:${ring.id}`, ""),
    films: () => variable("films:", ""),
    isFilm: (number) => films[number] === true,
    arc: (ring, part) => {
      const key = `fill:${ring.id} ${part.id}`;
      const known = arcs.get(key);
      if (known !== undefined) return known.variable;
      const made = { ring, part, variable: variable(key, "") };
      arcs.set(key, made);
      return made.variable;
    },
    arcs: () => [...arcs.values()],
    holder: (places, position) => variable(`holder:${placeKey(places, position)}`, ""),
    first: (before, after) => variable(`first:${before}>${after}`, ""),
    initial: (number) => initials[number] ?? "?",
    keyOf: (number) => keys[number] ?? "",
    byKey: variable,
    adopt: (other) => {
      const { riders, seats: places, named: instances } = other.standing();
      for (const what of other.foreseen()) foreseen.add(what);
      for (const [key, instance] of instances) named.set(key, instance);
      for (const [key, list] of riders) carried.set(key, [...new Set([...(carried.get(key) ?? []), ...list])]);
      for (const [key, list] of places) seats.set(key, [...new Set([...(seats.get(key) ?? []), ...list])]);
    },
    standing: () => ({ riders: carried, seats, named }),
    size: () => initials.length,
    all: (kind) => growing(listIn(ofKind, kind)),
    canGrow: (number) => GROWING.has(kindOf(keys[number] ?? "")),
    riders: (carrier) => growing(listIn(carried, carrier)),
    mayRide: (carrier, part, index) => {
      const list = listIn(carried, carrier);
      if (!list.some((rider) => rider.part === part && rider.index === index)) list.push({ part, index });
    },
    seatsOf: (part, index) => {
      const own = ownPosition(part, index);
      const others = growing(seatsOf(part, index));
      return own === null ? others : [own, ...others];
    },
    maySit: (part, index, places, position) => {
      const own = ownPosition(part, index);
      const known = seatsOf(part, index);
      if (own?.places === places && own.position === position) return;
      if (!known.some((seat) => seat.places === places && seat.position === position)) known.push({ places, position });
    },
    ...relations,
    fits: (part, index) => fitsOf(fits, part, index),
    driven: (energy) => drivenBy.get(energy) ?? [],
    temporaryParts: () => temporary,
    hanging: () =>
      growing(listIn(ofKind, "hung")).flatMap(
        (variable) => named.get((keys[variable] ?? "").slice("hung:".length)) ?? [],
      ),
    liftingLimit,
    isSpokenOf: (part) => spoken.has(part),
    foresee: (what) => void foreseen.add(what),
    isForeseen: (what) => {
      const is = foreseen.has(what);
      if (!is) answers?.push(() => !foreseen.has(what));
      return is;
    },
    foreseen: () => foreseen,
    fastening: (number) => {
      const key = keys[number] ?? "";
      const kind = kindOf(key);
      const instance = named.get(key.slice(kind.length + 1));
      if (instance === undefined || (kind !== "place" && kind !== "grip")) return [];
      const { part, index } = instance;
      const locks = relations.related("locks", part, index);
      return kind === "grip" ? locks : [...relations.related("secures", part, index), ...locks];
    },
    partOf: (key) => named.get(key),
    parts,
    watched: (make) => {
      const told: (() => boolean)[] = [];
      answers = told;
      const made = make();
      answers = null;
      return { made, holds: () => told.every((still) => still()) };
    },
  };
}

function listIn<One>(lists: Map<string, One[]>, key: string): One[] {
  const known = lists.get(key);
  if (known !== undefined) return known;
  const list: One[] = [];
  lists.set(key, list);
  return list;
}

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
export function ownPosition(part: Part, index: Index): { places: Places; position: number } | null {
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
