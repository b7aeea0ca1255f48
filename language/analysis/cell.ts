// What one state variable can be: each value it can have, where it was set, and for which option assignments. Equal
// cells are one object within a `Cells`, so that comparing them costs nothing. Knows nothing of parts or actions.
import { ALWAYS, type Decision, type Decisions, NEVER } from "./decision.ts";

/** The value of a variable of which nothing can be said: no need fails on it. */
export const UNKNOWN = "?";

/** One value the variable can have. `from` is the node of the flow graph that gave it. */
export interface Entry {
  readonly value: string;
  readonly from: number;
  /** May say more than where the node is reached at all: to be read together with that. */
  readonly when: Decision;
}
export type Cell = readonly Entry[];

export interface Cells {
  readonly one: (value: string, from: number) => Cell;
  readonly of: (entries: readonly Entry[]) => Cell;
  /** Both, each where its own path is taken. */
  readonly join: (left: Cell, leftReach: Decision, right: Cell, rightReach: Decision) => Cell;
  /** Only the entries whose value `keep` accepts. */
  readonly filter: (cell: Cell, keep: (value: string) => boolean) => Cell;
  /** Where the variable can have a value that `test` accepts. */
  readonly where: (cell: Cell, test: (value: string) => boolean) => Decision;
}

export function createCells(decisions: Decisions): Cells {
  const interned = new Map<string, Cell>();
  // Most cells have one value on all paths; they are found without building a text to look them up by.
  const singles = new Map<string, Map<number, Cell>>();
  const one = (value: string, from: number): Cell => {
    const byNode = singles.get(value);
    const known = byNode?.get(from);
    if (known !== undefined) return known;
    const cell = [{ value, from, when: ALWAYS }];
    if (byNode === undefined) singles.set(value, new Map([[from, cell]]));
    else byNode.set(from, cell);
    return cell;
  };
  const of = (entries: readonly Entry[]): Cell => {
    const alone = entries.length === 1 ? entries[0] : undefined;
    if (alone?.when === ALWAYS) return one(alone.value, alone.from);
    const cell = merged(entries);
    const [first] = cell;
    if (first !== undefined && cell.length === 1 && first.when === ALWAYS) return one(first.value, first.from);
    cell.sort((a, b) => a.from - b.from || (a.value < b.value ? -1 : 1));
    const key = cell.map((entry) => `${entry.value}@${entry.from}:${entry.when}`).join("|");
    const known = interned.get(key);
    if (known !== undefined) return known;
    interned.set(key, cell);
    return cell;
  };
  const merged = (entries: readonly Entry[]): Entry[] => {
    const cell: Entry[] = [];
    for (const entry of entries) {
      if (entry.when === NEVER) continue;
      const at = cell.findIndex((other) => other.from === entry.from && other.value === entry.value);
      const old = cell[at];
      if (old === undefined) cell.push(entry);
      else cell[at] = { ...old, when: decisions.or(old.when, entry.when) };
    }
    return cell;
  };
  return {
    one,
    of,
    join: (left, leftReach, right, rightReach) => {
      if (left === right) return left;
      const within = (cell: Cell, reach: Decision): Entry[] =>
        cell.map((entry) => ({ ...entry, when: decisions.and(entry.when, reach) }));
      return of([...within(left, leftReach), ...within(right, rightReach)]);
    },
    filter: (cell, keep) =>
      cell.every((entry) => keep(entry.value)) ? cell : of(cell.filter((entry) => keep(entry.value))),
    where: (cell, test) => {
      let so: Decision = NEVER;
      for (const { value, when } of cell) if (test(value)) so = decisions.or(so, when);
      return so;
    },
  };
}
