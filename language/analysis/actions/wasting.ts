// Work that is undone before anything has used it: a film that is cleaned off, heat that is taken away, a turn that is turned
// again. Kept only where the procedure does both somewhere.
import type { Part, PartInstance, Ring } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import { RELATIONS } from "../relations.ts";
import type { Update } from "../update.ts";
import { type Index, instanceKey, instanceName, type World } from "../world.ts";
import { type Move, NOTHING } from "./move.ts";

/** Has nothing to do with any part. */
const IDLE: ReadonlySet<string> = new Set(["isolate", "release", "prove", "choose"]);
/** Looks, runs or does anything: whatever was done before may be used by it. */
const USES_ALL: ReadonlySet<string> = new Set(["inspect", "measure", "do", "perform", "restore"]);
const FILM: ReadonlySet<string> = new Set(["clean", "lubricate", "apply"]);

/** What the action makes use of, before it does what it does. */
export function uses(world: World, line: ExpandedAction): Move {
  const { verb } = line.action;
  if (IDLE.has(verb)) return NOTHING;
  // A coat soaks in, and heat bakes out, while somebody waits; a ring that stands is no use.
  if (verb === "wait") return { needs: [], updates: usesWork(world) };
  if (USES_ALL.has(verb)) return { needs: [], updates: usesAll(world) };
  const used: Update[] = verb === "turn" ? [] : world.all("turned").map(cleared);
  if (FILM.has(verb) || !world.isForeseen(FOLLOWED)) return { needs: [], updates: used };
  for (const thing of [...line.objects, line.second]) {
    if (thing?.kind !== "part") continue;
    const own = instanceKey(thing.part, thing.index);
    for (const near of [thing, ...neighbours(world, thing.part, thing.index)]) {
      const isOwn = instanceKey(near.part, near.index) === own;
      if (world.isForeseen(`clean ${near.part.id}`)) used.push(use(world, near, "film"));
      // What undoes the work looks at it first.
      if (!(verb === "cool" && isOwn) && world.isForeseen(`cool ${near.part.id}`))
        used.push(use(world, near, "warmth"));
    }
  }
  return { needs: [], updates: used };
}

/** A look, own words, a run: all that was done may have been for this. */
export function usesAll(world: World): readonly Update[] {
  return [...usesWork(world), ...world.all("turned").map(cleared)];
}

/** What was put on or heated before may have been for this: all of it at one stroke, however many parts there are. */
function usesWork(world: World): readonly Update[] {
  if (!world.isForeseen(FOLLOWED)) return [];
  return [{ variable: world.films(), usesFilms: true, commutes: true, change: (value) => value }];
}

/** Some part is coated and cleaned, or heated and cooled, somewhere in the procedure. */
const FOLLOWED = "work undone";

function foresee(world: World, what: string, other: string, { id }: Part): void {
  world.foresee(`${what} ${id}`);
  if (world.isForeseen(`${other} ${id}`)) world.foresee(FOLLOWED);
}

/** Puts a film on; it is followed where the part is cleaned somewhere. */
export function filmed(world: World, part: Part, index: Index, how: "lubricated" | "coated"): readonly Update[] {
  return pending(world, part, index, "film", how, "clean");
}

export function cleanedOff(world: World, part: Part, index: Index): Move {
  return undone(world, part, index, "film", "clean");
}

export function warmedUp(world: World, part: Part, index: Index): readonly Update[] {
  return pending(world, part, index, "warmth", "heated", "cool");
}

export function cooledOff(world: World, part: Part, index: Index): Move {
  return undone(world, part, index, "warmth", "cool");
}

export function turnedOnce(world: World, ring: Ring): Move {
  const variable = world.turned(ring);
  return {
    needs: [
      {
        bad: [{ variable, test: (value) => value === "turned" }],
        trouble: { kind: "wasted", what: ring.name, verb: "turn" },
      },
    ],
    // The second turn is what is pending then.
    updates: [{ variable, renews: "always", change: () => "turned" }],
  };
}

function pending(
  world: World,
  part: Part,
  index: Index,
  aspect: "film" | "warmth",
  how: string,
  undoneBy: string,
): readonly Update[] {
  foresee(world, aspect, undoneBy, part);
  if (!world.isForeseen(`${undoneBy} ${part.id}`)) return [];
  const variable = world.part(part, index, aspect);
  return [{ variable, by: world.films(), renews: "always", change: () => how }];
}

function undone(world: World, part: Part, index: Index, aspect: "film" | "warmth", verb: string): Move {
  foresee(world, verb, aspect, part);
  if (!world.isForeseen(`${aspect} ${part.id}`)) return NOTHING;
  const variable = world.part(part, index, aspect);
  return {
    needs: [
      {
        bad: [{ variable, test: (value) => value !== "" }],
        trouble: { kind: "wasted", what: instanceName(part, index), verb },
      },
    ],
    updates: [{ variable, by: world.films(), change: () => "" }],
  };
}

function use(world: World, { part, index }: PartInstance, aspect: "film" | "warmth"): Update {
  return cleared(world.part(part, index, aspect));
}

function cleared(variable: number): Update {
  return { variable, commutes: true, change: () => "" };
}

/** Parts that a declared relation or a fit ties to this one. */
function neighbours(world: World, part: Part, index: Index): readonly PartInstance[] {
  return [
    ...RELATIONS.flatMap((name) => [...world.related(name, part, index), ...world.targets(name, part, index)]),
    ...world.fits(part, index).map(({ mate }) => mate),
  ];
}
