// What a note or the first text of a warning asks for, beside what it only tells: sentences of our own, as shops write them.
import { expect, test } from "vitest";
import { askedIn } from "#analysis/wording/asked.ts";

const NONE: ReadonlySet<string> = new Set();

test.each([
  ["The bearing is hot. Do not touch it.", "Do not touch it."],
  ["Remove the cover first.", null],
  ["Wear gloves.", null],
  ["Use eye protection.", null],
  ["Keep hands clear of the gear.", null],
  ["If it sticks, heat it again.", null],
  ["Torque the screws to 40 N·m.", null],
  ["Lift it with the hoist.", null],
  ["Stay out from under it.", null],
  ["Check that the pin is out.", null],
  ["Never stand under the load.", null],
  ["Make sure that the valve is closed.", null],
  ["Before you open it, close the valve.", null],
  ["Clean and grease the bore.", null],
])("asks: %s", (text, sentence) => {
  expect(askedIn(text, NONE)).toEqual([sentence ?? text]);
});

test.each([
  "The bearing is hot enough to burn skin.",
  "The cover is too heavy for one person and can swing.",
  "Screw heads may be sharp.",
  "Screw 3 holds the cover.",
  "Torque wrenches drift when cold.",
  "See figure 4.",
  "Refer to 6.4.2.",
  "Seal faces scratch easily.",
  "Oil on the floor makes it slippery.",
  "Oil pressure throws the plug out.",
  "Water under pressure jets out of an open joint.",
  "Grease and cleaner irritate skin and eyes.",
  "Lift points are marked yellow.",
  "Spring force can throw the plug.",
  "Heat from the casing burns.",
  "Heat in the casing rises quickly.",
  "Tension in the belt pulls the pulley.",
  "Cut edges are sharp.",
  "Note that the ring is left-handed.",
  "Clean parts are in the blue tray.",
  "Lock washers are single use.",
  "Hold points are set apart.",
  "Above 120 °C the bearing steel loses its hardness.",
  "Press fit, 30 µm.",
])("tells: %s", (text) => {
  expect(askedIn(text, NONE)).toEqual([]);
});

test("the shop's own verbs count", () => {
  expect(askedIn("Deglaze the bore.", new Set(["deglaze"]))).toEqual(["Deglaze the bore."]);
});
