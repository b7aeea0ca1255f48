// Conditions that do not hold where they must, and declared orders that are broken, as facts.
import { conditionText } from "#model/condition-text.ts";
import type { ExpandedCondition } from "#model/expanded.ts";
import type { Span } from "#syntax/span.ts";
import type { Entry } from "./cell.ts";
import { NEVER } from "./decision.ts";
import { describe } from "./describe.ts";
import { cellOf, type State } from "./flow-state.ts";
import type { Run } from "./follow.ts";
import { type Atom, atomsOf, canFail, culprit, type Formula, mayHold } from "./formula.ts";
import type { Node } from "./graph.ts";
import { mendText } from "./mend.ts";
import { knownCell, originOf } from "./origin.ts";
import { WRONG_WAY } from "./precedence.ts";
import type { Collect } from "./raw-fact.ts";
import { isDead } from "./state-values.ts";
import { kindOf } from "./world.ts";

/** A condition that a step needs, or that a performed procedure begins with. */
export function unmet(
  run: Run,
  node: Node,
  state: State,
  condition: ExpandedCondition,
  performed: string | null,
  collect: Collect,
): void {
  const formula = run.formula(condition);
  const read = (variable: number) => knownCell(run, state, variable);
  const where = run.decisions.and(state.reach, canFail(run.cells, run.decisions, read, formula));
  if (where === NEVER) return;
  const bad = culprit(read, formula);
  const givers = bad === null ? [] : giversOf(run, node, formula, bad);
  const step = node.step;
  const span = node.operation.kind === "ask" ? node.operation.line.action.place : condition.span;
  collect({
    fact: {
      kind: "unmet need",
      span,
      condition: conditionText(condition),
      state: bad === null ? "" : describe(run.world, bad.variable, bad.value),
      since: originOf(run, bad?.from ?? 0),
      givers: givers.map(({ id }) => originOf(run, id)),
      undone: bad !== null && givers.some(({ id }) => id < bad.from),
      performed,
      implied: false,
      askedAt: performed === null ? null : condition.span,
      stepSpan: node.anyOrder ? null : (step?.step.span ?? span),
      mend:
        bad === null || run.decisions.and(state.reach, mayHold(run.cells, run.decisions, read, formula)) !== NEVER
          ? null
          : mendText(
              run.world,
              bad,
              formula,
              givers.some(({ id }) => id > node.id),
            ),
    },
    where,
    pass: step?.pass ?? [],
    subject: performed === null ? "" : conditionText(condition),
    node: node.id,
    from: bad?.from ?? 0,
  });
}

/** What a performed procedure touches and does not mention must be as at a start. */
export function notAsAtStart(
  run: Run,
  node: Node,
  state: State,
  variable: number,
  { initial, askedAt }: { readonly initial: string; readonly askedAt: Span },
  performed: string,
  collect: Collect,
): void {
  const isEnergy = kindOf(run.world.keyOf(variable)) === "energy";
  const formula: Formula = {
    variable,
    // Off is off, whoever switched it off.
    good: (value) => value === initial || (isEnergy && isDead(value) && isDead(initial)),
    met: { change: () => initial },
    unmet: null,
  };
  const read = (at: number) => knownCell(run, state, at);
  const where = run.decisions.and(state.reach, canFail(run.cells, run.decisions, read, formula));
  const bad = culprit(read, formula);
  if (where === NEVER || bad === null || node.operation.kind !== "ask") return;
  const condition = describe(run.world, variable, initial);
  collect({
    fact: {
      kind: "unmet need",
      span: node.operation.line.action.place,
      condition,
      state: describe(run.world, variable, bad.value),
      since: originOf(run, bad.from),
      givers: [],
      undone: false,
      performed,
      implied: true,
      askedAt,
      stepSpan: null,
      mend: null,
    },
    where,
    pass: node.operation.line.pass,
    subject: condition,
    node: node.id,
    from: bad.from,
  });
}

/** Steps elsewhere that give the state that is wanted, three at most. */
function giversOf(run: Run, node: Node, formula: Formula, bad: Entry & { readonly variable: number }): readonly Node[] {
  const wanted = atomsOf(formula).find((atom) => atom.variable === bad.variable);
  if (wanted === undefined) return [];
  const found = new Map<string, Node>();
  for (const other of run.changedAt(bad.variable)) {
    if (other.id === node.id || found.size >= 3) continue;
    const { path, start } = originOf(run, other.id).span;
    if (gives(run, other, wanted, bad) && !found.has(`${path}:${start}`)) found.set(`${path}:${start}`, other);
  }
  return [...found.values()];
}

function gives(run: Run, node: Node, wanted: Atom, bad: Entry & { readonly variable: number }): boolean {
  const isSo = (value: string): boolean => wanted.good(value);
  const moves = run.movesAt(node).flatMap((move) => move.updates);
  if (moves.some((update) => update.variable === bad.variable && isSo(update.change(bad.value, "in", node.id, false))))
    return true;
  if (node.operation.kind !== "leave") return false;
  const atoms = node.operation.step.gives.flatMap((condition) => run.atoms(condition));
  return atoms.some((atom) => atom.variable === bad.variable && isSo(atom.met?.change(bad.value) ?? bad.value));
}

/** A step that comes first although another says that it comes before. */
export function broken(
  run: Run,
  at: Node,
  state: State,
  constraint: Run["constraints"][number],
  collect: Collect,
): void {
  const cell = cellOf(run, state, constraint.variable);
  const isWrong = (value: string): boolean => value === WRONG_WAY;
  const where = run.decisions.and(state.reach, run.cells.where(cell, isWrong));
  const said = run.graph.nodes[constraint.said];
  const other = run.graph.nodes[constraint.other];
  collect({
    fact: {
      kind: "declared",
      span: constraint.ref.said,
      step: said?.step?.step.name ?? said?.number ?? "",
      other: constraint.ref.name,
      wanted: constraint.wanted,
      otherSpan: other?.step?.step.headSpan ?? constraint.ref.span,
    },
    where,
    pass: said?.step?.pass ?? [],
    subject: constraint.ref.name,
    node: at.id,
    from: cell.find(({ value }) => isWrong(value))?.from ?? 0,
  });
}
