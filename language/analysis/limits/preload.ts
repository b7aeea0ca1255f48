// The preload that a torque gives, beside the proof load of its fastener. Knows thread, nut factor and friction as declared, no
// tool.

import { limitOf, point, quantityOf } from "#engineering/ends.ts";
import type { Computed, Explanation } from "#engineering/explanation.ts";
import { preloadByNutFactor, shareOfProof, torqueByNutFactor } from "#engineering/preload.ts";
import { type Bearing, hexagonBearing, preloadByFriction, torqueByFriction } from "#engineering/preload-by-friction.ts";
import { proofLoad, strengthOf } from "#engineering/strength.ts";
import { readThread, type Thread } from "#engineering/thread.ts";
import type { Conditioned, Part, Value } from "#model/declarations.ts";
import type { TightenAction } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, mul, ONE, type Rational, rational, ZERO } from "#quantity/rational.ts";
import { roundTo } from "#quantity/rounding.ts";
import { unitNamed } from "#quantity/unit.ts";
import { isLost } from "../hazards/thresholds.ts";
import { keptByText } from "../kept-by-text.ts";
import { base } from "../raw-fact.ts";
import { instanceName } from "../world.ts";
import { type At, bottomOf, type Instance, limitBase, prevailingOf, thresholdOf, topOf } from "./at-node.ts";
import type { TorqueFact } from "./limit-fact.ts";
import { meets, stateOf, type ThreadWay } from "./thread-state.ts";
import { finalOf, isTightenedFurther } from "./torques.ts";
import { createWorkedOut } from "./worked-out.ts";

/**
 * A share of the proof load above which a warning is due, where the shop has none of its own, and one below which a bolt is
 * told to be slack (both practice).
 */
const MOST = rational(9, 10);
const LEAST = rational(2, 5);

/**
 * The final torque of one fastener at its upper and its lower end, each by itself; silent once an angle follows. Where several nut
 * factors may be meant, only what holds for each of them.
 */
export function preloadFacts(at: At, action: TightenAction, fastener: Instance, ways: readonly ThreadWay[]): void {
  const { part } = fastener;
  const final = finalOf(action);
  if (final === null || action.angle !== null || part.damaged || !saysStrength(part)) return;
  const joint = jointOf(at, part);
  if (joint === null) return;
  for (const way of ways) {
    const rubbings = rubbingsOf(part, way, final.quantity, joint.thread);
    if (rubbings === null) continue;
    if (rubbings === "missing") leaveOut(at, part, "nut factor", conditionText(part, way, final.quantity));
    else
      look(
        at,
        action,
        fastener,
        rubbings.map((rubbing) => ({ way, rubbing, final, ...joint })),
      );
  }
}

interface Joint {
  readonly thread: Thread;
  readonly proof: Quantity;
}

/** What becomes of a torque on the way into the bolt: one nut factor, or friction in the thread and under a hexagon. */
interface Rubbing {
  readonly value: Value;
  /** Null for a nut factor. */
  readonly bearing: Bearing | null;
}

interface Tightened extends Joint {
  readonly way: ThreadWay;
  readonly rubbing: Rubbing;
  readonly final: Value;
}

/** What says nothing of its thread and its strength is not meant to be looked at: a clamp, a plug. */
function saysStrength({ thread, propertyClass, grade }: Part): boolean {
  return thread !== null || propertyClass !== null || grade !== null;
}

function jointOf(at: At, part: Part): Joint | null {
  const joint = joints.of([part], () => jointFor(JSON.stringify(marksOf(part))).found);
  return typeof joint === "string" ? leaveOut(at, part, joint, null) : joint;
}

const joints = createWorkedOut<Joint | string>();

type Marks = Pick<Part, "thread" | "propertyClass" | "grade">;

function marksOf({ grade, propertyClass, thread }: Part): Marks {
  return { thread, propertyClass, grade };
}

/** Few sorts of screws hold a machine together: each is looked up once. */
const jointFor = keptByText((marks) => ({ found: workedOut(JSON.parse(marks) as Marks) }));

/** Or what it lacks. */
function workedOut({ thread: text, propertyClass, grade }: Marks): Joint | string {
  if (text === null) return "thread";
  const thread = readThread(text);
  if (!thread.ok) return "thread that can be read";
  if (propertyClass === null && grade === null) return "class or grade";
  const mark = propertyClass === null ? { grade: grade ?? "" } : { propertyClass };
  const strength = strengthOf(thread.value, mark);
  const proof = strength.ok ? proofLoad(thread.value, strength.value) : strength;
  return proof.ok ? { thread: thread.value, proof: proof.value } : "class or grade that is known";
}

