// Work that is undone before anything has used it: films, heat, turns of a ring; and all that counts as a use.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

const PARTS = `ring Wheel "wheel" { count 8 numbered clockwise seen from "drive end" position 1 at 12 o'clock }
ring Disc "disc" { count 8 numbered clockwise seen from "drive end" position 1 at 12 o'clock }
energy Supply "supply" { pressure 6 bar }
part Shaft "shaft"
part Bearing "bearing" { needs Shaft }
part Hood "hood" { encloses Shaft }
part Clip "clip" { retains Shaft }
part Screw "screw" { secures Shaft }
part Tab "tab" { locks Shaft }
part Sleeve "sleeve"
part Other "other"
fit Sleeve over Shaft { interference 1 .. 2 mm }
consumable Oil "oil"
tool Heater "heater" { heats to 200 °C }
role Fitter "fitter"
`;
const procedure = (steps: string): string =>
  `${PARTS}procedure Work "Work" { ${steps} } procedure Sub "Sub" { step "Rest." } procedure Wipe "Wipe" { step clean Other }`;
/** Only what is wasted: much that stands between is wrong in other ways here. */
const work = (steps: string): readonly string[] =>
  found(procedure(steps)).filter((told) => told.startsWith("order.wasted"));

/** Uses whatever was done. */
const USES_ALL = [
  "step inspect Other",
  'step { check "It is well" }',
  'step measure "gap" expect 1 .. 2 mm',
  'step do "Run it."',
  'step "Run it."',
  'step "Run it." { clean Other }',
  'step { record "gap" with Heater }',
  "step restore Supply",
  "perform Sub",
  // What it says of itself does not tell what it looks at.
  "perform Wipe",
];
/** Names a part that was worked on, or one with a relation to it. */
const USES_PART = [
  "step install Shaft",
  "step press Shaft in Other",
  "step press Other on Shaft",
  "step install Other on Shaft",
  "step remove Shaft",
  "step drain Shaft",
  "step fill Shaft with Oil",
  "step bleed Shaft",
  "step align Shaft with Other",
  "step align Other with Shaft",
  "step lift Shaft with Heater",
  "step support Shaft with Heater",
  "step set down Shaft",
  "step tighten Shaft",
  "step loosen Shaft",
  "step install Bearing",
  "step install Hood",
  "step install Clip",
  "step tighten Screw",
  "step install Tab",
  "step install Sleeve",
  "step drain Other, Sleeve",
];
/** Says nothing of it. */
const IDLE = [
  "",
  "step isolate Supply",
  "step release Supply",
  "step prove Supply dead",
  "step install Other",
  "step { sign Fitter }",
  'step { record "gap" }',
];

describe("a film that is cleaned off", () => {
  const film = (between: string): string => `step lubricate Shaft with Oil ${between} step clean Shaft`;
  const coat = (between: string): string => `step apply Oil to Shaft ${between} step clean Shaft`;
  const told = ["order.wasted: clean Shaft"];
  test.each([...IDLE, "step turn Wheel[1] to 3 o'clock", "step clean Other", "step lubricate Other with Oil"])(
    "with nothing of it between: %s",
    (between) => {
      expect(work(film(between))).toEqual(told);
      expect(work(coat(between))).toEqual(told);
    },
  );
  test.each([
    ...USES_ALL,
    ...USES_PART,
    "step wait 1 s",
    "step wait until Shaft is at most 20 °C",
    "step heat Shaft to 30 °C with Heater",
    "step cool Shaft to 10 °C",
    "step heat Sleeve to 30 °C with Heater",
  ])("used by: %s", (between) => {
    expect(work(film(between))).toEqual([]);
  });
  test("is used only by what comes between", () => {
    expect(work(`step install Shaft ${film("")}`)).toEqual(told);
    expect(work(film("step lubricate Shaft with Oil"))).toEqual(told);
    expect(work(film("step apply Oil to Bearing"))).toEqual(told);
    expect(work(film("step clean Bearing"))).toEqual(told);
  });
  test("is not used by a choice", () => {
    const choose = "step choose Other by Gap { 1 .. 2 mm: Other }";
    expect(work(`step measure Gap "gap" expect 1 .. 2 mm ${film(choose)}`)).toEqual(told);
  });
  test("is told once, and anew for a new one", () => {
    expect(work(`${film("")} step clean Shaft`)).toEqual(told);
    expect(work(`${film("")} ${film("")}`)).toEqual([...told, ...told]);
    expect(work(`step clean Shaft step lubricate Shaft with Oil`)).toEqual([]);
  });
});

