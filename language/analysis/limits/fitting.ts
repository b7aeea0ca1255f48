// Parts that go together hot or cold: whether the outer is large enough over the inner when it gets there. Knows the fit, and where the
// temperatures come from (fit-temperatures.ts); heat limits are elsewhere (heating.ts).
import { type Given, limitOf, point, quantityOf } from "#engineering/ends.ts";
import type { Computed, Explanation } from "#engineering/explanation.ts";
import { interferenceOf } from "#engineering/fit.ts";
import {
  expansionHolds,
  highestInnerTemperature,
  type JoiningTemperatures,
  leastClearance,
  leastGrowth,
  neededOuterTemperature,
  type ShrinkFit,
} from "#engineering/shrink-fit.ts";
import type { Fit } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import { show } from "#quantity/display.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { add, cmp, type Rational, sub, ZERO } from "#quantity/rational.ts";
import { roundTo } from "#quantity/rounding.ts";
import { toBase, unitNamed } from "#quantity/unit.ts";
import { type Decision, NEVER } from "../decision.ts";
import { cellOf } from "../flow-state.ts";
import { base } from "../raw-fact.ts";
import { carrierOf, isAttached } from "../state-values.ts";
import { instanceKey, instanceName } from "../world.ts";
import { type At, bottomOf, type Instance, isAbove, limitBase, topOf } from "./at-node.ts";
import {
  ambientOf,
  degrees,
  heatActionOf,
  isInstance,
  lossOf,
  scaleOf,
  temperatures,
  type Way,
} from "./fit-temperatures.ts";
import type { HeatAction } from "./heating.ts";
import type { HeatFact, Instead } from "./limit-fact.ts";

/** Each fit that closes when the part is installed. */
export function fittingFacts(at: At, line: ExpandedAction, own: Instance): void {
  const { run, state } = at;
  const onto = line.second?.kind === "part" ? line.second : null;
  for (const { fit, isOuter, mate } of run.world.fits(own.part, own.index)) {
    if (onto !== null && (onto.part !== mate.part || onto.index !== mate.index)) continue;
    const [outer, inner] = isOuter ? [own, mate] : [mate, own];
    if (fit.damaged || [outer, inner].some(({ part }) => part.damaged || part.material?.damaged === true)) continue;
    const there = onto === null ? mateIsThere(at, own, mate) : state.reach;
    for (const way of temperatures(at, outer, inner)) {
      const where = run.decisions.and(there, way.where);
      if (where !== NEVER) look(at, line, { fit, outer, inner, way, where });
    }
  }
}

/** What is installed with nothing said of where goes to its mate where that is in, and did not come along on it. */
function mateIsThere({ run, state }: At, own: Instance, mate: Instance): Decision {
  const key = instanceKey(own.part, own.index);
  const place = cellOf(run, state, run.world.part(mate.part, mate.index, "place"));
  return run.cells.where(place, (value) => isAttached(value) && carrierOf(value) !== key);
}

interface Joint {
  readonly fit: Fit;
  readonly outer: Instance;
  readonly inner: Instance;
  readonly way: Way;
  readonly where: Decision;
}

