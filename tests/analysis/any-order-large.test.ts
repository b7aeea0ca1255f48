// Blocks of nine and more children: what some of their orders written out have is found, and each finding shows an order that has it.
import fc from "fast-check";
import { expect, test } from "vitest";
import { AFTER, BEFORE, block, CHILDREN, keyOf, told } from "./any-order-told.ts";

test("nine to eleven children say what some of their orders say, and each finding shows an order that has it", {
  timeout: 600_000,
}, () => {
  const RUNS = Number(process.env.N ?? 3);
  const SOME = 60;
  const blocks = fc.record({
    children: fc.uniqueArray(fc.constantFrom(...CHILDREN), { minLength: 9, maxLength: 11 }),
    before: fc.constantFrom(...BEFORE),
    after: fc.constantFrom(...AFTER),
    seed: fc.nat(),
  });
  let found = 0;
  fc.assert(
    fc.property(blocks, ({ children, before, after, seed }) => {
      const inOrder = (order: readonly string[]): string => `${before}\n${order.join("\n")}\n${after}`;
      const whole = fc.shuffledSubarray(children, { minLength: children.length });
      const shuffled = fc.sample(whole, { numRuns: SOME, seed });
      const [own = [], ...written] = told([inOrder([block(children)]), ...shuffled.map(inOrder)], children);
      const wanted = new Map(own.map((one) => [keyOf(one), one.so]));
      for (const [which, rows] of written.entries())
        for (const row of rows)
          expect(
            row.so.filter((choice) => wanted.get(keyOf(row))?.includes(choice) !== true),
            `${keyOf(row)} is missing, which has\n${inOrder(shuffled[which] ?? [])}`,
          ).toEqual([]);
      const shown = own.map(({ order }) => {
        const first = (order ?? []).map((number) => children[number - 1] ?? "");
        return [...first, ...children.filter((child) => !first.includes(child))];
      });
      const having = told(shown.map(inOrder), children);
      own.forEach((one, which) => {
        found++;
        expect(having[which]?.map(keyOf), `of\n${inOrder([block(children)])}`).toContain(keyOf(one));
      });
    }),
    { numRuns: RUNS },
  );
  expect(found).toBeGreaterThan(5 * RUNS);
});
