// What is wrong when an action is done: what it needs and may not have. Each variable by itself, over all worlds given.
import { filledAt, passedOver } from "./fill.ts";
import { foundInside, isRefused } from "./perform.ts";
import {
  canStack,
  instances,
  isFastener,
  ownPlace,
  type PartAct,
  partOf,
  type SimAct,
  type SimProcedure,
  said,
  sayers,
} from "./shop.ts";
import {
  AMBIENT,
  beginning,
  fails,
  highOf,
  hourOf,
  isIn,
  isInstalled,
  isKnown,
  isLine,
  isLoose,
  isPlaceKnown,
  isTight,
  isTightOrFound,
  lowOf,
  origin,
  spokenOf,
  TAKEN,
  TOLD,
  value,
  variables,
  type World,
} from "./world.ts";

export interface Trouble {
  readonly code: string;
  /** The line, where it is told elsewhere than at the action. */
  readonly at?: string;
  /** What is taken as met afterwards, in the first of the worlds. */
  readonly met?: Readonly<Record<string, string>>;
}

/** Work on a part: what asks for reach and for its energies off. */
const WORK = "install press remove discard tighten loosen heat cool clean lubricate apply fill align"
  .split(" ")
  .concat("heat by");

export function troubles(procedure: SimProcedure, act: SimAct, worlds: readonly World[]): readonly Trouble[] {
  const found: Trouble[] = [];
  const say: Say = (code, so, more = {}) => {
    if (so) found.push({ code, ...more });
  };
  const ask: Asking = { procedure, worlds, say };
  if (act.verb === "perform") {
    say("order.unmet-need", isRefused(procedure, act.procedure, worlds));
    for (const { code, met = {} } of foundInside(procedure, act.procedure, worlds)) say(code, true, { met });
  }
  if (act.verb === "restore") restoring(ask, act.energy);
  if (act.verb === "turn")
    say(
      "order.wasted",
      may(ask, (world) => world[`turn ${act.place.split("[")[0]}`] === "yes"),
    );
  if (!("part" in act) || act.verb === "wait until") return found;
  const { part } = act;
  const isPlacing = act.verb === "install" || act.verb === "press";
  for (const thing of [part, ...("with" in act && act.with !== undefined ? [act.with] : [])]) {
    if (!WORK.includes(act.verb) && act.verb !== "inspect") continue;
    const isClosed = sayers(procedure, "encloses", thing).some((by) => mayBeInstalled(ask, by));
    say("order.enclosed", isClosed && (isPlacing || mayBeInstalled(ask, thing)));
    if (act.verb !== "inspect" && (isPlacing || mayBeInstalled(ask, thing))) energised(ask, thing);
  }
  switch (act.verb) {
    case "install":
    case "press":
      placing(ask, act);
      break;
    case "remove":
    case "discard":
      removing(ask, part);
      break;
    case "tighten":
      say("order.not-installed", mayBeOut(ask, part));
      for (const held of said(procedure, "secures", part)) {
        say("order.not-installed", mayBeOut(ask, held));
        loadedFirst(ask, held);
      }
      locked(ask, part);
      // One that is out was put back first, and told there.
      say(
        "order.reused",
        may(ask, (world) => isIn(world, part) && isKnown(world, `in ${part}`) && world[`used ${part}`] === "yes"),
        { met: { [`used ${part}`]: "no" } },
      );
      break;
    case "loosen":
      say("order.not-installed", mayBeOut(ask, part));
      locked(ask, part);
      say("order.not-tightened", mayBeIn(ask, part) && mayGrip(ask, part, (world) => isLoose(world, part)));
      if (act.how === undefined) for (const held of said(procedure, "secures", part)) lettingGo(ask, held, part);
      break;
    case "clean":
      say(
        "order.wasted",
        may(ask, (world) => world[`film ${part}`] === "yes"),
      );
      break;
    case "cool":
      say(
        "order.wasted",
        may(ask, (world) => world[`warm ${part}`] === "yes"),
      );
      break;
    case "fill":
      loaded(ask, part);
      break;
    case "lift":
      loadedFirst(ask, part);
      for (const name of variables(procedure, worlds[0] ?? {}, "hung"))
        if (name !== `hung ${part}`) lettingDown(ask, name.slice(5), "hoist");
      break;
    case "set down":
      lettingDown(ask, part);
  }
  return found;
}

