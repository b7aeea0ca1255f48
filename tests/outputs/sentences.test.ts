// Actions as bench sentences: every verb, sets of parts, orders of tightening, values in the units asked for.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Pass } from "#model/problem.ts";
import { acrossPasses } from "#outputs/passes.ts";
import { de } from "#outputs/words/de.ts";
import { blocksIn, instructionsIn, make } from "./make.ts";
import { around } from "./procedures.ts";

const DECLARATIONS = `
energy Supply "motor supply" { voltage 400 V AC }
part Shaft "pump shaft"
part Bearing "the big bearing"
part Key
tool Hoist "hoist" { lifts 100 kg }
tool Pan "oil pan"
`;

test.each([
  ["install Base", "Install the base."],
  ["install new Shim", "Install a new shim."],
  ["install Bearing over Shaft", "Install the big bearing over the pump shaft."],
  ["install Screw[3] in Circle[3] at 6 o'clock", "Install screw 3 in position 3 of the bolt circle at 6 o'clock."],
  ["install Base, Cover with Hoist", "Install the base and the cover with the hoist."],
  ["install Plug[left]", "Install the plug (left)."],
  ["install Plug[all]", "Install the plugs (left, right)."],
  ["install Key", "Install the Key."],
  ["press Bearing over Shaft with Wrench", "Press the big bearing over the pump shaft with the torque wrench."],
  ["remove Screw[1, 3..5]", "Remove screws 1 and 3–5."],
  ["discard Shim", "Remove and discard the shim."],
  ["tighten Screw[all] by hand", "Tighten screws 1–6 by hand."],
  [
    "tighten Screw[2] to 20 N·m then 90 ± 5° with Wrench",
    "Tighten screw 2 to 20 N·m (177 lbf·in), then turn 90 ± 5° further with the torque wrench.",
  ],
  ["tighten Screw[1] to 20 ± 1 N·m to seat", "Tighten screw 1 to 20 ± 1 N·m (169 .. 185 lbf·in) to seat the parts."],
  ["loosen Screw[1] by 1/4 turn", "Turn screw 1 back by 1/4 turn."],
  [
    "heat Shaft to 100 .. 110 °C with Wrench",
    "Heat the pump shaft to 100 .. 110 °C (212 .. 230 °F) with the torque wrench.",
  ],
  ["heat Shaft by 20 K with Wrench", "Heat the pump shaft by 20 K (36 °F) with the torque wrench."],
  ["cool Shaft to -30 .. -20 °C", "Cool the pump shaft to -30 .. -20 °C (-22 .. -4 °F)."],
  ["wait 10 min", "Wait 10 min."],
  ["wait until Shaft is at most 40 °C", "Wait until the pump shaft is at most 40 °C (at most 104 °F)."],
  ["clean Base with Oil", "Clean the base with oil."],
  ["lubricate Screw[all] with Oil", "Lubricate screws 1–6 with oil."],
  ["apply 5 g of Oil to Base", "Apply 5 g (0.18 oz) of oil to the base."],
  ["fill Base with Oil", "Fill the base with oil."],
  ["drain Base into Pan", "Drain the base into the oil pan."],
  ["bleed Base", "Bleed the base."],
  ["turn Circle[3] to 6 o'clock", "Turn the bolt circle until its position 3 is at 6 o'clock."],
  ["turn Circle to put Circle[2] at 12 o'clock", "Turn the bolt circle until its position 2 is at 12 o'clock."],
  ["align Base with Cover", "Align the base with the cover."],
  ["lift Base with Hoist", "Lift the base with the hoist."],
  ["lift Base by hand", "Lift the base by hand."],
  [
    "lift Base by hand reach 40 cm from height 60 cm to 110 cm turned 30°",
    "Lift the base by hand (reach 40 cm (15.7 in), from a height of 60 cm (23.6 in) to 110 cm (43.3 in), body turned 30°).",
  ],
  ["lift Base by hand from height 60 cm", "Lift the base by hand (from a height of 60 cm (23.6 in))."],
  ["lift Base with Hoist on 2 legs at 60°", "Lift the base with the hoist on 2 legs at 60° to the horizontal."],
  ["support Base with Hoist", "Support the base with the hoist."],
  ["set down Base", "Set down the base."],
  ["isolate Supply", "Isolate the motor supply."],
  ["release Supply", "Release the motor supply until nothing is left."],
  ["prove Supply dead with Wrench", "Prove that the motor supply is dead with the torque wrench."],
  ["restore Supply", "Restore the motor supply."],
  ['inspect Base "for cracks"', "Inspect the base for cracks."],
  ['inspect Base "cracks."', "Inspect the base: cracks."],
  ['measure "end float" with Depth', "Measure: end float with the depth gauge."],
  ['do "Turn the shaft" with Wrench', "Turn the shaft. Use the torque wrench."],
  ['check "No gap." with Depth', "Check: No gap with the depth gauge."],
])("%s", (action, sentence) => {
  expect(instructionsIn(make(around(`step { ${action} }`, DECLARATIONS)).document)).toEqual([sentence]);
});

