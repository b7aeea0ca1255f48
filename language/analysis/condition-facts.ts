// Conditions that do not hold where they must, and declared orders that are broken, as facts.
import { conditionText } from "#model/condition-text.ts";
import type { ExpandedCondition } from "#model/expanded.ts";
import type { Entry } from "./cell.ts";
import { NEVER } from "./decision.ts";
import { describe } from "./describe.ts";
import type { Origin } from "./fact.ts";
import { cellOf, type State } from "./flow-state.ts";
import type { Run } from "./follow.ts";
import { atomsOf, canFail, culprit, type Formula, mayHold } from "./formula.ts";
import type { Node } from "./graph.ts";
import { mendText } from "./mend.ts";
import { originOf } from "./origin.ts";
import { WRONG_WAY } from "./precedence.ts";
import type { Collect } from "./raw-fact.ts";

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
  const read = (variable: number) => cellOf(run, state, variable);
  const where = run.decisions.and(state.reach, canFail(run.cells, run.decisions, read, formula));
  if (where === NEVER) return;
  const bad = culprit(read, formula);
  const step = node.step;
  const span = node.operation.kind === "act" ? node.operation.line.action.place : condition.span;
  collect({
    fact: {
      kind: "unmet need",
      span,
      condition: conditionText(condition),
      state: bad === null ? "" : describe(run.world, bad.variable, bad.value),
      since: originOf(run, bad?.from ?? 0),
      givers: bad === null ? [] : giversOf(run, node, formula, bad),
      performed,
      implied: false,
      stepSpan: step?.step.span ?? span,
      mend:
        bad === null || run.decisions.and(state.reach, mayHold(run.cells, run.decisions, read, formula)) !== NEVER
          ? null
          : mendText(run.world, bad.variable, formula),
    },
    where,
    pass: step?.pass ?? [],
    subject: performed === null ? "" : conditionText(condition),
  });
}

/** What a performed procedure touches and does not mention must be as at a start. */
export function notAsAtStart(
  run: Run,
  node: Node,
  state: State,
  variable: number,
  initial: string,
  performed: string,
  collect: Collect,
): void {
  const formula: Formula = {
    variable,
    good: (value) => value === initial,
    met: { change: () => initial },
    unmet: null,
  };
  const read = (at: number) => cellOf(run, state, at);
  const where = run.decisions.and(state.reach, canFail(run.cells, run.decisions, read, formula));
  const bad = culprit(read, formula);
  if (where === NEVER || bad === null || node.operation.kind !== "act") return;
  const condition = describe(run.world, variable, initial);
  collect({
    fact: {
      kind: "unmet need",
      span: node.operation.line.action.place,
      condition,
      state: describe(run.world, variable, bad.value),
      since: originOf(run, bad.from),
      givers: [],
      performed,
      implied: true,
      stepSpan: node.step?.step.span ?? node.operation.line.action.span,
      mend: null,
    },
    where,
    pass: node.operation.line.pass,
    subject: condition,
  });
}

/** Steps elsewhere that give the state that is wanted. */
function giversOf(
  run: Run,
  node: Node,
  formula: Formula,
  bad: Entry & { readonly variable: number },
): readonly Origin[] {
  const wanted = atomsOf(formula).find((atom) => atom.variable === bad.variable);
  if (wanted === undefined) return [];
  const found: Origin[] = [];
  for (const other of run.changedAt(bad.variable)) {
    if (other.id === node.id || found.length >= 3) continue;
    const gives =
      run
        .movesAt(other)
        .some((move) =>
          move.updates.some(
            (update) => update.variable === bad.variable && wanted.good(update.change(bad.value, "in")),
          ),
        ) ||
      (other.operation.kind === "leave" &&
        other.operation.step.gives.some((condition) =>
          run
            .atoms(condition)
            .some((atom) => atom.variable === bad.variable && wanted.good(atom.met?.change(bad.value) ?? bad.value)),
        ));
    const origin = originOf(run, other.id);
    if (gives && !found.some((known) => known.span.start === origin.span.start && known.span.path === origin.span.path))
      found.push(origin);
  }
  return found;
}

/** A step that comes first although another says that it comes before. */
export function broken(run: Run, state: State, constraint: Run["constraints"][number], collect: Collect): void {
  const where = run.decisions.and(
    state.reach,
    run.cells.where(cellOf(run, state, constraint.variable), (value) => value === WRONG_WAY),
  );
  const said = run.graph.nodes[constraint.said];
  const other = run.graph.nodes[constraint.said === constraint.earlier ? constraint.later : constraint.earlier];
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
  });
}
