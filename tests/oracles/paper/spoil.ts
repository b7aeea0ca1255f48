// Faults planted into a sound procedure, and the names and jumps put in order afterwards, so that the text can still be read.
import type { Picker } from "./picker.ts";
import type { SimAct, SimCondition, SimItem, SimJump, SimLine, SimProcedure, SimStep } from "./shop.ts";
import { actsIn, innerItems, replaced, stepsIn, withInner } from "./shop.ts";
import { OTHER } from "./text.ts";
import type { Scene } from "./themes.ts";
import { linesOf } from "./walk.ts";

/** Three to six faults, some of which change nothing: something left out, done otherwise, done twice, done later, or put in. */
export function spoilt(procedure: SimProcedure, scene: Scene, pick: Picker): SimProcedure {
  let { items, finish } = procedure;
  for (let count = 3 + pick.below(4); count > 0; count--) {
    const chance = pick.below(10);
    if (chance < 2) items = withoutOne(items, pick);
    else if (chance < 5) items = withOneTwisted(items, pick);
    else if (chance === 5 && finish.length > 0) {
      const at = pick.below(finish.length);
      finish = pick.below(2) === 0 ? finish.filter((_, which) => which !== at) : [...finish, wish(procedure, pick)];
    } else if (chance >= 8 && scene.mistakes.length > 0) items = withMistake(items, scene, pick, count);
    else items = spoiltList(items, procedure, scene, pick);
  }
  const ordered = inOrder(withMeasuring(items, pick));
  const names = actsIn(ordered).flatMap((act) => (act.verb === "perform" ? [act.procedure] : []));
  return {
    ...procedure,
    items: ordered,
    finish,
    performed: scene.performed.filter(({ name }) => names.includes(name)),
  };
}

/** Between two items, or within one. */
function withMistake(items: readonly SimItem[], scene: Scene, pick: Picker, number: number): readonly SimItem[] {
  const steps = pick
    .of(scene.mistakes)
    .map((step, at): SimStep => ({ kind: "step", name: `Mistake${number}at${at}`, lines: linesOf(step) }));
  const at = pick.below(items.length + 1);
  return [...items.slice(0, at), ...steps, ...items.slice(at)];
}

/** Any step left out, mostly one that others build on. */
function withoutOne(items: readonly SimItem[], pick: Picker): readonly SimItem[] {
  const enabling = [
    "isolate",
    "prove",
    "wait",
    "heat",
    "cool",
    "lift",
    "support",
    "turn",
    "remove",
    "discard",
    "inspect",
  ];
  const all = stepsIn(items);
  const likely = all.filter((step) => actsIn([step]).some(({ verb }) => enabling.includes(verb)));
  const steps = likely.length === 0 || pick.below(2) === 0 ? all : likely;
  return steps.length === 0 ? items : replaced(items, pick.of(steps), []);
}

function withOneTwisted(items: readonly SimItem[], pick: Picker): readonly SimItem[] {
  const steps = stepsIn(items).filter(({ lines }) => lines.some(isTwistable));
  if (steps.length === 0) return items;
  const step = pick.of(steps);
  const lines = step.lines.map((line): SimLine => {
    if (line.kind === "after") return { ...line, kind: "before" };
    if (line.kind === "before") return { ...line, kind: "after" };
    return line.kind === "act" && isTwistable(line) ? { kind: "act", act: twisted(line.act, pick) } : line;
  });
  return replaced(items, step, [{ ...step, lines }]);
}

function isTwistable(line: SimLine): boolean {
  if (line.kind !== "act") return line.kind === "after" || line.kind === "before";
  const { act } = line;
  if (act.verb === "install")
    return /^(Knob|Peg)/.test(act.part) || act.fresh === true || act.hour !== undefined || act.place !== undefined;
  return ["press", "tighten", "wait", "turn", "apply", "lift", "support", "isolate", "prove"].includes(act.verb);
}

/** The same action, a little otherwise. */
function twisted(act: SimAct, pick: Picker): SimAct {
  const hours = [12, 3, 6, 9, 2];
  switch (act.verb) {
    case "install": {
      const { fresh: _, ...rest } = act;
      const number = /^Knob/.test(act.part) ? "Circle[1]" : act.place?.replace(/\d/, String(1 + pick.below(4)));
      if (act.hour === undefined) return number === undefined ? rest : { ...rest, place: number };
      return { ...rest, hour: pick.of(hours) };
    }
    case "press":
      return { ...act, verb: "install" };
    case "tighten":
      return { verb: "tighten", part: act.part, how: pick.of(["by hand", "to seat"] as const) };
    case "wait":
      return { verb: "wait", minutes: 2 };
    case "turn":
      return { ...act, hour: pick.of(hours) };
    case "apply":
      return { ...act, cure: 25 };
    default:
      return { verb: "do" };
  }
}

