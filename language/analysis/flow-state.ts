// The state at one point of a procedure: for which option assignments it is reached, and what each variable can be.
import { type Cell, type Cells, type Entry, UNKNOWN } from "./cell.ts";
import { ALWAYS, type Decision, type Decisions, NEVER } from "./decision.ts";
import { shows } from "./state-values.ts";
import { differences, draftOf, emptyStore, mergeStores, read, type Store, write, writeInto } from "./store.ts";
import type { Test, Update } from "./update.ts";
import type { World } from "./world.ts";

export interface State {
  readonly reach: Decision;
  readonly store: Store<Cell>;
  /** Films and heat that nothing has used yet, apart from all else, so that a look can use them up at one stroke. */
  readonly films: Store<Cell>;
}

export interface StateContext {
  readonly world: World;
  readonly cells: Cells;
  readonly decisions: Decisions;
  /** What a variable is of which nothing was said. */
  readonly atStart: (variable: number) => Cell;
  /** Whether what the node gave was only taken as met. */
  readonly isSupposed: (node: number) => boolean;
}

/** What the variable can be; where nothing was said, as at a start. */
export function cellOf(context: StateContext, state: State, variable: number): Cell {
  const store = context.world.isFilm(variable) ? state.films : state.store;
  return read(store, variable) ?? context.atStart(variable);
}

/** Where the variable is known to be so. Plain loops: it is asked for each need of each instance, nearly always in vain. */
export function whereShown(
  context: StateContext,
  state: State,
  variable: number,
  test: (value: string) => boolean,
): Decision {
  let where: Decision = NEVER;
  for (const { value, from, when } of cellOf(context, state, variable))
    if (shows(value, test) && !context.isSupposed(from)) where = context.decisions.or(where, when);
  return where;
}

/** Whether nothing on the way here has said anything of the variable. */
export function isAsAtStart(context: StateContext, state: State, variable: number): boolean {
  return read(context.world.isFilm(variable) ? state.films : state.store, variable) === undefined;
}

export function apply(context: StateContext, state: State, updates: readonly Update[], from: number): State {
  let next = state;
  for (const update of updates) {
    if (update.usesFilms === true) next = { ...next, films: emptyStore() };
    else next = assign(context, next, update.variable, changed(context, next, update, from));
  }
  return next;
}

/** As {@link apply} for each of the lists in turn; what lies between them nobody sees. */
export function applyAll(
  context: StateContext,
  state: State,
  lists: readonly { readonly updates: readonly Update[] }[],
  from: number,
): State {
  const [only, ...more] = lists;
  if (only === undefined || more.length === 0)
    return only === undefined ? state : apply(context, state, only.updates, from);
  const { reach } = state;
  const store = draftOf(state.store);
  let films = draftOf(state.films);
  let draft = { reach, store, films };
  for (const { updates } of lists)
    for (const update of updates) {
      const { variable } = update;
      if (update.usesFilms === true) {
        films = draftOf(emptyStore());
        draft = { reach, store, films };
      } else writeInto(context.world.isFilm(variable) ? films : store, variable, changed(context, draft, update, from));
    }
  const isSame = store.root === state.store.root && films.root === state.films.root;
  return isSame ? state : { reach, store: { root: store.root }, films: { root: films.root } };
}

function changed(context: StateContext, state: State, update: Update, from: number): Cell {
  const { cells } = context;
  const { variable, by, when } = update;
  const cell = cellOf(context, state, variable);
  const others: Cell = by === undefined ? ALONE : cellOf(context, state, by);
  // Most variables have one value on all paths.
  const only = cell.length === 1 ? cell[0] : undefined;
  const other = others.length === 1 ? others[0] : undefined;
  if (only === undefined || other === undefined || when !== undefined)
    return changedOnWays(context, state, update, from, cell, others);
  const next = become(context, update, from, only, other);
  return next === only ? cell : cells.of([next]);
}

function changedOnWays(
  context: StateContext,
  state: State,
  update: Update,
  from: number,
  cell: Cell,
  others: Cell,
): Cell {
  const { cells, decisions } = context;
  const { variable, when } = update;
  const becomes = (entry: Entry): Entry[] => others.map((each) => become(context, update, from, entry, each));
  if (when === undefined) return cells.of(cell.flatMap(becomes));
  // Each stays what it is. That all are found among the old ones is not enough: in a loop one may have become another.
  if (cell.every((entry) => becomes(entry).every(({ value, from: by }) => value === entry.value && by === entry.from)))
    return cell;
  const within = (entries: readonly Entry[], where: Decision): readonly Entry[] => {
    if (where === ALWAYS) return entries;
    return where === NEVER ? [] : entries.map((entry) => ({ ...entry, when: decisions.and(entry.when, where) }));
  };
  const guarded = (entry: Entry, { may, mayNot }: Guard): readonly Entry[] => [
    ...within(becomes(entry), may),
    ...within([entry], mayNot),
  ];
  const assumed = update.assumed === true;
  if (!when.some((tests) => tests.some((test) => test.variable === variable))) {
    const guard = guardOf(context, state, when, assumed);
    return guard.may === NEVER && guard.mayNot === ALWAYS
      ? cell
      : cells.of(cell.flatMap((entry) => guarded(entry, guard)));
  }
  // What the variable itself has to be is known of each of its values.
  return cells.of(
    cell.flatMap((entry) => {
      const left = when
        .filter((tests) => tests.every((test) => test.variable !== variable || mayPass(entry.value, test.test)))
        .map((tests) => tests.filter((test) => test.variable !== variable));
      const guard = guardOf(context, state, left, assumed);
      return guarded(entry, entry.value === UNKNOWN ? { ...guard, mayNot: ALWAYS } : guard);
    }),
  );
}

