// Conditions as formulas over state variables and option sets: where one can fail, where it can hold, and what makes it
// true. Knows no actions.

import type { Part } from "#model/declarations.ts";
import type { ExpandedCondition, Thing } from "#model/expanded.ts";
import { heldFrom, unfilling } from "./actions/filling.ts";
import { type Cell, type Cells, type Entry, UNKNOWN } from "./cell.ts";
import { ALWAYS, type Decision, type Decisions, NEVER } from "./decision.ts";
import { joined } from "./joints.ts";
import type { Readings } from "./readings.ts";
import { magnitudeNumber } from "./readings.ts";
import { carry, release, vacate } from "./standing.ts";
import {
  AS_FOUND,
  boundsOf,
  IN,
  inPlace,
  isDead,
  isInstalled,
  isLoose,
  isRemoved,
  isSpent,
  isTight,
  LIVE,
  OFF,
  OUT,
  placeOf,
  putBack,
  shows,
  temperature,
  withHolder,
} from "./state-values.ts";
import { clockTurns, orientationVariable, placeAt } from "./turning.ts";
import type { Outcome, Update } from "./update.ts";
import { type Index, instanceKey, ownPosition, placeKey, type World } from "./world.ts";

export type Formula =
  | { readonly all: readonly Formula[] }
  | { readonly any: readonly Formula[] }
  | Atom
  /** Asked of nobody, and taken as so with what stands beside it: a screw that is tightened is in. */
  | { readonly implied: Atom }
  | { readonly decision: Decision }
  /** Nothing can be said: never shown to fail, never shown to hold. */
  | { readonly unknown: true };

/**
 * One variable whose value decides. `met` is what it becomes when the condition is taken as met, `unmet` when it is taken
 * as not so; null where that leaves more than one value.
 */
export interface Atom {
  readonly variable: number;
  /** Whether the value makes it so for certain. */
  readonly good: (value: string) => boolean;
  /** Whether the value allows it, where that is more. */
  readonly may?: (value: string) => boolean;
  readonly met: Outcome | null;
  readonly unmet: Outcome | null;
}

export interface FormulaContext {
  readonly world: World;
  readonly decisions: Decisions;
  readonly readings: Readings;
  /** The level of an option among the decisions. */
  readonly option: (thing: Extract<Thing, { kind: "other" }>["thing"]) => number | null;
}

export function formulaOf(context: FormulaContext, condition: ExpandedCondition): Formula {
  switch (condition.form) {
    case "all":
      return { all: condition.operands.map((operand) => formulaOf(context, operand)) };
    case "any":
      return anyOf(condition.operands.map((operand) => formulaOf(context, operand)));
    case "not":
      return negated(context, formulaOf(context, condition.operand));
    case "no temporary parts":
      return { all: context.world.temporaryParts().map(({ part, index }) => removedAtom(context.world, part, index)) };
    case "fact":
      return constantAtom(context.world.fact(condition.fact), "yes", "no");
    case "state":
      return forAll(
        context,
        condition.negated,
        condition.things.map((thing) => stateFormula(context, thing, condition.state)),
      );
    case "bound":
      return forAll(
        context,
        condition.negated,
        condition.things.map((thing) => boundFormula(context, thing, condition.source.bound.quantity)),
      );
    case "clock":
      return forAll(
        context,
        condition.negated,
        condition.things.map((thing) => clockFormula(context, thing, condition.source.clock.quantity)),
      );
    case "reading":
      return { decision: context.readings.where(condition.reading, condition.source.bound.quantity) };
    case "unknown":
      return { unknown: true };
  }
}

/** Where the condition can fail, on the paths that lead here. */
export function canFail(
  cells: Cells,
  decisions: Decisions,
  read: (variable: number) => Cell,
  formula: Formula,
): Decision {
  if ("unknown" in formula || "implied" in formula) return NEVER;
  if ("decision" in formula) return decisions.not(formula.decision);
  if ("all" in formula)
    return formula.all.reduce((so, part) => decisions.or(so, canFail(cells, decisions, read, part)), NEVER);
  if ("any" in formula)
    return formula.any.reduce((so, part) => decisions.and(so, canFail(cells, decisions, read, part)), ALWAYS);
  return cells.where(read(formula.variable), (value) => shows(value, (so) => !formula.good(so)));
}

