// Whether a tool is named at all, and what is said of one that says nothing of itself, of an arm that is not known, of lines that
// could not be read; in which pass; and what is worked out of a setting for the output to show.
import { describe, expect, test } from "vitest";
import { findingsIn, withFix } from "#harness/check.ts";
import { leftOut, limitFacts, limitsAt, workedOut } from "./whole-limits.ts";

const SHOP = `tool Wrench "wrench" { torque 8 .. 60 N·m }
tool Heater "heater" { heats to 150 °C }
tool Chest "chest" { cools to -40 °C }
tool Gauge "gauge" { measures 0 .. 10 mm }
tool Lever "lever"
part Screw "screw" { nut factor 0.2 dry  heat limit 200 °C }
part Shim "shim"
procedure Close {
  step install Screw
`;
const job = (...steps: readonly string[]): string => `${SHOP}${steps.map((one) => `  step ${one}\n`).join("")}}`;

describe("no tool", () => {
  const common = { kind: "no tool", named: [], fitting: null, addAt: null };
  test.each<[string, object]>([
    [
      "tighten Screw to 45 N·m",
      { what: "torque", value: "45 N·m", fitting: "Wrench", addAt: "45 N·m", span: "tighten Screw" },
    ],
    // Just what the wrench reaches, and just not.
    [
      "tighten Screw to 8 .. 60 N·m",
      { what: "torque", value: "8 .. 60 N·m", fitting: "Wrench", addAt: "8 .. 60 N·m", span: "tighten Screw" },
    ],
    [
      "tighten Screw to 50 .. 60.1 N·m",
      { what: "torque", value: "50 .. 60.1 N·m", addAt: "50 .. 60.1 N·m", span: "tighten Screw" },
    ],
    // What is told is the final torque; what is offered can be set to every stage.
    [
      "tighten Screw to 20 N·m, 45 N·m",
      { what: "torque", value: "45 N·m", fitting: "Wrench", addAt: "20 N·m, 45 N·m", span: "tighten Screw" },
    ],
    [
      "tighten Screw to 2 N·m, 45 N·m",
      { what: "torque", value: "45 N·m", addAt: "2 N·m, 45 N·m", span: "tighten Screw" },
    ],
    // Behind an angle, or where it only seats, the place is another: nothing is put in.
    [
      "tighten Screw to 20 N·m then 90 ± 5°",
      { what: "torque", value: "20 N·m", fitting: "Wrench", span: "tighten Screw" },
    ],
    [
      "tighten Screw to 20 N·m with Gauge",
      { what: "torque", value: "20 N·m", named: ["Gauge"], fitting: "Wrench", span: "tighten Screw" },
    ],
    [
      "tighten Screw to 20 N·m with Gauge + Heater",
      { what: "torque", value: "20 N·m", named: ["Gauge", "Heater"], fitting: "Wrench", span: "tighten Screw" },
    ],
    [
      "heat Screw to 80 .. 150 °C",
      { what: "heating", value: "80 .. 150 °C", fitting: "Heater", addAt: "80 .. 150 °C", span: "heat Screw" },
    ],
    [
      "heat Screw to 80 .. 151 °C",
      { what: "heating", value: "80 .. 151 °C", addAt: "80 .. 151 °C", span: "heat Screw" },
    ],
    // How hot it gets then is not said in the line.
    ["heat Screw by 60 K", { what: "heating", value: "60 K", addAt: "60 K", span: "heat Screw" }],
    [
      "heat Screw to at least 80 °C",
      { what: "heating", value: "at least 80 °C", addAt: "at least 80 °C", span: "heat Screw" },
    ],
    [
      "heat Screw to 80 .. 90 °C with Chest",
      { what: "heating", value: "80 .. 90 °C", named: ["Chest"], fitting: "Heater", span: "heat Screw" },
    ],
    [
      'measure "gap" expect 1 .. 10 mm',
      { what: "reading", value: "1 .. 10 mm", fitting: "Gauge", span: 'measure "gap"' },
    ],
    ['measure "gap" expect 1 .. 10.1 mm', { what: "reading", value: "1 .. 10.1 mm", span: 'measure "gap"' }],
    [
      'measure "gap" expect at most 10 mm',
      { what: "reading", value: "at most 10 mm", fitting: "Gauge", span: 'measure "gap"' },
    ],
    ['measure "gap" expect at most 10.1 mm', { what: "reading", value: "at most 10.1 mm", span: 'measure "gap"' }],
    ['measure "oil" expect 1 .. 2 bar', { what: "reading", value: "1 .. 2 bar", span: 'measure "oil"' }],
    [
      'measure "gap" with Wrench expect 1 .. 2 mm',
      { what: "reading", value: "1 .. 2 mm", named: ["Wrench"], fitting: "Gauge", span: 'measure "gap"' },
    ],
    [
      '{ check "gap" expect 1 .. 2 mm }',
      { what: "reading", value: "1 .. 2 mm", fitting: "Gauge", span: 'check "gap"' },
    ],
  ])("%s", (step, fact) => {
    expect(limitFacts(job(step))).toEqual([{ ...common, ...fact }]);
    expect(leftOut(job(step)).filter((one) => one.includes("range"))).toEqual([]);
  });

  test("to seat, and then to the torque: the place of the fix is only that of a plain torque", () => {
    const found = limitFacts(job("tighten Screw to 20 N·m to seat", "tighten Screw to 45 N·m with Wrench"));
    expect(found).toEqual([{ ...common, what: "torque", value: "20 N·m", fitting: "Wrench", span: "tighten Screw" }]);
  });

  test("one finding for the line, however many instances it tightens", () => {
    const text = job("tighten Shim[all] to 45 N·m").replace('part Shim "shim"', 'part Shim[1..3] "shim"');
    expect(findingsIn(text).filter(({ code }) => code === "limits.no-tool")).toHaveLength(1);
  });

  test("silent: one value has no band, and one that is worked out from a reading is not the writer's", () => {
    const coarse = (limits: string): string =>
      job('measure Gap "gap" with Gauge expect 1 .. 2 mm', `measure "rest" with Gauge expect ${limits}`).replace(
        "measures 0 .. 10 mm",
        "measures 0 .. 10 mm  resolution 0.9 mm",
      );
    expect(limitsAt(coarse("1.5 mm"))).toEqual([]);
    expect(limitsAt(coarse("Gap - 0.5 mm"))).toEqual([]);
    expect(limitsAt(coarse("1.5 ± 0.2 mm"))).toEqual(['precision: measure "rest"']);
  });

  test("silent: what is worked out from a reading is asked of no tool", () => {
    const steps = ['measure Gap "gap" with Gauge expect 1 .. 2 mm', 'measure "rest" expect Gap - 0.5 mm'];
    expect(limitFacts(job(...steps))).toEqual([]);
    expect(limitFacts(job(...steps).replace("Gap - 0.5 mm", "0.5 .. 1.5 mm"))).toMatchObject([{ kind: "no tool" }]);
  });
});

