// Heavy parts and what holds them: the last fastener that goes, a lift that is given up.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";
import { wholeFacts } from "./whole-facts.ts";

/** A gearbox with so many bolts, and beside it a pump with two. */
function procedure(bolts: number, steps: string, mass = "mass 40 kg", more = ""): string {
  return `part Box "gearbox" { ${mass} }
${bolts === 0 ? "" : `part Bolt[1..${bolts}] "bolt" { secures Box }`}
part Pump "pump" { mass 30 kg }
part Stud[1..2] "stud" { secures Pump }
tool Hoist "hoist" { lifts 100 kg }
tool Crane "crane" { lifts 100 kg }
${more}
procedure Work "Work" { ${steps} }`;
}
/** In, with all its bolts tight. */
const held = (bolts: number): string =>
  `begin with Box is secured${Array.from({ length: bolts }, (_, at) => `, Bolt[${at + 1}] is installed`).join("")}`;

type Case = [bolts: number, steps: string, ...told: string[]];
const loosen = (what: string): string => `order.unsupported: loosen ${what}`;
const remove = (what: string): string => `order.unsupported: remove ${what}`;

function work([bolts, steps]: readonly [number, string], mass?: string, more?: string): readonly string[] {
  return found(procedure(bolts, steps, mass, more)).filter((told) => told.startsWith("order.unsupported"));
}

describe("what is heavy", () => {
  const last: readonly [number, string] = [1, `${held(1)} step loosen Bolt[1]`];
  const told = [loosen("Bolt[1]")];
  test.each<[mass: string, told: readonly string[]]>([
    ["mass 40 kg", told],
    ["mass 23 kg", []],
    ["mass 23.1 kg", told],
    ["mass 20 .. 24 kg", told],
    ["mass 20 .. 23 kg", []],
    ["mass 22 ± 2 kg", told],
    ["mass at least 30 kg", told],
    ["mass at least 10 kg", []],
    ["mass at most 30 kg", told],
    ["mass 60 lb", told],
    ["", []],
  ])("%s", (mass, expected) => {
    expect(work(last, mass)).toEqual(expected);
  });
  test.each<[threshold: string, told: readonly string[]]>([
    ["threshold lifting 40 kg", []],
    ["threshold lifting 39 kg", told],
    ["threshold lifting 30 .. 39 kg", told],
    ["threshold lifting 30 .. 40 kg", []],
    ["threshold lifting at most 40 kg", []],
    ["threshold lifting at least 39 kg", told],
    ["threshold burn 40 °C", told],
  ])("with the shop's own %s", (threshold, expected) => {
    expect(work(last, "mass 40 kg", threshold)).toEqual(expected);
  });
});

describe("the last fastener that is tight", () => {
  test.each<Case>([
    [1, `${held(1)} step loosen Bolt[1]`, loosen("Bolt[1]")],
    [1, `${held(1)} step loosen Bolt[1] by 90°`],
    [2, `${held(2)} step loosen Bolt[1]`],
    [2, `${held(2)} step loosen Bolt[1] step loosen Bolt[2]`, loosen("Bolt[2]")],
    [2, `${held(2)} step loosen Bolt[2] step loosen Bolt[1]`, loosen("Bolt[1]")],
    [3, `${held(3)} step loosen Bolt[1..2]`],
    [3, `${held(3)} step loosen Bolt[all]`, loosen("Bolt[all]")],
    // Set back by an angle it holds still; run in by hand it does not.
    [2, `${held(2)} step loosen Bolt[1] by 90° step loosen Bolt[2]`],
    [2, `${held(2)} step tighten Bolt[1] by hand step loosen Bolt[2]`, loosen("Bolt[2]")],
    // As found it may be tight, the one that is loosened and the one that is left.
    [1, "begin with Box is installed, Bolt[1] is installed step loosen Bolt[1]", loosen("Bolt[1]")],
    [2, "begin with Box is installed, Bolt[1] is installed, Bolt[2] is tightened step loosen Bolt[2]"],
    [2, "begin with Box is installed, Bolt[1] is loose, Bolt[2] is tightened step loosen Bolt[2]", loosen("Bolt[2]")],
    // One that was loose held nothing.
    [1, "begin with Box is installed, Bolt[1] is loose step loosen Bolt[1]"],
    // The part is not in, or the fastener is not.
    [1, "step install Bolt[1] step tighten Bolt[1] step loosen Bolt[1]"],
    [1, "begin with Box is installed step tighten Bolt[1] step loosen Bolt[1]"],
    // Held by something else.
    [1, `${held(1)} step lift Box with Hoist step loosen Bolt[1]`],
    [1, `${held(1)} step lift Box by hand step loosen Bolt[1]`],
    [1, `${held(1)} step support Box with Hoist step loosen Bolt[1]`],
    [1, `${held(1)} step lift Pump with Hoist step loosen Bolt[1]`, loosen("Bolt[1]")],
    [1, `${held(1)} step lift Box with Hoist step set down Box step loosen Bolt[1]`, loosen("Bolt[1]")],
    // Told once, it is taken as held.
    [1, `${held(1)} step loosen Bolt[1] step tighten Bolt[1] step loosen Bolt[1]`, loosen("Bolt[1]")],
  ])("of %s: %s", (bolts, steps, ...told) => {
    expect(work([bolts, steps])).toEqual(told);
  });
  test("of two parts that one fastener secures, each is told", () => {
    const text = `part Box "gearbox" { mass 40 kg } part Plate "plate" { mass 30 kg } part Tray "tray" { mass 3 kg }
      part Bolt "bolt" { secures Box, Plate, Tray }
      procedure Work "Work" { begin with Box is installed, Plate is installed, Tray is installed, Bolt is tightened step loosen Bolt }`;
    expect(found(text)).toEqual([loosen("Bolt"), loosen("Bolt")]);
  });
});