function look(at: At, line: ExpandedAction, { fit, outer, inner, way, where }: Joint): void {
  const interference = interferenceOf(fit);
  const largest = interference.ok ? topOf(interference.value) : null;
  if (fit.diameter === null || !interference.ok || largest === null || cmp(largest, ZERO) <= 0) return;
  const expansion = { outer: givenOf(outer.part.material?.expansion), inner: givenOf(inner.part.material?.expansion) };
  if (expansion.outer === null && expansion.inner === null) {
    const span = line.action.place;
    at.leaveOut({
      matter: "temperature to fit",
      of: fit.name,
      lacks: "expansion",
      when: null,
      in: outer.part.name,
      span,
    });
    return;
  }
  // What is shrunk in liquid gas shrinks less than its coefficient near 20 °C says.
  const meanFor = inner.part.material?.expansionRange?.quantity ?? null;
  const heated = heatActionOf(way.heat);
  const unit = scaleOf((heated?.to ?? heated?.by)?.quantity ?? null);
  const shrink: ShrinkFit = {
    diameter: { value: fit.diameter.quantity },
    interference: { value: interference.value },
    expansion,
    meanFor,
  };
  const temperature = { outer: { value: degrees(way.outer, unit) }, inner: { value: degrees(way.inner, unit) } };
  if (!expansionHolds(temperature.inner.value, meanFor)) {
    const [of, span] = [fit.name, line.action.place];
    at.leaveOut({
      matter: "temperature to fit",
      of,
      lacks: "expansion below −50 °C",
      when: null,
      in: inner.part.name,
      span,
    });
  }
  const slip = fit.slipClearance === null ? ZERO : topOf(fit.slipClearance.quantity);
  const clearance = leastClearance(shrink, temperature);
  const growth = leastGrowth(shrink, temperature);
  if (slip === null || !clearance.ok || !growth.ok) return;
  const fine = (growth.value.nominal ?? growth.value.low)?.unit ?? unitNamed("µm");
  const slipAtMost = { value: quantityOf("length", point(slip), fine) };
  const needed = neededFor(way, shrink, temperature, slipAtMost);
  const explain = (explanation: Explanation): void =>
    at.explain?.({ of: `${outer.part.name} over ${inner.part.name}`, span: line.action.place, explanation });
  for (const explanation of [way.cooled, clearance.explanation, needed.ok ? needed.explanation : null])
    if (explanation !== null) explain(explanation);
  if (at.explain !== undefined || at.joining !== undefined) {
    // Where the step asks for less than it will have, less is what somebody may measure.
    const asked = way.how === "heated" ? askedAtLeast(at, outer) : null;
    const outerAtLeast = asked !== null && cmp(asked, way.outer) < 0 ? asked : way.outer;
    const warmest = highestInnerTemperature(shrink, {
      outer: { value: degrees(outerAtLeast, unit) },
      slip: slipAtMost,
    });
    if (warmest.ok) {
      explain(warmest.explanation);
      const measured = limitOf("temperature", "at least", outerAtLeast, unit);
      at.joining?.({ outer, inner, outerAtLeast: measured, innerAtMost: warmest.value }, where);
    }
  }
  const least = clearance.value.nominal?.base;
  if (least === undefined || cmp(least, slip) >= 0) return;
  const isHeated = way.how === "heated";
  const [own, mate] = isHeated ? [outer, inner] : [inner, outer];
  const name = instanceName(own.part, own.index);
  const barred = needed.ok && heated !== null ? barredBy(heated, needed.value, own) : null;
  const lost = needed.ok && way.cooling === null && isEnough(heated, needed.value);
  const fact: Omit<Extract<HeatFact, { kind: "too cool to fit" }>, "options" | "pass" | "more"> = {
    kind: "too cool to fit",
    how: way.how,
    part: name,
    mate: instanceName(mate.part, mate.index),
    temperature: isHeated ? temperature.outer.value : temperature.inner.value,
    growth: growth.value,
    wanted: quantityOf("length", point(add(largest, slip)), fine, 3),
    needed: needed.ok ? needed.value : null,
    ...(barred === null ? {} : { barred }),
    lost,
    cooling: way.cooling,
    ambientTaken: ambientOf(at).isTaken,
    span: (heated?.to ?? heated?.by)?.span ?? line.action.place,
    installAt: line.action.place,
    fitAt: fit.span,
    instead: needed.ok && heated !== null && !lost ? moved(heated, needed.value, own) : null,
    explanation: clearance.explanation,
  };
  at.collect({ fact, where, pass: line.pass, subject: `${base(name)} ${base(fact.mate)}`, node: at.node.id });
}

