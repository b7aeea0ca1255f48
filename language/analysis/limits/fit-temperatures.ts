// How hot or cold two parts are when they go together: which of them was heated or cooled, by which line, and what it lost on the way. Knows
// the parts' temperatures and the times that are said, and no fit.
import { point, quantityOf } from "#engineering/ends.ts";
import type { Explanation } from "#engineering/explanation.ts";
import { type Loss, temperatureAfter } from "#engineering/shrink-fit.ts";
import type { Thing } from "#model/expanded.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Rational } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import type { Entry } from "../cell.ts";
import { type Decision, NEVER } from "../decision.ts";
import { cellOf } from "../flow-state.ts";
import type { Node } from "../graph.ts";
import { createTiming, longestBetween } from "../longest.ts";
import { highEnd, lowEnd } from "../readings.ts";
import { boundsOf } from "../state-values.ts";
import { upperSeconds } from "../step-times.ts";
import type { At, Instance } from "./at-node.ts";
import type { HeatAction } from "./heating.ts";
import { exact } from "./written.ts";

/** One way that the two can be: one of them was heated or cooled, and by which line. */
export interface Way {
  readonly how: "heated" | "cooled";
  readonly heat: Node | null;
  /** Kelvin: of the outer at least, of the inner at most. */
  readonly outer: Rational;
  readonly inner: Rational;
  readonly cooling: { readonly seconds: number; readonly rate: Quantity } | null;
  /** How what is left of the heat was worked out. */
  readonly cooled: Explanation | null;
  readonly where: Decision;
}

/** Where neither was heated or cooled nothing is asked: that is another matter. */
export function temperatures(at: At, outer: Instance, inner: Instance): readonly Way[] {
  const { run, state } = at;
  const ambient = ambientOf(at);
  // A line that could not be read may have said how warm the shop is.
  const { procedure, items } = run.expanded;
  if (ambient.isTaken && (procedure.hasAmbient || items.some(({ kind }) => kind === "damaged"))) return [];
  const cell = ({ part, index }: Instance): readonly Entry[] =>
    cellOf(run, state, run.world.part(part, index, "temperature"));
  const ways: Way[] = [];
  for (const hot of cell(outer))
    for (const cold of cell(inner)) {
      const where = run.decisions.and(state.reach, run.decisions.and(hot.when, cold.when));
      const [above, below] = [boundsOf(hot.value), boundsOf(cold.value)];
      if (where === NEVER || above === null || below === null) continue;
      const isHeated = above.high > ambient.high;
      const isCooled = below.low < ambient.low;
      if (!isHeated && !isCooled) continue;
      const heat = heatingOf(at, isHeated ? outer : inner, isHeated ? "heat" : "cool", isHeated ? hot : cold);
      const kept = isHeated ? keptHeat(at, outer, heat, above) : { kelvin: exact(ambient.low), ...UNCOOLED };
      if (kept === null || isUnread(heat) || !Number.isFinite(isHeated ? above.low : below.high)) continue;
      if (isHot(at, inner, cold) && !Number.isFinite(below.high)) continue;
      ways.push({
        how: isHeated ? "heated" : "cooled",
        heat,
        outer: kept.kelvin,
        inner: exact(isCooled || isHot(at, inner, cold) ? below.high : ambient.high),
        cooling: kept.cooling,
        cooled: kept.cooled,
        where,
      });
    }
  return ways;
}

/** Whether it was heated itself; what it took from a hot mate is not counted, as in a second try. */
function isHot({ run }: At, own: Instance, { from }: Entry): boolean {
  const giver = run.graph.nodes[from];
  return giver !== undefined && heatActionOf(giver)?.verb === "heat" && isOn(giver, own);
}

/** The line that brought the part to its temperature: the one that the state came of, else the last before this. */
function heatingOf({ run, node }: At, own: Instance, verb: "heat" | "cool", { from }: Entry): Node | null {
  const { part, index } = own;
  const giver = run.graph.nodes[from];
  if (giver !== undefined && heatActionOf(giver)?.verb === verb && isOn(giver, own)) return giver;
  const changers = run.changedAt(run.world.part(part, index, "temperature"));
  const before = changers.filter((one) => one.id < node.id && heatActionOf(one)?.verb === verb && isOn(one, own));
  return before.at(-1) ?? null;
}