describe("the last fastener that is in", () => {
  test.each<Case>([
    [1, `${held(1)} step remove Bolt[1]`, remove("Bolt[1]")],
    [1, `${held(1)} step discard Bolt[1]`, "order.unsupported: discard Bolt[1]"],
    [1, "begin with Box is installed, Bolt[1] is loose step remove Bolt[1]", remove("Bolt[1]")],
    [2, "begin with Box is installed, Bolt[1] is loose, Bolt[2] is loose step remove Bolt[1]"],
    [
      2,
      "begin with Box is installed, Bolt[1] is loose, Bolt[2] is loose step remove Bolt[1] step remove Bolt[2]",
      remove("Bolt[2]"),
    ],
    [3, "begin with Box is installed, Bolt[1] is loose, Bolt[2] is loose, Bolt[3] is loose step remove Bolt[1..2]"],
    // The last that is tight, though another is in.
    [2, "begin with Box is installed, Bolt[1] is loose, Bolt[2] is tightened step remove Bolt[2]", remove("Bolt[2]")],
    [2, "begin with Box is installed, Bolt[1] is loose, Bolt[2] is installed step remove Bolt[2]", remove("Bolt[2]")],
    [2, "begin with Box is installed, Bolt[1] is tightened, Bolt[2] is tightened step remove Bolt[2]"],
    [1, "step install Bolt[1] step remove Bolt[1]"],
    [1, "begin with Box is installed step remove Bolt[1]"],
    [1, `${held(1)} step lift Box with Hoist step loosen Bolt[1] step remove Bolt[1]`],
    // One mistake, one finding.
    [1, `${held(1)} step loosen Bolt[1] step remove Bolt[1]`, loosen("Bolt[1]")],
    [
      1,
      `${held(1)} step remove Bolt[1] step install Bolt[1] step remove Bolt[1]`,
      remove("Bolt[1]"),
      remove("Bolt[1]"),
    ],
    [2, `${held(2)} step loosen Bolt[all] step remove Bolt[all]`, loosen("Bolt[all]")],
  ])("of %s: %s", (bolts, steps, ...told) => {
    expect(work([bolts, steps])).toEqual(told);
  });
});

describe("a lift that is given up", () => {
  const down = "order.unsupported: set down Box";
  const UP = "step lift Box with Hoist step install Box";
  test.each<Case>([
    [2, `${UP} step set down Box`, down],
    [2, `${UP} step install Bolt[1] step set down Box`, down],
    [2, `${UP} step install Bolt[all] step set down Box`],
    [3, `${UP} step install Bolt[1..2] step set down Box`],
    [3, `${UP} step install Bolt[2..3] step set down Box`],
    [3, `${UP} step install Bolt[3] step set down Box`, down],
    [3, `${UP} step set down Box`, down],
    [1, `${UP} step set down Box`, down],
    [1, `${UP} step install Bolt[1] step set down Box`],
    [0, `${UP} step set down Box`],
    // Not in, or not hung.
    [2, "step lift Box with Hoist step set down Box"],
    [2, "step install Box step set down Box"],
    [2, "step lift Box with Hoist step set down Box step install Box step set down Box"],
    [2, "step support Box with Hoist step install Box step set down Box", down],
    [2, "step lift Box by hand step install Box step set down Box", down],
    // Told once, it is taken as held.
    [2, `${UP} step set down Box step install Bolt[1] step remove Bolt[1]`, down],
  ])("of %s: %s", (bolts, steps, ...told) => {
    expect(work([bolts, steps])).toEqual(told);
  });
  test("is nothing with a part that is not heavy", () => {
    expect(work([2, `${UP} step set down Box`], "mass 10 kg")).toEqual([]);
  });
});

