// The catalogue is about the hazards of the language, all of them and in its order; the statements' word says whom each harms.
import { expect, test } from "vitest";
import { HAZARDS } from "#analysis/hazards/catalogue.ts";
import { HAZARDS as NAMES } from "#model/names.ts";

test("it has every hazard of the language", () => {
  expect([...HAZARDS.keys()]).toEqual(NAMES);
});

test("what facts raise, and what is worn, is said of hazards to people", () => {
  const equipment = [...HAZARDS.values()].filter(({ harms }) => harms === "equipment");
  expect(equipment).toHaveLength(5);
  expect(equipment.some(({ raisedByFacts, protection }) => raisedByFacts || protection !== null)).toBe(false);
});
