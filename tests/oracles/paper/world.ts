// What is so in the shop: one value for each thing that can change. Where it matters who did it, the line stands after an `@`.
import { clocksAtStart } from "./clocks.ts";
import { emptiedAt, heldAt } from "./fill.ts";
import type { Program } from "./program.ts";
import {
  actsIn,
  allInstances,
  instances,
  isFastener,
  isHeavy,
  numberOf,
  ownPlace,
  PLAIN_PART,
  partOf,
  readingsIn,
  type SimCondition,
  type SimProcedure,
  said,
  sayers,
  type Touch,
} from "./shop.ts";

/**
 * `in P`: out, out@line, in@line · `grip P`: absent, found, loose@line, hand@line (loose too), tight@line, set@line, seated@line ·
 * `spot P`: the place it was put in · `energy E`: live, off, isolated@line, proved@line, proved · `own P`, `fact F` ·
 * `used P`: no, yes · `hung P`: no, yes · `cure P`: minutes left · `arc Ring Part`: see `fill.ts` · `turned Ring`: the hour of
 * position 1 · `temp P`: 100..110 (°C) · `on P`: what it was put on · `film P`, `warm P`, `turn Ring`: no, or yes where something was done and not yet used ·
 * `first P`: no, yes where its coat was to cure before anything else · `surface P`: nothing, clean, lubricated · `aligned P`: no, yes ·
 * `reading R`: mm · `began Step`: no, yes · `early line`: no, yes · `since line`, `waited`: see `clocks.ts` · the blocks of `in any order`: children done.
 */
export type World = Readonly<Record<string, string>>;

/** Put there by nobody: by `begin with`, or taken as so. */
const BEGIN = "begin";
export const SUPPOSED = "supposed";
/** Given by a step. */
export const GIVEN = "given";
/** An energy that nobody switched off, taken as off after work on what it drives. */
export const TAKEN = "taken";
/** Left so by a performed procedure, and found there. */
export const TOLD = "told";
export const AMBIENT = 20;

export function value(world: World, variable: string): string {
  const is = world[variable] ?? "";
  const at = is.indexOf("@");
  return at < 0 ? is : is.slice(0, at);
}

/** The line that did it; empty if nobody did. */
export function origin(world: World, variable: string): string {
  const is = world[variable] ?? "";
  const at = is.indexOf("@");
  return at < 0 ? "" : is.slice(at + 1);
}

/** What was only taken as so is not held against anyone. */
export function isKnown(world: World, variable: string): boolean {
  return world[variable]?.endsWith(`@${SUPPOSED}`) !== true;
}

/** Also of what it stands on. */
export function isPlaceKnown(world: World, part: string): boolean {
  const under = world[`on ${part}`] ?? "";
  return isKnown(world, `in ${part}`) && (under === "" || isPlaceKnown(world, under));
}

export function isIn(world: World, part: string): boolean {
  return world[`in ${part}`]?.startsWith("in") === true;
}

/** In the machine: what stands on another part is where that is. */
export function isInstalled(world: World, part: string): boolean {
  const under = world[`on ${part}`] ?? "";
  return isIn(world, part) && (under === "" || isInstalled(world, under));
}

export function isLoose(world: World, part: string): boolean {
  return ["loose", "hand"].includes(value(world, `grip ${part}`));
}

/** The world with some variables set anew; the same one where that changes nothing. */
export function changed(world: World, names: readonly string[], anew: (is: string, variable: string) => string): World {
  let next: Record<string, string> | null = null;
  for (const variable of names) {
    const is = world[variable] ?? "";
    const to = anew(is, variable);
    if (to === is) continue;
    next ??= { ...world };
    next[variable] = to;
  }
  return next ?? world;
}

const kinds = new WeakMap<SimProcedure, Map<string, readonly string[]>>();

/** The names of all variables of a kind: `cure` for those that begin with it. All worlds of one procedure have the same. */
export function variables(procedure: SimProcedure, world: World, kind: string): readonly string[] {
  const known = kinds.get(procedure) ?? new Map<string, readonly string[]>();
  kinds.set(procedure, known);
  const names = known.get(kind) ?? Object.keys(world).filter((variable) => variable.startsWith(`${kind} `));
  known.set(kind, names);
  return names;
}

/** Done by a line of the procedure, not by its start or because it was taken as so. */
export function isLine(by: string): boolean {
  return /^l\d/.test(by);
}