describe("orders", () => {
  const detailsOf = (action: string): readonly string[] => {
    const [first] = [...blocksIn(make(around(`step ${action}`)).document.blocks)].filter(
      (one) => one.kind === "instruction",
    );
    return first?.details ?? [];
  };

  test.each([
    ["tighten Screw[all] in cross pattern to 5 N·m", "1 – 4 – 2 – 5 – 3 – 6"],
    ["tighten Screw[all] in circular pattern to 5 N·m", "1 – 2 – 3 – 4 – 5 – 6"],
    ["tighten Screw[1, 4, 2] in cross pattern to 5 N·m", "1 – 4 – 2"],
    ["tighten Foot[all] in order to 5 N·m", "1 – 4 – 2 – 3"],
    ["loosen Foot[all] in reverse order", "3 – 2 – 4 – 1"],
  ])("%s", (action, order) => {
    expect(detailsOf(action)).toEqual([`Order of positions: ${order}.`]);
  });

  test("a part that may be in any position has an order only when all places are meant", () => {
    const some = 'part Bolt[1..6] "bolt" { seats in Circle }';
    const details = (which: string) =>
      [
        ...blocksIn(make(around(`step tighten Bolt[${which}] in cross pattern to 5 N·m`, some)).document.blocks),
      ].flatMap((block) => (block.kind === "instruction" ? block.details : []));
    expect(details("all")).toEqual(["Order of positions: 1 – 4 – 2 – 5 – 3 – 6."]);
    expect(details("1, 2")).toEqual([]);
  });
});

test("parts that share a title are told apart by their names", () => {
  const { document } = make(around("step install Left, Right", 'part Left "bracket"\npart Right "bracket"'));
  expect(instructionsIn(document)).toEqual(["Install the bracket (Left) and the bracket (Right)."]);
});

describe("one sentence for several passes", () => {
  const passes = (...values: readonly number[]): readonly Pass[] => values.map((value) => [{ variable: "n", value }]);

  test.each([
    [["Fit 1.", "Fit 2."], "Fit n."],
    [["Fit 1 in 1 of 8.", "Fit 2 in 2 of 8."], "Fit n in n of 8."],
    [["Fit 1 and 2.", "Fit 2 and 3."], null],
    [["Turn 1.5 mm.", "Turn 2.5 mm."], null],
    [["Same.", "Same."], "Same."],
    [["Fit one.", "Fit two."], null],
  ])("%j", (texts, wanted) => {
    expect(acrossPasses(texts, passes(1, 2))).toBe(wanted);
  });

  test("the value filled in again gives back every sentence", () => {
    const words = fc.array(fc.constantFrom("fit", "the", "part", "§", "8", "."), { maxLength: 6 });
    fc.assert(
      fc.property(
        words,
        fc.uniqueArray(fc.integer({ min: 10, max: 99 }), { minLength: 2, maxLength: 5 }),
        (parts, values) => {
          const texts = values.map((value) => parts.map((part) => (part === "§" ? String(value) : part)).join(" "));
          const one = acrossPasses(texts, passes(...values));
          expect(values.map((value) => one?.replaceAll("n", String(value)))).toEqual(texts);
        },
      ),
    );
  });
});

describe("a number stands with the noun that it belongs to", () => {
  const PAIRED = `part Right[1..8] "head bolt, right"
part Stud[1..24] "stud bolt with nut"
part Cap[1..3] "cap for drain"
`;
  test.each([
    ["tighten Right[all] by hand", "Tighten head bolts 1–8, right by hand."],
    ["tighten Stud[all] by hand", "Tighten stud bolts 1–24 with nut by hand."],
    ["tighten Stud[3] by hand", "Tighten stud bolt 3 with nut by hand."],
    ["install Cap[1, 3]", "Install caps 1 and 3 for drain."],
    ["install new Cap[1..2]", "Install new caps 1 and 2 for drain."],
  ])("%s", (action, sentence) => {
    expect(instructionsIn(make(around(`step { ${action} }`, PAIRED)).document)).toEqual([sentence]);
  });

  test("in German", () => {
    const parts = 'part Stud[1..24] "Stehbolzen mit Mutter"\npart Right[1..8] "Kopfschraube, rechts"\n';
    const lines = "step { tighten Stud[all] by hand tighten Right[all] by hand }";
    expect(instructionsIn(make(around(lines, parts), {}, de).document)).toEqual([
      "Stehbolzen 1–24 mit Mutter von Hand anziehen.",
      "Kopfschraube 1–8, rechts von Hand anziehen.",
    ]);
  });
});
