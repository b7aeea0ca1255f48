// The same work on parts that back each other up, by one role that nobody else looks after: what goes wrong on one by a mistake
// goes wrong on both. Roles are not persons; a performed procedure is looked at by itself.
import type { Role } from "#model/declarations.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import { partInstances } from "#model/instances.ts";
import type { Action, Step } from "#model/procedure.ts";
import { damagedIn } from "#model/written-steps.ts";
import { type Decision, NEVER } from "./decision.ts";
import type { AnalysisFact } from "./fact.ts";
import { type Run, stateBefore } from "./follow.ts";
import { declared, type Instance, partsOf } from "./limits/at-node.ts";
import { base, type Raw } from "./raw-fact.ts";
import { together } from "./report.ts";
import { instanceKey, instanceName } from "./world.ts";

/** Each pair of parts that back each other up and get the same work by one role, at the first such work on the second. */
export function dualMaintenanceFacts(run: Run): readonly AnalysisFact[] {
  const partners = partnersIn(run);
  if (partners.size === 0) return [];
  const looks = looksAt(run);
  const isLookedAfter = ({ key, role }: Work): boolean => [...(looks.get(key) ?? [])].some((id) => id !== role.id);
  const done: Work[] = [];
  const told = new Map<string, Decision>();
  const raws: Raw[] = [];
  for (const work of workIn(run, partners)) {
    for (const other of done) {
      const isSame = other.verb === work.verb && other.role.id === work.role.id;
      if (!isSame || !partners.get(work.key)?.has(other.key) || isLookedAfter(work) || isLookedAfter(other)) continue;
      const pair = [work.key, other.key].sort().join(" ");
      const { and, not, or } = run.decisions;
      const before = told.get(pair) ?? NEVER;
      const where = and(and(work.where, other.where), not(before));
      if (where === NEVER) continue;
      told.set(pair, or(before, where));
      raws.push(rawOf(run, work, other, where));
    }
    done.push(work);
  }
  return together(run, raws);
}

/** What is done to one instance, by the one role that answers for it. */
interface Work {
  readonly key: string;
  readonly name: string;
  readonly verb: Action["verb"];
  readonly role: Role;
  readonly line: ExpandedAction;
  readonly step: Step;
  readonly where: Decision;
}

/** For each instance those that back it up, or that it backs up. */
function partnersIn(run: Run): ReadonlyMap<string, ReadonlySet<string>> {
  const partners = new Map<string, Set<string>>();
  const add = (from: string, to: string): void => {
    if (from !== to) partners.set(from, (partners.get(from) ?? new Set()).add(to));
  };
  for (const part of declared(run, "part"))
    for (const { index } of part.backsUp.length === 0 ? [] : partInstances(part))
      for (const backed of run.world.targets("backsUp", part, index)) {
        const [one, other] = [instanceKey(part, index), instanceKey(backed.part, backed.index)];
        add(one, other);
        add(other, one);
      }
  return partners;
}

/** Work can be done wrongly; to lift, support or set down a part is over when it is done. */
const WORK: ReadonlySet<Action["verb"]> = new Set<Action["verb"]>([
  ...(["install", "press", "remove", "discard", "tighten", "loosen", "clean", "lubricate", "apply"] as const),
  ...(["align", "drain", "bleed", "fill", "heat", "cool"] as const),
]);

/** In the order of the work; that on a fastener is work on what it secures. */
function* workIn(run: Run, partners: ReadonlyMap<string, unknown>): Generator<Work> {
  for (const node of run.graph.nodes) {
    const state = stateBefore(run, node.id);
    const step = node.step?.step;
    if (state === undefined || step === undefined || node.operation.kind !== "act") continue;
    const { line } = node.operation;
    const { verb } = line.action;
    const role = WORK.has(verb) ? onlyRole(step) : null;
    const where = run.decisions.and(state.reach, run.given);
    if (role === null || where === NEVER) continue;
    for (const { part, index } of partsOf(line).flatMap((one) => [one, ...heldBy(run, one)])) {
      const key = instanceKey(part, index);
      if (partners.has(key)) yield { key, name: instanceName(part, index), verb, role, line, step, where };
    }
  }
}

function heldBy(run: Run, { part, index }: Instance): readonly Instance[] {
  return run.world.targets("secures", part, index);
}

/** The one role that signs a step, or does it where nobody signs; null where nobody is known, or a second one has part in it. */
function onlyRole({ by, hasUnknownRole, hold, lines, signs }: Step): Role | null {
  const [role, ...others] = rolesOf({ by, signs });
  if (role === undefined || hasUnknownRole || !damagedIn(lines).next().done) return null;
  return [...others, ...(hold === null ? [] : [hold])].every(({ id }) => id === role.id) ? role : null;
}

function rolesOf({ by, signs }: Pick<Step, "by" | "signs">): readonly Role[] {
  return signs.length > 0 ? signs : by === null ? [] : [by];
}

/** By instance, the roles of the steps that inspect it. */
function looksAt(run: Run): ReadonlyMap<string, ReadonlySet<string>> {
  const looks = new Map<string, Set<string>>();
  for (const { operation, step } of run.graph.nodes) {
    if (operation.kind !== "act" || operation.line.action.verb !== "inspect" || step === null) continue;
    const { hold } = step.step;
    const roles = [...rolesOf(step.step), ...(hold === null ? [] : [hold])];
    for (const { part, index } of partsOf(operation.line)) {
      const key = instanceKey(part, index);
      const known = looks.get(key) ?? new Set();
      looks.set(key, known);
      for (const { id } of roles) known.add(id);
    }
  }
  return looks;
}

function rawOf(run: Run, work: Work, other: Work, where: Decision): Raw {
  const { line, name, role, step, verb } = work;
  const others = declared(run, "role").filter(({ id }) => id !== role.id);
  const fact = {
    kind: "dual maintenance" as const,
    span: line.action.place,
    part: name,
    other: other.name,
    verb,
    role: role.title,
    otherAt: other.line.action.place,
    others: others.map((one) => one.name),
    holdIn: step.hold === null ? step.span : null,
  };
  return { fact, where, pass: line.pass, subject: base(name) };
}
