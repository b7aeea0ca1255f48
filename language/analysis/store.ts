// A persistent array: writing gives a new one that shares all else with the old, and comparing or merging two that have
// a common past costs only what differs. Indices count from 0; what was never written is `undefined`.

const BITS = 5;
const WIDTH = 1 << BITS;
/** Levels of branches: room for 2^20 indices. */
const DEPTH = 4;

type Branch<T> = readonly (Branch<T> | T | undefined)[];

export interface Store<T> {
  readonly root: Branch<T>;
}

export function emptyStore<T>(): Store<T> {
  return { root: [] };
}

/** Returns the value at `index`, or `undefined` if none was written. */
export function read<T>(store: Store<T>, index: number): T | undefined {
  let branch: Branch<T> | undefined = store.root;
  for (let level = DEPTH - 1; level > 0; level--) {
    branch = branch[(index >> (level * BITS)) & (WIDTH - 1)] as Branch<T> | undefined;
    if (branch === undefined) return undefined;
  }
  return branch[index & (WIDTH - 1)] as T | undefined;
}

/** A store in which `index` holds `value`; the same store if it did already. */
export function write<T>(store: Store<T>, index: number, value: T): Store<T> {
  const root = writeAt(store.root, DEPTH - 1, index, value);
  return root === store.root ? store : { root };
}

function writeAt<T>(branch: Branch<T>, level: number, index: number, value: T): Branch<T> {
  const slot = (index >> (level * BITS)) & (WIDTH - 1);
  const old = branch[slot];
  const next = level === 0 ? value : writeAt((old as Branch<T> | undefined) ?? [], level - 1, index, value);
  if (next === old) return branch;
  const copy = branch.slice();
  copy[slot] = next;
  return copy;
}

/** A store that is being written: what it shares with others is copied once, however often it is written to. */
export interface Draft<T> extends Store<T> {
  root: Branch<T>;
  /** Made for it, and known to nobody else. */
  readonly own: Set<Branch<T>>;
}

export function draftOf<T>({ root }: Store<T>): Draft<T> {
  return { root, own: new Set() };
}

/** Makes `index` of the draft hold `value`. The draft is not to be written any more once its root is a store's. */
export function writeInto<T>(draft: Draft<T>, index: number, value: T): void {
  if (read(draft, index) === value) return;
  draft.root = ownBranch(draft, draft.root);
  let branch = draft.root as (Branch<T> | T | undefined)[];
  for (let level = DEPTH - 1; level > 0; level--) {
    const slot = (index >> (level * BITS)) & (WIDTH - 1);
    const next = ownBranch(draft, (branch[slot] as Branch<T> | undefined) ?? []);
    branch[slot] = next;
    branch = next as (Branch<T> | T | undefined)[];
  }
  branch[index & (WIDTH - 1)] = value;
}

function ownBranch<T>({ own }: Draft<T>, branch: Branch<T>): Branch<T> {
  if (own.has(branch)) return branch;
  const copy = branch.slice();
  own.add(copy);
  return copy;
}

/** Merges two stores of one size; `join` is asked only where they differ. */
export function mergeStores<T>(
  a: Store<T>,
  b: Store<T>,
  join: (left: T | undefined, right: T | undefined, index: number) => T,
): Store<T> {
  const root = mergeAt(a.root, b.root, DEPTH - 1, 0, join);
  return root === a.root ? a : { root };
}

function mergeAt<T>(
  a: Branch<T>,
  b: Branch<T>,
  level: number,
  base: number,
  join: (left: T | undefined, right: T | undefined, index: number) => T,
): Branch<T> {
  if (a === b) return a;
  let copy: (Branch<T> | T | undefined)[] | null = null;
  const length = Math.max(a.length, b.length);
  for (let slot = 0; slot < length; slot++) {
    const left = a[slot];
    const right = b[slot];
    if (left === right) continue;
    const index = base + (slot << (level * BITS));
    const next =
      level === 0
        ? join(left as T | undefined, right as T | undefined, index)
        : mergeAt((left as Branch<T>) ?? [], (right as Branch<T>) ?? [], level - 1, index, join);
    if (next === left) continue;
    copy ??= a.slice();
    copy[slot] = next;
  }
  return copy ?? a;
}

/** Calls `visit` with each written value of the first store that differs from the second's. */
export function differences<T>(
  a: Store<T>,
  b: Store<T>,
  visit: (index: number, left: T | undefined, right: T | undefined) => void,
): void {
  mergeStores(a, b, (left, right, index) => {
    visit(index, left, right);
    return left as T;
  });
}
