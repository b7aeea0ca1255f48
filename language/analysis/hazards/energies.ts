// Energies that may hurt: live, not shown to be dead, let out, or laid open. Knows which energy does what to people.
import type { Energy, PartInstance } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { type Decision, NEVER } from "../decision.ts";
import { cellOf } from "../flow-state.ts";
import { eachMove, type Run } from "../follow.ts";
import { partsOf, topOf } from "../limits/at-node.ts";
import { knownCell } from "../origin.ts";
import { ISOLATED, LIVE, OFF, proved, shows } from "../state-values.ts";
import type { Test } from "../update.ts";
import { burning } from "./handling.ts";
import { falls, isHeavy } from "./lifting.ts";
import { type At, type Passed, raiseAt } from "./raise.ts";
import { gauge, hazardThreshold, reaches, type ThresholdName } from "./thresholds.ts";

/** What work on driven parts, and on the fasteners of heavy ones, lays hands on. */
export function workHazards(at: At, line: ExpandedAction): void {
  const parts = partsOf(line);
  const driving = new Set<Energy>();
  for (const { part } of parts) for (const energy of part.drivenBy) driving.add(energy);
  for (const energy of driving) at.admit(line.action, hazardsOf(at.run, energy).hazards);
  if (driving.size > 0) onDriven(at, line);
  const { verb } = line.action;
  const takesOut = verb === "remove" || verb === "discard";
  if (takesOut) for (const one of parts) uncovers(at, line, one);
  for (const one of parts) onFastenersOfDriven(at, line, one, takesOut || verb === "loosen");
  if (
    (takesOut || verb === "loosen") &&
    parts.some(({ part }) => part.secures.some((held) => isHeavy(at.run, held.part)))
  )
    onFasteners(at, line);
}

function onDriven(at: At, line: ExpandedAction): void {
  for (const { needs } of at.run.movesAt(at.node))
    for (const { bad, trouble } of needs) {
      if (trouble.kind !== "energised" && trouble.kind !== "not proved") continue;
      const where = allOf(at, bad);
      if (where !== NEVER) works(at, line, trouble.energy, trouble.kind === "energised", where);
    }
}

/** Which fastener is the last hangs on those of the same line before it. */
function onFasteners(at: At, line: ExpandedAction): void {
  eachMove(at.run, at.node, at.state, (move, state) => {
    for (const { bad, trouble } of move.needs) {
      const where = trouble.kind === "unsupported" ? allOf({ ...at, state }, bad) : NEVER;
      if (trouble.kind === "unsupported" && where !== NEVER) falls(at, line, trouble.part, where);
    }
  });
}

/** Where all can be so at once, of what is known. */
function allOf({ run, state }: At, tests: readonly Test[]): Decision {
  return tests.reduce(
    (where, { variable, test }) =>
      run.decisions.and(
        where,
        run.cells.where(knownCell(run, state, variable), (value) => shows(value, test)),
      ),
    state.reach,
  );
}

function works(at: At, line: ExpandedAction, energy: Energy, isLive: boolean, where: Decision): void {
  const { hazards, passed, stays, burns } = hazardsOf(at.run, energy);
  const cause = isLive ? "live energy" : "unproved energy";
  raiseAt(at, line, { cause, of: energy, hazards, passed, grave: isLive || stays || burns, where });
}

/** Off comes what kept hands from a part whose energy is live. */
function uncovers(at: At, line: ExpandedAction, { part, index }: PartInstance): void {
  const { run, state } = at;
  const inside = run.world.targets("encloses", part, index).flatMap((behind) => behind.part.drivenBy);
  for (const energy of new Set(inside)) {
    // That it drives the cover as well is said as work on the cover.
    if (part.drivenBy.includes(energy)) continue;
    const { hazards, passed } = hazardsOf(run, energy);
    at.admit(line.action, hazards);
    const live = run.cells.where(knownCell(run, state, run.world.energy(energy)), (value) => value === LIVE);
    const where = run.decisions.and(state.reach, live);
    if (where !== NEVER)
      raiseAt(at, line, { cause: "energy uncovered", of: energy, hazards, passed, grave: true, where });
  }
}

