// Temperatures as a low and a high bound: heating sets both, time lowers the low one, nothing but a wait until lowers the
// high one.
import { describe, expect, test } from "vitest";
import { found } from "./run-on-paper.ts";

const PARTS = `part Bearing "bearing"
part Gear "gear"
tool Heater "heater" { heats to 200 °C }
`;

function asking(condition: string, steps: string, head = ""): readonly string[] {
  return found(`${PARTS}procedure Work "Work" {\n${head}\n${steps}\nstep Ask { needs ${condition}\n do "Look." }\n}`);
}
const unmet = (condition: string): string[] => [`order.unmet-need: ${condition}`];
const HEATED = "step heat Bearing to 100 .. 112 °C with Heater";
const TASK = `task "Heat" { ${HEATED} }`;

/** What is sure to hold, and what is not, after the steps. */
function bounds(
  steps: string,
  head = "",
): { atLeast: (celsius: number) => boolean; atMost: (celsius: number) => boolean } {
  const holds = (condition: string): boolean => {
    const told = asking(condition, steps, head);
    expect([[], unmet(condition)]).toContainEqual(told);
    return told.length === 0;
  };
  return {
    atLeast: (celsius) => holds(`Bearing is at least ${celsius} °C`),
    atMost: (celsius) => holds(`Bearing is at most ${celsius} °C`),
  };
}

function expectBounds(steps: string, low: number, high: number, head = ""): void {
  const { atLeast, atMost } = bounds(steps, head);
  expect(
    [atLeast(low), atLeast(low + 1), atMost(high), atMost(high - 1)],
    `${low} .. ${high} °C after\n${steps}`,
  ).toEqual([true, false, true, false]);
}

describe("bounds", () => {
  test("at the start: 20 °C, or as declared", () => {
    expectBounds("", 20, 20);
    expectBounds("", 15, 25, "ambient 15 .. 25 °C");
  });
  test("heating sets both", () => {
    expectBounds(HEATED, 100, 112);
    expectBounds(`${HEATED}\nstep heat Bearing to 80 .. 90 °C with Heater`, 80, 90);
  });
  test("heating by a difference moves both", () => {
    expectBounds("step heat Bearing by 80 .. 90 K with Heater", 95, 115, "ambient 15 .. 25 °C");
    expectBounds("step heat Bearing by 80 °C with Heater", 100, 100);
  });
  test("cooling sets both", () => {
    expectBounds("step cool Bearing to -60 .. -50 °C", -60, -50);
  });
  test("a plain wait and the end of a task lower the low one to ambient", () => {
    expectBounds(`${HEATED}\nstep wait 10 min`, 20, 112);
    expectBounds(TASK, 20, 112);
    expectBounds(TASK, 15, 112, "ambient 15 .. 25 °C");
  });
  test("a wait until lowers the high one", () => {
    expectBounds(`${HEATED}\nstep wait until Bearing is at most 40 °C`, 40, 40);
    expectBounds(`${TASK}\nstep wait until Bearing is at most 40 °C`, 20, 40);
    expectBounds(`${TASK}\nstep wait until Bearing is at most 150 °C`, 20, 112);
  });
  test("of another part are its own", () => {
    expectBounds("step heat Gear to 100 .. 112 °C with Heater", 20, 20);
    expectBounds(`${TASK}\nstep wait until Gear is at most 30 °C`, 20, 112);
  });
  test("a need taken as met narrows them", () => {
    expect(
      asking("Bearing is at most 50 °C", `${HEATED}\nstep Touch { needs Bearing is at most 40 °C\n do "Touch it." }`),
    ).toEqual(unmet("Bearing is at most 40 °C"));
    expect(asking("Bearing is at least 80 °C", `step Fit { needs Bearing is at least 90 °C\n do "Fit it." }`)).toEqual(
      unmet("Bearing is at least 90 °C"),
    );
  });
});

test("what may be so and may be not so is no proof of either", () => {
  expect(asking("Bearing is not at least 80 °C", TASK)).toEqual(unmet("Bearing is not at least 80 °C"));
  expect(asking("Bearing is at least 80 °C", TASK)).toEqual(unmet("Bearing is at least 80 °C"));
  expect(asking("Bearing is not at least 120 °C", TASK)).toEqual([]);
});

test("a branch on a temperature that may be either way can go both ways, and knows its side", () => {
  const steps = `${TASK}
    when Bearing is at least 60 °C { step Hot { needs Bearing is at least 60 °C\n do "Keep off." } }
    otherwise { step Cool { needs Bearing is at most 60 °C\n do "Touch it." } }`;
  expect(asking("Bearing is at most 112 °C", steps)).toEqual([]);
});

test("a branch on a temperature that is certain goes one way", () => {
  expect(asking("Bearing is at most 112 °C", `${HEATED}\nwhen Bearing is at most 60 °C { step "Touch it." }`)).toEqual([
    "flow.impossible-condition: Bearing is at most 60 °C",
    'flow.unreachable: step "Touch it."',
  ]);
});

test("heating on and on in a rework loop comes to an end, and to no finding", () => {
  const steps = 'step Warm { heat Bearing by 5 K with Heater\n check "It slides on" if it fails { return to Warm } }';
  expect(asking("Bearing is at most 1000 °C", steps)).toEqual([]);
});