/** Where it can hold; what is unknown may hold. */
export function mayHold(
  cells: Cells,
  decisions: Decisions,
  read: (variable: number) => Cell,
  formula: Formula,
): Decision {
  if ("unknown" in formula || "implied" in formula) return ALWAYS;
  if ("decision" in formula) return formula.decision;
  if ("all" in formula) {
    const parts = conjuncts(formula);
    const others = parts.filter((part) => !("variable" in part)).map((part) => mayHold(cells, decisions, read, part));
    // What several ask of one variable, one value must allow.
    const asked = new Map<number, Atom[]>();
    for (const part of parts)
      if ("variable" in part) asked.set(part.variable, [...(asked.get(part.variable) ?? []), part]);
    const allowed = [...asked].map(([variable, atoms]) =>
      cells.where(read(variable), (value) => atoms.every((atom) => allows(atom, value))),
    );
    return [...others, ...allowed].reduce(decisions.and, ALWAYS);
  }
  if ("any" in formula)
    return formula.any.reduce((so, part) => decisions.or(so, mayHold(cells, decisions, read, part)), NEVER);
  return cells.where(read(formula.variable), (value) => allows(formula, value));
}

/** Whether the condition may hold of a value. */
export function allows({ good, may = good }: Atom, value: string): boolean {
  return value === UNKNOWN || may(value);
}

/** An entry that makes the condition fail, for saying where the state came from. */
export function culprit(
  read: (variable: number) => Cell,
  formula: Formula,
): (Entry & { readonly variable: number }) | null {
  if ("unknown" in formula || "decision" in formula || "implied" in formula) return null;
  if ("all" in formula || "any" in formula) {
    for (const part of "all" in formula ? formula.all : formula.any) {
      const found = culprit(read, part);
      if (found !== null) return found;
    }
    return null;
  }
  const entry = read(formula.variable).find(({ value }) => shows(value, (so) => !formula.good(so)));
  return entry === undefined ? null : { ...entry, variable: formula.variable };
}

/** What must all hold; nothing of it is itself a conjunction. */
export function conjuncts(formula: Formula): readonly Exclude<Formula, { readonly all: unknown }>[] {
  return "all" in formula ? formula.all.flatMap(conjuncts) : [formula];
}

/** The atoms of a formula, each once. */
export function atomsOf(formula: Formula): readonly Atom[] {
  if ("all" in formula) return formula.all.flatMap(atomsOf);
  if ("any" in formula) return formula.any.flatMap(atomsOf);
  if ("implied" in formula) return [formula.implied];
  return "variable" in formula ? [formula] : [];
}

/** What is so afterwards where the condition is taken as met. Of alternatives none is chosen: what they speak of is unknown. */
export function settle(context: FormulaContext, formula: Formula): readonly Update[] {
  if ("all" in formula) return formula.all.flatMap((part) => settle(context, part));
  if ("any" in formula)
    return atomsOf(formula).map(({ variable, good }) => ({
      variable,
      change: (value) => (good(value) ? value : UNKNOWN),
    }));
  if ("implied" in formula) return settle(context, formula.implied);
  if (!("variable" in formula)) return [];
  const { variable, good, met } = formula;
  // What was only found to be in is loose, or tight, by this word.
  const isSo = (value: string): boolean => good(value) && value !== AS_FOUND;
  const change = (value: string): string => (isSo(value) ? value : (met?.change(value) ?? UNKNOWN));
  // Who asks for it to be loose and finds it in has not been told anything: it is known to be so from then on.
  const known: Update = {
    variable,
    keepsOrigin: "where supposed",
    change: (value) => (value === AS_FOUND && good(value) ? change(value) : value),
  };
  return [...(met?.before ?? []), ...(good(AS_FOUND) ? [known] : []), { variable, change }, ...(met?.after ?? [])];
}

function forAll(context: FormulaContext, negate: boolean, parts: readonly Formula[]): Formula {
  const [part, ...others] = negate ? parts.map((each) => negated(context, each)) : parts;
  return part !== undefined && others.length === 0 ? part : { all: part === undefined ? [] : [part, ...others] };
}