/** What secures a driven part is beside its energy, and keeps in what stands under pressure. */
function onFastenersOfDriven(at: At, line: ExpandedAction, { part, index }: PartInstance, opens: boolean): void {
  const { run, state } = at;
  const driving = run.world.targets("secures", part, index).flatMap((held) => held.part.drivenBy);
  if (driving.length === 0) return;
  for (const energy of new Set(driving)) {
    if (part.drivenBy.includes(energy)) continue;
    const { hazards, passed } = hazardsOf(run, energy);
    at.admit(line.action, hazards);
    if (!opens || !hazards.includes("pressure")) continue;
    const live = run.cells.where(knownCell(run, state, run.world.energy(energy)), (value) => value === LIVE);
    const where = run.decisions.and(state.reach, live);
    if (where !== NEVER)
      raiseAt(at, line, { cause: "energy held back", of: energy, hazards: ["pressure"], passed, grave: true, where });
  }
}

/** Switching is no hazard by itself; what is stored comes out when it is let out. */
export function switchingHazards(at: At, line: ExpandedAction): void {
  const { run, state } = at;
  for (const thing of line.objects) {
    if (thing.kind !== "other" || thing.thing.kind !== "energy") continue;
    const energy = thing.thing;
    const { hazards, passed, stays } = hazardsOf(run, energy);
    at.admit(line.action, hazards);
    if (line.action.verb !== "release" || !stays) continue;
    const cell = cellOf(run, state, run.world.energy(energy));
    const where = run.decisions.and(
      state.reach,
      run.cells.where(cell, (value) => value !== OFF && value !== DEAD),
    );
    if (where !== NEVER)
      raiseAt(at, line, { cause: "energy released", of: energy, hazards, passed, grave: true, where });
  }
}

const DEAD = proved(ISOLATED);

interface EnergyHazards {
  readonly hazards: readonly string[];
  readonly passed: Passed | null;
  /** It is still there once it is cut off: it has to be let out. */
  readonly stays: boolean;
  /** It is so hot that a touch is enough: nothing says how soon it is cool once it is cut off. */
  readonly burns: boolean;
}

const NONE: EnergyHazards = { hazards: [], passed: null, stays: false, burns: false };

/** By kind and value; of one that could not be read nothing is said. */
function hazardsOf(run: Run, energy: Energy): EnergyHazards {
  const byEnergy = known.get(run) ?? new Map<Energy, EnergyHazards>();
  known.set(run, byEnergy);
  const before = byEnergy.get(energy);
  if (before !== undefined) return before;
  const found = energy.damaged ? NONE : readHazards(run, energy);
  byEnergy.set(energy, found);
  return found;
}

const known = new WeakMap<Run, Map<Energy, EnergyHazards>>();

function readHazards(run: Run, energy: Energy): EnergyHazards {
  const voltage = past(run, "electric", energy.voltage?.quantity, "from");
  const pressure = past(run, "pressure", energy.pressure?.quantity, "above");
  const hot = past(run, "burn", energy.hot?.quantity, "from");
  const burn = hot === null ? null : burning(hot, topOf(hot.value));
  const has = (mark: Energy["marks"][number]): boolean => energy.marks.includes(mark);
  const isPressed = pressure !== null || has("vacuum");
  const hazards = [
    ...(voltage === null ? [] : ["electric"]),
    ...(isPressed ? ["pressure"] : []),
    ...(has("spring") ? ["spring"] : []),
    ...(has("height") ? ["crush", "dropped"] : []),
    ...(has("rotating") ? ["rotating"] : []),
    ...(hot === null ? [] : ["burn"]),
    ...energy.hazards,
  ];
  return {
    hazards: [...new Set(hazards)],
    passed: voltage ?? pressure ?? burn?.passed ?? null,
    stays: isPressed || has("spring") || has("height") || energy.stored !== null,
    burns: burn?.grave ?? false,
  };
}

function past(run: Run, name: ThresholdName, value: Quantity | undefined, how: "from" | "above"): Passed | null {
  if (value === undefined) return null;
  const threshold = hazardThreshold(run, name);
  const top = gauge(value);
  return threshold !== null && top !== null && reaches(top, threshold, how) ? { value, threshold } : null;
}