/** A temperature is known between two bounds. */
export function bounds(low: number, high: number): string {
  return `${low}..${high}`;
}

export function lowOf(world: World, part: string): number {
  return Number(value(world, `temp ${part}`).split("..")[0]);
}

export function highOf(world: World, part: string): number {
  return Number(value(world, `temp ${part}`).split("..")[1]);
}

const TIGHT = ["tight", "set", "seated"];

export function isTight(world: World, part: string): boolean {
  const grip = world[`grip ${part}`] ?? "";
  return TIGHT.some((tight) => grip.startsWith(tight));
}

export function isTightOrFound(world: World, part: string): boolean {
  return isTight(world, part) || value(world, `grip ${part}`) === "found";
}

/** All worlds of one procedure hold the same variables in the same order, so the values alone tell them apart. */
export function keyOf(world: World): string {
  return Object.values(world).join("|");
}

export function startOf(procedure: SimProcedure, program: Program): World {
  const world: Record<string, string> = {};
  const named = spokenOf(procedure);
  for (const part of allInstances(procedure)) {
    // What nobody speaks of stays as it is: out.
    if (![part, ...said(procedure, "secures", part)].some((name) => named.has(name.split("[")[0] ?? ""))) continue;
    world[`in ${part}`] = "out";
    if (isFastener(procedure, part)) world[`grip ${part}`] = "absent";
    const declared = partOf(procedure, part) ?? { name: part, ...PLAIN_PART };
    const { states, singleUse, seats } = declared;
    if (states[0] !== undefined) world[`own ${part}`] = states[0];
    if (seats !== null) world[`spot ${part}`] = "";
    if (singleUse) world[`used ${part}`] = "no";
    if (isHeavy(declared)) world[`hung ${part}`] = "no";
  }
  for (const ring of procedure.rings) {
    world[`turned ${ring.name}`] = String(ring.first);
    if (ring.fill === null) continue;
    for (const part of procedure.parts)
      if (part.seats?.ring === ring.name && !part.temporary) world[`arc ${ring.name} ${part.name}`] = "//";
  }
  for (const { name, dead } of procedure.energies) world[`energy ${name}`] = dead ? "off" : "live";
  for (const fact of procedure.facts) world[`fact ${fact}`] = "no";
  for (const reading of readingsIn(procedure.items)) world[`reading ${reading}`] = "0";
  for (const { outer, inner } of procedure.fits)
    for (const part of [outer, inner]) world[`temp ${part}`] = bounds(AMBIENT, AMBIENT);
  for (const act of actsIn(procedure.items)) {
    if ("over" in act && act.over !== undefined) world[`on ${act.part}`] = "";
    if (act.verb === "apply" && (act.cure !== undefined || act.glue === true))
      for (const part of instances(procedure, act.part)) {
        world[`cure ${part}`] = "0";
        world[`first ${part}`] = "no";
      }
    if (act.verb === "clean" || act.verb === "lubricate")
      for (const part of instances(procedure, act.part)) world[`surface ${part}`] = "";
    if (act.verb === "align") for (const part of [act.part, act.with ?? ""]) world[`aligned ${part}`] = "no";
    if (act.verb === "apply" || act.verb === "lubricate")
      for (const part of instances(procedure, act.part)) world[`film ${part}`] = "no";
    if (act.verb === "heat" || act.verb === "heat by") world[`warm ${act.part}`] = "no";
    if (act.verb === "turn") world[`turn ${act.place.split("[")[0]}`] = "no";
  }
  for (const { at, first, second } of program.pairs) {
    world[`began ${first}`] = world[`began ${second}`] = "no";
    world[`early ${at}`] = "no";
  }
  Object.assign(world, clocksAtStart(program));
  for (const block of program.blocks) world[block] = "-";
  return procedure.begin.reduce((so, condition) => madeSo(procedure, condition, so, BEGIN), world);
}

/** What `begin with` says, and no more. */
export function beginning(procedure: SimProcedure): World {
  return procedure.begin.reduce<World>((so, condition) => madeSo(procedure, condition, so, BEGIN), {});
}

const spoken = new WeakMap<SimProcedure, ReadonlySet<string>>();

