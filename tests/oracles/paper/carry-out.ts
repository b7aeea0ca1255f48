// What a single thing that happens makes of a world. Every effect is set, whatever the state was before.

import { ticked } from "./clocks.ts";
import { emptiedAt } from "./fill.ts";
import { afterPerforming, contractOf } from "./perform.ts";
import type { Instruction, Pair, Program } from "./program.ts";
import {
  areRelated,
  GLUE_CURES,
  isFastener,
  numberOf,
  ownPlace,
  type PartAct,
  partOf,
  type SimAct,
  type SimProcedure,
  said,
  sayers,
  valuesRead,
} from "./shop.ts";
import { arcAfter, troubles } from "./troubles.ts";
import {
  AMBIENT,
  atMost,
  bounds,
  changed,
  freed,
  GIVEN,
  highOf,
  isIn,
  isInstalled,
  isKnown,
  isLoose,
  lowOf,
  madeSo,
  origin,
  SUPPOSED,
  touching,
  turnedTo,
  value,
  variables,
  type World,
} from "./world.ts";

/** The worlds after the instruction: one, but for what is performed. */
export function outcomesOf(
  procedure: SimProcedure,
  program: Program,
  instruction: Instruction,
  world: World,
): readonly World[] {
  return changesOf(procedure, program.pairs, instruction, world).map((after) =>
    ticked(procedure, program, instruction, after),
  );
}

function changesOf(
  procedure: SimProcedure,
  pairs: readonly Pair[],
  instruction: Instruction,
  world: World,
): readonly World[] {
  const { does, at } = instruction;
  if (does.kind === "act" && does.act.verb === "measure") {
    const { reading } = does.act;
    const after = usedAll(procedure, world);
    return valuesRead(procedure.items, reading).map((read) => ({ ...after, [`reading ${reading}`]: String(read) }));
  }
  if (does.kind !== "act" || does.act.verb !== "perform") return [carriedOut(procedure, pairs, instruction, world)];
  const { minutes } = contractOf(procedure, does.act.procedure);
  return afterPerforming(procedure, does.act.procedure, at, usedAll(procedure, world)).map((after) =>
    minutes === 0 ? after : cooledDown(procedure, cured(procedure, after, minutes, [])),
  );
}

function carriedOut(
  procedure: SimProcedure,
  pairs: readonly Pair[],
  { does, at, step }: Instruction,
  world: World,
): World {
  switch (does.kind) {
    case "needs":
      return madeSo(procedure, does.condition, world, SUPPOSED);
    case "gives":
      return madeSo(procedure, does.condition, world, GIVEN);
    case "begin step":
      return begun(pairs, step, world);
    case "end step":
      return does.low === 0 ? world : cured(procedure, world, does.low, does.applied);
    case "end of task":
      return cooledDown(procedure, world);
    case "check":
      return usedAll(procedure, world);
    case "act": {
      // What was not met is taken as met before the action does what it does.
      const met = canBeMet(procedure, world)
        ? troubles(procedure, does.act, [world]).map((trouble) => trouble.met ?? {})
        : [];
      const next: Record<string, string> = Object.assign({ ...world }, ...met);
      use(procedure, does.act, next);
      change(procedure, does.act, at, next);
      return next;
    }
    default:
      return world;
  }
}

/** Whether there is anything that is taken as met. */
function canBeMet(procedure: SimProcedure, world: World): boolean {
  return ["used", "hung", "cure", "energy"].some((kind) => variables(procedure, world, kind).length > 0);
}

function begun(pairs: readonly Pair[], step: string, world: World): World {
  if (world[`began ${step}`] !== "no") return world;
  const next = { ...world, [`began ${step}`]: "yes" };
  for (const { at, first, second } of pairs)
    if (step === second && world[`began ${first}`] === "no") next[`early ${at}`] = "yes";
  return next;
}

function cured(procedure: SimProcedure, world: World, minutes: number, but: readonly string[]): World {
  const running = variables(procedure, world, "cure").filter((variable) => !but.includes(variable.slice(5)));
  return changed(world, running, (left) => String(Math.max(0, Number(left) - minutes)));
}

