// Temperatures that something does not bear: heat limits of the part, of what touches it and of what is on it, and flash points.
// Knows no fit (fitting.ts) and no heater.

import { limitOf, point, quantityOf } from "#engineering/ends.ts";
import { isNearFlashPoint, nearFlashPoint } from "#engineering/flash-point.ts";
import type { Consumable, Material, Part, Value } from "#model/declarations.ts";
import type { Action } from "#model/procedure.ts";
import { show } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { add, cmp, type Rational, rational, sub } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import { type Decision, NEVER } from "../decision.ts";
import { cellOf } from "../flow-state.ts";
import { shownTo } from "../hazards/thresholds.ts";
import { joined } from "../joints.ts";
import { originOf } from "../origin.ts";
import { base } from "../raw-fact.ts";
import { boundsOf, coatsOf } from "../state-values.ts";
import { instanceName } from "../world.ts";
import { type At, declared, type Instance, limitBase, topOf } from "./at-node.ts";
import type { HeatFact, Instead } from "./limit-fact.ts";
import { exact } from "./written.ts";

export type HeatAction = Extract<Action, { verb: "heat" | "cool" }>;

type Bare = HeatFact extends infer Fact
  ? Fact extends unknown
    ? Omit<Fact, "options" | "pass" | "more">
    : never
  : never;

/** How hot the part can become, and for which choices. */
interface Hottest {
  readonly base: Rational;
  readonly shown: Quantity;
  readonly where: Decision;
}

/** What a heating does to the part, to what touches it and to what is on it. */
export function heatFacts(at: At, action: HeatAction, heated: Instance): void {
  const { part, index } = heated;
  if (part.damaged) return;
  const range = (action.to ?? action.by)?.span ?? action.place;
  const tell = (fact: Bare, where: Decision, subject: string): void => {
    const both = at.run.decisions.and(at.state.reach, where);
    if (both === NEVER || at.node.operation.kind !== "act") return;
    const { pass } = at.node.operation.line;
    at.collect({
      fact,
      where: both,
      pass,
      subject: `${base(instanceName(part, index))} ${base(subject)}`,
      node: at.node.id,
    });
  };
  const name = instanceName(part, index);
  const own = limitOfPart(part);
  if (own === null && !isDamaged(part.material))
    tell({ kind: "no heat limit", part: name, span: action.place }, at.state.reach, name);
  for (const hottest of hottestOf(at, action, heated)) {
    const over = (of: string, as: "part" | "material" | "mate" | "consumable", limit: Value, where: Decision): void => {
      const most = limitBase(limit.quantity);
      if (most === null || limit.quantity.kind !== "temperature") return;
      at.margin?.({ kind: "heat", part: part.name, limitOf: of, value: difference(most, hottest, limit.quantity) });
      if (cmp(hottest.base, most) <= 0) return;
      const { shown } = hottest;
      const fact = { part: name, of, as, hottest: shown, limit: limit.quantity, declaredAt: limit.span, span: range };
      const instead = lowered(action, most, limit.quantity);
      tell({ kind: "overheat", ...fact, instead }, at.run.decisions.and(hottest.where, where), of);
    };
    if (own !== null) over(own.of, own.as, own.value, at.state.reach);
    for (const { mate, where } of touching(at, heated)) {
      const limit = mate.part.damaged ? null : limitOfPart(mate.part);
      if (limit !== null) over(instanceName(mate.part, mate.index), "mate", limit.value, where);
    }
    for (const { consumable, where, from } of onPart(at, heated)) {
      if (consumable.damaged) continue;
      if (consumable.heatLimit !== null) over(consumable.name, "consumable", consumable.heatLimit, where);
      if (consumable.flashPoint !== null) {
        const fact = flashFact(name, consumable, consumable.flashPoint, hottest);
        const since = originOf(at.run, from).span;
        if (fact !== null)
          tell({ ...fact, span: action.place, since }, at.run.decisions.and(hottest.where, where), consumable.name);
      }
    }
  }
}

/** The part's own limit, which overrides its material's. */
function limitOfPart({
  name,
  heatLimit,
  material,
}: Part): { of: string; as: "part" | "material"; value: Value } | null {
  if (heatLimit !== null) return { of: name, as: "part", value: heatLimit };
  const limit = isDamaged(material) ? null : (material?.heatLimit ?? null);
  return limit === null || material === null ? null : { of: material.name, as: "material", value: limit };
}

function isDamaged(material: Material | null): boolean {
  return material?.damaged ?? false;
}

