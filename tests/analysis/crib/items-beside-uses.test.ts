// Each item of a crib beside all that is used of its tool: by what it misses, with the end that is passed, and what it does not say.
// Each limit stands on both sides.
import { describe, expect, test } from "vitest";
import { job, type Match, matches } from "./crib-on-paper.ts";

const one = (...given: Parameters<typeof job>): Match => {
  const [first, ...more] = matches(job(...given));
  expect(more).toEqual([]);
  if (first === undefined) throw new Error("no item for the tool");
  return first;
};
const T20 = "tighten Screw to 20 N·m with Tool";

describe("what it misses, with the end that is passed", () => {
  test.each<[tool: string, item: string, step: string, miss: object | null]>([
    [
      "torque 1 .. 90 N·m",
      "torque 25 .. 60 N·m",
      T20,
      { what: "torque", side: "below", has: "25 .. 60 N·m", asked: "20 N·m" },
    ],
    [
      "torque 1 .. 90 N·m",
      "torque 5 .. 19 N·m",
      "tighten Screw to 18 .. 20 N·m with Tool",
      { what: "torque", side: "above", has: "5 .. 19 N·m", asked: "20 N·m" },
    ],
    [
      "torque 1 .. 90 N·m",
      "torque 19 .. 90 N·m",
      "tighten Screw to 18 .. 20 N·m with Tool",
      { what: "torque", side: "below", has: "19 .. 90 N·m", asked: "18 N·m" },
    ],
    // 20 N·m and 2 N·m of prevailing torque.
    [
      "torque 1 .. 90 N·m",
      "torque 5 .. 21 N·m",
      "tighten Nut to 20 N·m with Tool",
      { what: "setting", side: "above", has: "5 .. 21 N·m", asked: "22 N·m" },
    ],
    [
      "measures 0 .. 9 mm",
      "measures 0 .. 9 bar",
      'measure "gap" with Tool expect 1 .. 2 mm',
      { what: "quantity", side: null, has: "0 .. 9 bar", asked: "1 .. 2 mm" },
    ],
    [
      "measures 0 .. 9 mm",
      "measures 1.5 .. 9 mm",
      'measure "gap" with Tool expect 1 .. 2 mm',
      { what: "reading", side: "below", has: "1.5 .. 9 mm", asked: "1 mm" },
    ],
    [
      "measures 0 .. 9 mm",
      "measures 0 .. 9 mm",
      'measure "gap" with Tool expect at most 10 mm',
      { what: "reading", side: "above", has: "0 .. 9 mm", asked: "10 mm" },
    ],
    [
      "measures 0 .. 9 mm",
      "measures 0 .. 9 mm",
      'measure "gap" with Tool expect at least 10 mm',
      { what: "reading", side: "above", has: "0 .. 9 mm", asked: "10 mm" },
    ],
    [
      "heats to 200 °C",
      "heats to 99 °C",
      "heat Screw to 90 .. 100 °C with Tool",
      { what: "heat", side: "above", has: "99 °C", asked: "100 °C" },
    ],
    [
      "cools to -90 °C",
      "cools to -39 °C",
      "cool Screw to -40 .. -30 °C with Tool",
      { what: "cold", side: "below", has: "-39 °C", asked: "-40 °C" },
    ],
    ["cools to -90 °C", "cools to -40 °C", "cool Screw to -40 .. -30 °C with Tool", null],
    [
      "lifts 900 kg",
      "lifts 119 kg",
      "lift Frame with Tool",
      { what: "load", side: "above", has: "119 kg", asked: "120 kg" },
    ],
    [
      "lifts 900 kg",
      "lifts 119 kg",
      "support Frame with Tool",
      { what: "load", side: "above", has: "119 kg", asked: "120 kg" },
    ],
    // On two legs at 30°: 120 kg on each.
    [
      "each leg lifts 900 kg",
      "each leg lifts 119 kg",
      "lift Frame with Tool on 2 legs at 30°",
      { what: "leg load", side: "above", has: "119 kg", asked: "120 kg" },
    ],
    ["each leg lifts 900 kg", "each leg lifts 120 kg", "lift Frame with Tool on 2 legs at 30°", null],
    // What the requirement says counts where no value is used of it.
    [
      "heats to 200 °C",
      "heats to 199 °C",
      "inspect Frame with Tool",
      { what: "heat", side: "above", has: "199 °C", asked: "200 °C" },
    ],
    [
      "cools to -40 °C",
      "cools to -39 °C",
      "inspect Frame with Tool",
      { what: "cold", side: "below", has: "-39 °C", asked: "-40 °C" },
    ],
    [
      "lifts 200 kg",
      "lifts 199 kg",
      "inspect Frame with Tool",
      { what: "load", side: "above", has: "199 kg", asked: "200 kg" },
    ],
    [
      "each leg lifts 200 kg",
      "each leg lifts 199 kg",
      "inspect Frame with Tool",
      { what: "leg load", side: "above", has: "199 kg", asked: "200 kg" },
    ],
    [
      "force 100 kN",
      "force 99 kN",
      "inspect Frame with Tool",
      { what: "force", side: "above", has: "99 kN", asked: "100 kN" },
    ],
    ["heats to 200 °C", "heats to 150 °C", "heat Screw to 90 .. 100 °C with Tool", null],
    ["lifts 900 kg", "lifts 150 kg", "lift Frame with Tool", null],
    ["each leg lifts 900 kg", "each leg lifts 150 kg", "lift Frame with Tool on 2 legs at 30°", null],
    [
      "accuracy 4 %",
      "accuracy 4.1 %",
      "inspect Frame with Tool",
      { what: "accuracy", side: "above", has: "4.1 %", asked: "4 %" },
    ],
    ["accuracy 4 %", "accuracy 4 %", "inspect Frame with Tool", null],
    // Of reading and of full scale: they cannot be compared.
    ["accuracy 2 %", "torque 1 .. 9 N·m  accuracy 4 % of full scale", "inspect Frame with Tool", null],
    [
      "torque 1 .. 9 N·m  accuracy 2 % of full scale",
      "torque 1 .. 9 N·m  accuracy 4 % of full scale",
      "inspect Frame with Tool",
      { what: "accuracy", side: "above", has: "4 %", asked: "2 %" },
    ],
    [
      "resolution 0.1 mm",
      "resolution 0.2 mm",
      "inspect Frame with Tool",
      { what: "resolution", side: "above", has: "0.2 mm", asked: "0.1 mm" },
    ],
    ["resolution 0.1 mm", "resolution 2 bar", "inspect Frame with Tool", null],
    [
      "offset 60 mm",
      "offset 61 mm",
      "inspect Frame with Tool",
      { what: "offset", side: null, has: "61 mm", asked: "60 mm" },
    ],
    ["offset 60 mm", "offset 6 cm", "inspect Frame with Tool", null],
    [
      "offset 60 mm  angle 90°",
      "offset 60 mm  angle 45°",
      "inspect Frame with Tool",
      { what: "angle", side: null, has: "45°", asked: "90°" },
    ],
    // With 5 % of the reading 39/0.95 = 41.05 is above 41·0.95 = 38.95 N·m.
    [
      "torque 1 .. 90 N·m",
      "torque 5 .. 90 N·m  accuracy 5 %",
      "tighten Screw to 39 .. 41 N·m with Tool",
      { what: "window", side: null, has: "5 %", asked: "39 .. 41 N·m" },
    ],
    ["torque 1 .. 90 N·m", "torque 5 .. 90 N·m  accuracy 5 %", "tighten Screw to 40 N·m with Tool", null],
    // 2 % of 60 N·m are 1.2 N·m: 40.2 is above 39.8 N·m.
    [
      "torque 1 .. 90 N·m",
      "torque 5 .. 60 N·m  accuracy 2 % of full scale",
      "tighten Screw to 39 .. 41 N·m with Tool",
      { what: "window", side: null, has: "2 %", asked: "39 .. 41 N·m" },
    ],
    [
      "torque 1 .. 90 N·m",
      "torque at least 5 N·m  accuracy 2 % of full scale",
      "tighten Screw to 39 .. 41 N·m with Tool",
      null,
    ],
  ])("%s; %s; %s", (tool, item, step, miss) => {
    expect(one(tool, item, step)).toMatchObject({ misses: miss === null ? [] : [miss], unsaid: [] });
  });

  test("one of each sort, and each end of it by itself", () => {
    const steps = [
      T20,
      "tighten Screw to 2 N·m with Tool",
      "tighten Screw to 90 N·m with Tool",
      "tighten Screw to 95 N·m with Tool",
    ];
    const { misses } = one("torque 1 .. 99 N·m", "torque 10 .. 60 N·m", ...steps);
    expect(misses).toMatchObject([
      { what: "torque", side: "below", asked: "2 N·m" },
      { what: "torque", side: "above" },
    ]);
  });
});

