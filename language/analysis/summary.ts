// What a performed procedure asks of its caller and leaves behind: its `begin with`, and for everything it touches the
// state at its end. Made once for each procedure, so that one of any size is followed part by part.
import type { Declaration, Part, Value } from "#model/declarations.ts";
import type { ExpandedCondition } from "#model/expanded.ts";
import type { Span } from "#syntax/span.ts";
import { rested } from "./actions/curing.ts";
import type { Ambient } from "./actions/placing.ts";
import { type Asked, askedOfCaller } from "./asked-of-caller.ts";
import type { Cell, Entry } from "./cell.ts";
import { type Decision, NEVER } from "./decision.ts";
import { apply, assign, cellOf, type State } from "./flow-state.ts";
import type { eachMove, Run } from "./follow.ts";
import { type Atom, atomsOf, conjuncts, settle } from "./formula.ts";
import type { Node } from "./graph.ts";
import { originOf } from "./origin.ts";
import { lowEnd } from "./readings.ts";
import { carry } from "./standing.ts";
import { IN, OUT } from "./state-values.ts";
import { damagedVariables } from "./unknown.ts";
import { kindOf, type World } from "./world.ts";

export interface Summary {
  readonly run: Run;
  readonly parts: readonly Part[];
  /** What must hold at the call, and what holds after it. */
  readonly begin: readonly ExpandedCondition[];
  readonly finish: readonly ExpandedCondition[];
  /** Variables that it touches, or needs as at a start, and its `begin with` does not mention: they must be as at a start. */
  readonly asAtStart: readonly {
    readonly key: string;
    readonly initial: string;
    /** The first of its lines that touches it or needs it. */
    readonly askedAt: Span;
  }[];
  /** What it touches, and how that is at its end. */
  readonly leaves: readonly { readonly key: string; readonly initial: string; readonly cell: Cell }[];
  /** What its lines need of what it neither touches nor mentions; `world` is the caller's. */
  readonly asked: (world: World, ambient: Ambient) => readonly Asked[];
  /** Whether time of unknown length passes in it. */
  readonly takesTime: boolean;
  /** The least time it takes, in seconds: what it says with lower ends, on the quickest way. */
  readonly leastTime: number;
  /** Makes what it may move known to the caller's world. */
  readonly introduce: (world: World) => void;
  /** The caller's state after it; what it needs must have been taken as met before. */
  readonly perform: (caller: Run, state: State, from: number) => State;
}

export function summarise(run: Run, each: typeof eachMove): Summary {
  const { world, graph } = run;
  const touched = new Set<number>();
  for (const node of graph.nodes) {
    // What is only taken as met, once it is told that it is not, is none of its doing.
    for (const move of run.movesAt(node))
      for (const { assumed, variable } of move.updates) if (assumed !== true) touched.add(variable);
    if (node.operation.kind === "leave")
      for (const condition of node.operation.step.gives)
        for (const update of settle(run.formulas, run.formula(condition))) touched.add(update.variable);
    for (const { key, initial } of run.calleeAt(node)?.leaves ?? []) touched.add(world.byKey(key, initial));
  }
  // What is said to be in stands in its own place, too.
  const mentioned = new Set(
    run.expanded.begin.flatMap((condition) => [
      ...atomsOf(run.formula(condition)).map((atom) => atom.variable),
      // What only goes along with it, as that a part was used, is not said.
      ...settle(run.formulas, run.formula(condition)).flatMap((update) =>
        update.keepsOrigin === "always" ? [] : [update.variable],
      ),
    ]),
  );
  for (const variable of doubtful(run, run.expanded.procedure.unknownAtStart)) mentioned.add(variable);
  const unread = graph.nodes.flatMap((node) => run.doubtfulAt(node));
  const end = run.before[graph.end];
  const left: { key: string; initial: string; cell: Cell }[] = [...new Set([...touched, ...doubtful(run, unread)])].map(
    (variable) => ({
      key: world.keyOf(variable),
      initial: world.initial(variable),
      cell: end === undefined ? [] : cellOf(run, end, variable),
    }),
  );
  const asked = new Set(graph.nodes.flatMap((node) => askedAt(run, node)));
  const asAtStart = [...new Set([...touched, ...asked])]
    .filter((variable) => !mentioned.has(variable))
    .filter((variable) => {
      const kind = kindOf(world.keyOf(variable));
      return (AS_AT_START.has(kind) && touched.has(variable)) || asked.has(variable);
    })
    .map((variable) => ({
      key: world.keyOf(variable),
      initial: world.initial(variable),
      askedAt: originOf(run, firstAsking(run, variable)).span,
    }));
  const keys = new Set([...touched, ...mentioned].map(world.keyOf));
  const reach: Decision = end?.reach ?? NEVER;
  const leastTime = shortest(run);
  return {
    run,
    parts: world.parts,
    begin: run.expanded.begin,
    finish: run.expanded.finish,
    leaves: left,
    asAtStart,
    asked: (caller, ambient) => askedOfCaller(caller, ambient, { run, keys, eachMove: each }),
    takesTime: graph.nodes.some((node) => passesTime(run, node)),
    leastTime,
    introduce: (caller) => {
      caller.adopt(world);
      for (const { key, initial } of left) caller.byKey(key, initial);
    },
    perform: (caller, state, from) => {
      const { world: outer, cells, decisions } = caller;
      let next: State = { ...state, reach: decisions.and(state.reach, reach) };
      for (const { key, initial, cell } of left) {
        const variable = outer.byKey(key, initial);
        const before = cellOf(caller, next, variable);
        const entries = cell.flatMap((entry) =>
          isUntouched(run, entry)
            ? before.map((old) => ({ ...old, when: decisions.and(old.when, entry.when) }))
            : [{ ...entry, from }],
        );
        next = assign(caller, next, variable, cells.of(entries));
      }
      // What only the caller coated has rested meanwhile.
      const own = new Set(left.map(({ key, initial }) => outer.byKey(key, initial)));
      next = apply(caller, next, rested(outer, leastTime, own), from);
      // What stands on a part that it moved, and it does not know of.
      for (const { key } of left) {
        const moved = key.startsWith(PLACE) ? outer.partOf(key.slice(PLACE.length)) : undefined;
        if (moved !== undefined) next = apply(caller, next, carry(outer, moved.part, moved.index), from);
      }
      return next;
    },
  };
}

