// The preload that a torque gives, beside the proof load of its fastener. Knows thread, nut factor and friction as declared, no
// tool.

import { limitOf, point, quantityOf } from "#engineering/ends.ts";
import type { Computed } from "#engineering/explanation.ts";
import { preloadByNutFactor, shareOfProof, torqueByNutFactor } from "#engineering/preload.ts";
import { type Bearing, hexagonBearing, preloadByFriction, torqueByFriction } from "#engineering/preload-by-friction.ts";
import { proofLoad, strengthOf } from "#engineering/strength.ts";
import { readThread, type Thread } from "#engineering/thread.ts";
import type { Conditioned, Part, Value } from "#model/declarations.ts";
import type { TightenAction } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, mul, ONE, type Rational, rational } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import type { Run } from "../follow.ts";
import { base } from "../raw-fact.ts";
import { instanceName } from "../world.ts";
import {
  type At,
  bottomOf,
  type Instance,
  limitBase,
  once,
  prevailingOf,
  thresholdOf,
  topOf,
  type WorkedOut,
} from "./at-node.ts";
import type { TorqueFact } from "./limit-fact.ts";
import { meets, stateOf, type ThreadWay } from "./thread-state.ts";
import { finalOf, isTightenedFurther } from "./torques.ts";

/**
 * A share of the proof load above which a warning is due, where the shop has none of its own, and one below which a bolt is
 * told to be slack (both practice).
 */
const MOST = rational(9, 10);
const LEAST = rational(2, 5);

