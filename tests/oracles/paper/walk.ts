// A sound procedure, made by walking about in a shop: what is proposed is carried out under every option value, and taken only
// if nothing is wrong with it. Knows nothing of the checker.
import { assignments, run } from "../paper-simulator.ts";
import { clocked, timed } from "./clocked.ts";
import type { Picker } from "./picker.ts";
import { compile } from "./program.ts";
import type { Sequence } from "./sequences.ts";
import {
  actsIn,
  allInstances,
  partOf,
  type SimAct,
  type SimCondition,
  type SimItem,
  type SimLine,
  type SimProcedure,
  type SimStep,
} from "./shop.ts";
import type { Scene } from "./themes.ts";
import { fails, isIn, isTight, keyOf, startOf, value, type World } from "./world.ts";

/** How things can stand under some assignments of the options: those in which no branch has made a difference yet. */
interface Standing {
  readonly under: readonly Readonly<Record<string, string>>[];
  readonly worlds: readonly World[];
}

interface Walk {
  readonly procedure: SimProcedure;
  readonly acts: Scene["acts"];
  readonly customs: Scene["customs"];
  readonly pick: Picker;
  standings: readonly Standing[];
  /** Of steps, for their names. */
  next: number;
}

/** Numbers are drawn until they have run out. */
export function soundProcedure(scene: Scene, pick: Picker): SimProcedure {
  const all = [...scene.customs, ...scene.mistakes].flatMap((sequence) => sequence.flatMap(linesOf));
  const begin = beginning(scene, pick);
  // Everything that could be named counts as named, and everything that could be done has its variable.
  const pretended: SimItem = {
    kind: "step",
    name: "All",
    lines: [...scene.acts.flat().map((act) => ({ kind: "act" as const, act })), ...all],
  };
  const procedure: SimProcedure = { ...scene.shop, begin, finish: [], items: [pretended], performed: scene.performed };
  const start = startOf(procedure, compile(procedure, []));
  const walk: Walk = {
    procedure,
    acts: scene.acts,
    customs: scene.customs,
    pick,
    standings: [{ under: assignments(procedure.options), worlds: [start] }],
    next: 1,
  };
  const items = wander(walk, 2 + pick.below(2), 0);
  items.push(...tidied(walk));
  const sound: SimProcedure = {
    ...procedure,
    performed: asked(procedure.performed, items),
    items: pick.below(5) === 0 ? declared(items, pick) : items,
    finish: finishing(walk),
  };
  return pick.below(5) === 0 ? withClocks(sound, pick) : sound;
}

/** Mostly more than enough. */
const MINUTES = [10, 60, 120, 240];

function withClocks(made: SimProcedure, pick: Picker): SimProcedure {
  const performed = made.performed.map((each) => ({ ...each, items: timed(each.items, pick) }));
  return { ...made, performed, items: clocked(made.items, pick, MINUTES) };
}

/** Those that are performed. */
function asked(performed: SimProcedure["performed"], items: readonly SimItem[]): SimProcedure["performed"] {
  return performed.filter(({ name }) => actsIn(items).some((act) => act.verb === "perform" && act.procedure === name));
}

export function beginning(scene: Scene, pick: Picker): SimCondition[] {
  const begin: SimCondition[] = ["Frame", "Spindle"]
    .filter((part) => partOf(scene.shop, part) !== undefined)
    .map((part) => ({ part, state: "installed" }));
  for (const part of [
    "Hub",
    "Cover",
    "Shaft",
    "Motor",
    "Hood",
    "Plate",
    "Tab",
    "Wire",
    "Seal",
    "Block",
    "Base",
    "Pan",
  ]) {
    if (partOf(scene.shop, part) === undefined || pick.below(part === "Motor" || part === "Hood" ? 5 : 2) === 0)
      continue;
    begin.push({ part, state: "installed" });
    const own = allInstances(scene.shop).filter((name) => partOf(scene.shop, name)?.secures.includes(part) === true);
    if (own.length === 0) continue;
    const way = pick.below(4);
    if (way < 2) begin.push({ part, state: "secured" });
    if (way === 2) begin.push({ part: own[0] ?? "", state: "installed" });
  }
  if (partOf(scene.shop, "Blade") !== undefined && pick.below(3) === 0)
    begin.push({ part: "Blade[2]", state: "installed" });
  if (scene.shop.energies.length > 0 && pick.below(3) === 0) begin.push({ energy: "Supply", state: "isolated" });
  return begin;
}

