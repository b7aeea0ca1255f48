// Whether an action could be done on a thing in a state: asks the meaning of the action itself, so that it cannot differ from
// what the checker finds. Knows no place in a text.
import { movesOf, type Need, type Trouble } from "#analysis/action.ts";
import { UNKNOWN } from "#analysis/cell.ts";
import { type Decision, NEVER } from "#analysis/decision.ts";
import { cellOf, type State } from "#analysis/flow-state.ts";
import type { Run } from "#analysis/follow.ts";
import { isLoose, isTight, LIVE } from "#analysis/state-values.ts";
import { instanceName } from "#analysis/world.ts";
import type { Energy, Part, PartInstance } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import { partInstances } from "#model/instances.ts";
import type { Action } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";

/** How well a thing suits an action: it is ready for it, it can be done and changes little, or it cannot be done, and why. */
export type Suits =
  | { readonly how: "ready" | "possible"; readonly instance: PartInstance | null }
  | { readonly how: "not"; readonly why: string };

/** More instances than this are not looked at one by one. */
const MOST_INSTANCES = 64;

/** The best that an instance of the part offers in any of the states; null where the state is not known. */
export function partSuits(run: Run, states: readonly State[], verb: string, part: Part): Suits | null {
  let best: Suits | null = null;
  for (const instance of partInstances(part).slice(0, MOST_INSTANCES))
    for (const state of states) {
      const suits = instanceSuits(run, state, verb, instance);
      if (suits.how === "ready") return suits;
      if (best === null || (best.how === "not" && suits.how === "possible")) best = suits;
    }
  return best;
}

export function energySuits(run: Run, states: readonly State[], verb: string, energy: Energy): Suits | null {
  if (states.length === 0) return null;
  const can = (test: (value: string) => boolean): boolean =>
    states.some((state) => isPossible(run, state, run.world.energy(energy), test));
  const [ready, why] =
    verb === "restore"
      ? [can((value) => value !== LIVE), "live already"]
      : verb === "prove"
        ? [can((value) => value !== LIVE && value !== "proved dead"), "live, or proved dead already"]
        : [can((value) => value === LIVE), "not live here"];
  return ready ? { how: "ready", instance: null } : { how: "not", why };
}

function instanceSuits(run: Run, state: State, verb: string, instance: PartInstance): Suits {
  const line = actionOn(verb, instance);
  if (line === null) return { how: "possible", instance };
  for (const move of movesOf(run.world, line, ROOM))
    for (const need of move.needs) {
      const why = WHY[need.trouble.kind];
      if (why !== undefined && isUnmet(run, state, need)) return { how: "not", why: why(need.trouble as never) };
    }
  return { how: isDone(run, state, verb, instance) ? "possible" : "ready", instance };
}

/** Only the shape of the action counts here: no need looks at the temperature of the shop. */
const ROOM = { low: 293.15, high: 293.15 };
const NOWHERE: Span = { path: "", start: 0, end: 0 };

function actionOn(verb: string, { part, index }: PartInstance): ExpandedAction | null {
  const base: Base = { kind: "action", place: NOWHERE, span: NOWHERE, objects: [], tools: [] };
  const action = actionOf(verb, base);
  if (action === null) return null;
  const thing: Thing = { kind: "part", part, index, span: NOWHERE };
  return { kind: "action", action, pass: [], objects: [thing], second: null, until: null };
}

type Base = {
  readonly kind: "action";
  readonly place: Span;
  readonly span: Span;
  readonly objects: readonly [];
  readonly tools: readonly [];
};

function actionOf(verb: string, base: Base): Action | null {
  switch (verb) {
    case "install":
    case "press":
      // Pressed in, a part need not be warm: that is for another to find.
      return { ...base, verb: "install", fresh: true, relation: null, on: null, clock: null };
    case "remove":
    case "discard":
      return { ...base, verb };
    case "tighten":
      return { ...base, verb, pattern: null, byHand: false, stages: [], stagesSpan: null, angle: null, toSeat: false };
    case "loosen":
      return { ...base, verb, back: null, setBack: false, reverse: false };
    case "clean":
    case "lubricate":
      return { ...base, verb, with: null };
    case "drain":
    case "bleed":
      return { ...base, verb, into: null };
    case "heat":
    case "cool":
      return { ...base, verb, to: null, by: null };
    case "lift":
    case "support":
      return { ...base, verb, byHand: false, hands: null, legs: null };
    case "inspect":
      return { ...base, verb, words: null };
    default:
      return null;
  }
}

/** What it would bring is so already. */
function isDone(run: Run, state: State, verb: string, { part, index }: PartInstance): boolean {
  if (verb !== "tighten" && verb !== "clean") return false;
  const isTightening = verb === "tighten";
  const variable = run.world.part(part, index, isTightening ? "grip" : "surface");
  const open = isTightening
    ? (value: string) => isLoose(value) || !isTight(value)
    : (value: string) => value !== "clean";
  return (isTightening && !part.fastener) || !isPossible(run, state, variable, open);
}

function isPossible(run: Run, state: State, variable: number, test: (value: string) => boolean): boolean {
  const where = run.cells.where(cellOf(run, state, variable), (value) => value === UNKNOWN || test(value));
  return run.decisions.and(where, state.reach) !== NEVER;
}

/** Whether it is unmet whatever was chosen and however it came here. */
function isUnmet(run: Run, state: State, { bad }: Need): boolean {
  return bad.every(({ variable, test }) => {
    const met: Decision = run.cells.where(cellOf(run, state, variable), (value) => value === UNKNOWN || !test(value));
    return run.decisions.and(met, state.reach) === NEVER;
  });
}

type Kind = Trouble["kind"];
type Why = { readonly [K in Kind]?: (trouble: Extract<Trouble, { readonly kind: K }>) => string };

/** What stands in the way for certain; what depends on how it is done is not here. */
const REASONS: Why = {
  "not installed": ({ part }) => `${part} is not in`,
  "already installed": () => "in already",
  "missing support": ({ needs }) => `needs ${needs} first`,
  enclosed: ({ by }) => `behind ${by}`,
  retained: ({ by }) => `held by ${by}`,
  locked: ({ by }) => `locked by ${by}`,
  "not tightened": () => "loose already",
};
const WHY: Readonly<Partial<Record<Kind, (trouble: never) => string>>> = {
  ...(REASONS as Readonly<Partial<Record<Kind, (trouble: never) => string>>>),
  // Both belong to the part and the energy that drives it.
  energised: ({ energy }: { readonly energy: Energy }) => `${energy.name} is live`,
  "not proved": ({ energy }: { readonly energy: Energy }) => `${energy.name} is not proved dead`,
};

/** `CoverScrew[3]`. */
export function nameOf({ part, index }: PartInstance): string {
  return instanceName(part, index);
}
