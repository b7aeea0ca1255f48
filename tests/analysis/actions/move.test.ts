// What is made of several moves: all that each needs, all that each changes, in turn.

import { expect, test } from "vitest";
import { both, type Move, NOTHING } from "#analysis/actions/move.ts";

const move = (name: string): Move => ({
  needs: [{ bad: [], trouble: { kind: "not tightened", part: name } }],
  updates: [{ variable: name.length, change: () => name }],
});

test("one after the other", () => {
  const first = move("Nut");
  const second = move("Screw");
  expect(both(first, second)).toEqual({
    needs: [...first.needs, ...second.needs],
    updates: [...first.updates, ...second.updates],
  });
  expect(both(second, NOTHING, first).needs).toEqual([...second.needs, ...first.needs]);
});

test("nothing needs and changes nothing", () => {
  expect(NOTHING).toEqual({ needs: [], updates: [] });
  expect(both()).toEqual(NOTHING);
  expect(both(NOTHING, NOTHING)).toEqual(NOTHING);
});