/** What was heated may be as cold as the shop. */
function cooledDown(procedure: SimProcedure, world: World): World {
  return changed(world, variables(procedure, world, "temp"), (is, variable) => {
    const part = variable.slice(5);
    return lowOf(world, part) <= AMBIENT ? is : bounds(AMBIENT, highOf(world, part));
  });
}

/* ---- what uses what was done ---- */

function usedAll(procedure: SimProcedure, world: World): World {
  const all = ["film", "warm", "turn"].flatMap((kind) => variables(procedure, world, kind));
  return changed(world, all, () => "no");
}

function use(procedure: SimProcedure, act: SimAct, next: Record<string, string>): void {
  if (act.verb === "do" || act.verb === "inspect" || act.verb === "restore")
    Object.assign(next, usedAll(procedure, next));
  // Time uses a film and heat up.
  if (act.verb === "wait" || act.verb === "wait until")
    for (const kind of ["film", "warm"]) for (const name of variables(procedure, next, kind)) next[name] = "no";
  if (!("part" in act) || act.verb === "wait until") return;
  const second = "over" in act ? act.over : "with" in act ? act.with : undefined;
  const named = [act.part, ...(second === undefined ? [] : [second])];
  for (const variable of variables(procedure, next, "turn")) next[variable] = "no";
  if (["clean", "lubricate", "apply"].includes(act.verb)) return;
  for (const variable of ["film", "warm"].flatMap((kind) => variables(procedure, next, kind))) {
    const part = variable.slice(5);
    if (named.some((name) => name === part || areRelated(procedure, name, part))) next[variable] = "no";
  }
}

/* ---- what actions do ---- */

function change(procedure: SimProcedure, act: SimAct, at: string, next: Record<string, string>): void {
  const set = (variable: string, to: string): void => {
    if (next[variable] !== undefined) next[variable] = to;
  };
  // The last action counts, also where the grip stays what it was.
  const hold = (part: string, grip: string): void => {
    next[`grip ${part}`] = `${grip}@${at}`;
  };
  switch (act.verb) {
    case "do":
    case "perform":
    case "measure":
    case "inspect":
      return;
    case "wait":
      Object.assign(next, cooledDown(procedure, cured(procedure, next, act.minutes, [])));
      return;
    case "wait until":
      // One that was so already is as it was, also where that was only taken as so.
      for (const part of [act.part, ...touching(procedure, next, act.part)])
        if (highOf(next, part) > act.high) set(`temp ${part}`, atMost(next, part, act.high));
      return;
    case "turn":
      Object.assign(next, turnedTo(procedure, act.place, act.hour));
      set(`turn ${act.place.split("[")[0]}`, "yes");
      return;
    case "isolate":
      if (value(next, `energy ${act.energy}`) === "live") next[`energy ${act.energy}`] = `isolated@${at}`;
      return;
    case "prove": {
      const variable = `energy ${act.energy}`;
      if (value(next, variable) !== "live") next[variable] = `proved@${origin(next, variable)}`;
      return;
    }
    case "restore":
      next[`energy ${act.energy}`] = "live";
      return;
    case "heat":
    case "cool":
      set(`temp ${act.part}`, bounds(act.low, act.high));
      set(`warm ${act.part}`, act.verb === "heat" ? "yes" : "no");
      if (act.verb === "heat") shareHeat(procedure, act.part, next);
      return;
    case "heat by":
      set(`temp ${act.part}`, bounds(lowOf(next, act.part) + act.low, highOf(next, act.part) + act.high));
      set(`warm ${act.part}`, "yes");
      shareHeat(procedure, act.part, next);
      return;
    case "install":
    case "press":
      place(procedure, act, at, next);
      return;
    case "remove":
    case "discard":
      takeOut(procedure, act.part, at, next);
      return;
    case "tighten":
      hold(act.part, act.how === "by hand" ? "hand" : act.how === "to seat" ? "seated" : "tight");
      return;
    case "loosen":
      hold(act.part, act.how === undefined ? "loose" : "set");
      if (act.how === undefined) set(`used ${act.part}`, "yes");
      return;
    case "clean":
      set(`film ${act.part}`, "no");
      set(`surface ${act.part}`, "clean");
      return;
    case "lubricate":
      set(`film ${act.part}`, "yes");
      set(`surface ${act.part}`, "lubricated");
      return;
    case "align":
      for (const part of [act.part, act.with ?? ""]) set(`aligned ${part}`, "yes");
      return;
    case "apply":
      set(`film ${act.part}`, "yes");
      if (act.cure === undefined && act.glue !== true) return;
      set(`cure ${act.part}`, String(act.cure ?? GLUE_CURES));
      set(`first ${act.part}`, act.cure === undefined ? "no" : "yes");
      return;
    case "lift":
      for (const name of variables(procedure, next, "hung"))
        if (next[name] === "hoist" && name !== `hung ${act.part}`) next[name] = "no";
      set(`hung ${act.part}`, "hoist");
      return;
    case "support":
      set(`hung ${act.part}`, "yes");
      return;
    case "set down":
      // One that may not be let go hangs on: it is taken as held.
      if (!troubles(procedure, act, [next]).some(({ code }) => code === "order.unsupported"))
        set(`hung ${act.part}`, "no");
  }
}

