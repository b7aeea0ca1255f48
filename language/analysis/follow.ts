// Follows an expanded procedure on paper: for every node of its flow graph the state before it, for all option values,
// all outcomes of checks and any number of passes. One mechanism for every action; what actions mean stands in action.ts.

import type { Declaration, Energy, Part } from "#model/declarations.ts";
import type { ExpandedCondition, ExpandedProcedure } from "#model/expanded.ts";
import { coolDown, type Move, movesOf } from "./action.ts";
import { type Cell, type Cells, createCells, UNKNOWN } from "./cell.ts";
import { ALWAYS, type Decision, type Decisions, NEVER } from "./decision.ts";
import { apply, assign, cellOf, meet, type State, type StateContext, sameState } from "./flow-state.ts";
import {
  type Atom,
  allows,
  atomsOf,
  canFail,
  conjuncts,
  type Formula,
  type FormulaContext,
  formulaOf,
  mayHold,
  negated,
  settle,
  type Update,
} from "./formula.ts";
import { buildGraph, type Edge, type Graph, type Node } from "./graph.ts";
import { gatherConditions, gatherEnergies, gatherParts, optionsAsked } from "./mentioned.ts";
import { type Constraint, constraintsOf } from "./precedence.ts";
import { createReadings, magnitudeNumber, type Readings } from "./readings.ts";
import { temperature } from "./state-values.ts";
import { emptyStore } from "./store.ts";
import { type Summary, summarise } from "./summary.ts";
import { damagedVariables, doubtOf, touchedIn } from "./unknown.ts";
import { createWorld, type World } from "./world.ts";

/** What is shared by all procedures of one workspace. */
export interface FollowContext {
  readonly decisions: Decisions;
  readonly expandedOf: (procedureId: string) => ExpandedProcedure | null;
  /** Choices fixed from outside: option name to choice. */
  readonly chosen: Readonly<Record<string, string>>;
  /** Procedures already followed, and those under way (null), by id. */
  readonly summaries: Map<string, Summary | null>;
}

/** A procedure followed to its end. */
export interface Run extends StateContext {
  readonly expanded: ExpandedProcedure;
  readonly graph: Graph;
  readonly formulas: FormulaContext;
  readonly readings: Readings;
  /** The state before each node, whatever is fixed from outside; `undefined` where no path leads. */
  readonly before: readonly (State | undefined)[];
  readonly movesAt: (node: Node) => readonly Move[];
  /** The nodes that change the variable by an action or by what a step gives, in the order of the text. */
  readonly changedAt: (variable: number) => readonly Node[];
  readonly formula: (condition: ExpandedCondition) => Formula;
  readonly atoms: (condition: ExpandedCondition) => readonly Atom[];
  /** Energies that the procedure, or one that it performs, switches or asks about. */
  readonly energies: ReadonlySet<Energy>;
  readonly constraints: readonly Constraint[];
  readonly eventsAt: ReadonlyMap<number, readonly Update[]>;
  readonly calleeAt: (node: Node) => Summary | null;
  /** What the node leaves in doubt: a line that cannot be read, a procedure that cannot be followed. */
  readonly doubtfulAt: (node: Node) => readonly Declaration[];
  /** What time of unknown length changes. */
  readonly afterTime: () => readonly Update[];
  readonly reachAt: (node: number) => Decision;
  /** What the choices fixed from outside leave. */
  readonly given: Decision;
}

const ROOM_TEMPERATURE = 293.15;
/** More different temperatures than this at one place are a loop that heats on and on: nothing can be said. */
const MOST_TEMPERATURES = 64;

export function followProcedure(expanded: ExpandedProcedure, context: FollowContext): Run {
  const { id } = expanded.procedure;
  const known = context.summaries.get(id);
  if (known !== undefined && known !== null) return known.run;
  // What performs itself in turn finds itself under way, and goes on in doubt.
  context.summaries.set(id, null);
  const run = followToEnd(prepare(expanded, context));
  context.summaries.delete(id);
  return run;
}