/** What hangs on it is no longer held by it; `by`: only what hangs on that. */
function lettingDown(ask: Asking, part: string, by?: string): void {
  const fasteners = sayers(ask.procedure, "secures", part);
  // The fewest that may be in.
  const few = fasteners.filter((name) => !mayBeOut(ask, name)).length < Math.min(2, fasteners.length);
  const hangs = may(ask, (world) => {
    const is = world[`hung ${part}`];
    return by === undefined ? is !== undefined && is !== "no" : is === by;
  });
  const falls = mayBeInstalled(ask, part) && hangs && few && !stands(ask, part);
  ask.say("order.unsupported", falls, { met: { [`hung ${part}`]: "yes" } });
}

type Say = (code: string, so: boolean, more?: Omit<Trouble, "code">) => void;

interface Asking {
  readonly procedure: SimProcedure;
  readonly worlds: readonly World[];
  readonly say: Say;
}

const may = ({ worlds }: Asking, test: (world: World) => boolean): boolean => worlds.some(test);
const mayBeIn = (ask: Asking, part: string): boolean =>
  may(ask, (world) => isIn(world, part) && isKnown(world, `in ${part}`));
const mayBeInstalled = (ask: Asking, part: string): boolean =>
  may(ask, (world) => isInstalled(world, part) && isPlaceKnown(world, part));
const mayBeOut = (ask: Asking, part: string): boolean =>
  may(ask, (world) => !isIn(world, part) && isKnown(world, `in ${part}`));
const mayGrip = (ask: Asking, part: string, test: (world: World) => boolean): boolean =>
  may(ask, (world) => isKnown(world, `grip ${part}`) && test(world));
const mayBeUsed = (ask: Asking, part: string): boolean => may(ask, (world) => world[`used ${part}`] === "yes");

function placing(ask: Asking, act: PartAct): void {
  const { procedure, worlds, say } = ask;
  const { part } = act;
  say("order.already-installed", mayBeIn(ask, part));
  for (const support of said(procedure, "needs", part)) {
    const isMissing = may(ask, (world) => !isInstalled(world, support) && isPlaceKnown(world, support));
    // On the bench it may go on what it needs.
    say("order.missing-support", isMissing && act.over !== support);
  }
  const own = ownPlace(procedure, part);
  const place = act.place ?? own;
  const seats = partOf(procedure, part)?.seats ?? null;
  const isWrong = own === null ? seats !== null && !place?.startsWith(`${seats.ring}[`) : place !== own;
  say("order.wrong-place", act.place !== undefined && isWrong);
  if (place !== null) {
    const others = variables(procedure, worlds[0] ?? {}, "spot").filter(
      (variable) => variable !== `spot ${part}` && !canStack(procedure, part, variable.slice(5)),
    );
    say(
      "order.occupied",
      others.some((variable) =>
        may(ask, (world) => world[variable] === place && isKnown(world, `in ${variable.slice(5)}`)),
      ),
    );
    if (act.hour !== undefined)
      say(
        "order.position",
        may(
          ask,
          (world) => isKnown(world, `turned ${place.split("[")[0]}`) && hourOf(procedure, world, place) !== act.hour,
        ),
      );
    for (const world of worlds) {
      const filling = arcAfter(procedure, world, part, place, "");
      say("order.direction", filling?.wrong === true);
    }
  }
  for (const inside of said(procedure, "encloses", part)) {
    uncured(ask, inside);
    // Closing over a temporary part is told where that part was put in.
    if (partOf(procedure, inside)?.temporary !== true) continue;
    if (isWantedIn(procedure, inside)) continue;
    for (const world of worlds) say("order.left-behind", isIn(world, inside), { at: origin(world, `in ${inside}`) });
  }
  say("order.reused", act.fresh !== true && mayBeUsed(ask, part), { met: { [`used ${part}`]: "no" } });
  if (act.verb === "press") {
    loaded(ask, part);
    if (act.over !== undefined) loaded(ask, act.over);
    return;
  }
  for (const { outer, inner, tight } of procedure.fits) {
    if (!tight || (part !== outer && part !== inner)) continue;
    const mate = part === outer ? inner : outer;
    // What comes along on the part itself is not what it goes on.
    const isThere = may(ask, (world) => isIn(world, mate) && world[`on ${mate}`] !== part);
    if (act.over === undefined ? !isThere : act.over !== mate) continue;
    const mayHave = (side: string, test: (world: World) => boolean): boolean =>
      may(ask, (world) => isKnown(world, `temp ${side}`) && test(world));
    const isCold = mayHave(outer, (world) => highOf(world, outer) <= AMBIENT);
    say("order.cold-fit", isCold && mayHave(inner, (world) => lowOf(world, inner) >= AMBIENT));
  }
}

