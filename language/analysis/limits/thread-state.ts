// In which condition a thread is when it is tightened: dry, or with what on it, as far as the procedure brought it there. Knows
// no torque.
import type { Consumable, ThreadCondition } from "#model/declarations.ts";
import { type Cell, UNKNOWN } from "../cell.ts";
import { type Decision, NEVER } from "../decision.ts";
import { subjectOf } from "../describe.ts";
import { cellOf } from "../flow-state.ts";
import type { Node } from "../graph.ts";
import { carrierOf, coatsOf, holders, placeOf } from "../state-values.ts";
import { instanceKey } from "../world.ts";
import type { At, Instance } from "./at-node.ts";
import type { ThreadState } from "./limit-fact.ts";

/**
 * One condition that it can be in. `bare`: put in here with nothing on it; `as found`: nothing is known of it, for it was in before; `with`: by identity, null where it is lubricated and not said with what.
 */
export interface ThreadWay {
  readonly is: "clean" | "bare" | "as found" | "unknown" | { readonly with: readonly (string | null)[] };
  readonly where: Decision;
}

export function threadWays(at: At, { part, index }: Instance): readonly ThreadWay[] {
  const { run, state } = at;
  const { and } = run.decisions;
  const place = cellOf(run, state, run.world.part(part, index, "place"));
  const surface = ofThisOne(at, { part, index }, "surface");
  const coats = ofThisOne(at, { part, index }, "coats");
  const partner = partnersBear(at, { part, index }, place);
  const ways: ThreadWay[] = [];
  for (const film of surface)
    for (const coat of coats) {
      const where = and(state.reach, and(film.when, coat.when));
      if (where === NEVER) continue;
      const isOpen = coat.value === UNKNOWN;
      const lubricants = film.value.startsWith(LUBRICATED) ? [lubricant(film.value)] : [];
      const borne = [...lubricants, ...coatsOf(coat.value), ...(isOpen && lubricants.length > 0 ? [null] : [])];
      if (film.value === UNKNOWN || (borne.length === 0 && (isOpen || partner))) {
        ways.push({ is: "unknown", where });
      } else if (borne.length > 0) ways.push({ is: { with: borne }, where });
      else if (film.value === "clean") ways.push({ is: "clean", where });
      else ways.push(...bareOrAsFound(at, place, where));
    }
  return ways;
}

/** The same for ways that are the same. */
export function keyOfWays(ways: readonly ThreadWay[]): string {
  return ways.map(({ is, where }) => `${typeof is === "string" ? is : JSON.stringify(is.with)} ${where}`).join();
}

/** Whether a condition that is declared is the one the thread is in. What is as it was found may be in any. */
export function meets(condition: ThreadCondition, { is }: ThreadWay): boolean {
  if (condition === null || is === "unknown" || is === "as found") return true;
  if ("dry" in condition) return is === "clean" || is === "bare";
  return typeof is !== "string" && (is.with.includes(condition.with.id) || is.with.includes(null));
}

/** What the thread is in, for telling; null where that is not known. */
export function stateOf({ is }: ThreadWay): ThreadState | null {
  if (is === "unknown" || is === "as found") return null;
  if (is === "clean" || is === "bare") return { dry: true };
  const [first] = is.with;
  return { with: first == null ? null : subjectOf(first) };
}

export function stated(condition: Exclude<ThreadCondition, null>): ThreadState {
  return "dry" in condition ? { dry: true } : { with: consumableName(condition.with) };
}

function consumableName({ name }: Consumable): string {
  return name;
}

const LUBRICATED = "lubricated";

/** The identity of what it is lubricated with; null where that is not said. */
function lubricant(value: string): string | null {
  const id = value.slice(LUBRICATED.length).trim();
  return id === "" ? null : id;
}

/**
 * What is on the one that is in now: with another put in, what was on the one before went with it. That is told from the order of the
 * lines: what is put on after that one came out is on the new one.
 */