function followToEnd(run: Run): Run {
  const { graph } = run;
  const before: (State | undefined)[] = new Array(graph.nodes.length);
  const incoming: { edge: Edge; from: Node; state: State | undefined }[][] = graph.nodes.map(() => []);
  for (const node of graph.nodes)
    for (const edge of node.next) incoming[edge.to]?.push({ edge, from: node, state: undefined });
  const outgoing: (typeof incoming)[number][] = graph.nodes.map(() => []);
  for (const list of incoming) for (const way of list) outgoing[way.from.id]?.push(way);

  const limit = (variable: number, cell: Cell): Cell => {
    // Once unknown always unknown, or a loop that heats would be told apart pass by pass for ever.
    const isOpen = cell.length > MOST_TEMPERATURES || cell.some((entry) => entry.value === UNKNOWN);
    return isOpen && run.world.isTemperature(variable) ? run.cells.one(UNKNOWN, 0) : cell;
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
  return { ...run, before, reachAt: (node) => before[node]?.reach ?? NEVER };
}

/** The state before a node on the paths that the choices fixed from outside leave; `undefined` where there is none. */
export function stateBefore(run: Run, node: number): State | undefined {
  const state = run.before[node];
  const reach = state === undefined ? NEVER : run.decisions.and(state.reach, run.given);
  return state === undefined || reach === NEVER ? undefined : { reach, store: state.store };
}

function prepare(expanded: ExpandedProcedure, context: FollowContext): Run {
  const { decisions } = context;
  const cells: Cells = createCells(decisions);
  const graph = buildGraph(expanded);
  const callees = new Map<number, Summary>();
  const doubtful = new Map<number, readonly Declaration[]>();
  for (const { id, operation } of graph.nodes) {
    if (operation.kind === "damaged") doubtful.set(id, operation.damaged.mentions);
    if (operation.kind !== "act" || operation.line.action.verb !== "perform") continue;
    const performed = operation.line.action.procedure?.id ?? null;
    const callee = performed === null ? null : summaryOf(performed, context);
    if (callee !== null) callees.set(id, callee);
    // Of a procedure that is not known nothing is: it may touch all that can be named.
    else if (performed === null) doubtful.set(id, expanded.procedure.declarations);
    else doubtful.set(id, [...touchedIn(context.expandedOf(performed), context.expandedOf)]);
  }
  const parts = new Set<Part>(gatherParts(expanded));
  const energies = new Set<Energy>(gatherEnergies(expanded));
  for (const callee of callees.values()) {
    for (const part of callee.parts) parts.add(part);
    for (const energy of callee.run.energies) energies.add(energy);
  }
  const ambient = expanded.procedure.ambient?.quantity;
  const ambientLow = magnitudeNumber(ambient?.low ?? ambient?.nominal ?? null) ?? ROOM_TEMPERATURE;
  const ambientHigh = magnitudeNumber(ambient?.high ?? ambient?.nominal ?? null) ?? ROOM_TEMPERATURE;
  const world: World = createWorld([...parts], temperature(ambientLow, ambientHigh));
  const readings = createReadings(decisions, gatherConditions(expanded));
  const formulas: FormulaContext = {
    world,
    decisions,
    readings,
    option: (thing) =>
      thing.kind === "option"
        ? decisions.variable(
            thing.id,
            thing.name,
            thing.choices.map((choice) => choice.name),
          )
        : null,
  };
  const known = new Map<ExpandedCondition, Formula>();
  const formula = (condition: ExpandedCondition): Formula => {
    const made = known.get(condition) ?? formulaOf(formulas, condition);
    known.set(condition, made);
    return made;
  };
  const { constraints, eventsAt } = constraintsOf(graph, world);
  const afterTime = (): readonly Update[] => coolDown(world, ambientLow);
  const moves = new Map<number, readonly Move[]>();
  const movesAt = (node: Node): readonly Move[] => {
    const made = moves.get(node.id);
    if (made !== undefined) return made;
    const { operation } = node;
    const list =
      operation.kind === "act"
        ? movesOf(world, operation.line, ambientLow)
        : operation.kind === "end of task"
          ? [{ needs: [], updates: afterTime() }]
          : [];
    moves.set(node.id, list);
    return list;
  };
  const changers = new Map<number, Node[]>();
  const changedAt = (variable: number): readonly Node[] => {
    if (changers.size === 0) for (const node of graph.nodes) gatherChanged(node, changedBy(node), changers);
    return changers.get(variable) ?? [];
  };
  const changedBy = (node: Node): Iterable<number> => {
    const { operation } = node;
    const given =
      operation.kind === "leave" ? operation.step.gives.flatMap((condition) => atomsOf(formula(condition))) : [];
    const moved = operation.kind === "act" ? movesAt(node).flatMap((move) => move.updates) : [];
    return new Set([...given, ...moved].map(({ variable }) => variable));
  };
  // Speaking of everything once makes all variables known before anything moves: which part may stand where, what is warm.
  for (const callee of callees.values()) callee.introduce(world);
  for (const condition of gatherConditions(expanded)) formula(condition);
  for (const node of graph.nodes) movesAt(node);
  moves.clear();
  known.clear();
  return {
    world,
    cells,
    decisions,
    expanded,
    graph,
    formulas,
    readings,
    before: [],
    movesAt,
    changedAt,
    formula,
    atoms: (condition) => atomsOf(formula(condition)),
    energies,
    constraints,
    eventsAt,
    calleeAt: (node) => callees.get(node.id) ?? null,
    doubtfulAt: (node) => doubtful.get(node.id) ?? [],
    afterTime,
    reachAt: () => NEVER,
    given: givenBy(expanded, formulas, context),
  };
}

function gatherChanged(node: Node, variables: Iterable<number>, into: Map<number, Node[]>): void {
  for (const variable of variables) {
    const known = into.get(variable);
    if (known === undefined) into.set(variable, [node]);
    else known.push(node);
  }
}

function summaryOf(id: string, context: FollowContext): Summary | null {
  const known = context.summaries.get(id);
  if (known !== undefined) return known;
  const expanded = context.expandedOf(id);
  if (expanded === null || expanded.tooLarge !== null) return null;
  const summary = summarise(followProcedure(expanded, context));
  context.summaries.set(id, summary);
  return summary;
}

/** The assignments that the fixed choices allow, of the options that the procedure asks about. */
function givenBy(expanded: ExpandedProcedure, formulas: FormulaContext, context: FollowContext): Decision {
  const { decisions } = context;
  let given: Decision = ALWAYS;
  for (const option of optionsAsked(expanded)) {
    // An option may be called like something that every object has.
    const choice = Object.hasOwn(context.chosen, option.name) ? context.chosen[option.name] : undefined;
    const level = formulas.option(option);
    if (choice !== undefined && level !== null)
      given = decisions.and(
        given,
        decisions.where(level, (value) => value === choice),
      );
  }
  return given;
}

function startState(run: Run): State {
  let state: State = { reach: ALWAYS, store: emptyStore<Cell>() };
  for (const thing of run.expanded.procedure.unknownAtStart)
    for (const variable of damagedVariables(run.world, thing))
      state = assign(state, variable, run.cells.one(UNKNOWN, 0));
  return state;
}

function entryState(
  run: Run,
  ways: readonly { readonly state: State | undefined }[],
  limit: (variable: number, cell: Cell) => Cell,
): State | undefined {
  let entry: State | undefined;
  for (const { state } of ways) {
    if (state === undefined || state.reach === NEVER) continue;
    entry = entry === undefined ? state : meet(run, entry, state, limit);
  }
  return entry;
}

/** The state after what happens at the node. `before each` is asked by those who look for needs that are not met. */
export function pass(run: Run, node: Node, entry: State, beforeMove?: (move: Move, state: State) => void): State {
  const { operation } = node;
  let state = entry;
  for (const event of run.eventsAt.get(node.id) ?? []) state = apply(run, state, [event], node.id);
  const suppose = (conditions: readonly ExpandedCondition[]): void => {
    for (const part of conditions.flatMap((condition) => conjuncts(run.formula(condition)))) {
      // Where one side holds on every path, neither side is forgotten.
      if ("any" in part && !canFailHere(run, state, part)) continue;
      state = apply(run, state, settle(run.formulas, part), node.id);
    }
  };
  switch (operation.kind) {
    case "begin": {
      const formula = run.formula(operation.condition);
      state = { reach: run.decisions.and(state.reach, optionsOnly(run, formula)), store: state.store };
      suppose([operation.condition]);
      break;
    }
    case "enter":
      suppose(operation.step.needs);
      break;
    case "leave":
      suppose(operation.step.gives);
      break;
    case "act": {
      const { action } = operation.line;
      if (action.verb === "measure" && action.reading !== null)
        state = forgetReading(run, state, run.readings.variable(action.reading));
      if (action.verb === "wait" && operation.line.until !== null) suppose([operation.line.until]);
      const callee = run.calleeAt(node);
      if (callee === null) break;
      suppose(callee.begin);
      if (callee.takesTime) state = apply(run, state, run.afterTime(), node.id);
      state = callee.perform(run, state, node.id);
      suppose(callee.finish);
      break;
    }
  }
  const verb = operation.kind === "damaged" ? operation.damaged.verb : undefined;
  for (const thing of run.doubtfulAt(node)) state = apply(run, state, doubtOf(run.world, thing, verb), node.id);
  for (const move of run.movesAt(node)) {
    beforeMove?.(move, state);
    state = apply(run, state, move.updates, node.id);
  }
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
  let next: State = { reach: decisions.forget(state.reach, variable), store: state.store };
  for (let at = 0; at < run.world.size(); at++) {
    const cell = cellOf(run, state, at);
    if (!cell.some((entry) => decisions.dependsOn(entry.when, variable))) continue;
    next = assign(
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
    next = { reach, store: next.store };
    // Of alternatives none is known to be the one.
    for (const part of conjuncts(formula))
      if ("variable" in part) next = assign(next, part.variable, narrowed(run, next, part));
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
