// What a performed procedure asks of its caller and leaves behind: its `begin with`, and for everything it touches the
// state at its end. Made once for each procedure, so that one of any size is followed part by part.
import type { Declaration, Part } from "#model/declarations.ts";
import type { ExpandedCondition } from "#model/expanded.ts";
import type { Cell, Entry } from "./cell.ts";
import { type Decision, NEVER } from "./decision.ts";
import { apply, assign, cellOf, type State } from "./flow-state.ts";
import type { Run } from "./follow.ts";
import { atomsOf, settle } from "./formula.ts";
import type { Node } from "./graph.ts";
import { carry } from "./standing.ts";
import { damagedVariables } from "./unknown.ts";
import type { World } from "./world.ts";

export interface Summary {
  readonly run: Run;
  readonly parts: readonly Part[];
  /** What must hold at the call, and what holds after it. */
  readonly begin: readonly ExpandedCondition[];
  readonly finish: readonly ExpandedCondition[];
  /** Variables that it touches and its `begin with` does not mention: they must be as at a start. */
  readonly asAtStart: readonly { readonly key: string; readonly initial: string }[];
  /** What it touches, and how that is at its end. */
  readonly leaves: readonly { readonly key: string; readonly initial: string; readonly cell: Cell }[];
  /** Whether time of unknown length passes in it. */
  readonly takesTime: boolean;
  /** Makes what it may move known to the caller's world. */
  readonly introduce: (world: World) => void;
  /** The caller's state after it; what it needs must have been taken as met before. */
  readonly perform: (caller: Run, state: State, from: number) => State;
}

export function summarise(run: Run): Summary {
  const { world, graph } = run;
  const touched = new Set<number>();
  for (const node of graph.nodes) {
    for (const move of run.movesAt(node)) for (const update of move.updates) touched.add(update.variable);
    if (node.operation.kind === "leave")
      for (const condition of node.operation.step.gives)
        for (const update of settle(run.formulas, run.formula(condition))) touched.add(update.variable);
    for (const { key, initial } of run.calleeAt(node)?.leaves ?? []) touched.add(world.byKey(key, initial));
  }
  const mentioned = new Set(
    run.expanded.begin.flatMap((condition) => atomsOf(run.formula(condition)).map((atom) => atom.variable)),
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
  const asAtStart = [...touched]
    .filter((variable) => !mentioned.has(variable) && /^(place|energy|own):/.test(world.keyOf(variable)))
    .map((variable) => ({ key: world.keyOf(variable), initial: world.initial(variable) }));
  const reach: Decision = end?.reach ?? NEVER;
  return {
    run,
    parts: world.parts,
    begin: run.expanded.begin,
    finish: run.expanded.finish,
    leaves: left,
    asAtStart,
    takesTime: graph.nodes.some((node) => passesTime(run, node)),
    introduce: (caller) => {
      caller.adopt(world);
      for (const { key, initial } of left) caller.byKey(key, initial);
    },
    perform: (caller, state, from) => {
      const { world: outer, cells, decisions } = caller;
      let next: State = { reach: decisions.and(state.reach, reach), store: state.store };
      for (const { key, initial } of asAtStart)
        next = apply(caller, next, [{ variable: outer.byKey(key, initial), change: () => initial }], from);
      for (const { key, initial, cell } of left) {
        const variable = outer.byKey(key, initial);
        const before = cellOf(caller, next, variable);
        const entries = cell.flatMap((entry) =>
          isUntouched(run, entry)
            ? before.map((old) => ({ ...old, when: decisions.and(old.when, entry.when) }))
            : [{ ...entry, from }],
        );
        next = assign(next, variable, cells.of(entries));
      }
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

/** Still as it was when the procedure began. */
function isUntouched(run: Run, { from }: Entry): boolean {
  const kind = run.graph.nodes[from]?.operation.kind;
  return kind === "start" || kind === "begin";
}

function passesTime(run: Run, node: Node): boolean {
  const { operation } = node;
  if (operation.kind === "end of task") return true;
  return operation.kind === "act" && (operation.line.action.verb === "wait" || run.calleeAt(node)?.takesTime === true);
}

/** What lines that could not be read may have touched. */
function doubtful({ world }: Run, things: Iterable<Declaration>): readonly number[] {
  return [...new Set(things)].flatMap((thing) => damagedVariables(world, thing));
}