describe("a tool that says nothing of itself may do anything, and that is told", () => {
  test.each<[string, string]>([
    ["tighten Screw to 45 N·m with Lever", "tool range | Lever | range | Lever @ tighten Screw"],
    ["heat Screw to 80 .. 90 °C with Lever", "heating range | Lever | range | Lever @ heat Screw"],
    ['measure "gap" with Lever expect 1 .. 2 mm', 'measurement range | Lever | range | Lever @ measure "gap"'],
    // The one that says something is not what is told of.
    ["tighten Screw to 45 N·m with Gauge + Lever", "tool range | Lever | range | Lever @ tighten Screw"],
  ])("%s", (step, told) => {
    expect(limitFacts(job(step))).toEqual([]);
    expect(leftOut(job(step)).filter((one) => one.includes("range"))).toEqual([told]);
  });
});

describe("a name that means nothing may be that of a tool", () => {
  test.each([
    "tighten Screw to 45 N·m with Wrnch",
    "tighten Screw to 45 N·m with Wrnch + Gauge",
    "tighten Screw to 20 N·m then 90° with Wrnch",
    "heat Screw to 80 .. 90 °C with Heatr",
    "heat Screw to 80 .. 90 °C with Heatr + Gauge",
    'measure "gap" with Gage expect 1 .. 2 mm',
    'measure "gap" with Gage + Wrench expect 1 .. 2 mm',
    '{ check "gap" with Gage expect 1 .. 2 mm }',
  ])("%s", (step) => {
    expect(limitFacts(job(step), { damaged: true })).toEqual([]);
    expect(findingsIn(job(step)).map(({ code }) => code)).toContain("names.unknown");
  });

  test("to seat with it", () => {
    const text = job("tighten Screw to 20 N·m to seat with Wrnch", "tighten Screw to 45 N·m with Wrench");
    expect(limitFacts(text, { damaged: true })).toEqual([]);
  });
});