/** Carries out what is proposed; leaves everything as it was, and says so, if something is wrong with it. */
function isTaken(walk: Walk, items: readonly SimItem[]): boolean {
  const program = compile(walk.procedure, items, walk.next * 100);
  const ends: Standing[] = [];
  for (const { under, worlds } of walk.standings) {
    // Where a branch asks for an option, each assignment may come to something else.
    for (const same of program.options.size === 0 ? [under] : under.map((so) => [so])) {
      const [so] = same;
      if (so === undefined) continue;
      const result = run(walk.procedure, program, worlds, so);
      // A few ways in which things can stand are enough.
      if (result.troubles.length > 0 || result.ends.length === 0 || result.ends.length > 4) return false;
      ends.push({ under: same, worlds: result.ends });
    }
  }
  walk.standings = joined(ends);
  walk.next++;
  return true;
}

/** Assignments under which things stand alike go together. */
function joined(standings: readonly Standing[]): readonly Standing[] {
  if (standings.length < 2) return standings;
  const alike = new Map<string, Standing>();
  for (const { under, worlds } of standings) {
    const key = worlds.map(keyOf).join("\n");
    alike.set(key, { under: [...(alike.get(key)?.under ?? []), ...under], worlds });
  }
  return [...alike.values()];
}

function stepOf(walk: Walk, ...lines: readonly SimLine[]): SimStep {
  return { kind: "step", name: `Step${walk.next++}`, lines };
}

/* ---- what is proposed ---- */

function wander(walk: Walk, length: number, depth: number): SimItem[] {
  const { pick } = walk;
  const items: SimItem[] = [];
  for (let left = length; left > 0 && !pick.isDone(); left--) {
    switch (pick.below(depth > 0 ? 12 : 16)) {
      case 0:
        items.push(
          ...taken(walk, [
            stepOf(walk, { kind: "needs", condition: truth(walk) }, { kind: "act", act: { verb: "do" } }),
          ]),
        );
        break;
      case 1:
        items.push(...gift(walk));
        break;
      case 2:
        items.push(
          ...taken(walk, [stepOf(walk, { kind: "check", fails: [], jump: pick.below(2) === 0 ? "stop" : null })]),
        );
        break;
      case 10:
      case 11:
        items.push(...branch(walk, depth));
        break;
      case 12:
        items.push(...rework(walk, depth));
        break;
      case 13:
        items.push(...anyOrder(walk, depth));
        break;
      case 14:
        items.push(...skip(walk, depth));
        break;
      case 15:
        items.push(...repeat(walk, depth));
        break;
      case 3:
      case 4:
      case 5:
      case 6:
      case 7:
        items.push(...custom(walk));
        break;
      default:
        items.push(...work(walk));
    }
  }
  return items;
}

function taken(walk: Walk, items: readonly SimItem[]): readonly SimItem[] {
  return isTaken(walk, items) ? items : [];
}

/** A step of one or two actions; a few tries to find one that can be done. */
function work(walk: Walk): readonly SimItem[] {
  const { pick } = walk;
  for (let tries = 6; tries > 0 && !pick.isDone(); tries--) {
    const acts = pick.of(walk.acts);
    const lines: SimLine[] = [{ kind: "act", act: pick.of(acts) }];
    if (pick.below(4) === 0) lines.push({ kind: "act", act: pick.of(acts) });
    if (pick.below(5) === 0) {
      const low = pick.below(3) * 5;
      lines.push({ kind: "takes", low, high: low + 5 });
    }
    const items = [stepOf(walk, ...lines)];
    if (isTaken(walk, items)) return pick.below(8) === 0 ? [{ kind: "task", items }] : items;
  }
  return [];
}