/** Alternatives; several of one variable are one, so that whatever it is, it is seen whether one of them holds. */
function anyOf(parts: readonly Formula[]): Formula {
  const merged: Formula[] = [];
  for (const part of parts.flatMap((each) => ("any" in each ? each.any : [each]))) {
    const at =
      "variable" in part ? merged.findIndex((other) => "variable" in other && other.variable === part.variable) : -1;
    const known = merged[at];
    if (known !== undefined && "variable" in known && "variable" in part) merged[at] = either(known, part);
    else merged.push(part);
  }
  const [only] = merged;
  return only !== undefined && merged.length === 1 ? only : { any: merged };
}

function either(one: Atom, other: Atom): Atom {
  return {
    variable: one.variable,
    good: (value) => one.good(value) || other.good(value),
    may: (value) => allows(one, value) || allows(other, value),
    met: null,
    unmet: null,
  };
}

/** The condition that holds where this one does not. */
export function negated(context: FormulaContext, formula: Formula): Formula {
  if ("unknown" in formula) return formula;
  if ("implied" in formula) return { decision: NEVER };
  if ("decision" in formula) return { decision: context.decisions.not(formula.decision) };
  if ("all" in formula) return anyOf(formula.all.map((part) => negated(context, part)));
  if ("any" in formula) return { all: formula.any.map((part) => negated(context, part)) };
  const { variable, good, may = good, met, unmet } = formula;
  return { variable, good: (value) => !may(value), may: (value) => !good(value), met: unmet, unmet: met };
}

function installedAtom(world: World, part: Part, index: Index): Atom {
  const variable = world.part(part, index, "place");
  const own = ownPosition(part, index);
  const ownKey = own === null ? null : placeKey(own.places, own.position);
  const key = instanceKey(part, index);
  const before: Update[] = [];
  const after: Update[] = [];
  if (own !== null) {
    after.push({
      variable: world.holder(own.places, own.position),
      by: variable,
      keepsOrigin: "where supposed",
      change: (held, at, _, isTaken) => (placeOf(at) === ownKey ? withHolder(held, key, isTaken) : held),
    });
    const isElsewhere = (at: string): boolean => isInstalled(at) && placeOf(at) !== ownKey;
    before.push(...heldFrom(world, part, own, isElsewhere, variable));
  }
  if (part.fastener) {
    before.push({
      variable: world.part(part, index, "grip"),
      by: variable,
      // In, and nothing said of how tight; what is in has some grip.
      change: (grip, at) => (isInstalled(at) && grip !== "absent" ? grip : AS_FOUND),
    });
  }
  if (part.singleUse) {
    before.push({
      variable: world.part(part, index, "used"),
      by: variable,
      keepsOrigin: "always",
      change: (used, at) => (isInstalled(at) ? used : putBack(used)),
    });
  }
  const inside = ownKey === null ? IN : inPlace(ownKey);
  return {
    variable,
    good: isInstalled,
    met: { change: () => inside, before, after: [...after, ...carry(world, part, index)] },
    unmet: takenOut(world, part, index),
  };
}

function removedAtom(world: World, part: Part, index: Index): Atom {
  return {
    variable: world.part(part, index, "place"),
    good: isRemoved,
    met: takenOut(world, part, index),
    unmet: null,
  };
}

function takenOut(world: World, part: Part, index: Index): Outcome {
  return {
    change: () => OUT,
    before: [
      ...unfilling(world, part, index),
      ...vacate(world, part, index),
      ...release(world, part, index),
      ...spent(world, part, index),
    ],
    after: carry(world, part, index),
  };
}

/** A used part of single use that is out. */
function spent(world: World, part: Part, index: Index): readonly Update[] {
  if (!part.singleUse) return [];
  const change = (used: string): string => (isSpent(used) ? "removed" : used);
  return [{ variable: world.part(part, index, "used"), keepsOrigin: "always", change }];
}

function constantAtom(variable: number, wanted: string, other: string | null): Atom {
  return {
    variable,
    good: (value) => value === wanted,
    met: { change: () => wanted },
    unmet: other === null ? null : { change: () => other },
  };
}

