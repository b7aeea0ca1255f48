// The variables of a world: one for each thing that can be so, however it is asked for, and named alike in every procedure.
import { expect, test } from "vitest";
import { ASPECTS, createWorld, placeKey, type World } from "#analysis/world.ts";
import type { Part, Ring } from "#model/declarations.ts";
import { partInstances } from "#model/instances.ts";
import { readOnPaper } from "./run-on-paper.ts";

const TEXT = `ring Circle "circle" { count 3 }
part Hub "hub"
part Bolt[1..2] "bolt" { seats in Circle by number  secures Hub }
part Pin[left, right] "pin" { seats in Circle }
energy Supply "supply" { voltage 400 V AC }
fact Signed "the sheet is signed"
procedure Work "Work" {
  step install Hub, Bolt[1..2], Pin[left] in Circle[3]
}`;
const [expanded] = readOnPaper(TEXT, true).expanded.values();
const declared = expanded?.procedure.declarations ?? [];
const parts = declared.filter((one): one is Part => one.kind === "part");
const [ring] = declared.filter((one): one is Ring => one.kind === "ring");
const empty = (): World =>
  createWorld({ parts, spoken: new Set(parts), fits: [], startTemperature: "293..293", liftingLimit: null });

test("each aspect of each instance has a number and a name of its own, which lead to each other", () => {
  const world = empty();
  const all = parts
    .flatMap(partInstances)
    .flatMap(({ part, index }) =>
      ASPECTS.map((aspect) => ({ aspect, part, index, number: world.part(part, index, aspect) })),
    );
  expect(all).toHaveLength(5 * ASPECTS.length);
  expect(new Set(all.map(({ number }) => number)).size).toBe(all.length);
  expect(new Set(all.map(({ number }) => world.keyOf(number))).size).toBe(all.length);
  for (const { aspect, part, index, number } of all) {
    expect(world.part(part, index, aspect)).toBe(number);
    expect(world.byKey(world.keyOf(number), "something else")).toBe(number);
    expect(world.all(aspect)).toContain(number);
    expect(world.keyOf(number)).toBe(`${aspect}:${part.id}${index === null ? "" : `[${index}]`}`);
  }
});

test("what is no part: by its thing and by its name", () => {
  const world = empty();
  if (ring === undefined) throw new Error("no ring");
  const holders = [1, 2, 3].map((position) => world.holder(ring, position));
  expect(new Set(holders).size).toBe(3);
  expect([1, 2, 3].map((position) => world.byKey(`holder:${placeKey(ring, position)}`, ""))).toEqual(holders);
  expect([1, 2, 3].map((position) => world.holder(ring, position))).toEqual(holders);
  expect(world.byKey("fact:x", "no")).toBe(world.fact("x"));
  expect(world.initial(world.fact("x"))).toBe("no");
});

test("a caller's world has the names, the places and the riders of what it performs, and its own numbers", () => {
  const [inner, outer] = [empty(), empty()];
  const [hub, bolt, pin] = parts;
  if (ring === undefined || hub === undefined || bolt === undefined || pin === undefined) throw new Error("no part");
  inner.part(pin, "left", "place");
  inner.maySit(pin, "left", ring, 3);
  inner.mayRide({ part: hub, index: null }, pin, "left");
  const grip = inner.part(bolt, 2, "grip");
  inner.foresee("clean it");
  const made = outer.watched(() => [outer.seatsOf(pin, "left").length, outer.isForeseen("clean it")]);
  expect(made.made).toEqual([0, false]);
  outer.adopt(inner);
  expect(made.told.isTrue).toBe(false);
  expect(outer.seatsOf(pin, "left")).toEqual([{ places: ring, position: 3 }]);
  expect(outer.riders(hub, null)).toEqual([{ part: pin, index: "left" }]);
  expect(outer.isForeseen("clean it")).toBe(true);
  expect(outer.byKey(inner.keyOf(grip), inner.initial(grip))).toBe(outer.part(bolt, 2, "grip"));
  expect(outer.initial(outer.part(bolt, 2, "grip"))).toBe("absent");
});

test("a position that is declared is said once, others beside it", () => {
  const world = empty();
  const [, bolt] = parts;
  if (ring === undefined || bolt === undefined) throw new Error("no part");
  expect(world.seatsOf(bolt, 2)).toEqual([{ places: ring, position: 2 }]);
  world.maySit(bolt, 2, ring, 2);
  world.maySit(bolt, 2, ring, 3);
  world.maySit(bolt, 2, ring, 3);
  expect(world.seatsOf(bolt, 2).map(({ position }) => position)).toEqual([2, 3]);
});
