// Which tool is offered in place of one that cannot do it: every tool that is declared is looked at, it has to do all that is asked
// in the line, and of several the one with the narrowest range is named (GUIDE: a tool named is a requirement; project rule).
import { describe, expect, test } from "vitest";
import { findingsIn, withFix } from "#harness/check.ts";
import { limitFacts } from "./whole-limits.ts";

/** What is offered: the tool, and the text that goes in the place of another. */
function offered(text: string, kind: string): unknown {
  const [first, ...more] = limitFacts(text).filter((fact) => "kind" in fact && fact.kind === kind);
  expect(more).toEqual([]);
  if (first === undefined) return "nothing is wrong";
  const { fitting, instead } = first as { fitting: string | null; instead?: object | null };
  return { fitting, instead };
}
const named = (name: string, inPlaceOf: string) => ({ fitting: name, instead: { span: inPlaceOf, text: name } });
const NOBODY = { fitting: null, instead: null };

const tools = (declared: readonly string[]): string => declared.map((one) => `tool ${one}`).join("\n");

describe("a wrench whose range does not hold the setting", () => {
  const job = (step: string, ...more: readonly string[]): string => `tool Small "small wrench" { torque 2 .. 12 N·m }
tool Crow "crowfoot" { offset 100 mm }
${tools(more)}
part Screw "screw" { prevailing torque 2 N·m  nut factor 0.2 dry }
procedure Close {
  step install Screw
  step tighten Screw ${step}
}`;

  test.each<[string, readonly string[], unknown]>([
    ["none is declared", [], NOBODY],
    ["one holds it", ['Large "wrench" { torque 10 .. 60 N·m }'], named("Large", "Small")],
    // 12.5 + 2 N·m are set.
    ["its end just holds the setting", ['Large "wrench" { torque 10 .. 14.5 N·m }'], named("Large", "Small")],
    ["its end holds the torque, not the setting", ['Large "wrench" { torque 10 .. 14.4 N·m }'], NOBODY],
    [
      "of several the narrowest, in whatever order they are declared",
      [
        'Wide "wrench" { torque 5 .. 200 N·m }',
        'Near "wrench" { torque 5 .. 40 N·m }',
        'Mid "wrench" { torque 5 .. 90 N·m }',
      ],
      named("Near", "Small"),
    ],
    [
      "of two alike the first",
      ['First "wrench" { torque 5 .. 40 N·m }', 'Second "wrench" { torque 6 .. 40 N·m }'],
      named("First", "Small"),
    ],
    [
      "one that cannot be read is passed over",
      ['Broken "wrench" { torque 5 .. 30 N·m  arm }', 'Whole "wrench" { torque 5 .. 90 N·m }'],
      named("Whole", "Small"),
    ],
    [
      "a tool for something else is none",
      ['Hoist "hoist" { lifts 100 kg }', 'Oven "oven" { heats to 200 °C }'],
      NOBODY,
    ],
  ])("%s", (_title, more, wanted) => {
    const text = job("to 12.5 N·m with Small", ...more);
    const isRead = !more.some((one) => one.includes("arm }"));
    expect(isRead ? offered(text, "tool range") : whole(text)).toEqual(wanted);
  });

  /** Of a text with a fault of its own. */
  function whole(text: string): unknown {
    const [fact] = limitFacts(text, { damaged: true }).filter((one) => "kind" in one && one.kind === "tool range");
    const { fitting, instead } = fact as { fitting: string; instead: object };
    return { fitting, instead };
  }

  test.each<[string, string, unknown]>([
    // 30 % of 40 N·m are 12 N·m, and 14 N·m to be set.
    ["holds the last stage alone", "torque 15 .. 60 N·m", NOBODY],
    ["holds the first stage alone", "torque 10 .. 41 N·m", NOBODY],
    ["holds both", "torque 14 .. 42 N·m", named("Large", "Small")],
  ])("all stages have to be in it: %s", (_title, range, wanted) => {
    expect(offered(job("to 30 %, 100 % of 40 N·m with Small", `Large "wrench" { ${range} }`), "tool range")).toEqual(
      wanted,
    );
  });

  test.each<[string, string, unknown]>([
    // (28 + 2)·L/(L + 100 mm): 20 N·m on 200 mm, 24 N·m on 400 mm.
    ["with its own arm it holds the setting", "torque 5 .. 20 N·m  arm 200 mm", named("Large", "Small")],
    ["with its own arm it does not", "torque 5 .. 20 N·m  arm 400 mm", NOBODY],
    ["without an arm nobody knows", "torque 5 .. 90 N·m", NOBODY],
  ])("behind an adapter: %s", (_title, says, wanted) => {
    const text = job("to 28 N·m with Small + Crow", `Large "wrench" { ${says} }`);
    expect(offered(text.replace("2 .. 12 N·m", "2 .. 12 N·m  arm 300 mm"), "tool range")).toEqual(wanted);
  });
});