function stateFormula(context: FormulaContext, thing: Thing, state: string): Formula {
  const { world } = context;
  if (thing.kind === "place") return { unknown: true };
  if (thing.kind === "other") {
    if (thing.thing.kind === "option") {
      const level = context.option(thing.thing);
      return level === null
        ? { unknown: true }
        : { decision: context.decisions.where(level, (value) => value === state) };
    }
    if (thing.thing.kind !== "energy") return { unknown: true };
    const dead: Atom = {
      variable: world.energy(thing.thing),
      good: isDead,
      met: { change: () => OFF },
      unmet: { change: () => LIVE },
    };
    return state === "live" ? negated(context, dead) : dead;
  }
  const { part, index } = thing;
  const installed = installedAtom(world, part, index);
  const grip = (good: (value: string) => boolean, met: string): Atom => ({
    variable: world.part(part, index, "grip"),
    good,
    met: { change: () => met },
    unmet: null,
  });
  switch (state) {
    case "installed":
      return installed;
    case "removed":
      return removedAtom(world, part, index);
    case "loose":
      return { all: [{ implied: installed }, grip(isLoose, "loose")] };
    case "tightened":
      return { all: [{ implied: installed }, grip(isTight, "tight")] };
    case "secured":
      return {
        all: [
          installed,
          ...world.related("secures", part, index).map((by) => tightened(context, by.part, by.index, thing)),
        ],
      };
    case "clean":
      return constantAtom(world.part(part, index, "surface"), "clean", null);
    case "lubricated":
      return {
        variable: world.part(part, index, "surface"),
        good: (value) => value.startsWith("lubricated"),
        met: { change: () => "lubricated" },
        unmet: null,
      };
    case "aligned":
      return constantAtom(world.part(part, index, "aligned"), "yes", "no");
    default:
      return part.states.includes(state)
        ? constantAtom(world.part(part, index, "own"), state, null)
        : { unknown: true };
  }
}

function tightened(context: FormulaContext, part: Part, index: Index, of: Thing): Formula {
  return stateFormula(context, { kind: "part", part, index, span: of.span }, "tightened");
}

function boundFormula(context: FormulaContext, thing: Thing, bound: Parameters<Readings["where"]>[1]): Formula {
  if (thing.kind !== "part") return { unknown: true };
  const low = magnitudeNumber(bound.low) ?? Number.NEGATIVE_INFINITY;
  const high = magnitudeNumber(bound.high) ?? Number.POSITIVE_INFINITY;
  // Outside a bound with one end is within the bound on the other side of that end.
  const outside =
    bound.low === null
      ? { low: high, high: Number.POSITIVE_INFINITY }
      : bound.high === null
        ? { low: Number.NEGATIVE_INFINITY, high: low }
        : null;
  const test = (accept: (now: { low: number; high: number }) => boolean) => (value: string) => {
    const now = boundsOf(value);
    return now !== null && accept(now);
  };
  return {
    variable: context.world.part(thing.part, thing.index, "temperature"),
    good: test((now) => now.low >= low && now.high <= high),
    may: test((now) => now.high >= low && now.low <= high),
    met: { ...within(low, high), after: alsoAtMost(context.world, thing.part, thing.index, high) },
    unmet: outside === null ? null : within(outside.low, outside.high),
  };
}

/** What touches a part that is known to have cooled has cooled with it. */
function alsoAtMost(world: World, part: Part, index: Index, high: number): readonly Update[] {
  if (high === Number.POSITIVE_INFINITY) return [];
  return world.fits(part, index).map(({ mate }) => ({
    variable: world.part(mate.part, mate.index, "temperature"),
    when: joined(world, { part, index }, mate),
    change: (value) => {
      const now = boundsOf(value);
      return now === null ? value : temperature(Math.min(now.low, high), Math.min(now.high, high));
    },
  }));
}

/** A temperature of which it is known that it lies between two bounds. */
function within(low: number, high: number): Outcome {
  return {
    change: (value) => {
      const now = boundsOf(value) ?? { low, high };
      const top = Math.max(Math.min(now.high, high), low);
      return temperature(Math.min(Math.max(now.low, low), top), top);
    },
  };
}

function clockFormula(context: FormulaContext, thing: Thing, clock: Parameters<typeof clockTurns>[0]): Formula {
  const wanted = clockTurns(clock);
  if (thing.kind !== "place" || thing.places.kind !== "ring" || thing.position === null || wanted === null)
    return { unknown: true };
  const { places, position } = thing;
  return {
    variable: orientationVariable(context.world, places),
    good: (value) => placeAt(places, position, value) === wanted,
    met: null,
    unmet: null,
  };
}
