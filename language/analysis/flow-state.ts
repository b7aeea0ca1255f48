// The state at one point of a procedure: for which option assignments it is reached, and what each variable can be.
import type { Cell, Cells } from "./cell.ts";
import type { Decision, Decisions } from "./decision.ts";
import { NEVER } from "./decision.ts";
import type { Update } from "./formula.ts";
import { differences, mergeStores, read, type Store, write } from "./store.ts";
import type { World } from "./world.ts";

export interface State {
  readonly reach: Decision;
  readonly store: Store<Cell>;
}

export interface StateContext {
  readonly world: World;
  readonly cells: Cells;
  readonly decisions: Decisions;
}

/** What the variable can be; where nothing was said, as at a start. */
export function cellOf(context: StateContext, state: State, variable: number): Cell {
  return read(state.store, variable) ?? context.cells.one(context.world.initial(variable), 0);
}

export function apply(context: StateContext, state: State, updates: readonly Update[], from: number): State {
  let { store } = state;
  for (const { variable, by, change } of updates) {
    const now: State = { reach: state.reach, store };
    const cell = cellOf(context, now, variable);
    if (by === undefined) {
      store = write(
        store,
        variable,
        context.cells.map(cell, from, (value) => change(value, "")),
      );
      continue;
    }
    const other = cellOf(context, now, by);
    const entries = cell.flatMap((entry) =>
      other.map((under) => {
        const value = change(entry.value, under.value);
        return {
          value,
          from: value === entry.value ? entry.from : from,
          when: context.decisions.and(entry.when, under.when),
        };
      }),
    );
    store = write(store, variable, context.cells.of(entries));
  }
  return store === state.store ? state : { reach: state.reach, store };
}

/** A variable that is set whatever it was: its origin is the node that set it. */
export function assign(state: State, variable: number, cell: Cell): State {
  return { reach: state.reach, store: write(state.store, variable, cell) };
}

/** Where two ways meet. `limit` bounds what can grow without end: a cell it refuses is replaced by what it gives. */
export function meet(context: StateContext, a: State, b: State, limit: (variable: number, cell: Cell) => Cell): State {
  if (a.reach === NEVER) return b;
  if (b.reach === NEVER) return a;
  const start = (variable: number): Cell => context.cells.one(context.world.initial(variable), 0);
  const store = mergeStores(a.store, b.store, (left, right, variable) =>
    limit(variable, context.cells.join(left ?? start(variable), a.reach, right ?? start(variable), b.reach)),
  );
  return { reach: context.decisions.or(a.reach, b.reach), store };
}

export function sameState(a: State, b: State): boolean {
  if (a.reach !== b.reach) return false;
  let same = true;
  differences(a.store, b.store, () => {
    same = false;
  });
  return same;
}
