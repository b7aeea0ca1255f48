// A line of which only the verb could be read: it may have done to anything what that verb does, and nothing else.
import { describe, expect, test } from "vitest";
import { found } from "../run-on-paper.ts";

const PARTS = `ring Circle "circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
part Hub "hub"
part Cover "cover"
part Bolt[1..2] "bolt" { seats in Circle }
part Screw "screw" { secures Cover }
part Valve "valve" { states shut, open }
part Seal "seal" { single use }
energy Supply "supply" { voltage 400 V AC }
fact Signed "the sheet is signed"
`;

function work(steps: string): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${steps}\n}`, { damaged: true });
}

/** What would be found by itself: what comes before, and the condition that then fails. */
const FAILING: Readonly<Record<string, readonly [before: string, condition: string]>> = {
  "put in": ["", "Hub is installed"],
  "tightened though out": ["", "Screw is tightened"],
  "taken out": ["step install Hub", "Hub is removed"],
  "taken from its place": ["step install Bolt[1] in Circle[1]", "Bolt[1] is removed"],
  loosened: ["step install Hub, Cover, Screw\nstep tighten Screw", "Screw is loose"],
  surface: ["", "Hub is clean"],
  aligned: ["", "Hub is aligned"],
  temperature: ["", "Hub is at least 60 °C"],
  isolated: ["", "Supply is isolated"],
  live: ["step isolate Supply", "Supply is live"],
  "a fact": ["", "Signed"],
  "a state of its own": ["", "Valve is open"],
  turned: ["", "Circle[1] at 3 o'clock"],
};

describe("what may be so after it", () => {
  test.each<[line: string, doubt: readonly string[]]>([
    ["install", ["put in", "tightened though out"]],
    ["press", ["put in", "tightened though out"]],
    ["remove", ["taken out", "taken from its place", "loosened"]],
    ["discard", ["taken out", "taken from its place", "loosened"]],
    ["tighten", ["loosened"]],
    ["loosen", ["loosened"]],
    ["heat", ["temperature"]],
    ["cool", ["temperature"]],
    ["clean", ["surface"]],
    ["lubricate", ["surface"]],
    ["apply", []],
    ["align", ["aligned"]],
    ["turn", ["turned"]],
    ["isolate", ["isolated", "live"]],
    ["prove", ["live"]],
    ["restore", ["isolated", "live"]],
    ["inspect", []],
    ['do "It."\n gives', ["surface", "aligned", "temperature", "a fact", "a state of its own"]],
  ])("%s", (line, doubt) => {
    const silent = Object.entries(FAILING)
      .filter(([, [before, condition]]) =>
        work(`${before}\nstep { ${line} ] }\nstep { needs ${condition} do "Look." }`).every(
          (one) => !one.startsWith("order.unmet-need"),
        ),
      )
      .map(([name]) => name);
    expect(silent).toEqual(doubt);
  });
  test("each of these fails where all lines can be read", () => {
    for (const [before, condition] of Object.values(FAILING))
      expect(work(`${before}\nstep { needs ${condition} do "Look." }`)).toEqual([`order.unmet-need: ${condition}`]);
  });
});

describe("who sits in a place", () => {
  const taken = "step install Bolt[1] in Circle[1]";
  const other = "step install Bolt[2] in Circle[1]";
  test("after a part may have been taken out it may be free", () => {
    expect(work(`${taken}\nstep { remove ] }\n${other}`)).toEqual([]);
    expect(work(`${taken}\nstep { discard ] }\n${other}`)).toEqual([]);
  });
  test("after a part may have been put in it is as taken as before", () => {
    expect(work(`${taken}\nstep { install ] }\n${other}`)).toEqual(["order.occupied: install Bolt[2]"]);
    expect(work(`${taken}\nstep { press ] }\n${other}`)).toEqual(["order.occupied: install Bolt[2]"]);
  });
});

describe("in or out", () => {
  test("what is in stays in whatever else was put in", () => {
    expect(work("step install Hub\nstep { install ] }\nstep install Hub")).toEqual([
      "order.already-installed: install Hub",
    ]);
    expect(work("step { install ] }\nstep install Hub")).toEqual([]);
    expect(work("step { install ] }\nstep remove Hub")).toEqual([]);
  });
  test("what is out stays out whatever else was taken out", () => {
    expect(work("step { remove ] }\nstep remove Hub")).toEqual(["order.not-installed: remove Hub"]);
    expect(work("step install Hub\nstep { remove ] }\nstep remove Hub")).toEqual([]);
    expect(work("step install Hub\nstep { remove ] }\nstep install Hub")).toEqual([]);
  });
});

describe("single use", () => {
  test.each(["install", "press", "remove", "discard", "tighten", "loosen"])(
    "%s may have been with a fresh one",
    (verb) => {
      expect(work(`step install Seal\nstep remove Seal\nstep { ${verb} ] }\nstep install Seal`)).toEqual([]);
    },
  );
  test.each(["heat", "clean", "turn", "isolate", "inspect"])("%s brings no fresh one", (verb) => {
    expect(work(`step install Seal\nstep remove Seal\nstep { ${verb} ] }\nstep install Seal`)).toEqual([
      "order.reused: install Seal",
    ]);
  });
});