/** How hot the step needs the part to be before it begins; null where it does not say. */
function askedAtLeast({ node }: At, { part, index }: Instance): Rational | null {
  const asked = (node.step?.needs ?? []).flatMap((need) => {
    const isOf = need.form === "bound" && !need.negated && need.things.some((one) => isInstance(one, part, index));
    return isOf ? (bottomOf(need.source.bound.quantity) ?? []) : [];
  });
  return asked.reduce<Rational | null>((most, one) => (most !== null && cmp(most, one) > 0 ? most : one), null);
}

/** How hot the outer has to be when it leaves the heater, or how cold the inner when it goes in. */
function neededFor(way: Way, shrink: ShrinkFit, { outer, inner }: JoiningTemperatures, slip: Given): Computed {
  return way.how === "heated"
    ? neededOuterTemperature(shrink, { inner, slip, loss: way.cooling && lossOf(way.cooling) })
    : highestInnerTemperature(shrink, { outer, slip });
}

/** Whether the heating alone, right before this, would be enough. */
function isEnough(action: HeatAction | null, needed: Quantity): boolean {
  const reached = action?.verb === "heat" && action.to !== null ? bottomOf(action.to.quantity) : null;
  const wanted = needed.low?.base;
  return reached !== null && wanted !== undefined && cmp(reached, wanted) >= 0;
}

function givenOf(value: { readonly quantity: Quantity } | null | undefined): Given | null {
  return value == null ? null : { value: value.quantity };
}

/** What forbids a temperature: the part does not bear it, or no tool that is named gets there. */
function barredBy(action: HeatAction, wanted: Quantity, { part }: Instance): Barred | null {
  const isHot = action.verb === "heat";
  const kelvin = isHot ? (topOf(wanted) ?? bottomOf(wanted)) : (bottomOf(wanted) ?? topOf(wanted));
  if (kelvin === null) return null;
  const borne = (part.heatLimit ?? part.material?.heatLimit)?.quantity;
  if (isHot && borne !== undefined && isAbove(kelvin, limitBase(borne)))
    return { by: "part", of: part.name, limit: borne };
  const reached = action.tools.flatMap(({ tool: { name, capability } }) => {
    const limit = (isHot ? capability.heatsTo : capability.coolsTo)?.quantity;
    const end = limit === undefined ? null : limitBase(limit);
    return limit === undefined || end === null
      ? []
      : [{ of: name, limit, isShort: isHot ? cmp(end, kelvin) < 0 : cmp(end, kelvin) > 0 }];
  });
  const [first] = reached;
  if (first === undefined || !reached.every(({ isShort }) => isShort)) return null;
  return { by: "tool", of: first.of, limit: first.limit };
}

type Barred = NonNullable<Extract<HeatFact, { kind: "too cool to fit" }>["barred"]>;

/** The heating range, as wide as it was, from the temperature that is enough; null where something forbids it. */
function moved(action: HeatAction, needed: Quantity, own: Instance): Instead | null {
  const { to, verb } = action;
  const written = to?.quantity;
  if (to === null || written?.form !== "range" || written.low === null || written.high === null) return null;
  const from = limitOf(
    "temperature",
    verb === "heat" ? "at least" : "at most",
    (needed.low ?? needed.high)?.base ?? ZERO,
    written.low.unit,
  );
  const end = rounded(from);
  if (end === null) return null;
  const width = sub(written.high.base, written.low.base);
  const [low, high] =
    verb === "cool"
      ? [sub(end, width), end]
      : [end, cmp(written.high.base, end) > 0 ? written.high.base : add(end, width)];
  const range = quantityOf("temperature", { low, nominal: null, high }, written.low.unit);
  return barredBy(action, range, own) === null ? { span: to.span, text: show(range) } : null;
}

/** The end as it is shown, so that the text that is put in is not a hair off. */
function rounded({ low, high }: Quantity): Rational | null {
  const end = low ?? high;
  if (end === null) return null;
  const { written, digit, unit } = end;
  return toBase(roundTo(written, digit, low === null ? "down" : "up"), unit, "temperature");
}
