// Temperatures of parts and of what touches them: heated, cooled, put together, waited for.
import { describe, expect, test } from "vitest";
import { wholeFacts } from "./whole-facts.ts";

const PARTS = `part Bearing "bearing"
part Shaft "shaft"
part Collar "collar"
part Base "base"
fit Bearing over Shaft
fit Collar over Shaft
tool Heater "heater" { heats to 200 °C }
`;
const BOTH = "step install Shaft, Bearing";
const HOT = "step heat Bearing to 100 .. 112 °C with Heater";

/** Low and high bound of a part in °C after the steps, as said where it is not as hot as it should be. */
function bounds(part: string, steps: string, head = ""): readonly number[] {
  const text = `${PARTS}procedure Work "Work" { ${head} ${steps} step Ask { needs ${part} is at least 999 °C do "Look." } }`;
  const states = wholeFacts(text).flatMap((fact) => ("state" in fact ? [String(fact.state)] : []));
  expect(states).toHaveLength(1);
  const [low, high] = states[0]?.match(/-?(?:\d+|Infinity)/g) ?? [];
  return [Number(low), Number(high ?? low)];
}

type Case = [part: string, steps: string, low: number, high: number, head?: string];

describe("heated and cooled", () => {
  test.each<Case>([
    ["Bearing", HOT, 100, 112],
    ["Bearing", "step heat Bearing to 110 °C with Heater", 110, 110],
    ["Bearing", "step heat Bearing to 110 ± 10 °C with Heater", 100, 120],
    ["Bearing", "step heat Bearing to at least 100 °C with Heater", 100, Number.POSITIVE_INFINITY],
    ["Bearing", "step heat Bearing to at most 100 °C with Heater", Number.NEGATIVE_INFINITY, 100],
    ["Bearing", "step heat Bearing by 80 .. 90 K with Heater", 95, 115, "ambient 15 .. 25 °C"],
    ["Bearing", "step heat Bearing by 80 K with Heater", 100, 100],
    ["Bearing", "step heat Bearing by at least 80 K with Heater", 100, 100],
    ["Bearing", "step heat Bearing by at most 80 K with Heater", 20, 100],
    ["Bearing", "step cool Bearing to -60 .. -50 °C", -60, -50],
    ["Bearing", "step cool Bearing by 10 K", 10, 10],
    ["Bearing", "step cool Bearing by 5 .. 10 K", 5, 20, "ambient 15 .. 25 °C"],
    ["Bearing", "step heat Shaft to 100 °C with Heater", 20, 20],
    ["Bearing", `${HOT} step wait 1 min`, 20, 112],
    ["Bearing", `${HOT} step wait 1 min`, 15, 112, "ambient 15 .. 25 °C"],
    ["Bearing", "step cool Bearing to -60 .. -50 °C step wait 1 h", -60, -50],
    ["Bearing", `${HOT} step wait until Bearing is at most 110 °C`, 100, 110],
    ["Bearing", `${HOT} step wait until Shaft is at most 30 °C`, 100, 112],
  ])("%s after %s: %s .. %s °C", (part, steps, low, high, head) => {
    expect(bounds(part, steps, head)).toEqual([low, high]);
  });
});

/** One of the two is so, and nobody knows which. */
const DOUBT = 'step { needs Bearing is at least 90 °C or Base is installed do "Feel it." }';

test.each([
  "",
  "step wait 1 min",
  "step heat Bearing by 5 K with Heater",
  "step heat Shaft to 100 °C with Heater step install Bearing over Shaft",
  "step install Bearing over Shaft step heat Shaft to 100 °C with Heater",
  "step install Bearing over Shaft step wait until Shaft is at most 100 °C",
])("what is not known stays so: %s", (steps) => {
  const asked = 'step Ask { needs Bearing is at least 999 °C do "Look." }';
  const facts = wholeFacts(`${PARTS}procedure Work "Work" { ${DOUBT} ${steps} ${asked} }`);
  expect(facts).toMatchObject([{ kind: "unmet need", condition: "Bearing is at least 90 °C or Base is installed" }]);
});