function leaveOut({ leaveOut: add, run, node }: At, part: Part, lacks: string, when: string | null): null {
  const span = node.operation.kind === "act" ? node.operation.line.action.place : run.expanded.procedure.span;
  add({ matter: "preload", of: part.name, lacks, when, in: part.name, span });
  return null;
}

/**
 * By the nut factor where it is declared for the condition the thread is in, else by friction: each that may be meant, of which one
 * holds; or what is missing for that.
 */
function rubbingsOf(
  part: Part,
  way: ThreadWay,
  torque: Quantity,
  thread: Thread,
): readonly Rubbing[] | "missing" | null {
  const factors = forCondition(part.nutFactors, part, way, torque);
  const frictions = part.frictions.length === 0 ? null : forCondition(part.frictions, part, way, torque);
  const hasFactor = factors !== null && factors !== "missing";
  const hasFriction = frictions !== null && frictions !== "missing";
  if (!hasFactor && !hasFriction) return factors;
  const known = hasFactor ? factors : [];
  const isOpen = isInSeveral(way) || (way.is === "as found" && statedFor(part, way, torque) === null);
  // One condition has one of the two: the nut factor where both are declared.
  const others =
    !hasFriction || (hasFactor && !isOpen)
      ? []
      : frictions.filter(({ condition }) => !known.some((factor) => sameAs(factor.condition, condition)));
  const bearing = others.length === 0 ? null : bearings.of([thread], () => hexagonBearing(thread));
  if (others.length > 0 && bearing === null) return "missing";
  return [
    ...known.map(({ value }): Rubbing => ({ value, bearing: null })),
    ...others.map(({ value }): Rubbing => ({ value, bearing })),
  ];
}

const bearings = createWorkedOut<Bearing | null>();

/** Whether it is not known which of several is on the thread, or whether any is. */
function isInSeveral({ is }: ThreadWay): boolean {
  return is === "unknown" || (typeof is !== "string" && (is.with.length > 1 || is.with.includes(null)));
}

/**
 * Those of the values which may hold for the condition the thread is in. What is as it was found, or bare, is taken as what its
 * torque is stated for, where that is said; else a bare thread is dry, and one as found in any of the conditions that are declared.
 * Null where nothing is known of the thread.
 */
function forCondition(
  values: readonly Conditioned[],
  part: Part,
  way: ThreadWay,
  torque: Quantity,
): readonly Conditioned[] | "missing" | null {
  const forAny = values.filter(({ condition }) => condition === null);
  if (way.is === "unknown") return forAny.length === 0 ? null : values;
  const meant = statedFor(part, way, torque);
  const found = values.filter(
    ({ condition }) => condition !== null && (meant === null ? meets(condition, way) : sameAs(condition, meant)),
  );
  if (way.is === "as found" && meant === null) return values.length === 0 ? null : values;
  if (found.length > 0) return found;
  return forAny.length > 0 ? forAny : "missing";
}

/** Of a thread that nobody touched here, the condition of the declared torque that is meant. */
function statedFor(part: Part, { is }: ThreadWay, torque: Quantity): Conditioned["condition"] {
  if (is !== "as found") return null;
  const stated = part.torques.filter(({ condition }) => condition !== null);
  const meant = stated.find(({ value }) => {
    const [low, high] = [bottomOf(value.quantity), topOf(value.quantity)];
    const own = (torque.nominal ?? torque.low ?? torque.high)?.base;
    return own !== undefined && low !== null && high !== null && cmp(own, low) >= 0 && cmp(own, high) <= 0;
  });
  return (meant ?? stated[0])?.condition ?? null;
}

function sameAs(a: Conditioned["condition"], b: Conditioned["condition"]): boolean {
  if (a === null || b === null) return a === b;
  if ("dry" in a || "dry" in b) return "dry" in a && "dry" in b;
  return a.with.id === b.with.id;
}

/** `dry`, or the name of what is on the thread. */
function conditionText(part: Part, way: ThreadWay, torque: Quantity): string | null {
  const meant = statedFor(part, way, torque);
  if (meant !== null) return "dry" in meant ? "dry" : meant.with.name;
  const found = stateOf(way);
  return found === null ? null : "dry" in found ? "dry" : found.with;
}