/** Whether how hot the line makes it could not be read: what is wanted of the part later says less. */
function isUnread(heat: Node | null): boolean {
  const action = heatActionOf(heat);
  return action !== null && action.to === null && action.by === null;
}

function isOn({ operation }: Node, { part, index }: Instance): boolean {
  if (operation.kind !== "act") return false;
  return operation.line.objects.some((thing) => isInstance(thing, part, index));
}

/** What is left of the heat: by the part's own rate and the time that is said, else what the state holds. */
function keptHeat(
  at: At,
  { part }: Instance,
  heat: Node | null,
  { low, high }: { readonly low: number; readonly high: number },
): ({ readonly kelvin: Rational } & Pick<Way, "cooling" | "cooled">) | null {
  const rate = part.cools?.quantity;
  const range = heatActionOf(heat)?.to?.quantity;
  const start = range === undefined ? null : lowEnd(range);
  if (rate === undefined || heat === null) return { kelvin: exact(low), ...UNCOOLED };
  const seconds = secondsBetween(at, heat);
  // What a step between wants of the part, or brings it to, is in the state.
  const from = exact(start === null ? low : Math.min(Math.max(low, start), high));
  const cooling = { seconds, rate };
  const unit = scaleOf(range ?? null);
  const after = temperatureAfter({ value: degrees(from, unit) }, lossOf(cooling), {
    value: degrees(exact(ambientOf(at).low), unit),
  });
  const kept = after.ok ? after.value.low : null;
  return after.ok && kept !== null ? { kelvin: kept.base, cooling, cooled: after.explanation } : null;
}

const UNCOOLED = { cooling: null, cooled: null };

export function lossOf({ rate, seconds }: NonNullable<Way["cooling"]>): Loss {
  return { rate: { value: rate }, time: { value: quantityOf("time", point(exact(seconds)), unitNamed("s"), 12) } };
}

export function heatActionOf(node: Node | null): HeatAction | null {
  if (node?.operation.kind !== "act") return null;
  const { action } = node.operation.line;
  return action.verb === "heat" || action.verb === "cool" ? action : null;
}

/** From the end of the step that heats to the end of this one: what `within` allows, else the times that are said on the way. */
function secondsBetween({ run, node }: At, heat: Node): number {
  const step = node.step?.step;
  const within = step?.within ?? null;
  const allowed =
    within?.step.target?.start === heat.step?.step.span.start ? upperSeconds(within?.value ?? null) : null;
  if (allowed !== null && allowed !== undefined) return allowed;
  const leaves = (of: Node): readonly number[] =>
    run.graph.nodes.filter((one) => one.step === of.step && one.operation.kind === "leave").map(({ id }) => id);
  if (heat.step === node.step) return 0;
  const { worst } = longestBetween(createTiming(), run, new Set(leaves(heat)), new Set(leaves(node)), 0);
  return worst[0]?.time ?? 0;
}

export function ambientOf({ run }: At): { readonly low: number; readonly high: number; readonly isTaken: boolean } {
  const ambient = run.expanded.procedure.ambient?.quantity;
  return { low: lowEnd(ambient) ?? ROOM, high: highEnd(ambient) ?? ROOM, isTaken: ambient === undefined };
}

const ROOM = 293.15;

export function isInstance(thing: Thing, part: Instance["part"], index: Instance["index"]): boolean {
  return thing.kind === "part" && thing.part === part && thing.index === index;
}

export function degrees(kelvin: Rational, unit: Unit): Quantity {
  return quantityOf("temperature", point(kelvin), unit, 12);
}

/** The scale of a written temperature; of a rise, the one of its system. */
export function scaleOf(written: Quantity | null): Unit {
  const unit = (written?.low ?? written?.nominal ?? written?.high)?.unit;
  if (unit !== undefined && unit.kinds[0] === "temperature" && unit.text !== "K") return unit;
  return unitNamed(unit?.system === "customary" ? "°F" : "°C");
}
