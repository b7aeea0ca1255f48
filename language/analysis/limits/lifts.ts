// What is lifted, with all that is installed on it, beside what the tool or the crew may lift. Knows no attachment and no
// centre of gravity.
import { limitOf } from "#engineering/ends.ts";
import { crewLimit, hangingMass, type Weight } from "#engineering/lifting.ts";
import type { Capability, Part, Tool } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Action, ToolUse } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { add, cmp, type Rational } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import { type Decision, NEVER } from "../decision.ts";
import { cellOf } from "../flow-state.ts";
import { shownTo } from "../hazards/thresholds.ts";
import { base } from "../raw-fact.ts";
import { carrierOf } from "../state-values.ts";
import { instanceKey, instanceName } from "../world.ts";
import { type At, type Instance, limitBase, toolsByName } from "./at-node.ts";
import { onePersonLimit } from "./hands.ts";
import type { LoadFact } from "./limit-fact.ts";
import { asShown, legTroubles } from "./slings.ts";

type Lift = Extract<Action, { verb: "lift" | "support" | "set down" }>;

export function liftFacts(at: At, line: ExpandedAction, action: Lift, lifted: Instance): void {
  if (action.verb === "set down" || lifted.part.damaged) return;
  for (const load of loadsOf(at, action, lifted)) {
    if (action.byHand) byHand(at, line, action, lifted, load);
    else byTools(at, line, action, lifted, load);
  }
}

export interface Load {
  readonly mass: Rational;
  /** What hangs: the part, then what is on it. */
  readonly weights: readonly Weight[];
  readonly where: Decision;
}

/** More ways than this are not told apart: only what is certainly on it is counted then. */
const MOST_WAYS = 64;

/** The part with what stands on it, layer by layer, for each way that can be. What has no mass counts for nothing, and is told. */
export function loadsOf(at: At, action: Pick<Lift, "place">, lifted: Instance): readonly Load[] {
  const { run, state } = at;
  const own = weightOf(lifted);
  if (own === null) {
    at.leaveOut({
      matter: "load",
      of: lifted.part.name,
      lacks: "mass",
      when: null,
      in: lifted.part.name,
      span: action.place,
    });
    return [];
  }
  let loads: readonly Load[] = [{ mass: own.base, weights: [own], where: state.reach }];
  const seen = new Set([instanceKey(lifted.part, lifted.index)]);
  let layer: readonly { readonly carrier: Instance; readonly where: Decision }[] = [
    { carrier: lifted, where: state.reach },
  ];
  while (layer.length > 0) {
    const next: { carrier: Instance; where: Decision }[] = [];
    for (const { carrier, where } of layer) {
      const key = instanceKey(carrier.part, carrier.index);
      for (const rider of run.world.riders(carrier.part, carrier.index)) {
        if (seen.has(instanceKey(rider.part, rider.index))) continue;
        const place = cellOf(run, state, run.world.part(rider.part, rider.index, "place"));
        const on = run.decisions.and(
          where,
          run.cells.where(place, (value) => carrierOf(value) === key),
        );
        if (on === NEVER) continue;
        seen.add(instanceKey(rider.part, rider.index));
        next.push({ carrier: rider, where: on });
        const weight = weightOf(rider);
        const { name } = rider.part;
        if (weight !== null) loads = split(at, loads, weight, on);
        else if (!rider.part.damaged)
          at.leaveOut({
            matter: "load",
            of: lifted.part.name,
            lacks: "mass",
            when: null,
            in: name,
            span: action.place,
          });
      }
    }
    layer = next;
  }
  return loads;
}

function split({ run }: At, loads: readonly Load[], rider: Weighed, isOn: Decision): readonly Load[] {
  const { and, not } = run.decisions;
  return loads.flatMap((load): readonly Load[] => {
    const on = and(load.where, isOn);
    const off = and(load.where, not(isOn));
    const without = off === NEVER ? [] : [{ ...load, where: off }];
    if (on === NEVER || (without.length > 0 && loads.length >= MOST_WAYS)) return [load];
    return [{ mass: add(load.mass, rider.base), weights: [...load.weights, rider], where: on }, ...without];
  });
}

/** A part with its mass, and of that the high end: it may weigh as much. */
interface Weighed extends Weight {
  readonly base: Rational;
}

function weightOf({ part, index }: Instance): Weighed | null {
  const value = part.mass?.quantity;
  const end = value?.high ?? value?.nominal ?? value?.low ?? null;
  return value === undefined || end === null || part.damaged
    ? null
    : { of: instanceName(part, index), mass: { value }, base: end.base };
}