test("what touches a part of which nothing is known stays as it is", () => {
  expect(bounds("Shaft", "step install Bearing over Shaft")).toEqual([20, 20]);
  const asked = 'step Ask { needs Shaft is at most 20 °C do "Look." }';
  expect(
    wholeFacts(
      `${PARTS}procedure Work "Work" { ${DOUBT} step install Bearing over Shaft step heat Bearing by 5 K with Heater ${asked} }`,
    ),
  ).toHaveLength(1);
});

describe("what touches", () => {
  test.each<Case>([
    // Both in, or one on the other on the bench, either way round.
    ["Shaft", `${BOTH} ${HOT}`, 20, 112],
    ["Shaft", `step install Bearing over Shaft ${HOT}`, 20, 112],
    ["Shaft", `step install Shaft in Bearing ${HOT}`, 20, 112],
    ["Bearing", `${BOTH} step heat Shaft to 100 .. 112 °C with Heater`, 20, 112],
    ["Shaft", HOT, 20, 20],
    ["Shaft", `step install Shaft ${HOT}`, 20, 20],
    ["Shaft", `step install Bearing ${HOT}`, 20, 20],
    ["Shaft", `step install Bearing on Base step install Shaft ${HOT}`, 20, 20],
    ["Shaft", `${BOTH} step remove Bearing ${HOT}`, 20, 20],
    ["Collar", `${BOTH} step install Collar ${HOT}`, 20, 20],
    // Put on hot; both ways.
    ["Shaft", `${HOT} step install Bearing over Shaft`, 20, 112],
    ["Shaft", `${HOT} ${BOTH}`, 20, 112],
    ["Bearing", `${HOT} ${BOTH}`, 100, 112],
    ["Shaft", `step install Bearing ${HOT} step install Shaft`, 20, 112],
    ["Bearing", "step heat Shaft to 100 .. 112 °C with Heater step install Bearing over Shaft", 20, 112],
    ["Shaft", `${HOT} step install Bearing on Base`, 20, 20],
    ["Shaft", `${HOT} step press Bearing on Shaft`, 20, 112],
    // As hot as the hotter one, and never less hot by it.
    ["Shaft", `step heat Shaft to 120 °C with Heater ${HOT} step install Bearing over Shaft`, 120, 120],
    ["Shaft", `${BOTH} ${HOT} step heat Bearing to 40 .. 60 °C with Heater`, 20, 112],
    ["Shaft", `${BOTH} step cool Bearing to -60 .. -50 °C`, 20, 20],
    ["Shaft", `${BOTH} step heat Bearing by 80 .. 90 K with Heater`, 20, 110],
  ])("%s after %s: %s .. %s °C", (part, steps, low, high, head) => {
    expect(bounds(part, steps, head)).toEqual([low, high]);
  });
  test.each<Case>([
    // Waited for, it has cooled with what cooled.
    ["Shaft", `${HOT} ${BOTH} step wait until Bearing is at most 40 °C`, 20, 40],
    ["Shaft", `${HOT} step install Bearing over Shaft step wait until Bearing is at most 40 °C`, 20, 40],
    ["Shaft", `${HOT} ${BOTH} step wait until Bearing is at least 40 °C`, 20, 112],
    ["Shaft", `${HOT} ${BOTH} step remove Bearing step wait until Bearing is at most 40 °C`, 20, 112],
    [
      "Shaft",
      "step heat Shaft to 100 °C with Heater step install Bearing over Shaft step wait until Bearing is at most 40 °C",
      40,
      40,
    ],
    ["Collar", `${HOT} ${BOTH} step heat Collar to 60 °C with Heater step wait until Bearing is at most 40 °C`, 60, 60],
  ])("%s after %s: %s .. %s °C", (part, steps, low, high, head) => {
    expect(bounds(part, steps, head)).toEqual([low, high]);
  });
});
