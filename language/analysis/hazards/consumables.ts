// Liquids and gases that are used: their own hazards, how near they come to their flash point, what they do to the air.
// Knows no energy and no load.

import { point, quantityOf } from "#engineering/ends.ts";
import { isNearFlashPoint, nearFlashPoint } from "#engineering/flash-point.ts";
import { airFor } from "#engineering/oxygen.ts";
import type { Consumable } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Action, Dose } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Rational } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import { type Decision, NEVER } from "../decision.ts";
import { limitBase, partsOf } from "../limits/at-node.ts";
import { type HeatAction, hottestOf, onPart } from "../limits/heating.ts";
import { oxygenAfter } from "../limits/oxygen.ts";
import { exact } from "../limits/written.ts";
import { knownCell } from "../origin.ts";
import { ambientOf } from "../run.ts";
import { boundsOf } from "../state-values.ts";
import { type At, type Passed, raiseAt } from "./raise.ts";
import {
  CLEANING_AIR,
  gauge,
  hazardThreshold,
  inUnitOf,
  LITTLE_OXYGEN,
  reaches,
  type Threshold,
} from "./thresholds.ts";

export function consumableHazards(at: At, line: ExpandedAction): void {
  const { action } = line;
  if (action.verb === "heat") heated(at, line, action);
  const dose = doseOf(action);
  const { consumable } = dose;
  if (consumable === null || consumable.damaged) return;
  const where = at.state.reach;
  raiseAt(at, line, { cause: "consumable used", of: consumable, hazards: consumable.hazards, where });
  if (consumable.flashPoint !== null) {
    at.admit(action, ["fire"]);
    ignites(at, line, consumable, consumable.flashPoint.quantity);
  }
  if (consumable.pressure !== null && action.verb === "clean")
    blown(at, line, consumable, consumable.pressure.quantity);
  if (consumable.expands !== null) displaces(at, line, consumable, dose);
}

function doseOf(action: Action): Dose {
  switch (action.verb) {
    case "clean":
    case "lubricate":
      return { consumable: action.with, amount: null };
    case "apply":
    case "fill":
      return action.dose;
    default:
      return { consumable: null, amount: null };
  }
}

/** Its vapour may burn in any shop; or this shop is nearly as warm as its flash point. */
function ignites(at: At, line: ExpandedAction, consumable: Consumable, flashPoint: Quantity): void {
  const threshold = hazardThreshold(at.run, "fire");
  const flash = limitBase(flashPoint);
  if (threshold === null || flash === null || flashPoint.kind !== "temperature") return;
  const common = { of: consumable, hazards: ["fire"], where: at.state.reach };
  if (!reaches(flash, threshold, "from")) {
    raiseAt(at, line, { ...common, cause: "flammable liquid", passed: { value: flashPoint, threshold } });
    return;
  }
  const near = nearIt(flashPoint, flash);
  const { ambient, hasAmbient } = at.run.expanded.procedure;
  const { high } = ambientOf(at.run.expanded);
  const isKnown = Number.isFinite(high) && (ambient !== null || !hasAmbient);
  if (isKnown && isNearFlashPoint(exact(high), flash))
    raiseAt(at, line, {
      ...common,
      cause: "flammable liquid in the warm",
      passed: { value: inUnitOf(near, exact(high)), threshold: near },
    });
  for (const { part, index } of partsOf(line)) {
    const variable = at.run.world.part(part, index, "temperature");
    for (const { value, when } of knownCell(at.run, at.state, variable)) {
      const top = value === at.run.world.initial(variable) ? null : (boundsOf(value)?.high ?? null);
      if (top === null || !Number.isFinite(top) || !isNearFlashPoint(exact(top), flash)) continue;
      heats(at, line, consumable, exact(top), near, when);
    }
  }
}

