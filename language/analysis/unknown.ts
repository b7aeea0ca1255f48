// What becomes unknown: where a line that mentions something cannot be read, where a procedure cannot be followed.

import { performsIn } from "#model/cycles.ts";
import type { Declaration, Part, Ring } from "#model/declarations.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import { partInstances } from "#model/instances.ts";
import { spokenOf } from "#model/spoken-of.ts";
import { restedBy } from "./actions/curing.ts";
import { UNKNOWN } from "./cell.ts";
import { carry } from "./standing.ts";
import { holders, ISOLATED, isInstalled, isRemoved } from "./state-values.ts";
import { orientationVariable } from "./turning.ts";
import type { Update } from "./update.ts";
import { ASPECTS, type World } from "./world.ts";

/** What a procedure may touch, itself and by what it performs in turn. */
export function touchedIn(
  expanded: ExpandedProcedure | null,
  expandedOf: (id: string) => ExpandedProcedure | null,
  seen = new Set<string>(),
): ReadonlySet<Declaration> {
  const things = new Set<Declaration>();
  if (expanded === null || seen.has(expanded.procedure.id)) return things;
  seen.add(expanded.procedure.id);
  for (const thing of spokenOf(expanded.procedure.items)) things.add(thing);
  for (const { procedure } of performsIn(expanded.procedure.items))
    for (const thing of touchedIn(expandedOf(procedure?.id ?? ""), expandedOf, seen)) things.add(thing);
  return things;
}

/** The variables that a line about `thing` may have changed. */
export function damagedVariables(world: World, thing: Declaration): readonly number[] {
  switch (thing.kind) {
    case "part":
      return [
        ...partInstances(thing).flatMap(({ index }) => [
          ...ASPECTS.map((aspect) => world.part(thing, index, aspect)),
          ...world.seatsOf(thing, index).map(({ places, position }) => world.holder(places, position)),
        ]),
        ...arcsOf(world, thing),
      ];
    case "energy":
      return [world.energy(thing)];
    case "fact":
      return [world.fact(thing.id)];
    case "ring":
    case "holes":
      return [
        ...(thing.kind === "ring" ? ringVariables(world, thing) : []),
        ...Array.from({ length: thing.count }, (_, at) => world.holder(thing, at + 1)),
      ];
    default:
      return [];
  }
}

function ringVariables(world: World, ring: Ring): readonly number[] {
  return [orientationVariable(world, ring), world.turned(ring), ...arcsOf(world, ring)];
}

/** How far the ring is filled, or any ring with the part. */
function arcsOf(world: World, thing: Part | Ring): readonly number[] {
  return world
    .arcs()
    .filter(({ ring, part }) => ring === thing || part === thing)
    .map(({ variable }) => variable);
}

/**
 * What a line that could not be read leaves of a thing.
 * @param verb all that the line can have done to it, where that is known
 */
export function doubtOf(world: World, thing: Declaration, verb?: string): readonly Update[] {
  const variables = damagedVariables(world, thing);
  if (verb === undefined) {
    // What stands on a thing in doubt is in doubt with it.
    const carried =
      thing.kind === "part" ? partInstances(thing).flatMap(({ index }) => carry(world, thing, index)) : [];
    return [...variables.map((variable) => ({ variable, change: () => UNKNOWN })), ...carried];
  }
  return variables.flatMap((variable) => {
    const mayChange = CHANGED_BY[verb]?.[world.keyOf(variable).split(":")[0] ?? ""];
    return mayChange === undefined ? [] : [{ variable, change: (value) => (mayChange(value) ? UNKNOWN : value) }];
  });
}

/**
 * A line that could not be read may have used all that was done before, also on what it no longer names.
 * @param mayWait how long it may have let things cure and cool, in seconds
 */
export function usedInDoubt(world: World, mayWait: number): readonly Update[] {
  const all = (kind: "film" | "warmth" | "turned" | "temperature" | "cure"): readonly number[] => world.all(kind);
  const used = [...all("film"), ...all("warmth"), ...all("turned"), ...(mayWait > 0 ? all("temperature") : [])];
  // What needs longer than it can have taken is wet still.
  const cured = (value: string): string => restedBy(value, mayWait) || (value === "" ? "" : UNKNOWN);
  return [
    ...used.map((variable): Update => ({ variable, change: () => UNKNOWN })),
    ...(mayWait > 0 ? all("cure") : []).map((variable): Update => ({ variable, change: cured })),
  ];
}

type Change = Readonly<Record<string, (value: string) => boolean>>;

const always = (): boolean => true;
/** Any line may have used what was done before. */
const using: Change = { film: always, warmth: always, turned: always };
const puttingIn: Change = {
  ...using,
  used: always,
  hung: always,
  fill: always,
  place: (value) => !isInstalled(value),
  grip: (value) => value === "absent",
  holder: (value) => holders(value).length === 0,
};
const takingOut: Change = {
  ...using,
  used: always,
  hung: always,
  fill: always,
  place: (value) => !isRemoved(value),
  grip: (value) => value !== "absent",
  holder: (value) => holders(value).length > 0,
};
const turningFastener: Change = { ...using, used: always, hung: always, grip: (value) => value !== "absent" };

/** What each verb can change, by the first word of a variable's key. Verbs that are not here change nothing. */
const CHANGED_BY: Readonly<Record<string, Change>> = {
  install: puttingIn,
  press: puttingIn,
  remove: takingOut,
  discard: takingOut,
  tighten: turningFastener,
  loosen: turningFastener,
  heat: { ...using, temperature: always },
  cool: { ...using, temperature: always },
  clean: { ...using, surface: always, coats: always },
  lubricate: { ...using, surface: always },
  apply: { ...using, cure: always, coats: always },
  align: { ...using, aligned: always },
  drain: { ...using, contents: always },
  fill: { ...using, contents: always },
  bleed: { ...using, contents: always },
  turn: { orientation: always, turned: always },
  lift: { ...using, hung: always },
  support: { ...using, hung: always },
  "set down": { ...using, hung: always },
  isolate: { energy: always },
  prove: { energy: (value) => value === ISOLATED },
  restore: { energy: always },
  gives: { fact: always, own: always, surface: always, aligned: always, temperature: always },
};
