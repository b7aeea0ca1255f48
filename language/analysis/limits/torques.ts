// A torque against what is declared of its fastener: stages that rise to the final value, the declared band, the condition it
// is stated for. Knows no preload (preload.ts) and no tool.
import { stageFault } from "#engineering/bolt-circle.ts";
import type { Conditioned, Part, Value } from "#model/declarations.ts";
import type { TightenAction } from "#model/procedure.ts";
import { show } from "#quantity/display.ts";
import { overlaps, type Quantity, sameQuantity, within } from "#quantity/quantity.ts";
import { cmp, type Rational, ZERO } from "#quantity/rational.ts";
import type { Span } from "#syntax/span.ts";
import { type Decision, NEVER } from "../decision.ts";
import { base } from "../raw-fact.ts";
import { instanceName } from "../world.ts";
import { type At, bottomOf, type Instance, isAbove, topOf } from "./at-node.ts";
import type { Instead, TorqueFact } from "./limit-fact.ts";
import { meets, stated, stateOf, type ThreadWay } from "./thread-state.ts";

type Bare = TorqueFact extends infer Fact
  ? Fact extends unknown
    ? Omit<Fact, "options" | "pass" | "more">
    : never
  : never;

/** What is wrong with the torque of one fastener. @param ways the ways its thread can be */
export function torqueFacts(at: At, action: TightenAction, fastener: Instance, ways: readonly ThreadWay[]): void {
  const { part, index } = fastener;
  const name = instanceName(part, index);
  const final = finalOf(action);
  if (final === null || action.byHand || part.damaged) return;
  const tell = (fact: Bare, where: Decision, who: string): void => {
    if (where === NEVER || at.node.operation.kind !== "act") return;
    const { pass } = at.node.operation.line;
    at.collect({ fact, where, pass, subject: base(who), node: at.node.id });
  };
  const stages = stagesFault(at, action, fastener, final);
  if (stages !== null) tell({ ...stages, kind: "torque stages", part: part.name }, at.state.reach, part.name);
  conditionFacts(action, fastener, final, ways, (fact, where) => tell(fact, where, name));
  const disagrees = stages === null ? disagreement(at, action, fastener, final, ways) : null;
  if (disagrees !== null) tell(disagrees, at.state.reach, name);
}

/** The torque that is left in the end; null where none is given, or the last could not be read. */
export function finalOf({ stages, stagesSpan }: TightenAction): Value | null {
  const last = stages.at(-1);
  return last === undefined || stagesSpan === null || last.span.end !== stagesSpan.end ? null : last;
}

/** Whether a later line tightens the same fastener further: then this one only brings it near. */
export function isTightenedFurther(
  { hangsOnWhichOne, node, run }: At,
  { part, index }: Instance,
  torque: Quantity,
): boolean {
  hangsOnWhichOne?.();
  const own = readingOf(torque);
  return run.changedAt(run.world.part(part, index, "grip")).some(({ id, operation }) => {
    if (id <= node.id || operation.kind !== "act" || operation.line.action.verb !== "tighten") return false;
    if (!operation.line.objects.some((thing) => thing.kind === "part" && thing.part === part && thing.index === index))
      return false;
    const later = operation.line.action.stages.at(-1);
    return later !== undefined && own !== null && isAbove(readingOf(later.quantity), own);
  });
}

// ---- stages

type StagesFault = Pick<Extract<TorqueFact, { kind: "torque stages" }>, "how" | "stage" | "other" | "span" | "instead">;

function stagesFault(at: At, action: TightenAction, fastener: Instance, final: Value): StagesFault | null {
  const { stages, angle, toSeat } = action;
  const span = action.stagesSpan ?? action.place;
  const readings = stages.map(({ quantity }) => readingOf(quantity) ?? ZERO);
  const fault = stageFault(readings, readings.at(-1) ?? ZERO);
  const stage = fault === null ? undefined : stages[fault.at];
  const before = fault === null ? undefined : stages[fault.at - 1];
  const mended = (): Instead | null => instead(span, stages, wholeTorque(fastener.part, final));
  if (stage !== undefined && before !== undefined)
    return { how: "falls", stage: stage.quantity, other: before.quantity, span, instead: mended() };
  const whole = angle === null && !toSeat ? wholeTorque(fastener.part, final) : null;
  if (whole === null || isWhole(stages, final, whole)) return null;
  if (isTightenedFurther(at, fastener, final.quantity)) return null;
  return { how: "last", stage: final.quantity, other: whole, span, instead: mended() };
}

/** The final value: what the shares are of, else the one torque that the part declares. */
function wholeTorque(part: Part, { share }: Value): Quantity | null {
  if (share !== undefined) return share.whole;
  const [only, ...more] = part.torques;
  return only === undefined || more.length > 0 ? null : only.value.quantity;
}

/** A share is of all of it; torques written out stop short only where the last stays below the declared band. */
function isWhole(stages: readonly Value[], { quantity, share }: Value, whole: Quantity): boolean {
  if (share !== undefined) return sameQuantity({ ...quantity, form: whole.form }, whole);
  return stages.length < 2 || !isAbove(bottomOf(whole), topOf(quantity));
}