/** What is on the part, and comes near its flash point with it. */
function heated(at: At, line: ExpandedAction, action: HeatAction): void {
  const looking = { ...at, collect: () => {}, leaveOut: () => {} };
  for (const part of partsOf(line))
    for (const { base, where: hot } of part.part.damaged ? [] : hottestOf(looking, action, part))
      for (const { consumable, where: on } of onPart(looking, part)) {
        const flashPoint = consumable.damaged ? undefined : consumable.flashPoint?.quantity;
        const flash = flashPoint === undefined ? null : limitBase(flashPoint);
        if (flashPoint?.kind !== "temperature" || flash === null || !isNearFlashPoint(base, flash)) continue;
        heats(at, line, consumable, base, nearIt(flashPoint, flash), at.run.decisions.and(hot, on));
      }
}

function heats(
  at: At,
  line: ExpandedAction,
  of: Consumable,
  kelvin: Rational,
  threshold: Threshold,
  when: Decision,
): void {
  const where = at.run.decisions.and(at.state.reach, when);
  const passed = { value: inUnitOf(threshold, kelvin), threshold };
  if (where !== NEVER) raiseAt(at, line, { cause: "flammable liquid heated", of, hazards: ["fire"], passed, where });
}

/** As warm as a liquid may become before it counts as near its flash point. */
function nearIt(flashPoint: Quantity, flash: Rational): Threshold {
  const unit = (flashPoint.nominal ?? flashPoint.low ?? flashPoint.high)?.unit ?? unitNamed("°C");
  const value = quantityOf("temperature", point(nearFlashPoint(flash)), unit);
  return {
    name: "fire",
    value,
    source: "29 CFR 1910.106(a)(19), 30 °F below the flash point",
    mark: "read",
    declaredAt: null,
  };
}

/** What is blown off flies; at more pressure the air itself goes through skin. */
function blown(at: At, line: ExpandedAction, of: Consumable, pressure: Quantity): void {
  const threshold: Threshold = { name: "pressure", declaredAt: null, ...CLEANING_AIR };
  const most = gauge(pressure);
  const isStrong = most !== null && reaches(most, threshold, "from");
  const hazards = isStrong ? ["pressure", "eye"] : ["eye"];
  const passed = isStrong ? { value: pressure, threshold } : null;
  raiseAt(at, line, { cause: "air at a nozzle", of, hazards, passed, where: at.state.reach });
}

/** The gas takes the place of the air: of how much, is known where the room is, and how much it takes where the amount is. */
function displaces(at: At, line: ExpandedAction, of: Consumable, dose: Dose): void {
  const common = { of, hazards: ["fumes"], where: at.state.reach };
  const threshold = hazardThreshold(at.run, "oxygen");
  const oxygen = threshold === null ? null : oxygenAfter(at.run, dose);
  const left = oxygen?.ok === true ? limitBase(oxygen.value) : null;
  if (threshold === null || oxygen?.ok !== true || left === null) {
    const passed = threshold === null ? null : airWanted(dose, threshold);
    raiseAt(at, line, { ...common, cause: "gas set free", passed });
    return;
  }
  at.admit(line.action, common.hazards);
  if (reaches(left, threshold, "from")) return;
  const grave = !reaches(left, { ...threshold, ...LITTLE_OXYGEN }, "from");
  const isBelowBoth = grave && threshold.mark !== null;
  const passed = { value: oxygen.value, threshold: isBelowBoth ? { ...threshold, ...LITTLE_OXYGEN } : threshold };
  raiseAt(at, line, { ...common, cause: "oxygen displaced", passed, grave });
}

/** The air that the gas needs for the oxygen to stay; null where no amount is said, or one that is no volume. */
function airWanted({ consumable, amount }: Dose, threshold: Threshold): Passed | null {
  if (consumable?.expands == null || amount === null) return null;
  const air = airFor({ value: amount.quantity }, { value: consumable.expands.quantity }, { value: threshold.value });
  return air.ok ? { value: air.value, threshold } : null;
}
