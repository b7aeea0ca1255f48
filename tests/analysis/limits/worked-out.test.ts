// What is worked out from the same records is worked out once, and from others anew.
import { expect, test } from "vitest";
import { createWorkedOut } from "#analysis/limits/worked-out.ts";

const [torque, factor] = [{}, {}];

test("what hangs on the same records in the same order is made once", () => {
  const known = createWorkedOut<number>();
  let made = 0;
  const count = (): number => ++made;
  expect(known.of([torque, factor], count)).toBe(1);
  expect(known.of([torque, factor], count)).toBe(1);
  expect(made).toBe(1);
});

test("others, another order, more or fewer, and none in place of one are made by themselves", () => {
  const known = createWorkedOut<number>();
  let made = 0;
  const keys = [[torque, factor], [factor, torque], [torque], [], [torque, null], [null, torque], [torque, {}]];
  for (const [at, key] of keys.entries()) expect(known.of(key, () => ++made)).toBe(at + 1);
  for (const [at, key] of keys.entries()) expect(known.of(key, () => ++made)).toBe(at + 1);
});

test("nothing is an answer too", () => {
  const known = createWorkedOut<null | undefined>();
  let made = 0;
  const nothing = (): null => {
    made++;
    return null;
  };
  expect([known.of([torque], nothing), known.of([torque], nothing), made]).toEqual([null, null, 1]);
});