describe("a wrench that is too inaccurate", () => {
  // 39/0.95 = 41.05 N·m is above 41·0.95 = 38.95 N·m; with 2 % 39.80 N·m is below 40.18 N·m.
  const job = (
    more: string,
    step = "to 39 .. 41 N·m with Coarse",
  ): string => `tool Coarse "wrench" { torque 8 .. 60 N·m  accuracy 5 %  arm 300 mm }
tool Crow "crowfoot" { offset 100 mm }
tool Other "wrench" { ${more} }
part Screw "screw" { nut factor 0.2 dry }
procedure Close {
  step install Screw
  step tighten Screw ${step}
}`;
  test.each<[string, string, unknown]>([
    ["a more accurate one", "torque 8 .. 60 N·m  accuracy 2 %", named("Other", "Coarse")],
    ["no more accurate", "torque 8 .. 60 N·m  accuracy 5 %", NOBODY],
    ["one that says nothing of its accuracy", "torque 8 .. 60 N·m", NOBODY],
    ["accurate, of another range", "torque 8 .. 40 N·m  accuracy 2 %", NOBODY],
    ["accurate, and no wrench", "accuracy 2 %", NOBODY],
    // 1 % of 60 N·m are 0.6 N·m: 39.6 .. 40.4 N·m. 2 % of it are 1.2: nothing is left.
    ["of its full scale", "torque 8 .. 60 N·m  accuracy 1 % of full scale", named("Other", "Coarse")],
    ["of its full scale, too much", "torque 8 .. 60 N·m  accuracy 2 % of full scale", NOBODY],
    ["of a scale that has no end", "torque at least 8 N·m  accuracy 1 % of full scale", NOBODY],
  ])("%s", (_title, more, wanted) => {
    expect(offered(job(more), "tool accuracy")).toEqual(wanted);
  });

  test.each<[string, string, unknown]>([
    // 20 % are 7.8 N·m.
    ["its range has to hold the first stage, too", "torque 8 .. 60 N·m  accuracy 2 %", NOBODY],
    ["and does", "torque 7.8 .. 60 N·m  accuracy 2 %", named("Other", "Coarse")],
  ])("%s", (_title, more, wanted) => {
    const text = job(more, "to 20 %, 100 % of Final with Coarse").replace(
      "8 .. 60 N·m  accuracy 5",
      "5 .. 60 N·m  accuracy 5",
    );
    expect(offered(`value Final = 40 ± 1 N·m\n${text}`, "tool accuracy")).toEqual(wanted);
  });

  test.each<[string, string, unknown]>([
    // 41·200/300 = 27.3 N·m; 41·300/400 = 30.75 N·m.
    ["its own arm counts", "torque 8 .. 28 N·m  accuracy 2 %  arm 200 mm", named("Other", "Coarse")],
    ["its own arm, and its end", "torque 8 .. 28 N·m  accuracy 2 %  arm 300 mm", NOBODY],
    ["no arm, no setting", "torque 8 .. 90 N·m  accuracy 2 %", NOBODY],
  ])("behind an adapter: %s", (_title, more, wanted) => {
    expect(offered(job(more, "to 39 .. 41 N·m with Coarse + Crow"), "tool accuracy")).toEqual(wanted);
  });

  test("what is found, whole, and mended by what is offered", () => {
    // 38.4/0.96 N·m = 40 N·m, 40·0.96 N·m = 38.4 N·m; with 2 % 39.18 .. 39.2 N·m are left.
    const text = job("torque 8 .. 60 N·m  accuracy 2 %", "to 38.4 .. 40 N·m with Coarse").replace("5 %", "4 %");
    expect(limitFacts(text)).toEqual([
      {
        kind: "tool accuracy",
        part: "Screw",
        tool: "Coarse",
        torque: "38.4 .. 40 N·m",
        accuracy: "4 %",
        least: "40 N·m",
        most: "38.4 N·m",
        declaredAt: "4 %",
        ...named("Other", "Coarse"),
        span: "tighten Screw",
      },
    ]);
    const [found] = findingsIn(text).filter(({ code }) => code === "limits.tool-accuracy");
    const mended = found === undefined ? "" : withFix(text, found);
    expect(mended).toContain("to 38.4 .. 40 N·m with Other");
    expect(limitFacts(mended)).toEqual([]);
  });
});

