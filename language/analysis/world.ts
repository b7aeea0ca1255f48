// The state variables of a procedure: what each part, place, energy, fact and ring can be. Variables are made when they
// are first spoken of. Knows relations between parts, but not what actions do.
import type { Energy, Part, PartInstance, Places, Relation, Ring } from "#model/declarations.ts";
import { hasInstance, partInstances } from "#model/instances.ts";

/** An instance of a part, by number, by name, or the only one. */
export type Index = number | string | null;

export type Aspect = "place" | "grip" | "surface" | "aligned" | "own" | "temperature";

export interface World {
  /** Number of the variable; it is made on first use. */
  readonly part: (part: Part, index: Index, aspect: Aspect) => number;
  readonly energy: (energy: Energy) => number;
  readonly fact: (id: string) => number;
  /** At which hour position 1 of a ring stands. */
  readonly orientation: (ring: Ring, start: string) => number;
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
  /** All temperature variables made so far. */
  readonly temperatures: () => readonly number[];
  readonly isTemperature: (variable: number) => boolean;
  /** Parts that may stand on another, by the name of what carries them. */
  readonly riders: (carrier: string) => readonly { readonly part: Part; readonly index: Index }[];
  readonly mayRide: (carrier: string, part: Part, index: Index) => void;
  /** The numbered places in which the part may stand: its own, and those it is put in somewhere. */
  readonly seatsOf: (part: Part, index: Index) => readonly { readonly places: Places; readonly position: number }[];
  readonly maySit: (part: Part, index: Index, places: Places, position: number) => void;
  /** Instances that stand in a relation to this one: `who encloses Bearing`. */
  readonly related: (
    relation: RelationName,
    part: Part,
    index: Index,
  ) => readonly { readonly part: Part; readonly index: Index; readonly relation: Relation }[];
  /** Instances that this one says it `needs`, `secures` …. */
  readonly targets: (
    relation: RelationName,
    part: Part,
    index: Index,
  ) => readonly { readonly part: Part; readonly index: Index; readonly relation: Relation }[];
  /** Whether two parts may share a position. */
  readonly stack: (a: Part, b: Part) => boolean;
  readonly partOf: (key: string) => { readonly part: Part; readonly index: Index } | undefined;
  readonly parts: readonly Part[];
}

export type RelationName = "needs" | "encloses" | "retains" | "secures" | "locks";
const RELATIONS: readonly RelationName[] = ["needs", "encloses", "retains", "secures", "locks"];

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

