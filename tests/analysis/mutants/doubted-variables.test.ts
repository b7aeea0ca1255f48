// Which variables a line about a thing may have changed: all that a thing of its sort has, and of no other thing.
import { expect, test } from "vitest";
import { UNKNOWN } from "#analysis/cell.ts";
import { damagedVariables, doubtOf } from "#analysis/unknown.ts";
import { ASPECTS } from "#analysis/world.ts";
import { onPaper } from "../run-on-paper.ts";

const TEXT = `ring Circle "circle" { count 3  numbered clockwise seen from "drive end"  position 1 at 6 o'clock  fill clockwise }
ring Other "other" { count 2  numbered clockwise seen from "drive end"  position 1 at 12 o'clock  fill clockwise }
holes Feet "feet" { count 2 }
part Hub "hub"
part Bolt[1..2] "bolt" { seats in Circle by number }
part Pin "pin" { seats in Other }
energy Supply "supply" { voltage 400 V AC }
fact Signed "the sheet is signed"
tool Heater "heater"
procedure Work "Work" {
  step install Bolt[1..2], Pin in Other[1]
}`;
const [run] = onPaper(TEXT).runs;
const thing = (name: string) => {
  const found = run?.expanded.procedure.declarations.find((declared) => declared.name === name);
  if (found === undefined) throw new Error(name);
  return found;
};
const keys = (name: string): readonly string[] =>
  run === undefined ? [] : damagedVariables(run.world, thing(name)).map((variable) => run.world.keyOf(variable));
const sorts = (name: string): readonly string[] => keys(name).map((key) => key.split(":")[0] ?? "");

test("a part: each of its aspects, of each instance, the places it may stand in, how far it fills a ring", () => {
  expect(sorts("Hub")).toEqual([...ASPECTS]);
  expect(sorts("Bolt").filter((sort) => sort !== "holder")).toEqual([...ASPECTS, ...ASPECTS, "fill"]);
  expect(sorts("Pin")).toEqual([...ASPECTS, "holder", "fill"]);
  const fills = [...keys("Bolt"), ...keys("Pin")].filter((key) => key.startsWith("fill"));
  expect(keys("Other")).toEqual(expect.arrayContaining(fills));
  expect(keys("Bolt")).toEqual(expect.arrayContaining(keys("Circle").filter((key) => /^holder.*[12]$/.test(key))));
});

test("an energy and a fact: the one that each has", () => {
  expect(sorts("Supply")).toEqual(["energy"]);
  expect(sorts("Signed")).toEqual(["fact"]);
});

test("a ring: how it stands, whether it was turned, what is filled, and each of its places", () => {
  expect(keys("Circle").length).toBeGreaterThanOrEqual(5);
  expect(sorts("Circle").filter((sort) => sort === "holder")).toHaveLength(3);
  expect(sorts("Other").filter((sort) => sort === "holder")).toHaveLength(2);
  expect(keys("Circle").filter((key) => keys("Other").includes(key))).toEqual([]);
  const places = [...keys("Bolt"), ...keys("Pin")].filter((key) => key.startsWith("holder"));
  expect(places.every((key) => keys("Circle").includes(key) || keys("Other").includes(key))).toBe(true);
});

test("holes: their places alone; a tool: nothing", () => {
  expect(sorts("Feet")).toEqual(["holder", "holder"]);
  expect(new Set(keys("Feet")).size).toBe(2);
  expect(keys("Heater")).toEqual([]);
});

test("nothing is known of any of them after a line of which nothing could be read", () => {
  if (run === undefined) throw new Error("no run");
  const updates = doubtOf(run.world, thing("Supply"));
  expect(updates.map(({ variable }) => run.world.keyOf(variable))).toEqual(keys("Supply"));
  expect(updates.map(({ change }) => change("live", "", 0, false))).toEqual([UNKNOWN]);
  const hub = doubtOf(run.world, thing("Hub")).map(({ variable }) => run.world.keyOf(variable));
  expect(hub.slice(0, ASPECTS.length)).toEqual(keys("Hub"));
});