describe("a gauge whose range does not hold the limits", () => {
  const job = (limits: string, ...more: readonly string[]): string => `tool Small "gauge" { measures 0 .. 1 mm }
${tools(more)}
part Shaft "shaft"
procedure Look {
  step measure "gap" with Small expect ${limits}
}`;
  test.each<[string, string, readonly string[], unknown]>([
    ["none is declared", "1 .. 2 mm", [], NOBODY],
    ["one holds them", "1 .. 2 mm", ['Large "gauge" { measures 0 .. 25 mm }'], named("Large", "Small")],
    ["just so", "1 .. 2 mm", ['Large "gauge" { measures 1 .. 2 mm }'], named("Large", "Small")],
    ["not the upper one", "1 .. 2 mm", ['Large "gauge" { measures 0 .. 1.9 mm }'], NOBODY],
    ["not the lower one", "1 .. 2 mm", ['Large "gauge" { measures 1.1 .. 2 mm }'], NOBODY],
    ["of something else", "1 .. 2 mm", ['Large "gauge" { measures 0 .. 25 bar }'], NOBODY],
    ["one that says no range", "1 .. 2 mm", ['Large "gauge" { resolution 0.01 mm }'], NOBODY],
    ["the one end there is", "at most 2 mm", ['Large "gauge" { measures 1.5 .. 2 mm }'], named("Large", "Small")],
    ["the one end there is is out of it", "at most 2 mm", ['Large "gauge" { measures 2.1 .. 3 mm }'], NOBODY],
    [
      "the narrowest of several",
      "1 .. 2 mm",
      ['Wide "gauge" { measures 0 .. 150 mm }', 'Near "gauge" { measures 0 .. 10 mm }'],
      named("Near", "Small"),
    ],
  ])("%s: %s", (_title, limits, more, wanted) => {
    expect(offered(job(limits, ...more), "tool range")).toEqual(wanted);
  });

  test("a gauge of pressure above the air is none for one against nothing", () => {
    const text = `tool Small "gauge" { measures 0 .. 1 bar absolute }
tool Gauge "gauge" { measures 0 .. 10 bar }
tool Vacuum "gauge" { measures 0 .. 20 bar absolute }
part Shaft "shaft"
procedure Look {
  step measure "oil" with Small expect 2 .. 3 bar absolute
}`;
    expect(offered(text, "tool range")).toEqual(named("Vacuum", "Small"));
  });
});

