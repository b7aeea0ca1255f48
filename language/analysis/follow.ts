// Follows an expanded procedure on paper: for every node of its flow graph the state before it, for all option values,
// all outcomes of checks, all orders and any number of passes. One mechanism for every action; what actions mean stands in action.ts.
import type { ExpandedCondition, ExpandedProcedure } from "#model/expanded.ts";
import type { Move } from "./action.ts";
import { type Cell, UNKNOWN } from "./cell.ts";
import { ALWAYS, type Decision, NEVER } from "./decision.ts";
import { apply, applyAll, assign, cellOf, meet, type State, sameState } from "./flow-state.ts";
import { type Atom, allows, canFail, conjuncts, type Formula, mayHold, negated, settle } from "./formula.ts";
import type { Edge, Node } from "./graph.ts";
import { type FollowContext, prepare, type Run } from "./run.ts";
import { emptyStore } from "./store.ts";
import { type Summary, summarise } from "./summary.ts";
import { damagedVariables, doubtOf, usedInDoubt } from "./unknown.ts";

export { type FollowContext, optionVariable, type Run } from "./run.ts";

/** More different values than this of what can grow are a loop that goes on and on: nothing can be said. */
const MOST_VALUES = 64;

export function followProcedure(expanded: ExpandedProcedure, context: FollowContext): Run {
  const { id } = expanded.procedure;
  const known = context.summaries.of(id);
  if (known !== undefined && known !== null) return known.run;
  const callee = (performed: string): Summary | null => summaryOf(performed, context);
  return context.summaries.following(id, () => {
    const run = followToEnd(prepare(expanded, context, callee, false));
    // What is only taken as met matters to the order of children where something had to be.
    return assumedInTurn(run) ? followToEnd(prepare(expanded, context, callee, true)) : run;
  });
}

function assumedInTurn(run: Run): boolean {
  return run.graph.nodes.some((node) => {
    const state = run.before[node.id];
    return node.anyOrder && state !== undefined && assumes(run, node, state);
  });
}

/** Whether something that is needed here had to be taken as met. */
function assumes(run: Run, node: Node, entry: State): boolean {
  const { operation } = node;
  const callee = run.askedAt(node);
  const needs = operation.kind === "enter" ? operation.step.needs : (callee?.begin ?? []);
  if (needs.some((condition) => canFailHere(run, entry, run.formula(condition)))) return true;
  let found = false;
  eachMove(run, node, entry, (move, state) => {
    const assumed = move.updates.filter((update) => update.assumed === true);
    found ||= assumed.length > 0 && apply(run, state, assumed, node.id) !== state;
  });
  return found;
}

function followToEnd(run: Run): Run {
  const { graph } = run;
  const before: (State | undefined)[] = new Array(graph.nodes.length);
  const incoming: Way[][] = graph.nodes.map(() => []);
  const outgoing = graph.nodes.map(({ next }) => next.map((edge): Way => ({ edge, state: undefined })));
  for (const ways of outgoing) for (const way of ways) incoming[way.edge.to]?.push(way);

  const limit = (variable: number, cell: Cell): Cell => {
    // Once unknown always unknown, or a loop that heats would be told apart pass by pass for ever.
    const isOpen = cell.length > MOST_VALUES || cell.some((entry) => entry.value === UNKNOWN);
    return isOpen && run.world.canGrow(variable) ? run.cells.one(UNKNOWN, 0) : cell;
  };
  const dirty = new Uint8Array(graph.nodes.length);
  dirty[0] = 1;
  let at = 0;
  while (at < graph.nodes.length) {
    const node = graph.nodes[at];
    if (node === undefined || dirty[at] === 0) {
      at++;
      continue;
    }
    dirty[at] = 0;
    const entry = at === 0 ? startState(run) : entryState(run, incoming[at] ?? [], limit);
    const old = before[at];
    if (entry === undefined || (old !== undefined && sameState(old, entry))) {
      at++;
      continue;
    }
    before[at] = entry;
    const after = pass(run, node, entry);
    let next = at + 1;
    for (const way of outgoing[at] ?? []) {
      const state = take(run, after, way.edge);
      if (way.state !== undefined && sameState(way.state, state)) continue;
      way.state = state;
      dirty[way.edge.to] = 1;
      if (way.edge.to < next) next = way.edge.to;
    }
    at = next;
  }
  const over = new Map<Edge, Decision>();
  for (const ways of outgoing) for (const { edge, state } of ways) over.set(edge, state?.reach ?? NEVER);
  return {
    ...run,
    before,
    reachAt: (node) => before[node]?.reach ?? NEVER,
    reachOver: (edge) => over.get(edge) ?? NEVER,
  };
}

