// Looks through a followed procedure for what is wrong with its order and flow, and puts what one place brings into one
// fact: first pass, how many more, and exactly the option assignments. Knows no severities and no wording.
import type { Span } from "#syntax/span.ts";
import { badJumpFacts } from "./bad-jumps.ts";
import { broken, notAsAtStart, unmet } from "./condition-facts.ts";
import { ALWAYS, type Decision, NEVER } from "./decision.ts";
import { emptyFacts } from "./empty-blocks.ts";
import { endlessFacts } from "./endless.ts";
import { passText } from "./entries.ts";
import type { AnalysisFact, Origin } from "./fact.ts";
import { flowFacts } from "./flow-facts.ts";
import type { State } from "./flow-state.ts";
import { eachMove, type Run, stateBefore } from "./follow.ts";
import type { Node } from "./graph.ts";
import { endFacts } from "./leaving.ts";
import { missing } from "./need-facts.ts";
import { orderOf } from "./order-witness.ts";
import type { Constraint } from "./precedence.ts";
import type { Collect, Raw } from "./raw-fact.ts";
import { tooLateFacts } from "./times.ts";

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
    for (const constraint of constraints.get(node.id) ?? []) broken(run, node, state, constraint, collect);
    atNode(run, node, state, collect);
  }
  for (const raw of endFacts(run)) collect(raw);
  for (const raw of [...flowFacts(run), ...badJumpFacts(run), ...endlessFacts(run), ...emptyFacts(run)]) collect(raw);
  for (const raw of tooLateFacts(run)) collect(raw);
  return together(run, raws);
}

function byEarlier(constraints: readonly Constraint[]): ReadonlyMap<number, readonly Constraint[]> {
  const map = new Map<number, Constraint[]>();
  for (const constraint of constraints)
    for (const node of constraint.earlier) map.set(node, [...(map.get(node) ?? []), constraint]);
  return map;
}

function atNode(run: Run, node: Node, state: State, collect: Collect): void {
  const { operation } = node;
  if (operation.kind === "enter") {
    for (const condition of operation.step.needs) unmet(run, node, state, condition, null, collect);
  }
  if (operation.kind === "ask" && operation.line.action.verb === "perform") {
    const callee = run.askedAt(node);
    const name = operation.line.action.procedure?.name ?? "";
    for (const condition of callee?.begin ?? []) unmet(run, node, state, condition, name, collect);
    for (const start of callee?.asAtStart ?? [])
      notAsAtStart(run, node, state, run.world.byKey(start.key, start.initial), start, name, collect);
    for (const { need, span, when } of callee === null ? [] : run.askedOf(callee)) {
      const reached = { ...state, reach: run.decisions.and(state.reach, when) };
      const inside: Collect = (raw) => collect({ ...raw, fact: { ...raw.fact, inside: { performed: name, span } } });
      missing(run, node, reached, need, inside);
    }
  }
  eachMove(run, node, state, (move, now) => {
    for (const need of move.needs) missing(run, node, now, need, collect);
  });
}

/** One fact for each place: its first pass, how many more, and for which choices. */
export function together(run: Run, raws: readonly Raw[]): readonly AnalysisFact[] {
  const groups = new Map<string, Group>();
  for (const raw of raws) {
    const how = "how" in raw.fact ? raw.fact.how : "";
    const key = `${raw.fact.kind}|${how}|${spanText(raw.fact.span)}|${raw.subject}`;
    const group = groups.get(key);
    const inOrder = orderOf(run, raw);
    const pass = passText(raw.pass);
    const name = "part" in raw.fact ? raw.fact.part : "";
    if (group === undefined) {
      groups.set(key, { first: raw, inOrder, where: raw.where, passes: new Set([pass]), names: new Set([name]) });
      continue;
    }
    group.where = run.decisions.or(group.where, raw.where);
    group.passes.add(pass);
    if (pass === passText(group.first.pass)) group.names.add(name);
    // What happens in the order of the text needs no other to be shown; else the shortest tells most.
    if (isShorter(inOrder, group.inOrder) && (inOrder === null || pass === passText(group.first.pass))) {
      group.first = raw;
      group.inOrder = inOrder;
    }
  }
  return [...groups.values()].map((group) => factOf(run, group));
}

function isShorter(order: readonly Origin[] | null, than: readonly Origin[] | null): boolean {
  return (order?.length ?? 0) < (than?.length ?? 0);
}

/** What one place brings. */
interface Group {
  first: Raw;
  inOrder: readonly Origin[] | null;
  where: Decision;
  readonly passes: Set<string>;
  /** Of several parts in one line, those it is about. */
  readonly names: Set<string>;
}

function factOf(run: Run, { first, inOrder, where, passes, names }: Group): AnalysisFact {
  const shown = run.decisions.visible(where);
  const always = run.decisions.or(shown, run.decisions.not(run.given)) === ALWAYS;
  const { listed, more } = run.decisions.assignments(shown);
  const own = "part" in first.fact ? first.fact.part : "";
  const also = [...names].filter((name) => name !== own);
  return {
    ...first.fact,
    ...(always ? {} : { options: listed }),
    ...(always || more === 0 ? {} : { moreOptions: more }),
    ...(inOrder === null ? {} : { inOrder }),
    ...(also.length === 0 ? {} : { also }),
    pass: first.pass,
    more: passes.size - 1,
  } as AnalysisFact;
}

function spanText(span: Span): string {
  return `${span.path}:${span.start}-${span.end}`;
}
