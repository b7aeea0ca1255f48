// What is needed to follow a procedure, made ready: its world, its flow graph, what its conditions and actions mean. Follows
// nothing itself.
import type { Declaration, Energy, Fit, Option, Part } from "#model/declarations.ts";
import type { ExpandedAction, ExpandedCondition, ExpandedProcedure } from "#model/expanded.ts";
import { type Move, movesOf } from "./action.ts";
import { coolDown } from "./actions/heating.ts";
import { dependences } from "./any-order.ts";
import type { Asked } from "./asked-of-caller.ts";
import { badJumpsOf } from "./bad-jumps.ts";
import { type Cell, createCells } from "./cell.ts";
import { ALWAYS, type Decision, type Decisions, NEVER } from "./decision.ts";
import type { State, StateContext } from "./flow-state.ts";
import { type Atom, atomsOf, type Formula, type FormulaContext, formulaOf } from "./formula.ts";
import { buildGraph, type Edge, type Graph, type Node } from "./graph.ts";
import type { Watched } from "./growing.ts";
import {
  gatherActions,
  gatherConditions,
  gatherEnergies,
  gatherParts,
  optionsAsked,
  spokenParts,
  timedSteps,
} from "./mentioned.ts";
import { isSupposed } from "./origin.ts";
import { passing } from "./passing.ts";
import { type Constraint, constraintsOf } from "./precedence.ts";
import { createReadings, highEnd, lowEnd, magnitudeNumber, type Readings } from "./readings.ts";
import { temperature } from "./state-values.ts";
import type { Summaries } from "./summaries.ts";
import type { Summary } from "./summary.ts";
import { touchedIn } from "./unknown.ts";
import type { Update } from "./update.ts";
import { createWorld, type World } from "./world.ts";

/** What is shared by all procedures of one workspace. */
export interface FollowContext {
  readonly decisions: Decisions;
  readonly expandedOf: (procedureId: string) => ExpandedProcedure | null;
  /** Choices fixed from outside: option name to choice. */
  readonly chosen: Readonly<Record<string, string>>;
  readonly summaries: Summaries;
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
  /** The procedure that is to be performed next, and asks here for what it needs. */
  readonly askedAt: (node: Node) => Summary | null;
  /** What its lines need of what it neither touches nor mentions. */
  readonly askedOf: (callee: Summary) => readonly Asked[];
  /** What the node leaves in doubt: a line that cannot be read, a procedure that cannot be followed. */
  readonly doubtfulAt: (node: Node) => readonly Declaration[];
  /** What time of unknown length changes. */
  readonly afterTime: () => readonly Update[];
  readonly reachAt: (node: number) => Decision;
  /** For which assignments the edge is taken. */
  readonly reachOver: (edge: Edge) => Decision;
  /** What the choices fixed from outside leave. */
  readonly given: Decision;
}

const ROOM_TEMPERATURE = 293.15;

/** What a procedure performs, and where it cannot be followed what it may touch. */
interface Performed {
  readonly calleeOf: (line: ExpandedAction) => Summary | null;
  readonly doubtOf: (line: ExpandedAction) => readonly Declaration[];
}

/**
 * @param summaryOf the contract of a performed procedure; null where it cannot be followed
 * @param assumes whether what a step takes as met counts as its doing, in blocks that may be done in any order
 */
export function prepare(
  expanded: ExpandedProcedure,
  context: FollowContext,
  summaryOf: (id: string) => Summary | null,
  assumes: boolean,
): Run {
  const { decisions } = context;
  const performed = performedBy(expanded, context, summaryOf);
  const callees = gatherActions(expanded).flatMap((line) => performed.calleeOf(line) ?? []);
  const energies = new Set<Energy>(gatherEnergies(expanded));
  for (const callee of callees) for (const energy of callee.run.energies) energies.add(energy);
  const ambient = ambientOf(expanded);
  const world = worldOf(expanded, callees, temperature(ambient.low, ambient.high));
  const readings = createReadings(decisions, gatherConditions(expanded));
  const formulas: FormulaContext = {
    world,
    decisions,
    readings,
    option: (thing) => (thing.kind === "option" ? optionVariable(decisions, thing) : null),
  };
  const formula = remembered((condition: ExpandedCondition) => formulaOf(formulas, condition));
  const afterTime = (): readonly Update[] => coolDown(world, ambient.low);
  const spokenOf = new Map<ExpandedAction, Watched<readonly Move[]>>();
  const moves = (line: ExpandedAction): readonly Move[] => {
    const known = spokenOf.get(line);
    return known?.told.isTrue === true ? known.made : movesOf(world, line, ambient);
  };
  // Speaking of everything once makes all variables known before anything moves: which part may stand where, what is warm.
  for (const callee of callees) callee.introduce(world);
  const asked = remembered((callee: Summary) => callee.asked(world, ambient));
  for (const callee of callees) asked.of(callee);
  for (const condition of gatherConditions(expanded)) formula.of(condition);
  for (const line of gatherActions(expanded))
    spokenOf.set(
      line,
      world.watched(() => movesOf(world, line, ambient)),
    );
  formula.forget();
  const graph = buildGraph(expanded, {
    orders: dependences({
      world,
      formulas,
      formula: formula.of,
      moves,
      afterTime,
      performed,
      asked: asked.of,
      timed: timedSteps(expanded),
      assumes,
    }),
    badJumps: badJumpsOf(expanded.procedure),
  });
  const { constraints, eventsAt } = constraintsOf(graph, world);
  const cells = createCells(decisions);
  const starts: Cell[] = [];
  const movesAt = remembered((node: Node): readonly Move[] => {
    const { operation } = node;
    if (operation.kind === "act") return moves(operation.line);
    const updates = operation.kind === "end of task" ? afterTime() : passing(world, operation);
    return updates.length === 0 ? [] : [{ needs: [], updates }];
  });
  return {
    world,
    cells,
    atStart: (variable) => {
      const cell = starts[variable] ?? cells.one(world.initial(variable), 0);
      starts[variable] = cell;
      return cell;
    },
    isSupposed: (node) => isSupposed(graph, node),
    decisions,
    expanded,
    graph,
    formulas,
    readings,
    before: [],
    movesAt: movesAt.of,
    changedAt: changersIn(graph, movesAt.of, formula.of),
    formula: formula.of,
    atoms: (condition) => atomsOf(formula.of(condition)),
    energies,
    constraints,
    eventsAt,
    calleeAt: ({ operation }) => (operation.kind === "act" ? performed.calleeOf(operation.line) : null),
    askedAt: ({ operation }) => (operation.kind === "ask" ? performed.calleeOf(operation.line) : null),
    askedOf: asked.of,
    doubtfulAt: ({ operation }) =>
      operation.kind === "damaged"
        ? operation.damaged.mentions
        : operation.kind === "act"
          ? performed.doubtOf(operation.line)
          : [],
    afterTime,
    reachAt: () => NEVER,
    reachOver: () => NEVER,
    given: givenBy(expanded, formulas, context),
  };
}