/** The arc that the part's ring has once it is put there; `null` where no direction is asked for. */
export function arcAfter(
  procedure: SimProcedure,
  world: World,
  part: string,
  place: string,
  by: string,
): { variable: string; arc: string; wrong: boolean } | null {
  const [name = "", index = ""] = place.split("[");
  const ring = procedure.rings.find((each) => each.name === name);
  const variable = `arc ${name} ${part.split("[")[0]}`;
  const arc = world[variable];
  if (ring === undefined || arc === undefined) return null;
  const { text, wrong } = filledAt(ring, arc, Number.parseInt(index, 10), by);
  return { variable, arc: text, wrong };
}

function removing(ask: Asking, part: string): void {
  const { procedure, say } = ask;
  say("order.not-installed", mayBeOut(ask, part));
  for (const by of sayers(procedure, "retains", part)) say("order.retained", mayBeInstalled(ask, by));
  for (const by of sayers(procedure, "secures", part)) {
    const holds = mayGrip(ask, by, (world) => value(world, `grip ${by}`) !== "absent");
    say("order.retained", mayBeIn(ask, by) && holds);
  }
  for (const held of said(procedure, "secures", part)) {
    const others = sayers(procedure, "secures", held).filter((by) => by !== part);
    const isLast = mayBeIn(ask, part) && others.every((by) => mayBeOut(ask, by));
    if (isLast && mayBeInstalled(ask, held)) unsupported(ask, held);
    else lettingGo(ask, held, part);
  }
}

/** The fastener may be the last that holds the part. */
function lettingGo(ask: Asking, held: string, fastener: string): void {
  const others = sayers(ask.procedure, "secures", held).filter((by) => by !== fastener);
  const holds = (by: string): boolean => mayBeIn(ask, by) && mayGrip(ask, by, (world) => isTightOrFound(world, by));
  const mayNotHold = (by: string): boolean => mayGrip(ask, by, (world) => !isTightOrFound(world, by));
  if (mayBeInstalled(ask, held) && holds(fastener) && others.every(mayNotHold)) unsupported(ask, held);
}

function unsupported(ask: Asking, held: string): void {
  const falls = may(ask, (world) => world[`hung ${held}`] === "no") && !stands(ask, held);
  ask.say("order.unsupported", falls, { met: { [`hung ${held}`]: "yes" } });
}

function stands({ procedure }: Asking, part: string): boolean {
  return partOf(procedure, part)?.stands === true;
}

function locked(ask: Asking, part: string): void {
  const isLocked = sayers(ask.procedure, "locks", part).some((by) => mayBeInstalled(ask, by));
  ask.say("order.locked", isLocked && mayBeIn(ask, part));
}

/** A load on the part before what was applied to it is cured. */
function loaded(ask: Asking, part: string): void {
  uncured(ask, part);
}