/** One thing after the other, as far as each can be done; now and then something else in between. */
function custom(walk: Walk): readonly SimItem[] {
  const { pick, customs } = walk;
  if (customs.length === 0) return work(walk);
  return pick
    .of(customs)
    .flatMap((step) => [...(pick.below(8) === 0 ? work(walk) : []), ...taken(walk, [stepOf(walk, ...linesOf(step))])]);
}

export function linesOf(step: Sequence[number]): readonly SimLine[] {
  return "verb" in step ? [{ kind: "act", act: step }] : step;
}

function truth({ procedure, standings, pick }: Walk): SimCondition {
  const world = standings[0]?.worlds[0] ?? {};
  const truths = allInstances(procedure).map((part): SimCondition => {
    if (partOf(procedure, part)?.states.length !== 0) return { part, own: value(world, `own ${part}`) || "shut" };
    if (isTight(world, part) && pick.below(2) === 0) return { part, state: "tightened" };
    return { part, state: isIn(world, part) ? "installed" : "removed" };
  });
  for (const { name } of procedure.energies)
    truths.push({ energy: name, state: value(world, `energy ${name}`) === "live" ? "live" : "isolated" });
  if (value(world, "fact Signed") === "yes") truths.push({ fact: "Signed" });
  return pick.of(truths);
}

function gift(walk: Walk): readonly SimItem[] {
  const gifts: readonly SimCondition[] = [
    { fact: "Signed" },
    { part: "Valve", own: "open" },
    { part: "Valve", own: "shut" },
  ];
  return taken(walk, [
    stepOf(walk, { kind: "act", act: { verb: "do" } }, { kind: "gives", condition: walk.pick.of(gifts) }),
  ]);
}

const UNDONE: Readonly<Record<string, string>> = {
  install: "remove",
  press: "remove",
  remove: "install",
  tighten: "loosen",
  loosen: "tighten",
  isolate: "restore",
  restore: "isolate",
  lift: "set down",
};

/** What takes it back, the last thing first; of single steps only. */
function undone(items: readonly SimItem[], isInside = false): SimAct[] {
  return actsIn(items.filter(({ kind }) => kind === "step"))
    .flatMap((act): SimAct[] => {
      const verb = UNDONE[act.verb];
      if (verb === undefined) return [];
      // Outside the repeat it has no number.
      if ("part" in act && /\[[a-z]\]/.test(act.part) && !isInside) return [];
      if ("energy" in act) return [{ verb: verb as "isolate", energy: act.energy }];
      return "part" in act ? [{ verb: verb as "install", part: act.part }] : [];
    })
    .reverse();
}

/** Does something under some assignments only. */
function only(walk: Walk, test: (so: Readonly<Record<string, string>>) => boolean, does: () => SimItem[]): SimItem[] {
  const part = (wanted: boolean): readonly Standing[] =>
    walk.standings.flatMap(({ under, worlds }) => {
      const some = under.filter((so) => test(so) === wanted);
      return some.length === 0 ? [] : [{ under: some, worlds }];
    });
  const others = part(false);
  walk.standings = part(true);
  const items = does();
  walk.standings = joined([...walk.standings, ...others]);
  return items;
}

