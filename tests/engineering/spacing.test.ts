// Equally spaced positions against a look at all subsets.
import { expect, test } from "vitest";
import { equallySpacedSets, isEquallySpaced } from "#engineering/spacing.ts";

test.each([
  [
    8,
    2,
    [
      [1, 5],
      [2, 6],
      [3, 7],
      [4, 8],
    ],
  ],
  [
    6,
    3,
    [
      [1, 3, 5],
      [2, 4, 6],
    ],
  ],
  [6, 6, [[1, 2, 3, 4, 5, 6]]],
  [3, 1, [[1], [2], [3]]],
  [8, 3, []],
  [7, 2, []],
  [4, 8, []],
  [8, 0, []],
  [8, -2, []],
  [8, 1.5, []],
  [Number.NaN, 2, []],
])("of %d places, %d are equally spaced so: %j", (count, wanted, sets) => {
  expect(equallySpacedSets(count, wanted)).toEqual(sets);
});

test("k of n positions are equally spaced exactly when k divides n, and then so: all subsets up to 12 places", () => {
  let compared = 0;
  for (let count = 1; count <= 12; count++) {
    for (let bits = 1; bits < 2 ** count; bits++) {
      const positions = Array.from({ length: count }, (_, at) => at + 1).filter(
        (position) => (bits >> (position - 1)) & 1,
      );
      const gaps = positions.map((from, at) => (positions[at + 1] ?? (positions[0] ?? 0) + count) - from);
      const even = gaps.every((gap) => gap === gaps[0]);
      expect(isEquallySpaced(count, positions), `${positions} of ${count}`).toBe(even);
      if (even) expect(count % positions.length).toBe(0);
      compared++;
    }
  }
  console.log(`subsets compared: ${compared}`);
  expect(compared).toBe(8178); // Σ (2ⁿ − 1) for n from 1 to 12
});

test.each([
  ["in any order", 8, [5, 1], true],
  ["one twice", 8, [1, 1], false],
  ["one beyond the circle", 8, [1, 9], false],
  ["none", 8, [], true],
  ["half a place", 8, [1.5, 5.5], false],
])("%s: %d places, %j: %s", (_what, count, positions, spaced) => {
  expect(isEquallySpaced(count, positions)).toBe(spaced);
});
