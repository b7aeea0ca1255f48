// Conditions: what they speak of, and which states and choices that has. Knows no actions.

import * as ast from "#grammar/generated/ast.ts";
import { ENERGY_STATES, PART_STATES } from "#syntax/built-in-states.ts";
import { nearestNames } from "#syntax/edit-distance.ts";
import type { Declaration } from "./declarations.ts";
import { lowerBound, lowerValue, workOut } from "./lower-quantity.ts";
import { lowerTarget } from "./lower-target.ts";
import { type Scope, spanOf } from "./lowering.ts";
import { likelyMeant, meant, propertySpan, resolve, type Sort } from "./names.ts";
import type { Condition, Target } from "./procedure.ts";

/** A condition; `unknown` where it cannot be read, with a problem. */
export function lowerCondition(scope: Scope, node: ast.Condition): Condition {
  const span = spanOf(scope, node);
  if (ast.isAllOf(node)) return { form: "all", operands: lowerConditions(scope, node.operands), span };
  if (ast.isAnyOf(node)) return { form: "any", operands: lowerConditions(scope, node.operands), span };
  if (ast.isNot(node)) return { form: "not", operand: lowerCondition(scope, node.operand), span };
  if (ast.isNoTemporary(node)) return { form: "no temporary parts", span };
  if (node.state !== undefined) return stateCondition(scope, node, node.state);
  if (node.clock !== undefined) return clockCondition(scope, node, node.clock);
  if (node.limit !== undefined && node.value !== undefined) return boundCondition(scope, node, node.limit, node.value);
  return factCondition(scope, node);
}

function lowerConditions(scope: Scope, nodes: readonly ast.Condition[]): readonly Condition[] {
  return nodes.map((node) => lowerCondition(scope, node));
}

/**
 * Conditions, and what those that cannot be read probably speak of: nothing can be said of its state where they count. Where a name
 * is like none that is known, that is anything of which no other condition speaks.
 * @param inReach what can be spoken of
 */
export function lowerWithDoubt(scope: Scope, nodes: readonly ast.Condition[], inReach: readonly Declaration[]) {
  const conditions = lowerConditions(scope, nodes);
  const subjects = nodes.map((node) => subjectsIn(scope, node));
  const unread = subjects.filter((_, at) => holdsUnknown(conditions[at])).flat();
  const spokenOf = new Set(subjects.flat());
  const others = unread.includes(null) ? inReach.filter((thing) => isOfState(thing) && !spokenOf.has(thing)) : [];
  return {
    conditions,
    doubtful: [...unread.filter((thing) => thing !== null), ...others],
    isWhole: !conditions.some(holdsUnknown),
  };
}

function isOfState({ kind }: Declaration): boolean {
  return kind === "part" || kind === "energy";
}

/** Whether any of it could not be read. */
export function holdsUnknown(condition: Condition | undefined): boolean {
  if (condition?.form === "all" || condition?.form === "any") return condition.operands.some(holdsUnknown);
  return condition?.form === "not" ? holdsUnknown(condition.operand) : condition?.form === "unknown";
}

/** Null stands for a name that may mean anything. */
function subjectsIn(scope: Scope, node: ast.Condition): readonly (Declaration | null)[] {
  if (ast.isAllOf(node) || ast.isAnyOf(node)) return node.operands.flatMap((operand) => subjectsIn(scope, operand));
  if (ast.isNot(node)) return subjectsIn(scope, node.operand);
  if (ast.isNoTemporary(node)) return [];
  const { $refText: name, ref } = node.subject.thing;
  const meant = ref === undefined ? likelyMeant(scope, name, ["part", "energy"]) : scope.lowering.records.get(ref);
  return [meant ?? null];
}

function factCondition(scope: Scope, node: ast.StateCondition): Condition {
  const span = spanOf(scope, node);
  const fact = resolve(scope, node.subject.thing, ["fact"], wantedWithoutState(node.subject.thing));
  return fact === null ? { form: "unknown", span } : { form: "fact", fact, span };
}

/** Of a part or energy alone its state was forgotten. */
function wantedWithoutState({ $refText: name, ref }: ast.Target["thing"]): string | undefined {
  if (ast.isPart(ref)) return `a condition such as “${name} is installed”`;
  if (ast.isEnergy(ref)) return `a condition such as “${name} is isolated”`;
  return ast.isOption(ref) ? `a condition such as “${name} is ${ref.choices[0]?.name ?? "yes"}”` : undefined;
}

function stateCondition(scope: Scope, node: ast.StateCondition, state: string): Condition {
  const span = spanOf(scope, node);
  const subject = subjectOf(scope, node, ["part", "energy", "option"]);
  const thing = subject?.thing ?? null;
  if (subject === null || thing === null) return { form: "unknown", span };
  const stateSpan = propertySpan(scope, node, "state");
  if (!statesOf(thing).includes(state)) {
    reportState(scope, state, stateSpan, thing);
    return { form: "unknown", span };
  }
  return { form: "state", subject, state, stateSpan, negated: node.negated, span };
}

function statesOf(thing: Declaration): readonly string[] {
  if (thing.kind === "part") return [...PART_STATES, ...thing.states];
  if (thing.kind === "option") return thing.choices.map((choice) => choice.name);
  return ENERGY_STATES;
}

function reportState(scope: Scope, name: string, span: ReturnType<typeof spanOf>, thing: Declaration): void {
  // A line that could not be read may have named it.
  if (thing.damaged) return;
  const wanted = thing.kind === "option" ? `a choice of ${thing.name}` : `a state of ${thing.name}`;
  scope.problems.push({ kind: "unknown name", span, name, wanted, nearest: nearestNames(name, statesOf(thing)) });
}

function clockCondition(scope: Scope, node: ast.StateCondition, clockNode: ast.Quantity): Condition {
  const span = spanOf(scope, node);
  const clock = lowerValue(scope, clockNode, "clock position");
  const subject = subjectOf(scope, node, ["ring"], "action");
  if (subject === null || clock === null) return { form: "unknown", span };
  return { form: "clock", subject, clock, negated: node.negated, span };
}

function boundCondition(scope: Scope, node: ast.StateCondition, limit: string, value: ast.Expression): Condition {
  const span = spanOf(scope, node);
  const subject = subjectOf(scope, node, ["part", "reading"]);
  const named = meant(scope, node.subject.thing);
  const kind = ast.isMeasure(named)
    ? (workOut(scope, named)?.quantity.kind ?? null)
    : ast.isPart(named)
      ? "temperature"
      : null;
  const bound = lowerBound(scope, limit, value, kind);
  if (subject === null || bound === null) return { form: "unknown", span };
  return { form: "bound", subject, bound, negated: node.negated, span };
}

function subjectOf(
  scope: Scope,
  node: ast.StateCondition,
  sorts: readonly Sort[],
  use: "condition" | "action" = "condition",
): Target | null {
  const { target, sound } = lowerTarget(scope, node.subject, sorts, use);
  return sound ? target : null;
}