describe("heat that is taken away", () => {
  const heat = (between: string): string => `step heat Shaft to 90 °C with Heater ${between} step cool Shaft to 10 °C`;
  const told = ["order.wasted: cool Shaft"];
  test.each([
    ...IDLE,
    "step turn Wheel[1] to 3 o'clock",
    "step heat Shaft to 95 °C with Heater",
    "step heat Other by 5 K with Heater",
  ])("with nothing of it between: %s", (between) => {
    expect(work(heat(between))).toEqual(told);
  });
  test.each([
    ...USES_ALL,
    ...USES_PART,
    "step wait 1 s",
    "step wait until Shaft is at most 200 °C",
    "step heat Sleeve to 90 °C with Heater",
    "step cool Sleeve to 10 °C",
  ])("used by: %s", (between) => {
    expect(work(heat(between))).toEqual([]);
  });
  test.each(["step clean Shaft", "step lubricate Shaft with Oil", "step apply Oil to Shaft"])(
    "a film is no use of it: %s",
    (between) => {
      expect(work(heat(between))).toEqual(told);
    },
  );
  test("is told once, and not where it is only cooled, or heated afterwards", () => {
    expect(work(`${heat("")} step cool Shaft to 5 °C`)).toEqual(told);
    expect(work("step cool Shaft to 5 °C step heat Shaft to 90 °C with Heater")).toEqual([]);
    expect(work("step heat Other by 5 K with Heater step cool Shaft by 5 K")).toEqual([]);
  });
});

describe("a ring that is turned again", () => {
  const turn = (between: string): string =>
    `step turn Wheel[1] to 3 o'clock ${between} step turn Wheel[2] to 6 o'clock`;
  const told = ["order.wasted: turn Wheel[2]"];
  test.each([
    "",
    "step isolate Supply",
    "step release Supply",
    "step prove Supply dead",
    "step wait 1 h",
    "step wait until Shaft is at most 20 °C",
    "step turn Disc[1] to 3 o'clock",
    "step { sign Fitter }",
    'step { record "gap" }',
  ])("with nothing between: %s", (between) => {
    expect(work(turn(between))).toEqual(told);
  });
  test.each([
    ...USES_ALL,
    "step install Other",
    "step remove Shaft",
    "step clean Shaft",
    "step lubricate Shaft with Oil",
    "step apply Oil to Shaft",
    "step heat Shaft to 90 °C with Heater",
    "step lift Shaft with Heater",
  ])("used by: %s", (between) => {
    expect(work(turn(between))).toEqual([]);
  });
  test("the second turn may be wasted in its turn", () => {
    expect(work(`${turn("")} step turn Wheel[1] to 1 o'clock`)).toEqual([...told, "order.wasted: turn Wheel[1]"]);
    expect(work("step turn Wheel to put Wheel[3] at 3 o'clock step turn Wheel to put Wheel[4] at 3 o'clock")).toEqual([
      "order.wasted: turn Wheel",
    ]);
    expect(work("step turn Wheel[1] to 3 o'clock")).toEqual([]);
  });
});

describe("what is said", () => {
  const wasted = { kind: "wasted" };
  test.each<[steps: string, fact: object]>([
    [
      "step lubricate Shaft with Oil step clean Shaft",
      {
        what: "Shaft",
        first: "lubricated",
        verb: "clean",
        span: "clean Shaft",
        since: { step: "1", span: "lubricate Shaft" },
      },
    ],
    [
      "step apply Oil to Shaft step clean Shaft",
      {
        what: "Shaft",
        first: "coated",
        verb: "clean",
        span: "clean Shaft",
        since: { step: "1", span: "apply Oil to Shaft" },
      },
    ],
    [
      "step heat Shaft to 90 °C with Heater step heat Shaft to 95 °C with Heater step cool Shaft to 10 °C",
      { what: "Shaft", first: "heated", verb: "cool", span: "cool Shaft", since: { step: "2", span: "heat Shaft" } },
    ],
    [
      "step turn Wheel[1] to 3 o'clock step turn Wheel[1] to 4 o'clock",
      {
        what: "Wheel",
        first: "turned",
        verb: "turn",
        span: "turn Wheel[1]",
        since: { step: "1", span: "turn Wheel[1]" },
      },
    ],
    [
      "step apply Oil to Shaft step lubricate Shaft with Oil step clean Shaft",
      {
        what: "Shaft",
        first: "lubricated",
        verb: "clean",
        span: "clean Shaft",
        since: { step: "2", span: "lubricate Shaft" },
      },
    ],
  ])("%s", (steps, fact) => {
    expect(wholeFacts(procedure(steps))).toEqual([{ ...wasted, ...fact }]);
  });
});