describe("a gauge that shows too coarse steps", () => {
  // 0.20 .. 0.24 mm: a band of 0.04 mm.
  const job = (
    resolution: string,
    limits: string,
    ...more: readonly string[]
  ): string => `tool Coarse "gauge" { measures 0 .. 1 mm  resolution ${resolution} }
${tools(more)}
part Shaft "shaft"
procedure Look {
  step measure "gap" with Coarse expect ${limits}
}`;
  test.each<[string, string]>([
    ["0.05 mm", "0.20 .. 0.24 mm"],
    ["0.041 mm", "0.22 ± 0.02 mm"],
    ["0.002 in", "0.20 .. 0.25 mm"],
  ])("found: steps of %s for %s", (resolution, limits) => {
    expect(offered(job(resolution, limits), "precision")).toEqual(NOBODY);
  });
  test.each<[string, string]>([
    ["0.04 mm", "0.20 .. 0.24 mm"],
    // 0.002 in is 0.0508 mm exactly.
    ["0.002 in", "0.2000 .. 0.2508 mm"],
    ["0.5 mm", "at most 0.2 mm"],
    ["0.5 mm", "at least 0.2 mm"],
  ])("silent: steps of %s for %s", (resolution, limits) => {
    expect(limitFacts(job(resolution, limits))).toEqual([]);
  });
  test.each<[string, readonly string[], unknown]>([
    ["a finer one", ['Fine "gauge" { measures 0 .. 1 mm  resolution 0.01 mm }'], named("Fine", "Coarse")],
    ["just fine enough", ['Fine "gauge" { measures 0 .. 1 mm  resolution 0.04 mm }'], named("Fine", "Coarse")],
    ["no finer", ['Fine "gauge" { measures 0 .. 1 mm  resolution 0.041 mm }'], NOBODY],
    ["fine, of another range", ['Fine "gauge" { measures 1 .. 2 mm  resolution 0.01 mm }'], NOBODY],
    ["fine, and says no range", ['Fine "gauge" { resolution 0.01 mm }'], NOBODY],
    ["says no steps", ['Fine "gauge" { measures 0 .. 1 mm }'], NOBODY],
  ])("%s", (_title, more, wanted) => {
    expect(offered(job("0.1 mm", "0.20 .. 0.24 mm", ...more), "precision")).toEqual(wanted);
  });

  test("a thermometer's steps are differences; steps of something else are none", () => {
    const look = (resolution: string): string => `tool Meter "thermometer" { resolution ${resolution} }
part Shaft "shaft"
procedure Look {
  step measure "warmth" with Meter expect 40 .. 41 °C
}`;
    expect(limitFacts(look("1.1 K"))).toEqual([
      {
        kind: "precision",
        tool: "Meter",
        value: "40 .. 41 °C",
        width: "1 K",
        resolution: "1.1 K",
        declaredAt: "1.1 K",
        ...NOBODY,
        span: 'measure "warmth"',
      },
    ]);
    expect(limitFacts(look("1 K"))).toEqual([]);
    // In a place of a difference °C is an interval (language.md, quantities).
    expect(limitFacts(look("1.1 °C"))).toMatchObject([{ kind: "precision", resolution: "1.1 °C" }]);
    expect(limitFacts(look("1 °C"))).toEqual([]);
    expect(limitFacts(look("1.8 °F"))).toEqual([]);
    expect(limitFacts(look("2 bar"))).toEqual([]);
  });

  test("a torque wrench, too", () => {
    const text = (resolution: string): string => `value Final = 40 ± 0.4 N·m
tool Click "wrench" { torque 5 .. 60 N·m  resolution ${resolution} }
tool Fine "wrench" { torque 8 .. 60 N·m  resolution 0.1 N·m }
part Screw "screw" { nut factor 0.2 dry }
procedure Close {
  step install Screw
  step tighten Screw to 20 %, 100 % of Final with Click
}`;
    expect(limitFacts(text("0.8 N·m"))).toEqual([]);
    // A wrench measures nothing: no other is offered for its steps.
    expect(limitFacts(text("1 N·m"))).toMatchObject([
      { kind: "precision", tool: "Click", value: "40 ± 0.4 N·m", width: "0.8 N·m", span: "tighten Screw" },
    ]);
  });
});

