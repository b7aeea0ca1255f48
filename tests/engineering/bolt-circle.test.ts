// The cross pattern against the sequences of published tables, and what must hold for every count.

import { describe, expect, test } from "vitest";
import { circularPattern, crossPattern, stageFault, tighteningPasses } from "#engineering/bolt-circle.ts";
import { rational } from "#quantity/rational.ts";

describe("the sequences in common use", () => {
  test.each([
    [4, "1 3 2 4", "memory"],
    [8, "1 5 3 7 2 6 4 8", "ASME PCC-1 style table, as quoted by others"],
    [12, "1 7 4 10 2 8 5 11 3 9 6 12", "ASME PCC-1 style table, as quoted by others"],
    [16, "1 9 5 13 3 11 7 15 2 10 6 14 4 12 8 16", "ASME PCC-1 style table, as quoted by others"],
    [20, "1 11 6 16 3 13 8 18 5 15 10 20 2 12 7 17 4 14 9 19", "memory"],
    [
      24,
      "1 13 7 19 4 16 10 22 2 14 8 20 5 17 11 23 3 15 9 21 6 18 12 24",
      "ASME PCC-1 style table, as quoted by others",
    ],
    [5, "1 3 5 2 4", "common practice: the star"],
  ])("%i places: %s (%s)", (count, sequence) => {
    expect(crossPattern(count).join(" ")).toBe(sequence);
  });
});

const even = Array.from({ length: 100 }, (_, at) => 2 * (at + 1));
const odd = even.map((count) => count - 1);

test("every place comes exactly once", () => {
  for (const count of [...even, ...odd]) {
    const sorted = [...crossPattern(count)].sort((a, b) => a - b);
    expect(sorted).toEqual(Array.from({ length: count }, (_, at) => at + 1));
  }
});

test("an even circle goes on with the opposite place", () => {
  for (const count of even) {
    const pattern = crossPattern(count);
    for (let at = 0; at < count; at += 2) {
      expect(Math.abs((pattern[at + 1] ?? 0) - (pattern[at] ?? 0)), `${count} places, entry ${at + 1}`).toBe(count / 2);
    }
  }
});

test("an odd circle goes on with the free place nearest to the opposite", () => {
  for (const count of odd.filter((one) => one > 1)) {
    const pattern = crossPattern(count);
    for (let at = 0; at + 1 < count; at += 2) {
      const free = pattern.slice(at + 1);
      const off = (position: number) => Math.abs(apart(position, pattern[at] ?? 0, count) - count / 2);
      expect(off(pattern[at + 1] ?? 0), `${count} places, entry ${at + 1}`).toBe(Math.min(...free.map(off)));
    }
  }
});

test("after each four, up to 68 places, no gap is more than two places wider than it has to be", () => {
  for (const count of even.filter((one) => one <= 68)) {
    const pattern = crossPattern(count);
    for (let done = 4; done <= count; done += 4) {
      const widest = widestGap(pattern.slice(0, done), count);
      expect(widest, `${count} places, ${done} done`).toBeLessThanOrEqual(Math.ceil(count / done) + 2);
    }
  }
});

test("after each four, up to 200 places, no gap is wider than halving the quarter again and again leaves", () => {
  for (const count of even.filter((one) => one % 4 === 0)) {
    const pattern = crossPattern(count);
    for (let done = 4; done <= count; done += 4) {
      const halved = Math.ceil(count / 4 / 2 ** Math.floor(Math.log2(done / 4)));
      expect(widestGap(pattern.slice(0, done), count), `${count} places, ${done} done`).toBeLessThanOrEqual(halved);
    }
  }
});

test("a circular pattern goes round", () => {
  expect(circularPattern(5)).toEqual([1, 2, 3, 4, 5]);
  for (const count of [0, -1, 2.5, Number.NaN]) expect(circularPattern(count)).toEqual([]);
});

test.each([
  ["30, 70, 100 % of 45", [13.5, 31.5, 45], null],
  ["the last repeated", [13.5, 45, 45], null],
  ["one stage", [45], null],
  ["no stages", [], null],
  ["one that falls", [13.5, 31.5, 31, 45], { why: "falls", at: 2 }],
  ["a last below the final value", [13.5, 44.99], { why: "last", at: 1 }],
  ["a last above the final value", [13.5, 45.01], { why: "last", at: 1 }],
  ["both: the fall first", [31.5, 13.5], { why: "falls", at: 1 }],
])("stages, %s", (_what, stages, fault) => {
  const exact = (value: number) => rational(Math.round(value * 100), 100);
  expect(stageFault(stages.map(exact), exact(45))).toEqual(fault);
});

test("passes: each stage in the order given, then once round at the last (ASME PCC-1 practice)", () => {
  expect(tighteningPasses([1, 3, 2, 4], 3)).toEqual([
    { stage: 0, positions: [1, 3, 2, 4] },
    { stage: 1, positions: [1, 3, 2, 4] },
    { stage: 2, positions: [1, 3, 2, 4] },
    { stage: 2, positions: [1, 2, 3, 4] },
  ]);
  for (const stages of [0, -1, 1.5, Number.NaN]) expect(tighteningPasses([1, 2], stages)).toEqual([]);
});

test.each([0, -4, 2.5, Number.NaN])("no circle has %d places", (count) => {
  expect(crossPattern(count)).toEqual([]);
});

function widestGap(positions: readonly number[], count: number): number {
  const sorted = [...positions].sort((a, b) => a - b);
  return Math.max(...sorted.map((start, at) => (sorted[at + 1] ?? (sorted[0] ?? 0) + count) - start));
}

function apart(a: number, b: number, count: number): number {
  return Math.min(Math.abs(a - b), count - Math.abs(a - b));
}
