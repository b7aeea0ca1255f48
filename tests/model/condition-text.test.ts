// Conditions in the words of the language, as messages show them.
import { expect, test } from "vitest";
import { conditionText, thingName, thingsText } from "#model/condition-text.ts";
import { hasInstance, instanceRange, partInstances } from "#model/instances.ts";
import { declared, expandedOf, modelOf } from "./model-of.ts";

const SHOP = `ring R { count 4 numbered clockwise }
part Cover { states open, shut }
part Screw[1..8]
part Foot[left, right]
energy Supply
fact Signed
option Extent { Full Part }
`;

test.each([
  ["Cover is installed", "Cover is installed"],
  ["Cover is not open", "Cover is not open"],
  ["Screw are tightened", "Screw[all] are tightened"],
  ["Screw[all] are tightened", "Screw[all] are tightened"],
  ["Screw[2..4] are loose", "Screw[2..4] are loose"],
  ["Screw[4, 1] are loose", "Screw[1, 4] are loose"],
  ["Screw[3] is loose", "Screw[3] is loose"],
  ["Foot[left] is clean", "Foot[left] is clean"],
  ["Supply is isolated", "Supply is isolated"],
  ["Signed", "Signed"],
  ["not Signed", "not (Signed)"],
  ["Extent is not Full", "Extent is not Full"],
  ["no temporary parts", "no temporary parts"],
  ["Cover is open and (Signed or Supply is live)", "Cover is open and (Signed or Supply is live)"],
])("%s", (written, shown) => {
  const [condition] = expandedOf(`${SHOP}procedure P { begin with ${written} }`).begin;
  expect(condition === undefined ? "" : conditionText(condition)).toBe(shown);
});

test("things by their names", () => {
  const span = { path: "main.sprag", start: 0, end: 0 };
  const model = modelOf(SHOP);
  const [part, places] = [declared(model, "part", "Screw"), declared(model, "ring", "R")];
  expect(thingName({ kind: "part", part, index: 3, span })).toBe("Screw[3]");
  expect(thingName({ kind: "place", places, position: 2, span })).toBe("R[2]");
  expect(thingName({ kind: "place", places, position: null, span })).toBe("R");
  expect(thingName({ kind: "other", thing: declared(model, "energy", "Supply"), span })).toBe("Supply");
  expect(thingsText([])).toBe("");
});

test("instances of a part", () => {
  const model = modelOf(`${SHOP}part One[7..9]`);
  const [cover, foot, one, ring] = [
    declared(model, "part", "Cover"),
    declared(model, "part", "Foot"),
    declared(model, "part", "One"),
    declared(model, "ring", "R"),
  ];
  expect(partInstances(one).map(({ index }) => index)).toEqual([7, 8, 9]);
  expect(partInstances(cover).map(({ index }) => index)).toEqual([null]);
  expect([
    hasInstance(one, 6),
    hasInstance(one, 7),
    hasInstance(foot, "left"),
    hasInstance(foot, 1),
    hasInstance(cover, null),
  ]).toEqual([false, true, true, false, true]);
  expect([cover, foot, one, ring].map(instanceRange)).toEqual([null, "left, right", "7..9", "1..4"]);
});