function spoiltList(items: readonly SimItem[], procedure: SimProcedure, scene: Scene, pick: Picker): SimItem[] {
  const list = [...items];
  const at = pick.below(list.length);
  const item = list[at];
  if (item === undefined) return list;
  const deeper = (inside: readonly SimItem[]): SimItem[] => spoiltList(inside, procedure, scene, pick);
  if (item.kind !== "step" && item.kind !== "jump" && pick.below(4) > 0) {
    list[at] =
      item.kind === "when" || item.kind === "when read"
        ? { ...item, inside: deeper(item.inside) }
        : item.kind === "any order"
          ? { ...item, children: deeper(item.children) }
          : { ...item, items: deeper(item.items) };
    return list;
  }
  const strange: SimStep = {
    kind: "step",
    name: "Strange",
    lines: [{ kind: "act", act: pick.of(pick.of(scene.acts)) }],
  };
  switch (pick.below(10)) {
    case 0: {
      const next = list[at + 1];
      if (next !== undefined) list.splice(at, 2, next, item);
      break;
    }
    case 1:
      list.splice(at, 0, item);
      break;
    case 2:
      list.splice(at, 1);
      list.splice(at + 1 + pick.below(3), 0, item);
      break;
    case 3:
      list.splice(at, 0, {
        ...strange,
        lines: [
          { kind: "needs", condition: wish(procedure, pick) },
          { kind: "act", act: { verb: "do" } },
        ],
      });
      break;
    case 4: {
      const fails = pick.below(2) === 0 ? [] : [pick.of(pick.of(scene.acts))];
      const earlier = list.slice(0, at).findLast((each) => each.kind === "step");
      const later = list.slice(at).findLast((each) => each.kind === "step");
      const jumps: (SimJump | null)[] = [null, "stop"];
      if (earlier?.kind === "step") jumps.push({ way: "return to", to: earlier.name });
      if (later?.kind === "step") jumps.push({ way: "go to", to: later.name });
      list.splice(at, 0, { ...strange, lines: [{ kind: "check", fails, jump: pick.of(jumps) }] });
      break;
    }
    case 5:
      if (item.kind === "step" && item.lines.length > 1 && !heatsOn(item))
        list[at] = { ...item, lines: item.lines.slice(1) };
      break;
    case 6: {
      const option = pick.of(procedure.options);
      list[at] = { kind: "when", option: option.name, value: pick.of(option.values), inside: [item], otherwise: null };
      break;
    }
    case 7:
      list[at] = { kind: "when read", reading: READING, most: pick.of([1, 2]), inside: [item], otherwise: null };
      break;
    default:
      list.splice(at, 0, strange);
  }
  return list;
}

/** Its first line sets the temperature that the next raises: without it a loop would heat for ever. */
function heatsOn({ lines }: SimStep): boolean {
  return lines.some((line) => line.kind === "act" && line.act.verb === "heat by");
}

/** The one reading there is. */
export const READING = "Gap";

/** Where a branch asks for the reading, it is measured somewhere before, between or behind. */
function withMeasuring(items: readonly SimItem[], pick: Picker): readonly SimItem[] {
  if (!asksReading(items)) return items;
  const at = pick.below(pick.below(3) === 0 ? items.length + 1 : 1);
  return [...items.slice(0, at), measuring, ...items.slice(at)];
}

function asksReading(items: readonly SimItem[]): boolean {
  return items.some((item) => item.kind === "when read" || asksReading(innerItems(item)));
}

export const measuring: SimStep = {
  kind: "step",
  name: "Measuring",
  lines: [{ kind: "act", act: { verb: "measure", reading: READING } }],
};

/** A condition that need not hold. */
function wish({ parts, energies }: SimProcedure, pick: Picker): SimCondition {
  const wishes: SimCondition[] = [
    ...parts
      .filter(
        ({ name, count, states }) => count === null && states.length === 0 && !["Frame", "Spindle"].includes(name),
      )
      .flatMap(({ name, secures }): SimCondition[] => [
        { part: name, state: "installed" },
        { part: name, state: "removed" },
        { part: name, state: secures.length > 0 ? "tightened" : "secured" },
      ]),
    { part: "Valve", own: "open" },
    { fact: "Signed" },
    ...energies.map(({ name }): SimCondition => ({ energy: name, state: "isolated" })),
  ];
  const wished = pick.of(wishes);
  return pick.below(3) === 0 && isOneOfTwo(wished) ? { ...wished, not: true } : wished;
}

/** What is so where it is not the other. */
function isOneOfTwo(condition: SimCondition): boolean {
  return "own" in condition || ("state" in condition && Object.hasOwn(OTHER, condition.state));
}

/* ---- names and jumps ---- */

/** Gives every step a name of its own, and takes out jumps and `after`s to a step that is gone. */
export function inOrder(items: readonly SimItem[]): readonly SimItem[] {
  const names = new Set<string>();
  const renamed = (list: readonly SimItem[]): SimItem[] =>
    list.map((item): SimItem => {
      if (item.kind !== "step") return withInner(item, renamed);
      let { name } = item;
      while (names.has(name)) name += "x";
      names.add(name);
      return { ...item, name };
    });
  const leads = (jump: SimJump): boolean => jump === "stop" || names.has(jump.to);
  const mended = (list: readonly SimItem[]): SimItem[] =>
    list.flatMap((item): SimItem[] => {
      if (item.kind === "jump") return leads(item.jump) ? [item] : [];
      if (item.kind !== "step") return [withInner(item, mended)];
      const lines = item.lines.flatMap((line): SimLine[] => {
        if (line.kind === "check" && line.jump !== null && !leads(line.jump)) return [{ ...line, jump: null }];
        if ("step" in line) return names.has(line.step) ? [line] : [];
        return [line];
      });
      return [{ ...item, lines: lines.length === 0 ? [{ kind: "act", act: { verb: "do" } }] : lines }];
    });
  return mended(renamed(items));
}