/** The stages in rising order, with the final value as the last. */
function instead(span: Span, stages: readonly Value[], whole: Quantity | null): Instead | null {
  const rising = [...stages].sort((a, b) => cmp(readingOf(a.quantity) ?? ZERO, readingOf(b.quantity) ?? ZERO));
  const last = rising.at(-1);
  if (last === undefined) return null;
  const { share } = last;
  if (share !== undefined) {
    if (rising.some((stage) => stage.share === undefined)) return null;
    const under = rising.filter(({ quantity }) => isAbove(readingOf(share.whole), readingOf(quantity)));
    const shares = [...under.map((stage) => stage.share?.text ?? ""), "100 %"];
    return { span, text: `${[...new Set(shares)].join(", ")} of ${share.of}` };
  }
  const isShort = whole !== null && isAbove(bottomOf(whole), topOf(last.quantity));
  const shown = [...rising.map(({ quantity }) => show(quantity)), ...(isShort ? [show(whole)] : [])];
  return { span, text: [...new Set(shown)].join(", ") };
}

/** One number for a stage: its nominal value, else its low end. */
function readingOf({ nominal, low, high }: Quantity): Rational | null {
  return (nominal ?? low ?? high)?.base ?? null;
}

// ---- the condition it is stated for

function conditionFacts(
  action: TightenAction,
  { part, index }: Instance,
  final: Value,
  ways: readonly ThreadWay[],
  tell: (fact: Bare, where: Decision) => void,
): void {
  const name = instanceName(part, index);
  const span = action.place;
  if (part.torques.some(({ condition }) => condition === null)) {
    if (!saysCondition(part)) for (const way of ways) tellNoCondition(way);
    return;
  }
  if (part.torques.length === 0) {
    if (part.fastener && !saysCondition(part)) for (const way of ways) tellNoCondition(way);
    return;
  }
  for (const way of ways) {
    const found = stateOf(way);
    if (found === null) continue;
    const meant = part.torques.filter(({ value }) => agrees(final.quantity, value.quantity));
    const fitting = part.torques.filter(({ condition }) => meets(condition, way));
    const [torque] = meant.length > 0 ? meant : part.torques;
    if (torque === undefined || torque.condition === null) continue;
    const isRight = meant.length === 0 ? fitting.length > 0 : meant.some((one) => fitting.includes(one));
    if (isRight) continue;
    const [other] = fitting;
    tell(
      {
        kind: "torque condition",
        part: name,
        span,
        stated: stated(torque.condition),
        found,
        torque: torque.value.quantity,
        fitting: other?.value.quantity ?? null,
        declaredAt: torque.value.span,
        instead: other === undefined ? null : inPlaceOf(action, other.value.quantity),
      },
      way.where,
    );
  }

  /** What was cleaned, or has something on it, says so itself. */
  function tellNoCondition({ is, where }: ThreadWay): void {
    if (is === "bare" || is === "as found")
      tell({ kind: "no condition", part: name, span, torque: final.quantity }, where);
  }
}

/** Whether the part says of any value of its thread what that is for. */
function saysCondition({ torques, nutFactors, frictions }: Part): boolean {
  return [...torques, ...nutFactors, ...frictions].some(({ condition }) => condition !== null);
}

// ---- the declared torque

function disagreement(
  at: At,
  action: TightenAction,
  fastener: Instance,
  final: Value,
  ways: readonly ThreadWay[],
): Bare | null {
  const { part, index } = fastener;
  if (action.toSeat || action.angle !== null || part.torques.length === 0) return null;
  if (part.torques.some(({ value }) => agrees(final.quantity, value.quantity))) return null;
  const declared = nearestTorque(part.torques, ways);
  if (declared === undefined || declared.quantity.kind !== final.quantity.kind) return null;
  if (isAbove(topOf(declared.quantity), topOf(final.quantity)) && isTightenedFurther(at, fastener, final.quantity))
    return null;
  return {
    kind: "torque disagrees",
    part: instanceName(part, index),
    span: action.stagesSpan ?? action.place,
    torque: final.quantity,
    declared: declared.quantity,
    declaredAt: declared.span,
    instead: action.stages.length === 1 ? inPlaceOf(action, declared.quantity) : null,
  };
}

/** The one for the condition that the thread is in on all ways, else the first. */
function nearestTorque(torques: readonly Conditioned[], ways: readonly ThreadWay[]): Value | undefined {
  return (torques.find(({ condition }) => ways.every((way) => meets(condition, way))) ?? torques[0])?.value;
}

/** Inside the declared band; of one that is declared as one value, only that it is not left out. */
function agrees(torque: Quantity, declared: Quantity): boolean {
  if (torque.kind !== declared.kind) return true;
  return declared.form === "nominal" ? overlaps(torque, declared) : within(torque, declared);
}

function inPlaceOf({ stages, stagesSpan }: TightenAction, torque: Quantity): Instead | null {
  return stagesSpan === null || stages.length !== 1 ? null : { span: stagesSpan, text: show(torque) };
}