describe("what it does not say is told, and not held against it", () => {
  test.each<[tool: string, item: string, step: string, unsaid: readonly string[]]>([
    ["torque 1 .. 90 N·m", "arm 300 mm", T20, ["torque"]],
    ["measures 0 .. 9 mm", "accuracy 1 %", 'measure "gap" with Tool expect 1 .. 2 mm', ["measures"]],
    ["measures 0 .. 9 mm", "resolution 1 mm", 'measure "gap" with Tool expect 1 .. 2 mm', []],
    ["heats to 200 °C", "", "heat Screw to 90 .. 100 °C with Tool", ["heats to"]],
    ["cools to -90 °C", "", "cool Screw to -40 .. -30 °C with Tool", ["cools to"]],
    ["lifts 900 kg", "", "lift Frame with Tool", ["lifts"]],
    ["each leg lifts 900 kg", "", "lift Frame with Tool on 2 legs at 30°", ["each leg lifts"]],
    ["heats to 200 °C", "", "inspect Frame with Tool", ["heats to"]],
    ["cools to -90 °C", "", "inspect Frame with Tool", ["cools to"]],
    ["lifts 900 kg", "", "inspect Frame with Tool", ["lifts"]],
    ["each leg lifts 900 kg", "", "inspect Frame with Tool", ["each leg lifts"]],
    ["force 100 kN", "", "inspect Frame with Tool", ["force"]],
    [
      "accuracy 4 %  resolution 1 mm  offset 6 cm  angle 90°",
      "",
      "inspect Frame with Tool",
      ["accuracy", "resolution", "offset", "angle"],
    ],
    // A range is nothing that an item has to say where no value is used of it.
    ["torque 1 .. 90 N·m", "", "inspect Frame with Tool", []],
    ["measures 0 .. 9 mm", "", "inspect Frame with Tool", []],
    ["", "", T20, ["torque"]],
    ["", "", 'measure "gap" with Tool expect 1 .. 2 mm', ["measures"]],
    ["", "", "heat Screw to 90 .. 100 °C with Tool", ["heats to"]],
    ["", "", "lift Frame with Tool", ["lifts"]],
  ])("%s; %s; %s", (tool, item, step, unsaid) => {
    expect(one(tool, item, step)).toMatchObject({ misses: [], unsaid });
  });
});