/** The names that the procedure uses, in whatever place. */
export function spokenOf(procedure: SimProcedure): ReadonlySet<string> {
  const { begin, finish, items } = procedure;
  const known = spoken.get(procedure);
  if (known !== undefined) return known;
  const texts = JSON.stringify([begin, finish, items, procedure.performed]).match(/"[A-Z]\w*/g) ?? [];
  const names = new Set(texts.map((text) => text.slice(1)));
  spoken.set(procedure, names);
  return names;
}

/** As it is when the condition holds, with nothing changed that need not. */
export function madeSo(procedure: SimProcedure, condition: SimCondition, world: World, from: string): World {
  const next = { ...world };
  const putIn = (part: string): void => {
    if (isInstalled(next, part)) return;
    next[`in ${part}`] = `in@${from}`;
    if (next[`on ${part}`] !== undefined) next[`on ${part}`] = "";
    const place = ownPlace(procedure, part);
    if (place !== null) {
      next[`spot ${part}`] = place;
      hold(part, true);
    }
    // A grip that it had while it was out counts for nothing.
    if (isFastener(procedure, part)) next[`grip ${part}`] = `found@${from}`;
  };
  const hold = (part: string, isHeld: boolean): void => {
    const variable = `arc ${partOf(procedure, part)?.seats?.ring} ${part.split("[")[0]}`;
    const is = next[variable];
    if (is !== undefined) next[variable] = (isHeld ? heldAt : emptiedAt)(is, numberOf(part));
  };
  const tighten = (part: string): void => {
    putIn(part);
    if (!isTight(next, part)) next[`grip ${part}`] = `tight@${from}`;
  };
  const setTo = (variable: string, to: string): void => {
    if (value(next, variable) !== to) next[variable] = `${to}@${from}`;
  };
  if ("fact" in condition) setTo(`fact ${condition.fact}`, "yes");
  else if (isTouch(condition)) setTo(variableOf(condition), goodOf(condition));
  else if ("own" in condition) setTo(`own ${condition.part}`, condition.own);
  else if ("least" in condition || "most" in condition) {
    const { part } = condition;
    const least = "least" in condition ? condition.least : Number.NEGATIVE_INFINITY;
    const most = "most" in condition ? condition.most : Number.POSITIVE_INFINITY;
    setTo(`temp ${part}`, within(next, part, least, most));
    // What touches a part that has cooled has cooled with it.
    if ("most" in condition)
      for (const other of touching(procedure, next, part)) setTo(`temp ${other}`, atMost(next, other, most));
  } else if ("place" in condition) {
    const turned = turnedTo(procedure, condition.place, condition.hour);
    for (const [variable, hour] of Object.entries(turned)) setTo(variable, hour);
  } else if ("energy" in condition) {
    const variable = `energy ${condition.energy}`;
    if (condition.state === "live") setTo(variable, "live");
    else if (value(world, variable) === "live") setTo(variable, "off");
  } else if (condition.state === "removed") {
    if (isIn(next, condition.part)) {
      next[`in ${condition.part}`] = `out@${from}`;
      Object.assign(next, freed(next, condition.part));
      if (next[`grip ${condition.part}`] !== undefined) next[`grip ${condition.part}`] = `absent@${from}`;
      hold(condition.part, false);
    }
  } else if (condition.state === "installed") putIn(condition.part);
  else if (condition.state === "tightened") tighten(condition.part);
  else if (condition.state === "loose") {
    putIn(condition.part);
    const grip = `grip ${condition.part}`;
    if (isTight(next, condition.part)) next[grip] = `loose@${from}`;
    // What was only found to be in is loose by this word, or known to be so by whoever needs it so and is told nothing.
    if (value(next, grip) === "found") {
      const by = origin(next, grip);
      next[grip] = `loose@${from === SUPPOSED && by !== SUPPOSED ? by : from}`;
    }
  } else {
    putIn(condition.part);
    for (const by of sayers(procedure, "secures", condition.part)) tighten(by);
  }
  return next;
}

type TouchCondition = Extract<SimCondition, { readonly state: Touch }>;

function isTouch(condition: SimCondition): condition is TouchCondition {
  return "state" in condition && ["clean", "lubricated", "aligned"].includes(condition.state);
}

function variableOf({ part, state }: TouchCondition): string {
  return `${state === "aligned" ? "aligned" : "surface"} ${part}`;
}

function goodOf({ state }: TouchCondition): string {
  return state === "aligned" ? "yes" : state;
}

function within(world: World, part: string, least: number, most: number): string {
  const high = Math.max(Math.min(highOf(world, part), most), least);
  return bounds(Math.min(Math.max(lowOf(world, part), least), high), high);
}

export function atMost(world: World, part: string, most: number): string {
  return bounds(Math.min(lowOf(world, part), most), Math.min(highOf(world, part), most));
}

/** Those joined to it by a fit: one on the other, or both in the machine. */
export function touching(procedure: SimProcedure, world: World, part: string): readonly string[] {
  return procedure.fits
    .flatMap(({ outer, inner }) => (outer === part ? [inner] : inner === part ? [outer] : []))
    .filter(
      (other) =>
        (isIn(world, part) && world[`on ${part}`] === other) ||
        (isIn(world, other) && world[`on ${other}`] === part) ||
        (isInstalled(world, part) && isInstalled(world, other)),
    );
}

/** What changes when a part is no longer where it was. */
export function freed(world: World, part: string): Record<string, string> {
  const changes: Record<string, string> = {};
  if (world[`spot ${part}`] !== undefined) changes[`spot ${part}`] = "";
  if (world[`on ${part}`] !== undefined) changes[`on ${part}`] = "";
  if (world[`grip ${part}`] !== undefined) changes[`grip ${part}`] = "absent";
  return changes;
}

/** The hours are a circle of twelve. */
const onClock = (hour: number): number => ((((hour - 1) % 12) + 12) % 12) + 1;

/** At what hour a position stands. */
export function hourOf(procedure: SimProcedure, world: World, place: string): number {
  const { ring, steps } = fromFirst(procedure, place);
  return onClock(Number(value(world, `turned ${ring}`)) + steps);
}

export function turnedTo(procedure: SimProcedure, place: string, hour: number): Record<string, string> {
  const { ring, steps } = fromFirst(procedure, place);
  return { [`turned ${ring}`]: String(onClock(hour - steps)) };
}

/** How many hours, clockwise, a position stands from position 1. */
function fromFirst(procedure: SimProcedure, place: string): { ring: string; steps: number } {
  const [ring = "", index = "1"] = place.replace("]", "").split("[");
  const { count, numbered } = procedure.rings.find(({ name }) => name === ring) ?? { count: 12, numbered: "clockwise" };
  const steps = ((Number(index) - 1) * 12) / count;
  return { ring, steps: numbered === "clockwise" ? steps : -steps };
}

/** Whether it does not hold: for each variable by itself, in some of the worlds. */
export function fails(procedure: SimProcedure, condition: SimCondition, worlds: readonly World[]): boolean {
  const some = (variable: string, test: (world: World) => boolean): boolean =>
    worlds.some((world) => isKnown(world, variable) && test(world));
  if ("fact" in condition)
    return some(`fact ${condition.fact}`, (world) => value(world, `fact ${condition.fact}`) !== "yes");
  if (isTouch(condition))
    return some(variableOf(condition), (world) => value(world, variableOf(condition)) !== goodOf(condition));
  if ("own" in condition)
    return some(`own ${condition.part}`, (world) => value(world, `own ${condition.part}`) !== condition.own);
  if ("least" in condition)
    return some(`temp ${condition.part}`, (world) => lowOf(world, condition.part) < condition.least);
  if ("most" in condition)
    return some(`temp ${condition.part}`, (world) => highOf(world, condition.part) > condition.most);
  if ("place" in condition)
    return some(
      `turned ${condition.place.split("[")[0]}`,
      (world) => hourOf(procedure, world, condition.place) !== condition.hour,
    );
  if ("energy" in condition) {
    const variable = `energy ${condition.energy}`;
    return some(variable, (world) => (value(world, variable) === "live") !== (condition.state === "live"));
  }
  const { part } = condition;
  const mayBeLoose = (name: string): boolean => some(`grip ${name}`, (world) => !isTight(world, name));
  switch (condition.state) {
    case "removed":
      return some(`in ${part}`, (world) => isIn(world, part));
    case "installed":
      return worlds.some((world) => isPlaceKnown(world, part) && !isInstalled(world, part));
    case "tightened":
      return mayBeLoose(part);
    case "loose":
      return some(`grip ${part}`, (world) => isTight(world, part) || value(world, `grip ${part}`) === "absent");
    case "secured":
      return (
        worlds.some((world) => isPlaceKnown(world, part) && !isInstalled(world, part)) ||
        sayers(procedure, "secures", part).some(mayBeLoose)
      );
  }
}