/** Mostly one that leaves the shop as it was. */
function branch(walk: Walk, depth: number): readonly SimItem[] {
  const { pick } = walk;
  const option = pick.of(walk.procedure.options);
  const chosen = pick.of(option.values);
  const inside = (): SimItem[] => {
    const items = wander(walk, 1 + pick.below(2), depth + 1);
    if (pick.below(5) === 0) return items;
    for (const act of undone(items)) items.push(...taken(walk, [stepOf(walk, { kind: "act", act })]));
    return items;
  };
  const first = only(walk, (so) => so[option.name] === chosen, inside);
  const otherwise = pick.below(2) === 0 ? only(walk, (so) => so[option.name] !== chosen, inside) : [];
  if (first.length === 0) return otherwise;
  return [
    {
      kind: "when",
      option: option.name,
      value: chosen,
      inside: first,
      otherwise: otherwise.length === 0 ? null : otherwise,
    },
  ];
}

/** Does something, looks, and takes it back for another try where it is not right. */
function rework(walk: Walk, depth: number): readonly SimItem[] {
  const before = walk.standings;
  const body = wander(walk, 1 + walk.pick.below(2), depth + 1);
  const first = body.find((item) => item.kind === "step");
  if (first?.kind !== "step" || body[0] !== first) return body;
  const fails = undone(body.slice(body.indexOf(first)));
  const look = stepOf(walk, { kind: "check", fails, jump: { way: "return to", to: first.name } });
  const after = walk.standings;
  walk.standings = before;
  if (isTaken(walk, [...body, look])) return [...body, look];
  walk.standings = after;
  return body;
}

/** Something that is left out where a check fails. */
function skip(walk: Walk, depth: number): readonly SimItem[] {
  const before = walk.standings;
  const body = wander(walk, 1 + walk.pick.below(2), depth + 1);
  for (const act of undone(body)) body.push(...taken(walk, [stepOf(walk, { kind: "act", act })]));
  const then = stepOf(walk, { kind: "act", act: { verb: "do" } });
  const look = stepOf(walk, { kind: "check", fails: [], jump: { way: "go to", to: then.name } });
  const after = walk.standings;
  walk.standings = before;
  if (isTaken(walk, [look, ...body, then])) return [look, ...body, then];
  walk.standings = after;
  return body;
}

/** Two to four things of which none asks for another. */
function anyOrder(walk: Walk, depth: number): readonly SimItem[] {
  const before = walk.standings;
  const children: SimItem[] = [];
  let after = before;
  for (let tries = 3 + walk.pick.below(3); tries > 0 && children.length < 4; tries--) {
    walk.standings = before;
    const items = walk.pick.below(3) === 0 ? wander(walk, 2, depth + 2) : work(walk);
    const [first] = items;
    if (first === undefined) continue;
    const child: SimItem = items.length === 1 ? first : { kind: "task", items };
    walk.standings = before;
    if (!isTaken(walk, [{ kind: "any order", children: [...children, child] }])) continue;
    children.push(child);
    after = walk.standings;
  }
  walk.standings = after;
  return children.length < 2 ? children : [{ kind: "any order", children }];
}

/** The same for several instances of one part, in the order of their numbers or another. */
function repeat(walk: Walk, depth: number): readonly SimItem[] {
  const { pick } = walk;
  const many = walk.procedure.parts.filter(({ count }) => count !== null);
  if (many.length === 0 || depth > 1) return work(walk);
  const { name, count, secures } = pick.of(many);
  const all = Array.from({ length: count ?? 1 }, (_, at) => at + 1);
  const from = pick.below(all.length);
  const values = pick.below(2) === 0 ? all : [...all.slice(from), ...all.slice(0, from)].reverse();
  const verbs =
    secures.length > 0 ? (["install", "tighten", "loosen", "remove"] as const) : (["install", "remove"] as const);
  const act: SimAct = { verb: pick.of(verbs), part: `${name}[n]` };
  const items: SimItem[] = [stepOf(walk, { kind: "act", act })];
  if (pick.below(4) === 0) {
    const look = stepOf(walk, { kind: "check", fails: undone(items, true), jump: null });
    const [first] = items;
    if (first?.kind === "step")
      items.push({
        ...look,
        lines: [{ kind: "check", fails: undone(items, true), jump: { way: "return to", to: first.name } }],
      });
  }
  const once: SimItem = { kind: "repeat", variable: "n", values, items };
  if (pick.below(6) > 0) return taken(walk, [once]);
  const back: SimItem = {
    kind: "repeat",
    variable: "n",
    values,
    items: undone(items, true)
      .slice(0, 1)
      .map((each) => stepOf(walk, { kind: "act", act: each })),
  };
  return taken(walk, [{ kind: "repeat", variable: "m", values: [1, 2], items: [once, back] }]);
}