/** @param each with one nut factor that may be meant */
function look(at: At, action: TightenAction, fastener: Instance, each: readonly Tightened[]): void {
  const { part } = fastener;
  const ends = each.map((tightened) => ({ tightened, ...clampedBy(part, tightened) }));
  for (const { tightened, upper, lower } of ends) {
    const worked = [upper, lower].flatMap((end) => (end.ok ? [end.explanation] : []));
    for (const explanation of new Set(worked)) at.explain?.({ of: part.name, span: tightened.final.span, explanation });
    if (upper.ok) at.margin?.({ kind: "preload", part: part.name, limitOf: part.name, value: percent(upper.share) });
  }
  const limit = shareLimit(at);
  judge(at, action, fastener, "upper", ends, (share) =>
    cmp(share, ONE) > 0
      ? { how: "above proof", against: ONE, remedy: limit ?? ONE }
      : limit !== null && cmp(share, limit) > 0
        ? { how: "above share", against: limit, remedy: limit }
        : null,
  );
  const [first] = each;
  if (first === undefined || action.toSeat || action.byHand) return;
  // Whether it is tightened further is asked only where it matters: that takes a walk.
  if (ends.every(({ lower }) => lower.ok && cmp(lower.share, LEAST) >= 0)) return;
  if (isTightenedFurther(at, fastener, first.final.quantity)) return;
  judge(at, action, fastener, "lower", ends, (share) =>
    cmp(share, LEAST) < 0 ? { how: "low", against: LEAST, remedy: LEAST } : null,
  );
}

interface Verdict {
  readonly how: Extract<TorqueFact, { kind: "preload" }>["how"];
  readonly against: Rational;
  /** The share that a torque is to keep to, so that nothing is told of it any more. */
  readonly remedy: Rational;
}

/** Tells of one end of the torque what holds with each nut factor: by the one that speaks most against it. */
function judge(
  at: At,
  action: TightenAction,
  fastener: Instance,
  side: Side,
  ends: readonly (Clamped & { readonly tightened: Tightened })[],
  verdict: (share: Rational) => Verdict | null,
): void {
  const { part } = fastener;
  const known: { readonly tightened: Tightened; readonly end: Reached }[] = [];
  for (const { tightened, [side]: end } of ends) {
    if (end.ok) known.push({ tightened, end });
    else {
      const { way, final } = tightened;
      leaveOut(at, part, end.lacks, end.lacks === "nut factor" ? conditionText(part, way, final.quantity) : null);
    }
  }
  if (known.length < ends.length) return;
  const [mildest, ...others] = known.sort((a, b) => cmp(a.end.share, b.end.share) * (side === "upper" ? 1 : -1));
  if (mildest === undefined) return;
  const found = verdict(mildest.end.share);
  if (found !== null) tell(at, action, fastener, mildest.tightened, mildest.end, found);
  else if (others.some(({ end }) => verdict(end.share) !== null)) leaveOut(at, part, "torque condition", null);
}

function tell(
  at: At,
  action: TightenAction,
  { part, index }: Instance,
  tightened: Tightened,
  { preload, share, explanation }: Reached,
  { how, against, remedy }: Verdict,
): void {
  const { operation } = at.node;
  if (operation.kind !== "act") return;
  const fact = {
    kind: "preload",
    how,
    part: instanceName(part, index),
    span: action.stagesSpan ?? action.place,
    torque: tightened.final.quantity,
    preload: endOf(preload, how === "low" ? "lower" : "upper") ?? preload,
    proof: tightened.proof,
    share: percent(share, against),
    limit: percent(against),
    atLimit: torqueAt(part, tightened, remedy, how === "low" ? "lower" : "upper"),
    explanation,
  } satisfies Omit<Extract<TorqueFact, { kind: "preload" }>, "pass" | "more">;
  const subject = base(fact.part);
  at.collect({ fact, where: tightened.way.where, pass: operation.line.pass, subject, node: at.node.id });
}

/** Upper: the most that the torque can clamp with. */
type Side = "upper" | "lower";

/** One end of the preload, as a share of the proof load too. */
interface Reached {
  readonly preload: Quantity;
  readonly share: Rational;
  readonly explanation: Explanation;
}

/** Each end by itself, or what there is none for want of. */
type Clamped = Readonly<
  Record<Side, (Reached & { readonly ok: true }) | { readonly ok: false; readonly lacks: string }>
>;

/** By the torque as written and the nut factor or friction as declared: both belong to one part alone. */
function clampedBy(part: Part, tightened: Tightened): Clamped {
  const { final, proof, rubbing, thread } = tightened;
  const prevailing = prevailingOf(part)?.value ?? null;
  return clamped.of([final.quantity, rubbing.value.quantity, rubbing.bearing, prevailing, thread, proof], () => {
    const preload = preloadOf(tightened, final.quantity, rubbing.value.quantity, prevailingOf(part));
    const [upper, lower] = preload.ok ? reached(tightened, preload) : [];
    if (upper !== undefined && lower !== undefined) return { upper, lower };
    return { upper: oneEnd(part, tightened, "upper"), lower: oneEnd(part, tightened, "lower") };
  });
}