function ofThisOne(at: At, { part, index }: Instance, aspect: "surface" | "coats"): Cell {
  const { run, state } = at;
  const variable = run.world.part(part, index, aspect);
  const place = run.world.part(part, index, "place");
  const cell = cellOf(run, state, variable);
  return run.changedAt(place).some(takesOut) ? onTheLast(at, variable, place, cell) : cell;
}

function onTheLast({ node, run, state }: At, variable: number, place: number, cell: Cell): Cell {
  const { and, or, not } = run.decisions;
  const bare = run.world.initial(variable);
  return cell.flatMap((entry): Cell => {
    if (entry.value === bare || entry.value === UNKNOWN) return [entry];
    const treatedAt = run.changedAt(variable).filter(({ id }) => id < node.id);
    const last = Math.max(entry.from, ...treatedAt.map(({ id }) => id));
    const renewed = cellOf(run, state, place)
      .filter(({ from }) => isAnother(run, place, last, from))
      .reduce<Decision>((so, { when }) => or(so, when), NEVER);
    return [
      { ...entry, when: and(entry.when, not(renewed)) },
      { ...entry, value: bare, when: and(entry.when, renewed) },
    ].filter(({ when }) => when !== NEVER);
  });
}

function takesOut({ operation }: Node): boolean {
  return operation.kind === "act" && TAKES_OUT.has(operation.line.action.verb);
}

const TAKES_OUT: ReadonlySet<string> = new Set(["remove", "discard"]);

/** Whether the line `to` puts another one in than was there at the line `from`: a new one, or one after that was thrown away. */
function isAnother(run: At["run"], place: number, from: number, to: number): boolean {
  const operation = run.graph.nodes[to]?.operation;
  const action = operation?.kind === "act" ? operation.line.action : null;
  if (action === null || (action.verb !== "install" && action.verb !== "press")) return false;
  return run.changedAt(place).some(({ id, operation: between }) => {
    if (id <= from || id >= to || between.kind !== "act") return false;
    const { verb } = between.line.action;
    return verb === "discard" || (verb === "remove" && action.fresh);
  });
}

/** A fastener that this procedure puts in is as it lay on the bench; one that was in may have anything on its thread. */
function bareOrAsFound({ run }: At, place: Cell, where: Decision): readonly ThreadWay[] {
  let bare: Decision = NEVER;
  for (const { from, when } of place) {
    const operation = run.graph.nodes[from]?.operation;
    const isPutIn =
      operation?.kind === "act" && (operation.line.action.verb === "install" || operation.line.action.verb === "press");
    if (isPutIn) bare = run.decisions.or(bare, when);
  }
  const isBare = run.decisions.and(where, bare);
  const rest = run.decisions.and(where, run.decisions.not(bare));
  return [
    ...(isBare === NEVER ? [] : [{ is: "bare", where: isBare } as const]),
    ...(rest === NEVER ? [] : [{ is: "as found", where: rest } as const]),
  ];
}

/** Whether what it is screwed on, or shares its place with, may have something on its thread. */
function partnersBear({ run, state }: At, { part, index }: Instance, place: Cell): boolean {
  const own = instanceKey(part, index);
  const keys = new Set<string>();
  for (const { value } of place) {
    const carrier = carrierOf(value);
    if (carrier !== null) keys.add(carrier);
    const seat = placeOf(value);
    if (seat !== null)
      for (const { value: held } of cellOf(run, state, run.world.byKey(`holder:${seat}`, "")))
        for (const key of holders(held)) keys.add(key);
  }
  keys.delete(own);
  return [...keys].some((key) => {
    const partner = run.world.partOf(key);
    if (partner === undefined) return false;
    const of = (aspect: "surface" | "coats"): Cell =>
      cellOf(run, state, run.world.part(partner.part, partner.index, aspect));
    return (
      of("surface").some(({ value }) => value === UNKNOWN || value.startsWith(LUBRICATED)) ||
      of("coats").some(({ value }) => value !== "")
    );
  });
}