/** An edge, with the state in which it was taken last. */
interface Way {
  readonly edge: Edge;
  state: State | undefined;
}

/** The state before a node on the paths that the choices fixed from outside leave; `undefined` where there is none. */
export function stateBefore(run: Run, node: number): State | undefined {
  const state = run.before[node];
  const reach = state === undefined ? NEVER : run.decisions.and(state.reach, run.given);
  if (state === undefined || reach === NEVER) return undefined;
  return reach === state.reach ? state : { ...state, reach };
}

function summaryOf(id: string, context: FollowContext): Summary | null {
  const known = context.summaries.of(id);
  if (known !== undefined) return known;
  const expanded = context.expandedOf(id);
  if (expanded === null || expanded.tooLarge !== null) return null;
  const summary = summarise(followProcedure(expanded, context), eachMove);
  context.summaries.keep(id, summary);
  return summary;
}

function startState(run: Run): State {
  let state: State = { reach: ALWAYS, store: emptyStore<Cell>(), films: emptyStore<Cell>() };
  for (const thing of run.expanded.procedure.unknownAtStart)
    for (const variable of damagedVariables(run.world, thing))
      state = assign(run, state, variable, run.cells.one(UNKNOWN, 0));
  return state;
}

function entryState(run: Run, ways: readonly Way[], limit: (variable: number, cell: Cell) => Cell): State | undefined {
  let entry: State | undefined;
  for (const { state } of ways) {
    if (state === undefined || state.reach === NEVER) continue;
    entry = entry === undefined ? state : meet(run, entry, state, limit);
  }
  return entry;
}

/** The state after what happens at the node. */
export function pass(run: Run, node: Node, entry: State): State {
  return applyAll(run, beforeMoves(run, node, entry), run.movesAt(node), node.id);
}

/** Every move at the node, with the state before it. */
export function eachMove(run: Run, node: Node, entry: State, look: (move: Move, state: State) => void): void {
  const moves = run.movesAt(node);
  if (moves.length === 0) return;
  let state = beforeMoves(run, node, entry);
  moves.forEach((move, at) => {
    look(move, state);
    if (at < moves.length - 1) state = apply(run, state, move.updates, node.id);
  });
}