/* ---- the end ---- */

/** What would be found fault with at the end, put right as far as it can be. */
function tidied(walk: Walk): SimItem[] {
  const { procedure } = walk;
  const items: SimItem[] = [];
  const isSo = (test: (world: World) => boolean): boolean => walk.standings.some(({ worlds }) => worlds.some(test));
  const does = (act: SimAct): number => items.push(...taken(walk, [stepOf(walk, { kind: "act", act })]));
  for (const part of allInstances(procedure)) {
    const { temporary = false, locks = [] } = partOf(procedure, part) ?? {};
    const grip = (world: World): string => value(world, `grip ${part}`);
    if (isSo((world) => grip(world) === "seated" || ["loose", "hand"].includes(grip(world))))
      does({ verb: "tighten", part });
    if (temporary && isSo((world) => isIn(world, part))) does({ verb: "remove", part });
    if (locks.length > 0 && isSo((world) => !isIn(world, part))) does({ verb: "install", part });
  }
  for (const { name } of procedure.energies)
    if (isSo((world) => ["isolated", "proved"].includes(value(world, `energy ${name}`))))
      does({ verb: "restore", energy: name });
  return items;
}

/** Says of a few steps which comes first, as the text has it. */
function declared(items: readonly SimItem[], pick: Picker): SimItem[] {
  const list = [...items];
  for (let count = 2; count > 0; count--) {
    const steps = list.flatMap((item, at) => (item.kind === "step" ? [{ step: item, at }] : []));
    const [first, second] = [pick.below(steps.length), pick.below(steps.length)].sort((a, b) => a - b);
    const earlier = steps[first ?? 0];
    const later = steps[second ?? 0];
    if (earlier === undefined || later === undefined || earlier === later) continue;
    const [place, line]: [typeof later, SimLine] =
      pick.below(2) === 0
        ? [later, { kind: "after", step: earlier.step.name }]
        : [earlier, { kind: "before", step: later.step.name }];
    list[place.at] = { ...place.step, lines: [...place.step.lines, line] };
  }
  return list;
}

/** What holds at the end in any case: all that would otherwise be found fault with, and some more. */
function finishing({ procedure, standings, pick }: Walk): SimCondition[] {
  const worlds = standings.flatMap((standing) => standing.worlds);
  const finish: SimCondition[] = [];
  for (const part of allInstances(procedure)) {
    if (partOf(procedure, part)?.states.length !== 0) continue;
    const isOut = worlds.every((world) => !isIn(world, part));
    const isInside = worlds.every((world) => isIn(world, part));
    const isOpen = worlds.some(
      (world) => value(world, `grip ${part}`) === "loose" || /^out@/.test(world[`in ${part}`] ?? ""),
    );
    if (!isOpen && pick.below(4) > 0) continue;
    if (isOut || isInside) finish.push({ part, state: isOut ? "removed" : "installed" });
  }
  if (!fails(procedure, { part: "Cover", state: "secured" }, worlds) && pick.below(2) === 0)
    finish.push({ part: "Cover", state: "secured" });
  for (const { name } of procedure.energies) {
    const live = worlds.filter((world) => value(world, `energy ${name}`) === "live").length;
    if (live === worlds.length ? pick.below(3) === 0 : live === 0)
      finish.push({ energy: name, state: live === 0 ? "isolated" : "live" });
  }
  return finish;
}
