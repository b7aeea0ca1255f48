// What a part, place, energy or fact is at one point, in a writer's words, and for which choices where it depends on them.
import { UNKNOWN } from "#analysis/cell.ts";
import { type Decision, NEVER } from "#analysis/decision.ts";
import { describe } from "#analysis/describe.ts";
import type { Assignment } from "#analysis/fact.ts";
import { cellOf, type State } from "#analysis/flow-state.ts";
import type { Run } from "#analysis/follow.ts";
import { inPlace, isAttached } from "#analysis/state-values.ts";
import { orientationVariable } from "#analysis/turning.ts";
import { kindOf, ownPosition, placeKey } from "#analysis/world.ts";
import type { Declaration, PartInstance } from "#model/declarations.ts";
import { show } from "#quantity/display.ts";

/** A part's instance, or anything else that has a state. */
export type Subject = PartInstance | { readonly thing: Exclude<Declaration, { kind: "part" }> };

/** One sentence without its subject: “installed, tightened at 45 N·m”; null for what has no state. */
export function stateWords(run: Run, states: readonly State[], subject: Subject): string | null {
  const variables = variablesOf(run, subject);
  if (variables.length === 0) return null;
  if (states.length === 0) return "never reached";
  const clauses = variables.flatMap((variable) => clauseOf(run, states, variable) ?? []);
  return clauses.length === 0 ? null : clauses.join(", ");
}

/** A variable that is told only where it says more than at a start. */
interface Told {
  readonly number: number;
  readonly always: boolean;
  /** Only told of what is in. */
  readonly place?: number;
  /** The value that is no more than what the declaration says: in, at the place of its own. */
  readonly own?: string;
}

function variablesOf({ world }: Run, subject: Subject): readonly Told[] {
  if ("thing" in subject) {
    const { thing } = subject;
    if (thing.kind === "energy") return [{ number: world.energy(thing), always: true }];
    if (thing.kind === "fact") return [{ number: world.fact(thing.id), always: true }];
    if (thing.kind === "ring" && thing.start !== null)
      return [{ number: orientationVariable(world, thing), always: true }];
    return [];
  }
  const { part, index } = subject;
  const place = world.part(part, index, "place");
  const seat = ownPosition(part, index);
  const also = (["surface", "aligned", "temperature", "contents"] as const).map((aspect) => ({
    number: world.part(part, index, aspect),
    always: false,
  }));
  return [
    { number: place, always: true, ...(seat === null ? {} : { own: inPlace(placeKey(seat.places, seat.position)) }) },
    ...(part.fastener ? [{ number: world.part(part, index, "grip"), always: true, place }] : []),
    ...(part.states.length > 0 ? [{ number: world.part(part, index, "own"), always: true }] : []),
    ...also,
  ];
}

function clauseOf(run: Run, states: readonly State[], { number, always, place, own }: Told): string | null {
  const { decisions, world } = run;
  const reach = states.reduce<Decision>((so, state) => decisions.or(so, state.reach), NEVER);
  const byWords = new Map<string, Decision>();
  for (const state of states) {
    const isIn = place === undefined ? state.reach : run.cells.where(cellOf(run, state, place), isAttached);
    for (const { value, from, when } of cellOf(run, state, number)) {
      if (!always && (value === world.initial(number) || value === UNKNOWN)) continue;
      const where = decisions.visible(decisions.and(decisions.and(when, state.reach), isIn));
      if (where === NEVER) continue;
      const words = value === own ? "installed" : wordsFor(run, number, value, from);
      byWords.set(words, decisions.or(byWords.get(words) ?? NEVER, where));
    }
  }
  if (byWords.size === 0) return null;
  const whole = decisions.visible(reach);
  const parts = [...byWords];
  const overlap = parts.some(([, a], at) => parts.slice(at + 1).some(([, b]) => decisions.and(a, b) !== NEVER));
  if (overlap) return parts.map(([words]) => words).join(" or ");
  return parts.map(([words, where]) => (where === whole ? words : `${words} ${whereWords(run, where)}`)).join("; ");
}

function wordsFor(run: Run, variable: number, value: string, from: number): string {
  const key = run.world.keyOf(variable);
  if (value === UNKNOWN) return UNKNOWN_WORDS[kindOf(key)] ?? "not known";
  const said = describe(run.world, variable, value);
  const words = said.slice(said.indexOf(" ", nameEnd(said, key)) + 1).replace(/^is /, "");
  if (words !== "tightened" && words !== "loose") return words;
  const by = tightenedBy(run, from);
  return by === null || words === "loose" ? words : `tightened ${by}`;
}

/** A line that could not be read leaves in doubt what it names. */
const UNKNOWN_WORDS: Readonly<Record<string, string>> = {
  place: "in or out not known",
  grip: "tight or loose not known",
};

/** The subject may hold blanks in its index; the verb stands behind it. */
function nameEnd(said: string, key: string): number {
  const bracket = key.endsWith("]") ? said.indexOf("]") : -1;
  return Math.max(bracket, 0);
}

function tightenedBy(run: Run, from: number): string | null {
  const operation = run.graph.nodes[from]?.operation;
  if (operation?.kind !== "act" || operation.line.action.verb !== "tighten") return null;
  const { angle, stages, toSeat } = operation.line.action;
  if (toSeat) return "to seat only";
  const last = stages[stages.length - 1];
  if (last === undefined) return null;
  const value = `at ${last.workedOut?.text ?? show(last.quantity)}`;
  return angle === null ? value : `${value}, then ${show(angle.quantity)}`;
}

const MOST_CHOICES = 3;

/** “where Extent is Reseal and SealsKept is yes”. */
function whereWords({ decisions }: Run, where: Decision): string {
  const { listed, more } = decisions.assignments(where, MOST_CHOICES);
  const ways = listed.map(assignmentWords).join(" or ");
  return more === 0 ? `where ${ways}` : `where ${ways}, and ${more} more`;
}

function assignmentWords(assignment: Assignment): string {
  return Object.entries(assignment)
    .map(([option, choice]) => `${option} is ${choice}`)
    .join(" and ");
}
