// What the lines of a performed procedure need of things that it neither touches nor speaks of: only the caller knows how those are, so
// that it is looked at where the procedure is performed. Knows no wording.
import type { Span } from "#syntax/span.ts";
import { movesOf, type Need, type Trouble } from "./action.ts";
import type { Ambient } from "./actions/placing.ts";
import { type Decision, NEVER } from "./decision.ts";
import { type State, whereShown } from "./flow-state.ts";
import type { eachMove, Run } from "./follow.ts";
import type { Node } from "./graph.ts";
import type { Update } from "./update.ts";
import type { World } from "./world.ts";

/** A need with tests on the caller's variables alone. */
export interface Asked {
  readonly need: Need;
  /** Where the procedure itself is as it has to be for that. */
  readonly when: Decision;
  /** The line that needs it, in the performed procedure. */
  readonly span: Span;
  /** What is taken as met once it is told. */
  readonly assumes: readonly Update[];
}

/** A procedure that was followed by itself. */
export interface Followed {
  readonly run: Run;
  /** Of the variables that it touches or that its `begin with` speaks of. */
  readonly keys: ReadonlySet<string>;
  readonly eachMove: typeof eachMove;
}

/** @param world of the caller, in which everything that the procedure moves is known */
export function askedOfCaller(world: World, ambient: Ambient, followed: Followed): readonly Asked[] {
  const { run } = followed;
  return run.graph.nodes.flatMap((node) => {
    const state = run.before[node.id];
    if (state === undefined) return [];
    return askedAt(world, ambient, followed, node, state).flatMap((asked) => ofCaller(world, followed, asked));
  });
}

/** What a line needs, and the state of its own procedure before each instance's turn. */
interface Inside extends Asked {
  readonly state: State;
}

function askedAt(
  world: World,
  ambient: Ambient,
  { eachMove, run }: Followed,
  node: Node,
  state: State,
): readonly Inside[] {
  const { operation } = node;
  if (operation.kind === "ask") {
    const asked = run.askedAt(node)?.asked(world, ambient) ?? [];
    const when = (one: Asked): Decision => run.decisions.and(state.reach, one.when);
    return asked.map((one) => ({ ...one, when: when(one), state, span: operation.line.action.place }));
  }
  if (operation.kind !== "act") return [];
  const { line } = operation;
  const own: { readonly needs: readonly Need[]; readonly state: State }[] = [];
  eachMove(run, node, state, ({ needs }, now) => own.push({ needs, state: now }));
  const moves = movesOf(world, line, ambient);
  return moves.flatMap(({ needs, updates }, at) => {
    // One instance after the other; only what stands ahead of them may be there in one world and not in the other.
    const turn = own[own.length - moves.length + at];
    if (turn === undefined) return [];
    const told = new Set(
      turn.needs.filter((need) => isBad(run, turn.state, need)).map(({ trouble }) => nameOf(trouble)),
    );
    return needs
      .filter(({ trouble }) => ASKED.has(trouble.kind) && !told.has(nameOf(trouble)))
      .map((need) => ({
        ...{ need, when: turn.state.reach, span: line.action.place, state: turn.state },
        assumes: updates.filter(({ assumed }) => assumed === true),
      }));
  });
}

/** Whether something is in the way; all else a performed procedure has to say by its `begin with`. */
const ASKED: ReadonlySet<Trouble["kind"]> = new Set([
  "enclosed",
  "retained",
  "locked",
  "energised",
  "not proved",
  "restored open",
]);

/** What is left to ask of the caller: what the procedure knows itself is so, or is not. */
function ofCaller(
  world: World,
  { keys, run }: Followed,
  { assumes, need, span, state, when }: Inside,
): readonly Asked[] {
  const isOwn = ({ variable }: Need["bad"][number]): boolean => keys.has(world.keyOf(variable));
  const bad = need.bad.filter((test) => !isOwn(test));
  if (bad.length === 0) return [];
  let where = when;
  for (const { variable, test } of need.bad.filter(isOwn)) {
    const own = run.world.byKey(world.keyOf(variable), world.initial(variable));
    where = run.decisions.and(where, whereShown(run, state, own, test));
  }
  if (where === NEVER) return [];
  const own = assumes.filter(({ variable }) => !keys.has(world.keyOf(variable)));
  return [{ need: { ...need, bad }, when: where, span, assumes: own }];
}

function isBad(run: Run, state: State, { bad }: Need): boolean {
  let where = state.reach;
  for (const { variable, test } of bad) where = run.decisions.and(where, whereShown(run, state, variable, test));
  return where !== NEVER;
}

/** The same for one need in either world. */
function nameOf(trouble: Trouble): string {
  const named = Object.values(trouble).map((one: unknown) =>
    typeof one === "object" && one !== null && "id" in one ? one.id : one,
  );
  return JSON.stringify(named);
}