/** The final torque of one fastener at its upper and its lower end; silent once an angle follows. */
export function preloadFacts(at: At, action: TightenAction, fastener: Instance, ways: readonly ThreadWay[]): void {
  const { part } = fastener;
  const final = finalOf(action);
  if (final === null || action.angle !== null || part.damaged || !saysStrength(part)) return;
  const joint = jointOf(at, part);
  if (joint === null) return;
  for (const way of ways) {
    const rubbing = rubbingOf(part, way, final.quantity, joint.thread);
    if (rubbing === null) continue;
    if (typeof rubbing === "string") leaveOut(at, part, rubbing, conditionText(part, way, final.quantity));
    else look(at, action, fastener, { way, rubbing, final, ...joint });
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

/** What says nothing of its strength is not meant to be looked at. */
function saysStrength({ thread, propertyClass, grade, nutFactors, frictions }: Part): boolean {
  return propertyClass !== null || grade !== null || (thread !== null && nutFactors.length + frictions.length > 0);
}

function jointOf(at: At, part: Part): Joint | null {
  const { thread, propertyClass, grade } = part;
  const key = JSON.stringify([thread, propertyClass, grade]);
  const ofRun = joints.get(at.run) ?? new Map<string, Joint | string>();
  const joint = ofRun.get(key) ?? workedOut(part);
  joints.set(at.run, ofRun.set(key, joint));
  return typeof joint === "string" ? leaveOut(at, part, joint, null) : joint;
}

/** Few sorts of screws hold a machine together: each is looked up once. */
const joints = new WeakMap<Run, Map<string, Joint | string>>();

/** Or what it lacks. */
function workedOut({
  thread: text,
  propertyClass,
  grade,
}: Pick<Part, "thread" | "propertyClass" | "grade">): Joint | string {
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

/** By the nut factor where it is declared for the condition the thread is in, else by friction; or what is missing for that. */
function rubbingOf(part: Part, way: ThreadWay, torque: Quantity, thread: Thread): Rubbing | string | null {
  const factor = forCondition(part.nutFactors, part, way, torque);
  if (factor !== null && factor !== "missing") return { value: factor.value, bearing: null };
  const friction = part.frictions.length === 0 ? null : forCondition(part.frictions, part, way, torque);
  if (friction === null || friction === "missing") return factor === null ? null : "nut factor";
  const bearing = hexagonBearing(thread);
  return bearing === null ? "nut factor" : { value: friction.value, bearing };
}

/**
 * That of the values which holds for the condition the thread is in. What is as it was found, or bare, is taken as what its torque
 * is stated for, where that is said; else a bare thread is dry. Null where nothing is known of the thread.
 */
function forCondition(
  values: readonly Conditioned[],
  part: Part,
  way: ThreadWay,
  torque: Quantity,
): Conditioned | "missing" | null {
  const known = values.find(({ condition }) => condition === null);
  if (way.is === "unknown") return known ?? null;
  const meant = statedFor(part, way, torque);
  const found = values.find(
    ({ condition }) => condition !== null && (meant === null ? meets(condition, way) : sameAs(condition, meant)),
  );
  return found ?? known ?? (way.is === "as found" && meant === null ? null : "missing");
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

function look(at: At, action: TightenAction, fastener: Instance, tightened: Tightened): void {
  const { proof, final, way } = tightened;
  const { part, index } = fastener;
  const { quantity } = final;
  const clamped = clampedBy(part, tightened);
  if (clamped === null || at.node.operation.kind !== "act") return;
  const { preload, share } = clamped;
  at.explain?.({ of: part.name, span: final.span, explanation: preload.explanation });
  const { pass } = at.node.operation.line;
  const [most, least] = [topOf(share), bottomOf(share)];
  const limit = shareLimit(at);
  if (most !== null) at.margin?.({ kind: "preload", part: part.name, limitOf: part.name, value: percent(most) });
  const tell = (how: "above proof" | "above share" | "low", counted: Rational, against: Rational): void => {
    const fact = {
      kind: "preload",
      how,
      part: instanceName(part, index),
      span: action.stagesSpan ?? action.place,
      torque: quantity,
      preload: endOf(preload.value, how === "low"),
      proof,
      share: percent(counted),
      limit: percent(against),
      atLimit: torqueAt(tightened, prevailingOf(part), against, how === "low"),
      explanation: preload.explanation,
    } satisfies Omit<Extract<TorqueFact, { kind: "preload" }>, "pass" | "more">;
    at.collect({ fact, where: way.where, pass, subject: base(fact.part), node: at.node.id });
  };
  if (most !== null && cmp(most, ONE) > 0) tell("above proof", most, ONE);
  else if (most !== null && cmp(most, limit) > 0) tell("above share", most, limit);
  if (least === null || action.toSeat || action.byHand || cmp(least, LEAST) >= 0) return;
  if (!isTightenedFurther(at, fastener, quantity)) tell("low", least, LEAST);
}

interface Clamped {
  readonly preload: Extract<Computed, { ok: true }>;
  /** Of the proof load. */
  readonly share: Quantity;
}

/** By the torque as written and the nut factor or friction as declared: both belong to one part alone. */
function clampedBy(part: Part, { thread, proof, rubbing, final }: Tightened): Clamped | null {
  return once(clamped, final, rubbing.value, () => {
    const torque = { torque: { value: final.quantity }, prevailing: prevailingOf(part) };
    const by = { value: rubbing.value.quantity };
    const preload =
      rubbing.bearing === null
        ? preloadByNutFactor(thread, torque, by)
        : preloadByFriction(thread, torque, { inThread: by, underHead: by }, rubbing.bearing);
    const share = preload.ok ? shareOfProof({ value: preload.value }, { value: proof }) : null;
    return preload.ok && share?.ok === true ? { preload, share: share.value } : null;
  });
}

const clamped: WorkedOut<Clamped | null> = new WeakMap();

/** The shop's own share; never more than the whole. */
function shareLimit({ run }: At): Rational {
  const own = thresholdOf(run, "preload")?.quantity;
  const limit = own?.kind === "ratio" ? limitBase(own) : null;
  return limit === null || cmp(limit, ONE) > 0 ? MOST : limit;
}

function percent(share: Rational): Quantity {
  return quantityOf("ratio", point(share), unitNamed("%"), 3);
}

/** The end that counts, alone. */
function endOf(band: Quantity, low: boolean): Quantity {
  const end = low ? (band.low ?? band.nominal) : (band.high ?? band.nominal);
  return { ...band, form: "nominal", low: null, nominal: end, high: null };
}

/** The torque, in the writer's unit, at which the counted end would be at the limit. */
function torqueAt(
  { thread, proof, rubbing, final }: Tightened,
  prevailing: { value: Quantity } | null,
  share: Rational,
  low: boolean,
): Quantity | null {
  const load = proof.nominal;
  const unit = (final.quantity.nominal ?? final.quantity.high ?? final.quantity.low)?.unit;
  if (load === null || unit === undefined) return null;
  const force = { value: quantityOf("force", point(mul(load.base, share)), load.unit, 6) };
  const by = { value: rubbing.value.quantity };
  const torque =
    rubbing.bearing === null
      ? torqueByNutFactor(thread, force, by, prevailing)
      : torqueByFriction(thread, force, { inThread: by, underHead: by }, rubbing.bearing, prevailing);
  const end = torque.ok ? (low ? topOf(torque.value) : bottomOf(torque.value)) : null;
  return end === null ? null : limitOf("torque", low ? "at least" : "at most", end, unit, 3);
}
