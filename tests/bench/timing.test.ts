// The bench's own arithmetic, against laws whose answer is known.
import { expect, test } from "vitest";
import { growthExponent, quantile, timed } from "./timing.ts";

test("a law of growth gives its exponent back", () => {
  const sizes = [1_000, 2_000, 5_000, 10_000];
  const law = (exponent: number) => sizes.map((size) => ({ size, time: 0.003 * size ** exponent }));
  for (const exponent of [0, 1, 1.1, 2]) expect(growthExponent(law(exponent))).toBeCloseTo(exponent, 9);
});

test("quantiles by nearest rank", () => {
  const times = Array.from({ length: 20 }, (_, index) => index + 1);
  expect([quantile(times, 0), quantile(times, 0.5), quantile(times, 0.95), quantile(times, 1)]).toEqual([
    1, 10, 19, 20,
  ]);
  expect(quantile([], 0.5)).toBeNaN();
});

test("warming up is not counted, and slow runs come last", async () => {
  let runs = 0;
  const times = await timed(() => runs++, 5, 3);
  expect(runs).toBe(8);
  expect(times).toHaveLength(5);
  expect([...times].sort((a, b) => a - b)).toEqual(times);
});
