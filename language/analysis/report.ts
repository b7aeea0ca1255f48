// Looks through a followed procedure for what is wrong with its order and flow, and puts what one place brings into one
// fact: first pass, how many more, and exactly the option assignments. Knows no severities and no wording.
import type { Pass } from "#model/problem.ts";
import type { Span } from "#syntax/span.ts";
import { broken, notAsAtStart, unmet } from "./condition-facts.ts";
import { ALWAYS, type Decision, NEVER } from "./decision.ts";
import type { AnalysisFact } from "./fact.ts";
import { flowFacts } from "./flow-facts.ts";
import type { State } from "./flow-state.ts";
import { pass, type Run, stateBefore } from "./follow.ts";
import type { Node } from "./graph.ts";
import { findLeftBehind, unfinishedFacts } from "./leaving.ts";
import { missing } from "./need-facts.ts";
import type { Constraint } from "./precedence.ts";
import type { Collect, Raw } from "./raw-fact.ts";

/** Everything that is wrong with the order and flow of the procedure. */
export function factsOf(run: Run): readonly AnalysisFact[] {
  const raws: Raw[] = [];
  const collect: Collect = (raw) => {
    const where = run.decisions.and(raw.where, run.given);
    if (where !== NEVER) raws.push({ ...raw, where });
  };
  const constraints = byEarlier(run.constraints);
  for (const node of run.graph.nodes) {
    const state = stateBefore(run, node.id);
    if (state === undefined) continue;
    for (const constraint of constraints.get(node.id) ?? []) broken(run, state, constraint, collect);
    atNode(run, node, state, collect);
  }
  const left = findLeftBehind(run);
  left.raws.forEach(collect);
  unfinishedFacts(run, left).forEach(collect);
  flowFacts(run).forEach(collect);
  return together(run, raws);
}

function byEarlier(constraints: readonly Constraint[]): ReadonlyMap<number, readonly Constraint[]> {
  const map = new Map<number, Constraint[]>();
  for (const constraint of constraints)
    map.set(constraint.earlier, [...(map.get(constraint.earlier) ?? []), constraint]);
  return map;
}

function atNode(run: Run, node: Node, state: State, collect: Collect): void {
  const { operation } = node;
  if (operation.kind === "enter") {
    for (const condition of operation.step.needs) unmet(run, node, state, condition, null, collect);
  }
  if (operation.kind === "act" && operation.line.action.verb === "perform") {
    const callee = run.calleeAt(node);
    const name = operation.line.action.procedure?.name ?? "";
    for (const condition of callee?.begin ?? []) unmet(run, node, state, condition, name, collect);
    for (const { key, initial } of callee?.asAtStart ?? [])
      notAsAtStart(run, node, state, run.world.byKey(key, initial), initial, name, collect);
  }
  pass(run, node, state, (move, now) => {
    for (const need of move.needs) missing(run, node, now, need, collect);
  });
}

function together(run: Run, raws: readonly Raw[]): readonly AnalysisFact[] {
  const groups = new Map<string, { first: Raw; where: Decision; passes: Set<string> }>();
  for (const raw of raws) {
    const how = raw.fact.kind === "retained" ? raw.fact.how : "";
    const key = `${raw.fact.kind}|${how}|${spanText(raw.fact.span)}|${raw.subject}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { first: raw, where: raw.where, passes: new Set([passText(raw.pass)]) });
    else {
      group.where = run.decisions.or(group.where, raw.where);
      group.passes.add(passText(raw.pass));
    }
  }
  return [...groups.values()].map(({ first, where, passes }) => {
    const shown = run.decisions.visible(where);
    const always = run.decisions.or(shown, run.decisions.not(run.given)) === ALWAYS;
    const options = always ? {} : { options: run.decisions.assignments(shown) };
    return { ...first.fact, ...options, pass: first.pass, more: passes.size - 1 } as AnalysisFact;
  });
}

function spanText(span: Span): string {
  return `${span.path}:${span.start}-${span.end}`;
}

function passText(pass: Pass): string {
  return pass.map(({ variable, value }) => `${variable}=${value}`).join(",");
}
