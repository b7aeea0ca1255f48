// Lists that grow while they are asked for: what was made of them counts as true exactly as long as making it again would give the same.
import fc from "fast-check";
import { expect, test } from "vitest";
import { createWatch, growing, type Watched } from "#analysis/growing.ts";

const LISTS = 4;
const anyList = fc.nat({ max: LISTS - 1 });
/** One more in a list; or something made of what some of the lists hold, after which it may itself have added to one. */
const turns = fc.array(
  fc.oneof(
    fc.record({ adds: anyList }),
    fc.record({ asks: fc.array(anyList, { maxLength: 3 }), thenAdds: fc.option(anyList, { nil: null }) }),
  ),
  { maxLength: 40 },
);

test("what was made is true as long as it would be made alike", () => {
  let [stale, fresh] = [0, 0];
  fc.assert(
    fc.property(turns, (list) => {
      const { told, add, watched } = createWatch();
      const lists = Array.from({ length: LISTS }, () => growing<number>());
      const at = (index: number) => lists[index] ?? growing<number>();
      const seen = (asks: readonly number[]): string => asks.map((index) => told(at(index)).join(",")).join(" ");
      const made: { asks: readonly number[]; watched: Watched<string> }[] = [];
      list.forEach((turn, number) => {
        if ("adds" in turn) add(at(turn.adds), number);
        else {
          const { asks, thenAdds } = turn;
          const make = (): string => {
            const text = seen(asks);
            if (thenAdds !== null) add(at(thenAdds), number);
            return text;
          };
          made.push({ asks, watched: watched(make) });
        }
        for (const one of made) expect(one.watched.told.isTrue).toBe(one.watched.made === seen(one.asks));
      });
      fresh += made.filter((one) => one.watched.told.isTrue).length;
      stale += made.filter((one) => !one.watched.told.isTrue).length;
    }),
  );
  expect(Math.min(stale, fresh)).toBeGreaterThan(20);
});

test("what is asked while nothing is made is nobody's answer", () => {
  const { told, add, watched } = createWatch();
  const list = growing<number>();
  const made = watched(() => 1);
  told(list);
  add(list, 1);
  expect(made.told.isTrue).toBe(true);
});