/** A joint may be closed wet, unless the coat was to cure first. */
function loadedFirst(ask: Asking, part: string): void {
  uncured({ ...ask, worlds: ask.worlds.filter((world) => world[`first ${part}`] === "yes") }, part);
}

function uncured({ worlds, say }: Asking, part: string): void {
  const left = worlds.some((world) => Number(world[`cure ${part}`] ?? 0) > 0);
  say("order.uncured", left, { met: { [`cure ${part}`]: "0" } });
}

function energised({ procedure, worlds, say }: Asking, part: string): void {
  for (const energy of partOf(procedure, part)?.driven ?? []) {
    const variable = `energy ${energy}`;
    const isSo = (state: string): boolean =>
      worlds.some((world) => isKnown(world, variable) && value(world, variable) === state);
    const first = worlds[0] ?? {};
    const dead = value(first, variable) === "live" ? `off@${TAKEN}` : (first[variable] ?? "");
    say("order.energised", isSo("live"), { met: { [variable]: dead } });
    const proved = value(first, variable) === "isolated" ? `proved@${origin(first, variable)}` : dead;
    say("order.not-proved", isSo("isolated"), { met: { [variable]: proved } });
  }
}

function restoring(ask: Asking, energy: string): void {
  const { procedure, say } = ask;
  const driven = procedure.parts
    .filter((part) => part.driven.includes(energy))
    .flatMap((part) => instances(procedure, part.name));
  for (const part of driven) uncured(ask, part);
  if (!may(ask, (world) => isKnown(world, `energy ${energy}`) && value(world, `energy ${energy}`) !== "live")) return;
  // All instances count where one is named.
  const named = spokenOf(procedure);
  const isOpen = (part: string): boolean => {
    const covers = sayers(procedure, "encloses", part);
    const held = [part, ...covers.filter((by) => mayBeInstalled(ask, by))];
    const fasteners = held.flatMap((each) => sayers(procedure, "secures", each));
    const aids = procedure.parts.filter(({ temporary }) => temporary).flatMap(({ name }) => instances(procedure, name));
    return [
      ...covers.filter((by) => mayBeOut(ask, by)),
      ...fasteners.filter((by) => mayBeOut(ask, by) || mayGrip(ask, by, (world) => !isTightOrFound(world, by))),
      ...aids.filter((aid) => mayBeIn(ask, aid)),
    ].some((culprit) => named.has(culprit.split("[")[0] ?? ""));
  };
  for (const part of driven) say("order.restored-open", mayBeInstalled(ask, part) && isOpen(part));
}

/* ---- at the end ---- */

/** What `finish with` says of a part. */
function finishWords({ finish }: SimProcedure, part: string): readonly string[] {
  return finish.flatMap((condition) =>
    "state" in condition && "part" in condition && condition.part === part ? [condition.state] : [],
  );
}

function isWantedIn(procedure: SimProcedure, part: string): boolean {
  return finishWords(procedure, part).some((word) => word !== "removed");
}