const PLACE = "place:";
/** What must be as at a start where it is touched, and what only where something there depends on it. */
const AS_AT_START: ReadonlySet<string> = new Set(["place", "energy", "own", "holder"]);
const ASKED_AT_START: ReadonlySet<string> = new Set(["used", "orientation"]);

/** The first line that touches the variable, or that depends on it. */
function firstAsking(run: Run, variable: number): number {
  const asking = run.graph.nodes.find((node) => askedAt(run, node).includes(variable));
  return Math.min(run.changedAt(variable)[0]?.id ?? Number.POSITIVE_INFINITY, asking?.id ?? Number.POSITIVE_INFINITY);
}

/** What a step's need, an action or a procedure that is performed depends on, and that is still as it was at the start. */
function askedAt(run: Run, node: Node): readonly number[] {
  const state = run.before[node.id];
  if (state === undefined) return [];
  if (node.operation.kind === "enter" || node.operation.kind === "ask") {
    const callee = run.askedAt(node);
    const needs = node.operation.kind === "enter" ? node.operation.step.needs : (callee?.begin ?? []);
    return needs
      .flatMap((condition) => conjuncts(run.formula(condition)))
      .flatMap((atom) => ("variable" in atom && isAsAtStart(run, atom) ? [atom.variable] : []))
      .concat((callee?.asAtStart ?? []).map(({ key, initial }) => run.world.byKey(key, initial)))
      .filter((variable) => cellOf(run, state, variable).some((entry) => isUntouched(run, entry)));
  }
  const asked = run
    .movesAt(node)
    .flatMap((move) => move.needs.flatMap((need) => need.bad.map(({ variable }) => variable)));
  return asked.filter(
    (variable) =>
      ASKED_AT_START.has(kindOf(run.world.keyOf(variable))) &&
      cellOf(run, state, variable).some((entry) => isUntouched(run, entry)),
  );
}

/** Whether the need asks for what is so at a start, and for that alone. */
function isAsAtStart({ world }: Run, { good, variable }: Atom): boolean {
  const initial = world.initial(variable);
  const key = world.keyOf(variable);
  const others = (OTHERS.get(kindOf(key)) ?? world.partOf(key.slice(OWN.length))?.part.states ?? []).filter(
    (value) => value !== initial,
  );
  const isOfThese = OTHERS.has(kindOf(key)) || key.startsWith(OWN);
  return isOfThese && good(initial) && !others.some(good);
}

const OWN = "own:";
/** What else a variable of the kind can be, where that is one thing; a part says its own states itself. */
const OTHERS: ReadonlyMap<string, readonly string[]> = new Map([
  ["place", [OUT, IN]],
  ["energy", ["live", "off"]],
  ["fact", ["yes", "no"]],
]);

/** Still as it was when the procedure began. */
function isUntouched(run: Run, { from }: Entry): boolean {
  const kind = run.graph.nodes[from]?.operation.kind;
  return kind === "start" || kind === "begin";
}

/** The least seconds from the start to the end; 0 where there is no end. */
function shortest(run: Run): number {
  const least = new Array<number>(run.graph.nodes.length).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  // Ids rise along the way but for jumps back, which no quickest way takes twice: a few rounds settle it.
  for (let changed = true; changed; ) {
    changed = false;
    for (const node of run.graph.nodes) {
      const after = (least[node.id] ?? 0) + secondsAt(run, node);
      for (const edge of node.next) {
        if (run.reachOver(edge) === NEVER || after >= (least[edge.to] ?? 0)) continue;
        least[edge.to] = after;
        changed = true;
      }
    }
  }
  const seconds = least[run.graph.end] ?? 0;
  return Number.isFinite(seconds) ? seconds : 0;
}

function secondsAt(run: Run, node: Node): number {
  const { operation } = node;
  const low = (value: Value | null): number => lowEnd(value?.quantity) ?? 0;
  if (operation.kind === "leave") return low(operation.step.step.takes);
  if (operation.kind !== "act") return 0;
  const { action } = operation.line;
  return action.verb === "wait" ? low(action.time) : (run.calleeAt(node)?.leastTime ?? 0);
}

function passesTime(run: Run, node: Node): boolean {
  const { operation } = node;
  if (operation.kind === "end of task") return true;
  if (operation.kind !== "act") return false;
  const { action, until } = operation.line;
  // Waiting for a temperature says how warm it is then, and of nothing else how cool.
  return (action.verb === "wait" && until === null) || run.calleeAt(node)?.takesTime === true;
}

/** What lines that could not be read may have touched. */
function doubtful({ world }: Run, things: Iterable<Declaration>): readonly number[] {
  return [...new Set(things)].flatMap((thing) => damagedVariables(world, thing));
}