/** Where not all ends are given, or one is of no use, the other may still be known. */
function oneEnd(part: Part, tightened: Tightened, side: Side): Clamped[Side] {
  const { final, rubbing } = tightened;
  const torque = endOf(final.quantity, side);
  const against = opposite(side);
  const by = endOf(rubbing.value.quantity, against);
  const running = prevailingOf(part);
  const prevailing = running === null ? null : endOf(running.value, against);
  if (torque === null) return { ok: false, lacks: `${side} torque` };
  if (by === null) return { ok: false, lacks: "nut factor" };
  if (running !== null && prevailing === null) return { ok: false, lacks: "prevailing torque" };
  const preload = preloadOf(tightened, torque, by, prevailing === null ? null : { value: prevailing });
  if (!preload.ok) return { ok: false, lacks: preload.refusal.input };
  const [end] = reached(tightened, preload);
  if (end === undefined) return { ok: false, lacks: "class or grade that is known" };
  const { explanation } = preload;
  const value = asLimit(preload.value, side);
  return { ...end, explanation: { ...explanation, result: { ...explanation.result, value } } };
}

function preloadOf(
  { thread, rubbing }: Tightened,
  torque: Quantity,
  by: Quantity,
  prevailing: { readonly value: Quantity } | null,
): Computed {
  const tightening = { torque: { value: torque }, prevailing };
  return rubbing.bearing === null
    ? preloadByNutFactor(thread, tightening, { value: by })
    : preloadByFriction(thread, tightening, { inThread: { value: by }, underHead: { value: by } }, rubbing.bearing);
}

/** The upper and the lower end; none where no share of the proof load can be told. */
function reached(
  { proof }: Tightened,
  { value: preload, explanation }: Extract<Computed, { ok: true }>,
): readonly (Reached & { readonly ok: true })[] {
  const share = shareOfProof({ value: preload }, { value: proof });
  const ends = share.ok ? [topOf(share.value), bottomOf(share.value)] : [];
  return ends.flatMap((end) => (end === null ? [] : [{ ok: true, preload, share: end, explanation }]));
}

function opposite(side: Side): Side {
  return side === "upper" ? "lower" : "upper";
}

const clamped = createWorkedOut<Clamped>();

/** The shop's own share, never more than the whole; null where it cannot be read. */
function shareLimit({ run }: At): Rational | null {
  if (isLost(run, "preload", "ratio")) return null;
  const own = thresholdOf(run, "preload")?.quantity;
  const limit = own?.kind === "ratio" ? limitBase(own) : null;
  return limit === null || cmp(limit, ONE) > 0 ? MOST : limit;
}

/** @param limit what it is not: with as many digits as it takes to show that */
function percent(share: Rational, limit: Rational = ZERO): Quantity {
  const shown = (digits: number): Quantity => quantityOf("ratio", point(share), unitNamed("%"), digits);
  const isAtLimit = ({ nominal }: Quantity): boolean =>
    nominal !== null && cmp(roundTo(nominal.written, nominal.digit, "nearest"), mul(limit, rational(100))) === 0;
  return [3, 4, 5].map(shown).find((quantity) => !isAtLimit(quantity)) ?? shown(6);
}

/** The end that counts, alone; null where it is open. */
function endOf(band: Quantity, side: Side): Quantity | null {
  const end = (side === "lower" ? band.low : band.high) ?? band.nominal;
  return end === null ? null : { ...band, form: "nominal", low: null, nominal: end, high: null };
}

/** All that is known of a preload of which one end was worked out. */
function asLimit(preload: Quantity, side: Side): Quantity {
  const { nominal: end } = preload;
  return side === "upper"
    ? { ...preload, form: "at most", nominal: null, high: end }
    : { ...preload, form: "at least", nominal: null, low: end };
}

/** The torque, in the writer's unit, at which the counted end would be at the limit. */
function torqueAt(
  part: Part,
  { thread, proof, rubbing, final }: Tightened,
  share: Rational,
  side: Side,
): Quantity | null {
  const load = proof.nominal;
  const unit = (final.quantity.nominal ?? final.quantity.high ?? final.quantity.low)?.unit;
  const value = endOf(rubbing.value.quantity, opposite(side));
  if (load === null || unit === undefined || value === null) return null;
  const force = { value: quantityOf("force", point(mul(load.base, share)), load.unit, 6) };
  const running = prevailingOf(part);
  const taken = running === null ? null : endOf(running.value, opposite(side));
  const prevailing = taken === null ? null : { value: taken };
  const by = { value };
  const torque =
    rubbing.bearing === null
      ? torqueByNutFactor(thread, force, by, prevailing)
      : torqueByFriction(thread, force, { inThread: by, underHead: by }, rubbing.bearing, prevailing);
  const end = torque.ok ? topOf(torque.value) : null;
  return end === null ? null : limitOf("torque", side === "lower" ? "at least" : "at most", end, unit, 3);
}