function byTools(at: At, line: ExpandedAction, action: Lift, lifted: Instance, load: Load): void {
  const isRated = action.tools.some(({ tool }) => tool.capability.lifts !== null && !tool.damaged);
  if (!isRated) explainLoad(at, action, load, nameOf(lifted), null);
  for (const use of action.tools) {
    const { lifts } = use.tool.capability;
    const most = lifts === null || use.tool.damaged ? null : limitBase(lifts.quantity);
    if (lifts !== null && most !== null)
      explainLoad(at, action, load, `${use.tool.name} for ${nameOf(lifted)}`, {
        of: use.tool.name,
        mass: { value: lifts.quantity },
      });
    if (lifts === null || most === null || cmp(load.mass, most) <= 0) continue;
    const fitting = lightestFor(at, load.mass, "lifts", action.tools);
    tell(at, line, lifted, load, {
      ...NOT_BY_HAND,
      how: "tool",
      limit: lifts.quantity,
      tool: use.tool.name,
      limitAt: lifts.span,
      fitting,
      instead: fitting === null ? null : { span: use.span, text: fitting },
      span: action.place,
    });
  }
  for (const { sling, legs, limit } of legTroubles(at, action, nameOf(lifted), loadShown(lifted.part, load.mass))) {
    const carried = legs.load?.nominal?.base;
    const fitting = carried === undefined ? null : lightestFor(at, carried, "legLifts", action.tools);
    tell(at, line, lifted, load, {
      ...NOT_BY_HAND,
      how: sling === null ? "leg angle" : "leg",
      limit,
      legs,
      tool: sling?.tool.name ?? null,
      limitAt: sling?.tool.capability.legLifts?.span ?? null,
      fitting,
      instead: fitting === null || sling === null ? null : { span: sling.span, text: fitting },
      span: sling === null ? (action.legs?.span ?? action.place) : action.place,
    });
  }
}

const NOT_BY_HAND = { legs: null, people: 0, lowered: null } as const;

/** The tool that lifts so much, and no more than it has to; one that the line names already takes no other's place. */
function lightestFor(at: At, mass: Rational, by: "lifts" | "legLifts", named: readonly ToolUse[]): string | null {
  const able = toolsByName(at.run).flatMap((tool) => {
    const most = capacityOf(tool, by);
    const isNamed = named.some((use) => use.tool === tool);
    return !isNamed && !tool.damaged && most !== null && cmp(most, mass) >= 0 ? [{ name: tool.name, most }] : [];
  });
  return able.sort((a, b) => cmp(a.most, b.most)).at(0)?.name ?? null;
}

function capacityOf({ capability }: Tool, by: keyof Pick<Capability, "lifts" | "legLifts">): Rational | null {
  const capacity = capability[by];
  return capacity === null ? null : limitBase(capacity.quantity);
}

function byHand(at: At, line: ExpandedAction, action: Lift, lifted: Instance, load: Load): void {
  const most = onePersonLimit(at.run, action.hands);
  if (most === null) return;
  const { threshold, factors, explanation, lacks } = most;
  const one = { value: threshold.value };
  const lowered = factors.length === 0 ? null : { one: threshold.value, factors };
  if (lacks !== null) {
    const of = nameOf(lifted);
    at.leaveOut({ matter: "load", of, lacks, when: null, in: of, span: action.place });
  }
  const people = at.run.expanded.procedure.crew ?? 1;
  const tellOver = (how: "hands" | "hands with care", limit: Quantity): void =>
    tell(at, line, lifted, load, {
      how,
      limit,
      tool: null,
      legs: null,
      people,
      lowered,
      limitAt: threshold.declaredAt,
      fitting: null,
      instead: null,
      span: action.place,
    });
  const [sum, care] = [crewLimit(one, people, "sum"), crewLimit(one, people, "warning")];
  const isOver = (limit: typeof sum): limit is Extract<typeof sum, { ok: true }> =>
    limit.ok && limit.value.high !== null && cmp(load.mass, limit.value.high.base) > 0;
  if (sum.ok) {
    const of = `${nameOf(lifted)} by hand`;
    if (explanation !== null) at.explain?.({ of, span: action.place, explanation });
    at.explain?.({ of, span: action.place, explanation: sum.explanation });
    explainLoad(at, action, load, of, { of: "the crew", mass: { value: sum.value } });
  }
  if (isOver(sum)) tellOver("hands", sum.value);
  else if (isOver(care)) tellOver("hands with care", care.value);
}

function explainLoad({ explain }: At, { place }: Lift, { weights }: Load, of: string, most: Weight | null): void {
  if (explain === undefined) return;
  const mass = hangingMass(weights, most);
  if (mass.ok) explain({ of, span: place, explanation: asShown(mass.explanation) });
}

function nameOf({ part, index }: Instance): string {
  return instanceName(part, index);
}

type Over = Pick<
  Extract<LoadFact, { kind: "overload" }>,
  "how" | "limit" | "tool" | "legs" | "people" | "lowered" | "limitAt" | "fitting" | "instead" | "span"
>;

function tell(at: At, line: ExpandedAction, lifted: Instance, load: Load, over: Over): void {
  const name = nameOf(lifted);
  const fact = {
    kind: "overload" as const,
    part: name,
    mass: loadShown(lifted.part, load.mass),
    with: load.weights.slice(1).map(({ of }) => of),
    ...over,
  };
  at.collect({
    fact,
    where: load.where,
    pass: line.pass,
    subject: `${base(name)} ${over.tool ?? (over.legs === null ? "" : "legs")}`,
    node: at.node.id,
  });
}

/** A load in the unit of the part's own mass, rounded to the safe side. */
export function loadShown({ mass }: Part, load: Rational): Quantity {
  const unit: Unit = (mass?.quantity.nominal ?? mass?.quantity.high)?.unit ?? unitNamed("kg");
  const least = limitOf("mass", "at least", load, unit);
  return shownTo("up", { ...least, form: "nominal", nominal: least.low, low: null });
}