/** The state once what the node asks for and performs is so. */
function beforeMoves(run: Run, node: Node, entry: State): State {
  const { operation } = node;
  let state = entry;
  for (const event of run.eventsAt.get(node.id) ?? []) state = apply(run, state, [event], node.id);
  const suppose = (conditions: readonly ExpandedCondition[]): void => {
    for (const condition of conditions)
      for (const part of conjuncts(run.formula(condition))) {
        // Where one side holds on every path, neither side is forgotten.
        if ("any" in part && !canFailHere(run, state, part)) continue;
        state = apply(run, state, settle(run.formulas, part), node.id);
      }
  };
  switch (operation.kind) {
    case "begin": {
      const formula = run.formula(operation.condition);
      state = { ...state, reach: run.decisions.and(state.reach, optionsOnly(run, formula)) };
      suppose([operation.condition]);
      break;
    }
    case "enter":
      suppose(operation.step.needs);
      break;
    case "leave":
      suppose(operation.step.gives);
      break;
    case "ask": {
      const callee = run.askedAt(node);
      suppose(callee?.begin ?? []);
      for (const { key, initial } of callee?.asAtStart ?? [])
        state = apply(run, state, [{ variable: run.world.byKey(key, initial), change: () => initial }], node.id);
      for (const { assumes } of callee === null ? [] : run.askedOf(callee)) state = apply(run, state, assumes, node.id);
      break;
    }
    case "act": {
      const { action } = operation.line;
      if (action.verb === "measure" && action.reading !== null)
        state = forgetReading(run, state, run.readings.variable(action.reading));
      if (action.verb === "wait" && operation.line.until !== null) suppose([operation.line.until]);
      const callee = run.calleeAt(node);
      if (callee === null) break;
      if (callee.takesTime) state = apply(run, state, run.afterTime(), node.id);
      state = callee.perform(run, state, node.id);
      suppose(callee.finish);
      break;
    }
  }
  if (operation.kind === "damaged")
    state = apply(run, state, usedInDoubt(run.world, operation.damaged.mayWait ?? 0), node.id);
  const verb = operation.kind === "damaged" ? operation.damaged.verb : undefined;
  for (const thing of run.doubtfulAt(node)) state = apply(run, state, doubtOf(run.world, thing, verb), node.id);
  return state;
}

function canFailHere(run: Run, state: State, formula: Formula): boolean {
  const failing = canFail(run.cells, run.decisions, (variable) => cellOf(run, state, variable), formula);
  return run.decisions.and(state.reach, failing) !== NEVER;
}

function optionsOnly(run: Run, formula: Formula): Decision {
  if ("decision" in formula) return formula.decision;
  if ("all" in formula) return formula.all.reduce((so, part) => run.decisions.and(so, optionsOnly(run, part)), ALWAYS);
  if ("any" in formula) return formula.any.reduce((so, part) => run.decisions.or(so, optionsOnly(run, part)), NEVER);
  return ALWAYS;
}

/** A new reading may fall anywhere, whatever the last one was. */
function forgetReading(run: Run, state: State, variable: number | null): State {
  if (variable === null) return state;
  const { decisions, cells } = run;
  let next: State = { ...state, reach: decisions.forget(state.reach, variable) };
  for (let at = 0; at < run.world.size(); at++) {
    const cell = cellOf(run, state, at);
    if (!cell.some((entry) => decisions.dependsOn(entry.when, variable))) continue;
    next = assign(
      run,
      next,
      at,
      cells.of(
        cell.map((entry) => ({ ...entry, when: decisions.forget(decisions.and(entry.when, state.reach), variable) })),
      ),
    );
  }
  return next;
}

/** Takes an edge: what its guards say is so. */
function take(run: Run, state: State, edge: Edge): State {
  let next = state;
  for (const { condition, holds } of edge.guards) {
    const formula = holds ? run.formula(condition) : negated(run.formulas, run.formula(condition));
    const reach = run.decisions.and(
      next.reach,
      mayHold(run.cells, run.decisions, (variable) => cellOf(run, next, variable), formula),
    );
    next = { ...next, reach };
    // Of alternatives none is known to be the one.
    for (const part of conjuncts(formula))
      if ("variable" in part) next = assign(run, next, part.variable, narrowed(run, next, part));
  }
  return next;
}

/** The values that the condition allows; of those that leave it open, the part that does. */
function narrowed(run: Run, state: State, atom: Atom): Cell {
  const allowed = run.cells.filter(cellOf(run, state, atom.variable), (value) => allows(atom, value));
  return run.cells.of(
    allowed.map((entry) =>
      atom.good(entry.value) || entry.value === UNKNOWN
        ? entry
        : { ...entry, value: atom.met?.change(entry.value) ?? entry.value },
    ),
  );
}