/** `parts`: all that the procedure speaks of; relations of others cannot matter, since they are never in. */
export function createWorld(parts: readonly Part[], startTemperature: string): World {
  const numbers = new Map<string, number>();
  const initials: string[] = [];
  const keys: string[] = [];
  const temperatures: number[] = [];
  const carried = new Map<string, { part: Part; index: Index }[]>();
  const named = new Map<string, { part: Part; index: Index }>();
  const variable = (key: string, initial: string): number => {
    const known = numbers.get(key);
    if (known !== undefined) return known;
    initials.push(initial);
    keys.push(key);
    numbers.set(key, initials.length - 1);
    return initials.length - 1;
  };
  // Asked for at every turn, so found without building a key.
  const found = new Map<Part, Map<Index, Partial<Record<Aspect, number>>>>();
  const remember = (part: Part, index: Index, aspect: Aspect, number: number): void => {
    const ofPart = found.get(part) ?? new Map<Index, Partial<Record<Aspect, number>>>();
    found.set(part, ofPart);
    ofPart.set(index, { ...ofPart.get(index), [aspect]: number });
  };
  const seats = new Map<string, { places: Places; position: number }[]>();
  const seatsOf = (part: Part, index: Index): { places: Places; position: number }[] => {
    const key = instanceKey(part, index);
    const list = seats.get(key) ?? [];
    seats.set(key, list);
    return list;
  };
  const sources = relationSources(parts);
  const stacks = stackGroups(parts);
  return {
    part: (part, index, aspect) => {
      const known = found.get(part)?.get(index)?.[aspect];
      if (known !== undefined) return known;
      const key = instanceKey(part, index);
      const before = initials.length;
      const made = variable(`${aspect}:${key}`, initialOf(part, aspect, startTemperature));
      if (made === before) {
        named.set(key, { part, index });
        if (aspect === "temperature") temperatures.push(made);
      }
      remember(part, index, aspect, made);
      return made;
    },
    energy: (energy) => variable(`energy:${energy.id}`, energy.off ? "isolated" : "live"),
    fact: (id) => variable(`fact:${id}`, "no"),
    orientation: (ring, start) => variable(`orientation:${ring.id}`, start),
    holder: (places, position) => variable(`holder:${placeKey(places, position)}`, ""),
    first: (before, after) => variable(`first:${before}>${after}`, ""),
    initial: (number) => initials[number] ?? "?",
    keyOf: (number) => keys[number] ?? "",
    byKey: variable,
    adopt: (other) => {
      const { riders, seats: places, named: instances } = other.standing();
      for (const [key, instance] of instances) named.set(key, instance);
      for (const [key, list] of riders) carried.set(key, [...new Set([...(carried.get(key) ?? []), ...list])]);
      for (const [key, list] of places) seats.set(key, [...new Set([...(seats.get(key) ?? []), ...list])]);
    },
    standing: () => ({ riders: carried, seats, named }),
    size: () => initials.length,
    temperatures: () => temperatures,
    isTemperature: (number) => keys[number]?.startsWith("temperature:") ?? false,
    riders: (carrier) => carried.get(carrier) ?? [],
    mayRide: (carrier, part, index) => {
      const list = carried.get(carrier) ?? [];
      carried.set(carrier, list);
      if (!list.some((rider) => rider.part === part && rider.index === index)) list.push({ part, index });
    },
    seatsOf: (part, index) => {
      const own = ownPosition(part, index);
      return own === null ? seatsOf(part, index) : [own, ...seatsOf(part, index)];
    },
    maySit: (part, index, places, position) => {
      const own = ownPosition(part, index);
      const known = seatsOf(part, index);
      if (own?.places === places && own.position === position) return;
      if (!known.some((seat) => seat.places === places && seat.position === position)) known.push({ places, position });
    },
    related: (relation, part, index) => {
      const found: { part: Part; index: Index; relation: Relation }[] = [];
      for (const { part: owner, relation: written } of sources.get(relation)?.get(part.id) ?? []) {
        for (const from of written.which === "same" ? sameIn(owner, index) : partInstances(owner))
          if (reaches(written, from.index, index)) found.push({ part: owner, index: from.index, relation: written });
      }
      return found;
    },
    targets: (relation, part, index) =>
      part[relation].flatMap((written) =>
        (written.which === "same" ? sameIn(written.part, index) : partInstances(written.part))
          .filter((target) => reaches(written, index, target.index))
          .map((target) => ({ part: target.part, index: target.index, relation: written })),
      ),
    stack: (a, b) => a === b || (stacks.get(a.id) ?? a.id) === (stacks.get(b.id) ?? b.id),
    partOf: (key) => named.get(key),
    parts,
  };
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
  }
}

/** Whether the relation, said of the owner's instance `from`, means the target's instance `to`. */
function reaches(relation: Relation, from: Index, to: Index): boolean {
  if (relation.which === "all") return true;
  if (relation.which === "same") return from === to;
  return to !== null && relation.which.includes(to);
}

/** The like-numbered partner, without looking through all. */
function sameIn(part: Part, index: Index): readonly PartInstance[] {
  return hasInstance(part, index) ? [{ part, index }] : [];
}

function relationSources(parts: readonly Part[]): Map<RelationName, Map<string, { part: Part; relation: Relation }[]>> {
  const sources = new Map<RelationName, Map<string, { part: Part; relation: Relation }[]>>();
  for (const name of RELATIONS) {
    const byTarget = new Map<string, { part: Part; relation: Relation }[]>();
    sources.set(name, byTarget);
    for (const part of parts)
      for (const relation of part[name]) {
        const list = byTarget.get(relation.part.id) ?? [];
        byTarget.set(relation.part.id, list);
        list.push({ part, relation });
      }
  }
  return sources;
}

/** Parts that name like-numbered partners stack in one position: each gets the name of its group. */
function stackGroups(parts: readonly Part[]): Map<string, string> {
  const group = new Map<string, string>();
  const find = (id: string): string => {
    const above = group.get(id) ?? id;
    return above === id ? id : find(above);
  };
  for (const part of parts)
    for (const name of RELATIONS)
      for (const relation of part[name])
        if (relation.which === "same") group.set(find(part.id), find(relation.part.id));
  return new Map(parts.map((part) => [part.id, find(part.id)]));
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
