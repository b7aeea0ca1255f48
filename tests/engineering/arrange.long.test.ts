// Arrangements against every permutation, against worked cases, and against the bound that is given with them.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrange, EXACT, type Proposal, type ToPlace, unbalanceOf } from "#engineering/arrange.ts";

describe("small sets", () => {
  test("are as good as the best of all permutations", () => {
    const moments = fc.array(fc.integer({ min: 900, max: 1100 }), { minLength: 1, maxLength: 8 });
    let compared = 0;
    fc.assert(
      fc.property(moments, (list) => {
        const found = proposal(free(list));
        expect(found.exact).toBe(true);
        expect(sorted(found.positions)).toEqual(upTo(list.length));
        const least = leastOfAll(
          list,
          list.map(() => null),
        );
        expect(Math.abs(found.residual - least)).toBeLessThan(1e-7);
        expect(Math.abs(plainUnbalance(list, found.positions) - found.residual)).toBeLessThan(1e-7);
        compared++;
      }),
      { numRuns: 60 },
    );
    console.log(`arrange: ${compared} sets of up to 8 parts compared with every permutation`);
    expect(compared).toBeGreaterThan(50);
  });

  test("with fixed parts are as good as the best of all permutations that leave these where they are", () => {
    const sets = fc
      .array(fc.integer({ min: 900, max: 1100 }), { minLength: 3, maxLength: 7 })
      .chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(upTo(list.length), { maxLength: 3 })));
    fc.assert(
      fc.property(sets, ([list, kept]) => {
        const fixed = list.map((_, part) => kept[part] ?? null);
        const found = proposal(list.map((moment, part) => ({ moment, fixed: fixed[part] ?? null, now: null })));
        for (const [part, at] of fixed.entries()) if (at !== null) expect(found.positions[part]).toBe(at);
        expect(Math.abs(found.residual - leastOfAll(list, fixed))).toBeLessThan(1e-7);
      }),
      { numRuns: 40 },
    );
  });

  // Worked by hand.
  test.each([
    // Like masses all round leave nothing (statics).
    ["like ones", [5, 5, 5, 5, 5, 5], 0],
    // Two pairs across each other.
    ["two pairs", [7, 5, 7, 5], 0],
    // Seven like ones and one 3 heavier: the surplus alone is left, wherever it goes.
    ["one heavy one", [10, 10, 10, 13, 10, 10, 10, 10], 3],
    // One 3 and one 2 heavier: across each other, 3 − 2.
    ["two heavy ones, even count", [10, 13, 12, 10], 1],
    // On three places the best angle is 120°: √(9 + 4 − 6) (law of cosines).
    ["two heavy ones, three places", [13, 12, 10], Math.sqrt(7)],
    ["a single part", [4], 4],
  ])("%s", (_, list, residual) => {
    const found = proposal(free(list));
    expect(found.residual).toBeCloseTo(residual, 9);
    expect(found.bound).toBe(found.residual);
  });

  test("stay as they are where nothing is better, and else move as few parts as can be", () => {
    const placed = (list: readonly number[], now: readonly number[]): readonly ToPlace[] =>
      list.map((moment, part) => ({ moment, fixed: null, now: now[part] ?? null }));
    expect(proposal(placed([7, 5, 7, 5], [3, 2, 1, 4])).positions).toEqual([3, 2, 1, 4]);
    const two = proposal(placed([7, 7, 5, 5], [1, 2, 3, 4]));
    expect(two.residual).toBeCloseTo(0, 12);
    expect(two.positions.filter((at, part) => at === part + 1).length).toBe(2);
  });

  test("are none with two parts fixed in one place, a place that is not there, or no parts", () => {
    const fixedAt = (...at: readonly number[]) => arrange(at.map((fixed) => ({ moment: 1, fixed, now: null })));
    expect(fixedAt(1, 1)).toBeNull();
    expect(fixedAt(1, 3)).toBeNull();
    expect(fixedAt(0, 2)).toBeNull();
    expect(arrange([])).toBeNull();
    expect(arrange(free([1, Number.NaN]))).toBeNull();
    expect(fixedAt(2, 1)?.positions).toEqual([2, 1]);
  });
});

