// Parts in somebody's hands: hot, cold, sharp, or with a hazard of their own. Knows no load and no energy.

import type { Part } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Action } from "#model/procedure.ts";
import { cmp, type Rational } from "#quantity/rational.ts";
import type { Entry } from "../cell.ts";
import type { Decision } from "../decision.ts";
import { cellOf, isAsAtStart } from "../flow-state.ts";
import { type Run, stateBefore } from "../follow.ts";
import { type Instance, limitBase, partsOf } from "../limits/at-node.ts";
import { exact } from "../limits/written.ts";
import { knownCell } from "../origin.ts";
import { boundsOf } from "../state-values.ts";
import { type At, type Passed, raiseAt } from "./raise.ts";
import { hazardThreshold, inUnitOf, reaches, SEVERE_BURN, type Threshold } from "./thresholds.ts";

/** Hands are on the objects; looking and setting something going at a distance are no handling. */
const HANDLING: ReadonlySet<Action["verb"]> = new Set<Action["verb"]>([
  ...(["install", "press", "remove", "discard", "tighten", "loosen", "clean", "lubricate", "apply"] as const),
  ...(["align", "lift", "support", "set down", "drain", "bleed", "fill"] as const),
]);

export function handlingHazards(at: At, line: ExpandedAction): void {
  const { verb } = line.action;
  if (verb === "heat" || verb === "cool") at.admit(line.action, verb === "heat" ? ["burn", "fire"] : ["cold"]);
  if (!HANDLING.has(verb)) return;
  for (const one of handledIn(line)) {
    const variable = one.part.damaged ? null : at.run.world.part(one.part, one.index, "temperature");
    if (variable !== null && !isAsAtStart(at.run, at.state, variable)) touched(at, line, one, variable);
  }
  for (const { part } of partsOf(line)) {
    if (part.damaged) continue;
    const where = at.state.reach;
    if (part.sharp) raiseAt(at, line, { cause: "sharp part", of: part, hazards: ["cutting"], where });
    if (part.hazards.length > 0) raiseAt(at, line, { cause: "part handled", of: part, hazards: part.hazards, where });
  }
}

/** What hands are on: the objects, and what they go on, in or over. */
export function handledIn(line: ExpandedAction): readonly Instance[] {
  const { action, second } = line;
  if (!HANDLING.has(action.verb)) return [];
  return second?.kind === "part" ? [...partsOf(line), second] : partsOf(line);
}

/** A part that may be as hot or cold as that; only what is measured is not. */
function touched(at: At, line: ExpandedAction, { part, index }: Instance, variable: number): void {
  const { run, state } = at;
  const initial = run.world.initial(variable);
  const room = boundsOf(initial)?.low ?? Number.NEGATIVE_INFINITY;
  for (const entry of knownCell(run, state, variable)) {
    const bounds = entry.value === initial ? null : boundsOf(entry.value);
    if (bounds === null) continue;
    const where = run.decisions.and(state.reach, entry.when);
    for (const hottest of hottestIn(run, { part, index }, entry))
      burns(at, line, part, hottest.high, run.decisions.and(where, hottest.when));
    // Colder than the shop by somebody's doing.
    // Where no end is below, it is as cold as its upper end says.
    const low = Number.isFinite(bounds.low) ? bounds.low : bounds.high;
    if (low < room) freezes(at, line, part, low, where);
  }
}

/**
 * How hot it may be, and for which choices. Cooling, time and what it goes on or into make nothing hotter than it, or that, was: where
 * no end is above, what was before them counts.
 */
function hottestIn(
  run: Run,
  { part, index }: Instance,
  { value, from, when }: Entry,
  seen: ReadonlySet<string> = new Set(),
): readonly { readonly high: number; readonly when: Decision }[] {
  const bounds = boundsOf(value);
  if (bounds === null || value === run.world.initial(run.world.part(part, index, "temperature"))) return [];
  const operation = run.graph.nodes[from]?.operation;
  const before = stateBefore(run, from);
  const isHeated =
    operation?.kind !== "end of task" && (operation?.kind !== "act" || !COOLING.has(operation.line.action.verb));
  if (Number.isFinite(bounds.high) || isHeated || before === undefined) return [{ high: bounds.high, when }];
  return [{ part, index }, ...run.world.fits(part, index).map(({ mate }) => mate)].flatMap((one) => {
    const variable = run.world.part(one.part, one.index, "temperature");
    const key = `${variable} ${from}`;
    return seen.has(key)
      ? []
      : cellOf(run, before, variable).flatMap((entry) =>
          hottestIn(run, one, { ...entry, when: run.decisions.and(when, entry.when) }, new Set([...seen, key])),
        );
  });
}

/** What makes nothing hotter than the hottest there was. */
const COOLING: ReadonlySet<Action["verb"]> = new Set<Action["verb"]>(["cool", "wait", "install", "press"]);

function burns(at: At, line: ExpandedAction, part: Part, high: number, where: Decision): void {
  const threshold = hazardThreshold(at.run, "burn");
  if (threshold === null || !isHot(high, threshold)) return;
  const most = Number.isFinite(high) ? exact(high) : null;
  const passed = { value: most === null ? null : inUnitOf(threshold, most), threshold };
  raiseAt(at, line, { ...burning(passed, most), cause: "hot part", of: part, where });
}

function freezes(at: At, line: ExpandedAction, part: Part, low: number, where: Decision): void {
  const threshold = hazardThreshold(at.run, "cold");
  const limit = threshold === null ? null : limitBase(threshold.value);
  if (threshold === null || limit === null) return;
  const least = Number.isFinite(low) ? exact(low) : null;
  if (least !== null && cmp(least, limit) > 0) return;
  const passed = { value: least === null ? null : inUnitOf(threshold, least, "down"), threshold };
  raiseAt(at, line, { cause: "cold part", of: part, hazards: ["cold"], passed, where });
}

function isHot(high: number, threshold: Threshold): boolean {
  return !Number.isFinite(high) ? high > 0 : reaches(exact(high), threshold, "from");
}

/** What a temperature past the threshold does, and whether it does so for certain. */
export function burning(
  passed: Passed,
  temperature: Rational | null,
): { readonly hazards: readonly string[]; readonly passed: Passed; readonly grave: boolean } {
  const { threshold } = passed;
  const grave = temperature === null || reaches(temperature, { ...threshold, ...SEVERE_BURN }, "from");
  const isSevereFirst = grave && threshold.mark !== null;
  return {
    hazards: ["burn"],
    grave,
    passed: isSevereFirst ? { ...passed, threshold: { ...threshold, ...SEVERE_BURN } } : passed,
  };
}