/** What one value becomes, beside one of the variable that it goes by. */
function become(context: StateContext, update: Update, at: number, entry: Entry, other: Entry): Entry {
  const { assumed, keepsOrigin, renews, change } = update;
  // What was itself only taken as so is held against nobody, so there is nothing to take as met.
  if (assumed === true && context.isSupposed(entry.from)) return entry;
  const value = change(entry.value, other.value, at, context.isSupposed(other.from));
  const isRenewed = renews === "always" || (renews === "where supposed" && context.isSupposed(entry.from));
  const isKept = keepsOrigin === "always" || (keepsOrigin === "where supposed" && context.isSupposed(at));
  const isSame = isKept || (value === entry.value && !isRenewed);
  const when = context.decisions.and(entry.when, other.when);
  if (isSame && value === entry.value && when === entry.when) return entry;
  return { value, from: isSame ? entry.from : at, when };
}

function mayPass(value: string, test: Test["test"]): boolean {
  return value === UNKNOWN || test(value);
}

interface Guard {
  readonly may: Decision;
  readonly mayNot: Decision;
}

const ALONE: Cell = [{ value: "", from: 0, when: ALWAYS }];

/**
 * Where one of the alternatives can be so, and where none need be. What is only taken as met follows what can be told: it is
 * so where nothing is known, and not where the test rests on something that was itself only taken as met.
 */
function guardOf(context: StateContext, state: State, when: readonly (readonly Test[])[], assumed: boolean): Guard {
  const { cells, decisions } = context;
  let may: Decision = NEVER;
  let mayNot: Decision = ALWAYS;
  for (const alternative of when) {
    let all: Decision = ALWAYS;
    let notAll: Decision = NEVER;
    for (const { variable, test } of alternative) {
      const cell = cellOf(context, state, variable);
      const known = assumed ? cell.filter(({ from }) => !context.isSupposed(from)) : cell;
      const isSo = (value: string): boolean => (assumed ? shows(value, test) : test(value));
      const may = cells.where(known, (value) => value === UNKNOWN || isSo(value));
      const mayNot = cells.where(known, (value) => (value === UNKNOWN ? !assumed : !isSo(value)));
      all = decisions.and(all, may);
      notAll = decisions.or(notAll, mayNot);
      if (!assumed) continue;
      const supposed = cell.filter(({ from }) => context.isSupposed(from));
      notAll = decisions.or(
        notAll,
        cells.where(supposed, () => true),
      );
    }
    may = decisions.or(may, all);
    mayNot = decisions.and(mayNot, notAll);
  }
  return { may, mayNot };
}

/** A variable that is set whatever it was: its origin is the node that set it. */
export function assign(context: StateContext, state: State, variable: number, cell: Cell): State {
  const { reach, store, films } = state;
  if (context.world.isFilm(variable)) {
    const next = write(films, variable, cell);
    return next === films ? state : { reach, store, films: next };
  }
  const next = write(store, variable, cell);
  return next === store ? state : { reach, store: next, films };
}

/** Where two ways meet. `limit` bounds what can grow without end: a cell it refuses is replaced by what it gives. */
export function meet(context: StateContext, a: State, b: State, limit: (variable: number, cell: Cell) => Cell): State {
  if (a.reach === NEVER) return b;
  if (b.reach === NEVER) return a;
  const both = (left: Store<Cell>, right: Store<Cell>): Store<Cell> =>
    mergeStores(left, right, (one, other, variable) =>
      limit(
        variable,
        context.cells.join(one ?? context.atStart(variable), a.reach, other ?? context.atStart(variable), b.reach),
      ),
    );
  const reach = context.decisions.or(a.reach, b.reach);
  return { reach, store: both(a.store, b.store), films: both(a.films, b.films) };
}

export function sameState(a: State, b: State): boolean {
  if (a.reach !== b.reach) return false;
  return isSame(a.store, b.store) && isSame(a.films, b.films);
}

function isSame(a: Store<Cell>, b: Store<Cell>): boolean {
  let same = true;
  differences(a, b, () => {
    same = false;
  });
  return same;
}