/** What is wrong when the end is reached in one of the worlds. */
export function atEnd(procedure: SimProcedure, worlds: readonly World[]): readonly Trouble[] {
  const found: Trouble[] = [];
  const say: Say = (code, so, more = {}) => {
    if (so && more.at !== "") found.push({ code, ...more });
  };
  const ask: Asking = { procedure, worlds, say };
  const all = procedure.parts.flatMap((part) => instances(procedure, part.name));
  const isAid = (name: string): boolean => partOf(procedure, name)?.temporary === true;
  const words = (name: string): readonly string[] => finishWords(procedure, name);
  const isWantedOff = (name: string): boolean =>
    procedure.finish.some(
      (condition) => "energy" in condition && condition.energy === name && condition.state === "isolated",
    );
  for (const world of worlds) {
    for (const aid of all.filter(isAid))
      say("order.left-behind", isIn(world, aid) && !isWantedIn(procedure, aid), { at: origin(world, `in ${aid}`) });
    for (const { name } of procedure.energies)
      say("order.left-behind", isLeftOff(procedure, world, name) && !isWantedOff(name), {
        at: origin(world, `energy ${name}`),
      });
  }
  procedure.finish.forEach((condition, number) => {
    // What was left in or off has been told already, unless another line of `finish with` asks for it.
    const counts = worlds.filter((world) => {
      if ("part" in condition && "state" in condition && condition.state === "removed")
        return !isAid(condition.part) || isWantedIn(procedure, condition.part) || !isIn(world, condition.part);
      if ("energy" in condition && condition.state === "live") {
        const isTold = isLeftOff(procedure, world, condition.energy) && !isWantedOff(condition.energy);
        return !isTold && origin(world, `energy ${condition.energy}`) !== TAKEN;
      }
      return true;
    });
    say("order.unfinished", fails(procedure, condition, counts), { at: `finish ${number}` });
  });
  for (const part of all.filter((name) => isFastener(procedure, name)))
    for (const world of worlds)
      say("order.left-seated", value(world, `grip ${part}`) === "seated", { at: origin(world, `grip ${part}`) });
  // What is said of a part is said of its fasteners: where it is out they hold nothing, out or loose.
  const hasWord = (name: string): boolean =>
    words(name).length > 0 ||
    said(procedure, "secures", name).some((held) =>
      ["secured", "removed"].some((word) => words(held).includes(word)),
    ) ||
    // A lock has to be out where what it locks is to be out or loose.
    said(procedure, "locks", name).some((held) => ["loose", "removed"].some((word) => words(held).includes(word)));
  for (const part of all)
    for (const lock of sayers(procedure, "locks", part)) if (!hasWord(lock)) unlocked(ask, part, lock);
  for (const world of worlds)
    for (const variable of variables(procedure, world, "arc")) {
      const at = passedOver(world[variable] ?? "");
      say("order.direction", at !== "", { at });
    }
  for (const part of all.filter((name) => !hasWord(name))) notFinal(ask, part, found);
  return found;
}

/** One that starts dead is left as it was found. */
function isLeftOff({ begin, energies }: SimProcedure, world: World, energy: string): boolean {
  const isDead = energies.some(({ dead, name }) => dead && name === energy);
  const isLive = begin.some((one) => "energy" in one && one.energy === energy && one.state === "live");
  if (isDead && !isLive) return false;
  return value(world, `energy ${energy}`) !== "live" && isLine(origin(world, `energy ${energy}`));
}

function unlocked({ procedure, worlds, say }: Asking, part: string, lock: string): void {
  const holdsOn = isFastener(procedure, part)
    ? worlds.filter((world) => isTight(world, part)).map((world) => origin(world, `grip ${part}`))
    : worlds.filter((world) => isIn(world, part)).map((world) => origin(world, `in ${part}`));
  if (holdsOn.length === 0 || !worlds.some((world) => isIn(world, part))) return;
  for (const world of worlds.filter((each) => !isIn(each, lock))) {
    const removed = origin(world, `in ${lock}`);
    for (const at of isLine(removed) ? [removed] : holdsOn.filter(isLine)) say("order.locked", true, { at });
  }
}

function notFinal({ procedure, worlds, say }: Asking, part: string, told: readonly Trouble[]): void {
  // Put in here, or by what was performed, which left it loose and says so.
  const wasPutIn = (grip: string): boolean =>
    worlds.some((world) => {
      const by = origin(world, `in ${part}`);
      return isIn(world, part) && (isLine(by) || by === `${TOLD} ${grip}`);
    });
  const { temporary = false } = partOf(procedure, part) ?? {};
  const wasIn = isIn(beginning(procedure), part);
  for (const world of worlds) {
    const grip = origin(world, `grip ${part}`);
    say("order.not-final", wasPutIn(grip) && isLoose(world, part) && isLine(grip), { at: grip });
    // One that was out at the start is no more than that.
    const out = origin(world, `in ${part}`);
    const isTold = told.some(({ code, at }) => code === "order.locked" && at === out);
    say("order.not-final", wasIn && !temporary && !isTold && !isIn(world, part) && isLine(out), {
      at: out,
    });
  }
}