describe("silent: a declaration that could not be read may say what is asked", () => {
  test.each<[string, string, string, string]>([
    ["the wrench", "tighten Screw to 90 N·m with Wrench", "torque 8 .. 60 N·m", "torque 8 .. 60 N·m  arm"],
    ["the fastener", "tighten Screw to 90 N·m with Wrench", "nut factor 0.2 dry", "nut factor 0.2 dry  mass"],
    ["the gauge", 'measure "gap" with Gauge expect 12 .. 15 mm', "0 .. 10 mm", "0 .. 10 mm  resolution"],
    ["the heater", "heat Screw to 180 .. 190 °C with Heater", "to 150 °C", "to 150 °C  torque"],
    ["what is heated", "heat Screw to 180 .. 190 °C with Heater", "nut factor 0.2 dry", "nut factor 0.2 dry  mass"],
    ["what is heated with nothing", "heat Screw to 80 .. 90 °C", "nut factor 0.2 dry", "nut factor 0.2 dry  mass"],
  ])("%s", (_title, step, whole, broken) => {
    const text = job(step);
    expect(limitFacts(text)).not.toEqual([]);
    expect(text).toContain(whole);
    expect(limitFacts(text.replace(whole, broken), { damaged: true })).toEqual([]);
  });
});

test("a range without the other end: only the end that is said counts", () => {
  const wrench = (range: string, torque: string): readonly string[] =>
    limitsAt(job(`tighten Screw to ${torque} with Wrench`).replace("torque 8 .. 60 N·m", `torque ${range}`));
  expect(wrench("at least 8 N·m", "500 N·m")).toEqual([]);
  expect(wrench("at least 8 N·m", "7 N·m")).toEqual(["tool range below: tighten Screw"]);
  expect(wrench("at most 60 N·m", "1 N·m")).toEqual([]);
  expect(wrench("at most 60 N·m", "50 .. 61 N·m")).toEqual(["tool range above: tighten Screw"]);
});

test("what is found of a wrench alone, and of a wrench that has to take up the prevailing torque", () => {
  const text = job("tighten Screw to 50 .. 61 N·m with Wrench");
  const common = {
    ...{ kind: "tool range", how: "above", asked: "50 .. 61 N·m", tool: "Wrench", range: "8 .. 60 N·m" },
    ...{ declaredAt: "8 .. 60 N·m", fitting: null, instead: null, span: "tighten Screw" },
  };
  expect(limitFacts(text)).toMatchObject([{ ...common, what: "torque" }]);
  expect(limitFacts(text.replace("nut factor 0.2 dry", "nut factor 0.2 dry  prevailing torque 3 N·m"))).toMatchObject([
    { ...common, what: "setting" },
  ]);
});

test("a reading out of the range of a gauge, whole", () => {
  expect(limitFacts(job('measure "gap" with Gauge expect 12 .. 15 mm'))).toEqual([
    {
      ...{ kind: "tool range", how: "above", what: "reading", asked: "12 .. 15 mm", value: "12 .. 15 mm" },
      ...{ tool: "Gauge", range: "0 .. 10 mm", declaredAt: "0 .. 10 mm", fitting: null, instead: null },
      ...{ explanation: null, span: 'measure "gap"' },
    },
  ]);
});

test("how far two readings lie apart: up to a tenth of the smallest size, from zero up, and only of an upper limit", () => {
  const of = (limits: string): readonly string[] =>
    limitsAt(job(`measure "run-out" with Gauge expect ${limits}`).replace("0 .. 10 mm", "200 .. 350 mm"));
  expect(of("0 .. 20 mm")).toEqual([]);
  expect(of("0 .. 20.1 mm")).toEqual(['tool range below: measure "run-out"']);
  expect(of("0.1 .. 0.2 mm")).toEqual(['tool range below: measure "run-out"']);
  expect(of("at least 0.1 mm")).toEqual(['tool range below: measure "run-out"']);
  // The one end there is has to be seen.
  expect(of("at least 351 mm")).toEqual(['tool range above: measure "run-out"']);
  const open = job('measure "run-out" with Gauge expect at most 40 mm').replace("0 .. 10 mm", "at most 35 mm");
  expect(limitsAt(open)).toEqual(['tool range above: measure "run-out"']);
});