function place(procedure: SimProcedure, act: PartAct, at: string, next: Record<string, string>): void {
  const { part } = act;
  // One that was in already, in the same place and on the same, stays where it was put: nothing about it changed.
  const under = act.over ?? "";
  const where = act.place ?? (act.over === undefined ? ownPlace(procedure, part) : null);
  const differs = (variable: string, to: string): boolean => next[variable] !== undefined && next[variable] !== to;
  const isMoved = differs(`on ${part}`, under) || differs(`spot ${part}`, where ?? "");
  const stays = isIn(next, part) && !isMoved;
  const wasIn = stays && isKnown(next, `in ${part}`);
  if (next[`on ${part}`] !== undefined) next[`on ${part}`] = under;
  const by = wasIn ? origin(next, `in ${part}`) : at;
  if (!wasIn) next[`in ${part}`] = `in@${at}`;
  if (next[`spot ${part}`] !== undefined) next[`spot ${part}`] = where ?? "";
  if (where !== null) {
    const filling = arcAfter(procedure, next, part, where, by);
    if (filling !== null) next[filling.variable] = filling.arc;
  }
  if (isFastener(procedure, part) && !(stays && isLoose(next, part))) next[`grip ${part}`] = `loose@${at}`;
  if (act.fresh === true && next[`used ${part}`] !== undefined) next[`used ${part}`] = "no";
  shareHeat(procedure, part, next, true);
  for (const held of [part, ...said(procedure, "secures", part)]) {
    const fasteners = sayers(procedure, "secures", held);
    const isHeld = fasteners.filter((by) => isIn(next, by)).length >= Math.min(2, fasteners.length);
    if (next[`hung ${held}`] !== undefined && isInstalled(next, held) && isHeld) next[`hung ${held}`] = "no";
  }
}

function takeOut(procedure: SimProcedure, part: string, at: string, next: Record<string, string>): void {
  // One that was out already stays so: nothing about it changed.
  if (isIn(next, part) || !isKnown(next, `in ${part}`)) next[`in ${part}`] = `out@${at}`;
  Object.assign(next, freed(next, part));
  if (next[`used ${part}`] !== undefined) next[`used ${part}`] = "yes";
  const seats = partOf(procedure, part)?.seats;
  const variable = `arc ${seats?.ring} ${part.split("[")[0]}`;
  const arc = next[variable];
  if (arc !== undefined) next[variable] = emptiedAt(arc, numberOf(part));
}

/** What touches a hot part may become as hot; what has just been put together, the one as the other. */
function shareHeat(procedure: SimProcedure, part: string, next: Record<string, string>, bothWays = false): void {
  for (const other of touching(procedure, next, part)) {
    warm(next, other, highOf(next, part));
    if (bothWays) warm(next, part, highOf(next, other));
  }
}

function warm(next: Record<string, string>, part: string, high: number): void {
  if (highOf(next, part) < high) next[`temp ${part}`] = bounds(lowOf(next, part), high);
}