/** The variable of an option, made when it is first asked for. */
export function optionVariable(decisions: Decisions, { id, name, choices }: Option): number {
  const values = choices.map((choice) => choice.name);
  return decisions.variable(id, name, values);
}

function remembered<Key, Value>(make: (key: Key) => Value): { of: (key: Key) => Value; forget: () => void } {
  const known = new Map<Key, Value>();
  return {
    of: (key) => {
      const old = known.get(key);
      if (old !== undefined) return old;
      const made = make(key);
      known.set(key, made);
      return made;
    },
    forget: () => known.clear(),
  };
}

function performedBy(
  expanded: ExpandedProcedure,
  context: FollowContext,
  summaryOf: (id: string) => Summary | null,
): Performed {
  const doubtful = new Map<string, readonly Declaration[]>();
  // Asked once: what is under way now, and so in doubt, is followed later.
  const summary = remembered((id: string) => ({ of: summaryOf(id) }));
  const idOf = ({ action }: ExpandedAction): string | null =>
    action.verb === "perform" ? (action.procedure?.id ?? "") : null;
  return {
    calleeOf: (line) => {
      const id = idOf(line);
      return id === null || id === "" ? null : summary.of(id).of;
    },
    doubtOf: (line) => {
      const id = idOf(line);
      if (id === null) return [];
      // Of a procedure that is not known nothing is: it may touch all that can be named.
      if (id === "") return expanded.procedure.declarations;
      if (summary.of(id).of !== null) return [];
      const known = doubtful.get(id) ?? [...touchedIn(context.expandedOf(id), context.expandedOf)];
      doubtful.set(id, known);
      return known;
    },
  };
}

/** The air of the shop, in kelvin; the usual one where none is declared. */
export function ambientOf({ procedure }: ExpandedProcedure): { low: number; high: number } {
  const ambient = procedure.ambient?.quantity;
  return {
    low: lowEnd(ambient) ?? ROOM_TEMPERATURE,
    high: highEnd(ambient) ?? ROOM_TEMPERATURE,
  };
}

function worldOf(expanded: ExpandedProcedure, callees: readonly Summary[], startTemperature: string): World {
  const parts = new Set<Part>(gatherParts(expanded));
  for (const callee of callees) for (const part of callee.parts) parts.add(part);
  const fits = expanded.procedure.declarations.filter((one): one is Fit => one.kind === "fit");
  const threshold = expanded.procedure.declarations.find((one) => one.kind === "threshold" && one.name === "lifting");
  const limit = threshold?.kind === "threshold" ? threshold.value?.quantity : undefined;
  const liftingLimit = magnitudeNumber(limit?.high ?? limit?.nominal ?? limit?.low ?? null);
  return createWorld({ parts: [...parts], spoken: spokenParts(expanded), fits, startTemperature, liftingLimit });
}

function changersIn(
  graph: Graph,
  movesAt: (node: Node) => readonly Move[],
  formula: (condition: ExpandedCondition) => Formula,
): Run["changedAt"] {
  const changers = new Map<number, Node[]>();
  const changes = (node: Node, variable: number): void => {
    const known = changers.get(variable);
    if (known === undefined) changers.set(variable, [node]);
    else if (known[known.length - 1] !== node) known.push(node);
  };
  const gather = (node: Node): void => {
    const { operation } = node;
    if (operation.kind === "leave")
      for (const condition of operation.step.gives)
        for (const { variable } of atomsOf(formula(condition))) changes(node, variable);
    if (operation.kind !== "act") return;
    for (const { updates } of movesAt(node)) for (const { variable } of updates) changes(node, variable);
  };
  return (variable) => {
    if (changers.size === 0) for (const node of graph.nodes) gather(node);
    return changers.get(variable) ?? [];
  };
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