describe("an arm that is not known", () => {
  const screws = (wrench: string, adapter: string): string => `tool Wrench "wrench" { ${wrench} }
tool Crow "crowfoot" { offset ${adapter} }
part Screw "screw" { nut factor 0.2 dry }
part Nut "nut" { nut factor 0.2 dry }
procedure Close {
  step install Screw, Nut
  step tighten Screw, Nut to 45 N·m with Wrench + Crow
}`;
  test("one for each sort of fastener; the value itself is held against the range", () => {
    const unknown = { kind: "arm unknown", wrench: "Wrench", adapter: "Crow", declaredAt: "Wrench" };
    expect(limitFacts(screws("torque 8 .. 60 N·m", "60 mm"))).toEqual([
      { ...unknown, part: "Screw", span: "tighten Screw, Nut" },
      { ...unknown, part: "Nut", span: "tighten Screw, Nut" },
    ]);
    expect(limitsAt(screws("torque 8 .. 44 N·m", "60 mm"))).toEqual([
      "arm unknown: tighten Screw, Nut",
      "tool range above: tighten Screw, Nut",
      "arm unknown: tighten Screw, Nut",
    ]);
  });
  test("an adapter square to the wrench changes nothing (AC 43.13-1B 7-40d), one that points back beyond the grip has no setting", () => {
    expect(limitFacts(screws("torque 8 .. 60 N·m", "60 mm  angle 90°"))).toEqual([]);
    expect(workedOut(screws("torque 8 .. 60 N·m  arm 50 mm", "60 mm  angle 180°"))).toEqual([]);
    expect(limitsAt(screws("torque 8 .. 60 N·m  arm 50 mm", "60 mm  angle 180°"))).not.toContain(
      "arm unknown: tighten Screw, Nut",
    );
  });
});

test("what is worked out of a setting: at each stage, and the window at the last; a torque that is set as it is, is not", () => {
  const text = (wrench: string, adapter: string): string => `tool Wrench "wrench" { torque 8 .. 60 N·m${wrench} }
tool Crow "crowfoot" { offset 60 mm }
value Final = 45 ± 2 N·m
part Screw "screw" { thread "M10" }
procedure Close {
  step install Screw
  step tighten Screw to 40 %, 100 % of Final with Wrench${adapter}
}`;
  // The contract's own example: 39.1 N·m on a 400 mm arm, 38.95 to 39.23 with 4 % (engineering.md). 40 % of it: 18·400/460 = 15.65.
  const [first, second, window, ...more] = workedOut(text("  accuracy 4 %  arm 400 mm", " + Crow"));
  expect(more).toEqual([]);
  expect(first).toMatch(/^2: Wrench for Screw @ 40 %: setting 15\.6[56]? N·m/);
  expect(second).toMatch(/^2: Wrench for Screw @ 100 % of Final: setting 39\.13 N·m/);
  expect(window).toMatch(/^2: Wrench for Screw @ 100 % of Final: setting window .*38\.95 \.\. 39\.23 N·m/);
  expect(workedOut(text("  arm 400 mm", ""))).toEqual([]);
  // With 5 % nothing is left, so there is no window to show.
  expect(workedOut(text("  accuracy 5 %  arm 400 mm", " + Crow"))).toHaveLength(2);
});

test("a check in a repeat is told with its pass, as an action is", () => {
  const text = `part Shaft "shaft"
procedure Look {
  repeat n from 1 to 3 {
    step { inspect Shaft check "gap" expect 1 .. 2 mm }
    step measure "wear" expect 1 .. 2 mm
  }
}`;
  const pass = [{ variable: "n", value: 1 }];
  expect(limitFacts(text)).toMatchObject([
    { kind: "no tool", span: 'check "gap"', pass, more: 2 },
    { kind: "no tool", span: 'measure "wear"', pass, more: 2 },
  ]);
});

test("a record needs no tool, and one that is named has to show it", () => {
  const record = (said: string): readonly object[] => limitFacts(job(`{ inspect Screw record "gap" ${said} }`));
  expect(record("1 .. 2 mm")).toEqual([]);
  expect(record("1 .. 2 mm with Gauge")).toEqual([]);
  expect(record("12 .. 15 mm with Gauge")).toMatchObject([
    { kind: "tool range", how: "above", what: "reading", tool: "Gauge", span: 'record "gap" 12 .. 15 mm with Gauge' },
  ]);
  expect(record("12 .. 15 mm with Wrench")).toEqual([]);
});

test("for the choice that makes it so hot, and only for that", () => {
  const text = `option Warm { yes no }
${job("X")}`.replace(
    "step X",
    `when Warm is yes { step heat Screw to 100 .. 110 °C with Heater }
  step heat Screw by 60 K with Heater`,
  );
  expect(limitFacts(text)).toMatchObject([
    { kind: "tool range", how: "above", value: "170 °C", span: "heat Screw", options: [{ Warm: "yes" }] },
  ]);
});

test("what is put in where a tool is missing stands behind the value", () => {
  const text = job("heat Screw to 80 .. 150 °C");
  const [found] = findingsIn(text).filter(({ code }) => code === "limits.no-tool");
  const mended = found === undefined ? "" : withFix(text, found);
  expect(mended).toContain("  step heat Screw to 80 .. 150 °C with Heater\n");
  expect(limitFacts(mended)).toEqual([]);
});