describe("what hangs no more once it is in", () => {
  const UP = "step lift Box with Hoist";
  const OFF = "step tighten Bolt[all] step loosen Bolt[all]";
  const told = loosen("Bolt[all]");
  test.each<Case>([
    [1, `${UP} step install Box step install Bolt[1] ${OFF}`, told],
    [1, `${UP} step install Bolt[1] step install Box ${OFF}`, told],
    [2, `${UP} step install Box step install Bolt[1] step tighten Bolt[1] step loosen Bolt[1]`],
    [2, `${UP} step install Box step install Bolt[all] ${OFF}`, told],
    [2, `${UP} step install Bolt[all] step install Box ${OFF}`, told],
    [2, `${UP} step install Bolt[1] step install Box step tighten Bolt[1] step loosen Bolt[1]`],
    [
      3,
      `${UP} step install Bolt[2..3] step install Box step tighten Bolt[2..3] step loosen Bolt[2..3]`,
      loosen("Bolt[2..3]"),
    ],
    [
      3,
      `${UP} step install Box step install Bolt[1], Bolt[3] step tighten Bolt[1] step loosen Bolt[1]`,
      loosen("Bolt[1]"),
    ],
    [
      2,
      `${UP} step install Bolt[all] ${OFF} step install Box step tighten Bolt[all] step lift Box with Hoist step loosen Bolt[all]`,
    ],
    // Pressed in is in.
    [1, `${UP} step press Box in Pump step install Pump step install Bolt[1] ${OFF}`, told],
    // Taking it out leaves it on the hoist.
    [
      1,
      `${held(1)} ${UP} step loosen Bolt[1] step remove Bolt[1] step remove Box step install Box step set down Box`,
      "order.unsupported: set down Box",
    ],
    // While it is out, its bolts do not take it off the hoist.
    [2, `${UP} step install Bolt[all] step tighten Bolt[all] step remove Bolt[2] step install Box step loosen Bolt[1]`],
  ])("of %s: %s", (bolts, steps, ...expected) => {
    expect(work([bolts, steps])).toEqual(expected);
  });
});

describe("the hoist is used for something else", () => {
  const taken = (what: string): string => `order.unsupported: lift ${what}`;
  const UP = "step lift Box with Hoist step install Box";
  test.each<Case>([
    [2, `${UP} step lift Pump with Hoist`, taken("Pump")],
    [2, `${UP} step install Bolt[1] step lift Pump with Hoist`, taken("Pump")],
    [2, `${UP} step install Bolt[all] step lift Pump with Hoist`],
    [1, `${UP} step install Bolt[1] step lift Pump with Hoist`],
    [2, `${UP} step lift Pump with Crane`],
    [2, `${UP} step lift Pump by hand`],
    [2, `${UP} step lift Box with Hoist`],
    [2, `${UP} step lift Box with Crane step lift Pump with Hoist`],
    [2, `step support Box with Hoist step install Box step lift Pump with Hoist`],
    [2, "step lift Box with Hoist step lift Pump with Hoist"],
    [2, "step lift Box with Hoist step lift Pump with Hoist step install Box step set down Box"],
    [
      2,
      `${UP} step install Bolt[all] step lift Pump with Hoist step tighten Bolt[all] step loosen Bolt[all]`,
      loosen("Bolt[all]"),
    ],
    [0, `${UP} step lift Pump with Hoist`],
    // Told once, it is taken as held.
    [2, `${UP} step lift Pump with Hoist step lift Pump with Hoist`, taken("Pump")],
  ])("of %s: %s", (bolts, steps, ...told) => {
    expect(work([bolts, steps])).toEqual(told);
  });
});

test("says which part, by what it was held, how heavy it is and where a lift would go", () => {
  expect(wholeFacts(procedure(1, `${held(1)} step A { loosen Bolt[1] } step tighten Bolt[1]`))).toEqual([
    {
      kind: "unsupported",
      part: "Box",
      fastener: "Bolt[1]",
      verb: "loosen",
      mass: "40 kg",
      span: "loosen Bolt[1]",
      stepSpan: "step A { loosen Bolt[1] }",
    },
  ]);
  expect(wholeFacts(procedure(1, `${held(1)} step discard Bolt[1] step install Bolt[1] step tighten Bolt[1]`))).toEqual(
    [
      {
        kind: "unsupported",
        part: "Box",
        fastener: "Bolt[1]",
        verb: "discard",
        mass: "40 kg",
        span: "discard Bolt[1]",
        stepSpan: "step discard Bolt[1]",
      },
    ],
  );
  const given = { kind: "unsupported", part: "Box", fastener: null, mass: "40 ± 2 kg" };
  const steps = "step lift Box with Hoist step install Box";
  expect(wholeFacts(procedure(2, `${steps} step set down Box`, "mass 40 ± 2 kg"))).toEqual([
    { ...given, verb: "set down", span: "set down Box", stepSpan: "step set down Box" },
  ]);
  expect(wholeFacts(procedure(2, `${steps} step lift Pump with Hoist`, "mass 40 ± 2 kg"))).toEqual([
    { ...given, verb: "lift", span: "lift Pump", stepSpan: "step lift Pump with Hoist" },
  ]);
});
