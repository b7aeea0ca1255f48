// The persistent array against a plain map.
import fc from "fast-check";
import { expect, test } from "vitest";
import { differences, draftOf, emptyStore, mergeStores, read, type Store, write, writeInto } from "#analysis/store.ts";

const writes = fc.array(fc.tuple(fc.integer({ min: 0, max: 1_000_000 }), fc.integer()), { maxLength: 60 });

function filled(list: readonly (readonly [number, number])[], from: Store<number> = emptyStore()): Store<number> {
  return list.reduce((store, [index, value]) => write(store, index, value), from);
}

test("reads what was written last, and nothing else", () => {
  fc.assert(
    fc.property(writes, fc.integer({ min: 0, max: 1_000_000 }), (list, elsewhere) => {
      const store = filled(list);
      const plain = new Map(list);
      for (const [index, value] of plain) expect(read(store, index)).toBe(value);
      expect(read(store, elsewhere)).toBe(plain.get(elsewhere));
    }),
  );
});

test("writing leaves the old store as it was", () => {
  fc.assert(
    fc.property(writes, writes, (first, second) => {
      const old = filled(first);
      filled(second, old);
      for (const [index, value] of new Map(first)) expect(read(old, index)).toBe(value);
    }),
  );
});

test("a draft holds what is written into it, and what it was made of stays as it was", () => {
  fc.assert(
    fc.property(writes, writes, (first, second) => {
      const old = filled(first);
      const draft = draftOf(old);
      for (const [index, value] of second) writeInto(draft, index, value);
      for (const [index, value] of new Map(first)) expect(read(old, index)).toBe(value);
      for (const [index, value] of new Map([...first, ...second])) expect(read(draft, index)).toBe(value);
      let differing = 0;
      differences(filled(second, old), { root: draft.root }, () => differing++);
      expect(differing).toBe(0);
    }),
  );
});

test("a draft into which nothing new is written is the store that it was made of", () => {
  fc.assert(
    fc.property(writes, (list) => {
      const store = filled(list);
      const draft = draftOf(store);
      for (const [index, value] of new Map(list)) writeInto(draft, index, value);
      expect(draft.root).toBe(store.root);
    }),
  );
});

test("differences are exactly the indices whose values differ", () => {
  fc.assert(
    fc.property(writes, writes, writes, (common, left, right) => {
      const base = filled(common);
      const [a, b] = [filled(left, base), filled(right, base)];
      const seen = new Set<number>();
      differences(a, b, (index) => seen.add(index));
      const indices = new Set([...common, ...left, ...right].map(([index]) => index));
      const wanted = [...indices].filter((index) => read(a, index) !== read(b, index));
      expect([...seen].sort()).toEqual(wanted.sort());
    }),
  );
});

test("merging asks only where two stores differ, and keeps the rest", () => {
  fc.assert(
    fc.property(writes, writes, writes, (common, left, right) => {
      const base = filled(common);
      const [a, b] = [filled(left, base), filled(right, base)];
      const merged = mergeStores(a, b, (one, other) =>
        Math.max(one ?? Number.MIN_SAFE_INTEGER, other ?? Number.MIN_SAFE_INTEGER),
      );
      for (const [index] of [...common, ...left, ...right]) {
        const values = [read(a, index), read(b, index)].filter((value) => value !== undefined);
        expect(read(merged, index)).toBe(Math.max(...values));
      }
    }),
  );
  const same = filled([[3, 1]]);
  expect(mergeStores(same, same, () => 0)).toBe(same);
});