describe("a heater that does not get so hot, and what does not get so cold", () => {
  const job = (step: string, ...more: readonly string[]): string => `tool Plate "plate" { heats to 100 °C }
tool Chest "chest" { cools to -20 °C }
${tools(more)}
part Ring "ring" { heat limit 300 °C }
procedure Warm {
  ambient 15 .. 25 °C
  step ${step}
}`;
  test.each<[string, string, readonly string[], unknown]>([
    ["none is declared", "heat Ring to 110 .. 120 °C with Plate", [], NOBODY],
    ["one is", "heat Ring to 110 .. 120 °C with Plate", ['Oven "oven" { heats to 120 °C }'], named("Oven", "Plate")],
    ["not hot enough", "heat Ring to 110 .. 120 °C with Plate", ['Oven "oven" { heats to 119 °C }'], NOBODY],
    ["a freezer is none", "heat Ring to 110 .. 120 °C with Plate", ['Ice "ice" { cools to -200 °C }'], NOBODY],
    // 25 °C and 95 K more.
    ["by a rise", "heat Ring by 95 K with Plate", ['Oven "oven" { heats to 120 °C }'], named("Oven", "Plate")],
    ["by a rise, not enough", "heat Ring by 95 K with Plate", ['Oven "oven" { heats to 119 °C }'], NOBODY],
    ["cold", "cool Ring to -40 .. -30 °C with Chest", ['Ice "ice" { cools to -40 °C }'], named("Ice", "Chest")],
    ["not cold enough", "cool Ring to -40 .. -30 °C with Chest", ['Ice "ice" { cools to -39 °C }'], NOBODY],
    ["an oven is none", "cool Ring to -40 .. -30 °C with Chest", ['Oven "oven" { heats to 400 °C }'], NOBODY],
  ])("%s: %s", (_title, step, more, wanted) => {
    expect(offered(job(step, ...more), "tool range")).toEqual(wanted);
  });

  test("what is found, whole: the hottest or coldest that is asked, in the writer's degrees", () => {
    const found = (step: string) => limitFacts(job(step));
    const common = { kind: "tool range", what: "temperature", ...NOBODY, explanation: null };
    expect(found("heat Ring to 110 .. 120 °C with Plate")).toEqual([
      {
        ...common,
        ...{ how: "above", asked: "110 .. 120 °C", value: "120 °C", tool: "Plate" },
        ...{ range: "100 °C", declaredAt: "100 °C", span: "heat Ring" },
      },
    ]);
    // 25 °C and 95 K more; told in degrees, not in kelvin.
    expect(found("heat Ring by 95 K with Plate")).toEqual([
      {
        ...common,
        ...{ how: "above", asked: "95 K", value: "120 °C", tool: "Plate" },
        ...{ range: "100 °C", declaredAt: "100 °C", span: "heat Ring" },
      },
    ]);
    expect(found("cool Ring to -40 .. -30 °C with Chest")).toEqual([
      {
        ...common,
        ...{ how: "below", asked: "-40 .. -30 °C", value: "-40 °C", tool: "Chest" },
        ...{ range: "-20 °C", declaredAt: "-20 °C", span: "cool Ring" },
      },
    ]);
    expect(found("cool Ring to -20 °C with Chest")).toEqual([]);
    // How cold that gets nobody says.
    expect(found("cool Ring to at most -30 °C with Chest")).toEqual([]);
    expect(found("cool Ring by 90 K with Chest")).toEqual([]);
  });
});
