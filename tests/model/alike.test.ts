// Places move with the text in front of them; records are alike where they say the same and stand for one another.
import fc from "fast-check";
import { expect, test } from "vitest";
import { createComparison, type Move, moveBetween } from "#model/alike.ts";

const path = "a.sprag";
const at = (start: number, end: number) => ({ path, start, end });
const stay: Move = (start, end) => ({ start, end });
const compared = (move: Move = stay) => createComparison((asked) => (asked === path ? move : null));

test.each<[string, string, string, number, number, ReturnType<Move>]>([
  ["in front of the change", "one two", "one three", 0, 3, { start: 0, end: 3 }],
  ["behind it", "one two six", "one three six", 8, 11, { start: 10, end: 13 }],
  ["round it", "(one two)", "(one xx two)", 0, 9, { start: 0, end: 12 }],
  ["begun by what was put in front", "ab", "a-b", 1, 2, { start: 2, end: 3 }],
  ["ended by what was put behind", "ab", "a-b", 0, 1, { start: 0, end: 1 }],
  ["empty where something was put in", "ab", "a-b", 1, 1, null],
  ["half taken away", "one two six", "one six", 2, 6, null],
  ["in a text that is the same", "ab", "ab", 1, 1, { start: 1, end: 1 }],
])("a place %s", (_, before, after, start, end, moved) => {
  expect(moveBetween(before, after)(start, end)).toEqual(moved);
});

test("a word that a change does not touch is still that word", () => {
  const word = fc.stringMatching(/^[a-d]{1,3}$/);
  let moved = 0;
  fc.assert(
    fc.property(
      fc.array(word, { minLength: 3, maxLength: 12 }),
      word,
      fc.nat(11),
      fc.nat(2),
      (words, put, nth, drop) => {
        const from = Math.min(nth, words.length - 1);
        const before = words.join(" ");
        const after = [...words.slice(0, from), put, ...words.slice(from + drop)].join(" ");
        const move = moveBetween(before, after);
        for (const [at, one] of words.entries()) {
          const start = words.slice(0, at).join(" ").length + (at === 0 ? 0 : 1);
          const now = at >= from && at < from + drop ? null : move(start, start + one.length);
          // A change in which words begin alike may seem to lie inside the next word: that one is longer then.
          if (now === null || now.end - now.start !== one.length) continue;
          expect(after.slice(now.start, now.end)).toBe(one);
          moved++;
        }
      },
    ),
  );
  expect(moved).toBeGreaterThan(100);
});

interface Part {
  readonly id: string;
  readonly span: object;
  needs: Part[];
}

/** Two parts that need each other, `by` signs further behind. */
function circle(by: number, names: readonly [string, string] = ["A", "B"]): readonly Part[] {
  const [one, other] = names.map((id, nth) => ({
    id,
    span: at(10 * nth + by, 10 * nth + by + 5),
    needs: [] as Part[],
  }));
  one?.needs.push(other as Part);
  other?.needs.push(one as Part);
  return [one as Part, other as Part];
}

test("records in a circle are alike where each stands for one of the other, and what was found is said of those", () => {
  const { carried, isAlike } = compared((start, end) => ({ start: start + 7, end: end + 7 }));
  const [before, after] = [circle(0), circle(7)];
  expect(isAlike(before, after)).toBe(true);
  const found = carried({ kind: "loose", part: before[0] as Part, span: at(1, 3), also: [at(4, 4)], more: 2 });
  expect(found).toEqual({ kind: "loose", part: after[0], span: at(8, 10), also: [at(11, 11)], more: 2 });
  expect(found?.part).toBe(after[0]);
});

test.each<[string, unknown, unknown]>([
  ["another name", circle(0), circle(0, ["A", "C"])],
  ["another place", circle(0), circle(1)],
  ["a place in another file", [at(1, 2)], [{ ...at(1, 2), path: "b.sprag" }]],
  ["one more", circle(0), [...circle(0), circle(0)[0]]],
  ["another property", [{ a: 1 }], [{ b: 1 }]],
  ["a property more", [{ a: 1 }], [{ a: 1, b: 1 }]],
  ["a number for a record", [{ a: 1 }], [1]],
  ["a list for a record", [{}], [[]]],
  ["another member of a set", [new Set(["a"])], [new Set(["b"])]],
  ["another value in a map", [new Map([["a", 1]])], [new Map([["a", 2]])]],
  ["another fraction", [{ n: 1n, d: 2n }], [{ n: 1n, d: 3n }]],
])("not alike: %s", (_, before, after) => {
  expect(compared().isAlike(before as object, after as object)).toBe(false);
});

test("not alike: two records where there was one twice, and the other way round", () => {
  const [one, two] = [{ id: "A" }, { id: "A" }];
  expect(compared().isAlike([one, one], [one, two])).toBe(false);
  expect(compared().isAlike([one, two], [two, two])).toBe(false);
  expect(compared().isAlike([one, two], [two, one])).toBe(true);
});

test("once something differs nothing is alike any more", () => {
  const { isAlike } = compared();
  expect(isAlike([1], [1])).toBe(true);
  expect(isAlike([1], [2])).toBe(false);
  expect(isAlike([1], [1])).toBe(false);
});

test("what cannot be placed, or is no plain data, is not carried over", () => {
  const { carried } = compared(moveBetween("one two six", "one six"));
  expect(carried([at(0, 3)])).toEqual([at(0, 3)]);
  expect(carried([at(2, 6)])).toBeNull();
  expect(carried([{ ...at(0, 1), path: "unknown.sprag" }])).toBeNull();
  expect(carried([new Set(["a"])])).toBeNull();
});