describe("larger sets", () => {
  test("keep the bound, are a permutation, and come out the same each time", () => {
    const sets = fc.array(fc.integer({ min: 2200, max: 2400 }), { minLength: EXACT + 1, maxLength: 60 });
    fc.assert(
      fc.property(sets, (list) => {
        const found = proposal(free(list));
        expect(sorted(found.positions)).toEqual(upTo(list.length));
        expect(found.bound).toBeLessThanOrEqual(found.residual);
        expect(found.residual).toBeLessThanOrEqual(plainUnbalance(list, upTo(list.length)) + 1e-6);
        expect(Math.abs(plainUnbalance(list, found.positions) - found.residual)).toBeLessThan(1e-6);
        expect(proposal(free(list))).toEqual(found);
      }),
      { numRuns: 4 },
    );
  });

  test("of parts within 4 % come out a thousand times better than as they were given", () => {
    for (const count of [12, 16, 24, 36, 60]) {
      const list = upTo(count).map((at) => 2200 + ((at * 7919) % 89));
      const before = plainUnbalance(list, upTo(count));
      const found = proposal(free(list));
      console.log(`arrange: ${count} parts, ${before.toFixed(1)} before, ${found.residual.toPrecision(3)} after`);
      expect(found.residual).toBeLessThan(before / 1000);
    }
  });

  test("have a bound that no permutation undercuts, and that is reached where it can be", () => {
    // Eleven like ones and one heavy one: nothing but its surplus can be left.
    const one = proposal(free([...Array(11).fill(10), 13]));
    expect(one).toMatchObject({ exact: true });
    expect(one.residual).toBeCloseTo(3, 9);
    // Two heavy ones on thirteen places: at best 12/26 of a turn apart (law of cosines).
    const two = proposal(free([...Array(11).fill(10), 13, 12]));
    const best = Math.sqrt(9 + 4 + 12 * Math.cos((2 * Math.PI * 6) / 13));
    expect(two.residual).toBeCloseTo(best, 9);
    expect(two.bound).toBeCloseTo(best, 9);
    // One that all others together do not outweigh.
    const heavy = proposal(free([...upTo(15).map((at) => 100 + at / 10), 140]));
    expect(heavy.bound).toBeGreaterThan(0);
    expect(heavy.bound).toBeLessThanOrEqual(heavy.residual);
    console.log(`arrange: one heavy of 16, bound ${heavy.bound.toFixed(3)}, found ${heavy.residual.toFixed(3)}`);
  });

  test("keep fixed parts where they are", () => {
    const list = upTo(16).map((at) => 2200 + ((at * 7919) % 89));
    const found = proposal(list.map((moment, part) => ({ moment, fixed: part < 4 ? part * 4 + 1 : null, now: null })));
    expect(found.positions.slice(0, 4)).toEqual([1, 5, 9, 13]);
    expect(found.bound).toBeLessThanOrEqual(found.residual);
  });
});

test("what positions leave is what is added up", () => {
  const parts = free([3, 4, 0, 0]);
  // A right triangle: 3 and 4 make 5.
  expect(unbalanceOf(parts, [1, 2, 3, 4])).toBeCloseTo(5, 12);
  expect(unbalanceOf(parts, [1, 3, 2, 4])).toBeCloseTo(1, 12);
});

function proposal(parts: readonly ToPlace[]): Proposal {
  const found = arrange(parts);
  if (found === null) throw new Error("no arrangement");
  return found;
}

function free(moments: readonly number[]): readonly ToPlace[] {
  return moments.map((moment) => ({ moment, fixed: null, now: null }));
}

function upTo(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1);
}

function sorted(list: readonly number[]): number[] {
  return [...list].sort((a, b) => a - b);
}

/** Added up without taking anything off first, by complex multiplication rather than by sines. */
function plainUnbalance(moments: readonly number[], positions: readonly number[]): number {
  const count = moments.length;
  const [c, s] = [Math.cos((2 * Math.PI) / count), Math.sin((2 * Math.PI) / count)];
  let [x, y] = [0, 0];
  moments.forEach((moment, part) => {
    let [re, im] = [1, 0];
    for (let turn = 1; turn < (positions[part] ?? 1); turn++) [re, im] = [re * c - im * s, re * s + im * c];
    x += moment * re;
    y += moment * im;
  });
  return Math.sqrt(x * x + y * y);
}

function leastOfAll(moments: readonly number[], fixed: readonly (number | null)[]): number {
  let least = Number.POSITIVE_INFINITY;
  const positions: number[] = [];
  const visit = (part: number): void => {
    if (part === moments.length) {
      least = Math.min(least, plainUnbalance(moments, positions));
      return;
    }
    for (const at of upTo(moments.length)) {
      if (positions.slice(0, part).includes(at) || (fixed[part] ?? at) !== at) continue;
      if ((fixed[part] ?? null) === null && fixed.includes(at)) continue;
      positions[part] = at;
      visit(part + 1);
    }
  };
  visit(0);
  return least;
}