/** The high end of the range; of a rise, added to what the part has. */
export function hottestOf(at: At, { to, by }: HeatAction, { part, index }: Instance): readonly Hottest[] {
  if (to !== null) {
    const top = topOf(to.quantity);
    return top === null ? [] : [{ base: top, shown: besideOf(to.quantity, top), where: at.state.reach }];
  }
  const rise = topOf(by?.quantity);
  if (rise === null || by === null) return [];
  const before = cellOf(at.run, at.state, at.run.world.part(part, index, "temperature"));
  return before.flatMap(({ value, when }): readonly Hottest[] => {
    const high = boundsOf(value)?.high;
    if (high === undefined || !Number.isFinite(high)) return [];
    const hottest = add(exact(high), rise);
    return [{ base: hottest, shown: besideOf(by.quantity, hottest), where: when }];
  });
}

/** From the hottest to the limit, in the degrees of the limit. */
function difference(most: Rational, { base: hottest }: Hottest, limit: Quantity): Quantity {
  const unit = unitNamed(unitOf(limit).text === "°F" ? "°F" : "K");
  return quantityOf("temperature difference", point(sub(most, hottest)), unit);
}

/** A temperature in the unit of what was written beside it, as shown not below what it is. */
function besideOf(beside: Quantity, kelvin: Rational): Quantity {
  const limit = limitOf("temperature", "at most", kelvin, unitOf(beside));
  return shownTo("up", { ...limit, form: "nominal", nominal: limit.high, high: null });
}

function unitOf(quantity: Quantity): Unit {
  const unit = (quantity.nominal ?? quantity.high ?? quantity.low)?.unit;
  const isScale = unit?.text === "°C" || unit?.text === "°F";
  return unitNamed(isScale ? unit.text : unit?.system === "customary" ? "°F" : "°C");
}

/** The range with its high end at the limit; null where nothing would be left of it. */
function lowered({ to }: HeatAction, most: Rational, limit: Quantity): Instead | null {
  if (to === null || to.quantity.form !== "range" || to.quantity.low === null) return null;
  if (cmp(to.quantity.low.base, most) >= 0) return null;
  const { low } = to.quantity;
  const high = limitOf("temperature", "at most", most, (limit.high ?? limit.nominal ?? low).unit).high;
  if (high === null) return null;
  return { span: to.span, text: show({ ...to.quantity, high, computed: true }) };
}

/** Parts of a fit that the part touches. */
function touching({ run, state }: At, own: Instance): readonly { mate: Instance; where: Decision }[] {
  const { and, or } = run.decisions;
  return run.world.fits(own.part, own.index).map(({ mate }) => {
    let where: Decision = NEVER;
    for (const tests of joined(run.world, own, mate)) {
      let all = state.reach;
      for (const { variable, test } of tests) all = and(all, run.cells.where(cellOf(run, state, variable), test));
      where = or(where, all);
    }
    return { mate, where };
  });
}

/** What was lubricated with, or applied to, the part. */
export function onPart(
  at: At,
  { part, index }: Instance,
): readonly { consumable: Consumable; where: Decision; from: number }[] {
  const { run, state } = at;
  const byId = new Map(declared(run, "consumable").map((one) => [one.id, one]));
  const films = cellOf(run, state, run.world.part(part, index, "surface")).map(({ value, when, from }) => ({
    ids: value.startsWith("lubricated ") ? [value.slice("lubricated ".length)] : [],
    when,
    from,
  }));
  const coats = cellOf(run, state, run.world.part(part, index, "coats")).map(({ value, when, from }) => ({
    ids: coatsOf(value),
    when,
    from,
  }));
  return [...films, ...coats].flatMap(({ ids, when, from }) =>
    ids.flatMap((id) => {
      const consumable = byId.get(id);
      return consumable === undefined ? [] : [{ consumable, where: when, from }];
    }),
  );
}

// ---- flash points

/** An error from so many kelvin under the flash point (project rule), a warning a little before. */
const REACHED = rational(15);

function flashFact(
  part: string,
  { name: consumable }: Consumable,
  flashPoint: Value,
  { base: hottest, shown }: Hottest,
): Omit<Extract<Bare, { kind: "flash point" }>, "span" | "since"> | null {
  const flash = limitBase(flashPoint.quantity);
  if (flash === null || flashPoint.quantity.kind !== "temperature") return null;
  if (!isNearFlashPoint(hottest, flash)) return null;
  const how = cmp(hottest, sub(flash, REACHED)) >= 0 ? "reached" : "near";
  const unit = unitOf(flashPoint.quantity);
  const most = limitOf("temperature", "at most", nearFlashPoint(flash), unit);
  return {
    kind: "flash point",
    how,
    part,
    consumable,
    hottest: shown,
    flashPoint: flashPoint.quantity,
    most,
    declaredAt: flashPoint.span,
  };
}
