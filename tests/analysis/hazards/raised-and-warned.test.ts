// What a procedure raises beside what warns of it, whole: the cause, the value and its threshold, the places where a statement would
// hold, the statement that comes too late, the one that nothing calls for (checks.md: safety.missing, too-late, idle).
import { describe, expect, test } from "vitest";
import { thresholdsPassed, wantedAt } from "#analysis/hazards/hazards.ts";
import { onPaper } from "../run-on-paper.ts";
import { CUT, facts, told, work } from "./hazards-on-paper.ts";

describe("not covered, whole", () => {
  const source = (name: string, title: string) => ({ name, title });
  const missing = (more: object) => ({ kind: "hazard not covered", grave: false, anyOf: false, titles: {}, ...more });
  test("sharp, with the heads of the blocks it stands in, innermost first", () => {
    const lines =
      'step inspect Seat\ntask A "A" {\n  step inspect Seat\n  when Deep is yes {\n    step { inspect Seat install Blade[1] }\n  }\n}';
    expect(facts(work(lines))).toEqual([
      missing({
        raised: { cause: "sharp part", of: source("Blade", "blade"), hazards: ["cutting"], passed: null },
        span: "install Blade[1]",
        options: [{ Deep: "yes" }],
        places: [
          { block: "step", before: "inspect Seat" },
          { block: "branch", before: "step { inspect Seat install Blade[1] }" },
          { block: "task", before: "step inspect Seat" },
          { block: "procedure", before: "step inspect Seat" },
        ],
      }),
    ]);
  });
  test("of several lines only the heads that hold for all of them; a repeat, work in any order and a failing path have none", () => {
    const places = (lines: string): unknown =>
      (facts(work(lines))[0] as { places: readonly { block: string }[] }).places.map(({ block }) => block);
    expect(places('task A "A" { step install Blade[1] }\ntask B "B" { step install Blade[2] }')).toEqual(["procedure"]);
    expect(places("step install Blade[1]\nstep install Blade[2]")).toEqual(["procedure"]);
    expect(places("repeat n from 1 to 2 { step install Blade[n] }")).toEqual(["step", "procedure"]);
    expect(places("in any order { step install Blade[1] step inspect Seat }")).toEqual(["step", "procedure"]);
    expect(places('step { check "gap" if it fails { install Blade[1] } }')).toEqual(["step", "procedure"]);
  });
  test("a hazard of the shop's own, with its words", () => {
    expect(facts(work("step install Lining"))).toMatchObject([
      { raised: { cause: "part handled", hazards: ["Dust"] }, titles: { Dust: "dust of linings" } },
    ]);
  });
  test("a value past its threshold, and whether somebody is hurt for certain", () => {
    expect(facts(work("step heat Seat to 50 .. 60 °C with Heater\nstep clean Seat"))).toMatchObject([
      {
        ...{ grave: false, span: "clean Seat" },
        raised: {
          cause: "hot part",
          of: source("Seat", "seat"),
          passed: { value: "60 °C", threshold: { name: "burn", value: "51 °C" } },
        },
      },
    ]);
    expect(facts(work("step heat Seat to 50 .. 65 °C with Heater\nstep clean Seat"))).toMatchObject([
      { grave: true, raised: { passed: { value: "65 °C", threshold: { value: "65 °C" } } } },
    ]);
    // The shop's own goes before the published one, also above 65 °C.
    expect(
      facts(work("step heat Seat to 50 .. 70 °C with Heater\nstep clean Seat", "threshold burn 60 °C\n")),
    ).toMatchObject([
      { grave: true, raised: { passed: { value: "70 °C", threshold: { value: "60 °C", mark: null } } } },
    ]);
    expect(facts(work("step heat Seat to 50 .. 59 °C with Heater\nstep clean Seat", "threshold burn 60 °C\n"))).toEqual(
      [],
    );
  });
  test("the noise that is measured, a tool in use, what a step says of itself", () => {
    expect(facts(work('step measure "noise" with Meter expect 80 .. 90 dB(A)'))).toMatchObject([
      {
        raised: {
          ...{ cause: "noise measured", of: source("the noise", "the noise"), hazards: ["noise"] },
          passed: { value: "80 .. 90 dB(A)", threshold: { name: "noise" } },
        },
        span: 'measure "noise"',
      },
    ]);
    expect(facts(work('step { check "noise" with Meter expect at most 85 dB(A) }'))).toMatchObject([
      { raised: { cause: "noise measured" }, span: 'check "noise"' },
    ]);
    expect(facts(work('step { check "noise" with Meter expect at most 84 dB(A) }'))).toEqual([]);
    expect(facts(work("step inspect Seat with Grinder"))).toMatchObject([
      { raised: { cause: "tool used", of: source("Grinder", "grinder"), hazards: ["eye", "noise"] } },
    ]);
    expect(facts(work('step { check "gap" with Grinder }'))).toMatchObject([
      { raised: { cause: "tool used" }, span: 'check "gap"' },
    ]);
    expect(facts(work("step { inspect Seat raises fall }"))).toMatchObject([
      { raised: { cause: "said to be raised", of: source("fall", "fall"), hazards: ["fall"] }, span: "fall" },
    ]);
  });
});

describe("one for each source of a hazard, at its first line on each way", () => {
  test.each<[title: string, lines: string, told: readonly string[]]>([
    ["one source", "step install Blade[1]\nstep install Blade[2]", ["not covered cutting of Blade: install Blade[1]"]],
    [
      "two sources of one hazard",
      "step clean Seat with Cleaner\nstep { inspect Seat raises skin }",
      ["not covered skin of Cleaner: clean Seat", "not covered skin of skin: skin"],
    ],
    [
      "one way each",
      "when Deep is yes { step install Blade[1] } otherwise { step install Blade[2] }\nstep install Blade[3]",
      ["not covered cutting of Blade: install Blade[1]", "not covered cutting of Blade: install Blade[2]"],
    ],
    [
      "a warning does not stand for an error",
      "step heat Seat to 50 .. 60 °C with Heater\nstep clean Seat\nstep heat Seat to 60 .. 70 °C with Heater\nstep clean Seat",
      ["not covered burn of Seat: clean Seat", "not covered burn of Seat: clean Seat"],
    ],
    [
      "an error stands for a warning",
      "step heat Seat to 60 .. 70 °C with Heater\nstep clean Seat\nstep wait until Seat is at most 60 °C\nstep clean Seat",
      ["not covered burn of Seat: clean Seat"],
    ],
    [
      "several hazards of one source are one",
      "step inspect Seat with Grinder",
      ["not covered eye, noise of Grinder: inspect Seat"],
    ],
  ])("%s", (_title, lines, wanted) => {
    expect(told(lines)).toEqual(wanted);
  });
  test("of hazards of which one is enough, one that was told is enough", () => {
    expect(
      told("step lift Cover with Hoist\nstep install Cover\nstep remove Cover\nstep lift Cover with Hoist"),
    ).toHaveLength(1);
    const one = 'step { warning crush "Load." avoid "Stand clear."\n lift Cover with Hoist }\nstep install Cover';
    expect(told(one)).toEqual([]);
  });
});

describe("too late", () => {
  test("whole: at the statement, with what it is too late for", () => {
    expect(facts(work(`step {\n  install Blade[1]\n  ${CUT}\n}`))).toEqual([
      {
        ...{
          kind: "statement too late",
          span: expect.stringContaining("warning cutting"),
          raisedAt: "install Blade[1]",
        },
        raised: { cause: "sharp part", of: { name: "Blade", title: "blade" }, hazards: ["cutting"], passed: null },
      },
    ]);
  });
  test.each<[title: string, lines: string, told: readonly string[]]>([
    [
      "what it does not warn of is missing all the same",
      `step {\n  inspect Seat with Grinder\n  warning eye "Splinters." avoid "Look away."\n}`,
      ["not covered noise of Grinder", "too late eye of Grinder"],
    ],
    ["before it stands one that warns", `${CUT}\nstep install Blade[1]\n${CUT}\nstep install Blade[2]`, []],
    [
      "in the block around",
      `task A "A" { step install Blade[1] }\n${CUT}\nstep install Blade[2]`,
      ["too late cutting of Blade"],
    ],
    [
      "in another block",
      `task A "A" { step install Blade[1] }\ntask B "B" { ${CUT}\nstep install Blade[2] }`,
      ["not covered cutting of Blade"],
    ],
    // What a step says of itself holds from its first line of work: a statement at its head is before it.
    [
      "a step that says so itself",
      'step {\n  warning fall "High." avoid "Hold on."\n  raises fall\n  inspect Seat\n}',
      [],
    ],
    [
      "a step that says so, with a note first",
      'step {\n  note "By hand."\n  warning fall "High." avoid "Hold on."\n  raises fall\n  inspect Seat\n}',
      [],
    ],
    [
      "a step that says so, and warns after its work",
      'step {\n  inspect Seat\n  warning fall "High." avoid "Hold on."\n  raises fall\n}',
      ["too late fall of fall"],
    ],
    ["a step that does nothing else", 'step {\n  warning fall "High." avoid "Hold on."\n  raises fall\n}', []],
  ])("%s", (_title, lines, wanted) => {
    const found = told(lines);
    expect(found).toHaveLength(wanted.length);
    for (const [at, one] of wanted.entries()) expect([...found].sort()[at]).toContain([...wanted].sort()[at] ?? one);
  });
});

describe("idle", () => {
  const warns = (hazard: string): string => `warning ${hazard} "Take care." avoid "Keep off."\n`;
  test("whole, with all its hazards", () => {
    expect(facts(work(`${warns("burn, cutting")}step inspect Seat`))).toEqual([
      { kind: "idle statement", span: expect.stringContaining("warning burn, cutting"), hazards: ["burn", "cutting"] },
    ]);
  });
  test.each<[title: string, lines: string]>([
    ["a hazard that no fact tells of", `${warns("fall")}step inspect Seat`],
    ["one of two that no fact tells of", `${warns("burn, fall")}step inspect Seat`],
    ["one of the shop's own", `${warns("Dust")}step inspect Seat`],
    ["something raises it", `${warns("cutting")}step install Blade[1]`],
    ["something raises one of them", `${warns("burn, cutting")}step install Blade[1]`],
    ["something heats, though not so much", `${warns("burn")}step heat Seat to 30 .. 40 °C with Heater`],
    ["something cools, though not so much", `${warns("cold")}step cool Seat to 10 .. 12 °C`],
    ["a ring is turned", `${warns("rotating")}step turn Circle[1] to 3 o'clock`],
    ["a ring is turned, and pinches", `${warns("crush")}step turn Circle[1] to 3 o'clock`],
    ["the noise is measured, though low", `${warns("noise")}step { check "noise" with Meter expect at most 60 dB(A) }`],
    ["a light part is set down", `${warns("dropped")}step set down Seat`],
    ["a part of which nobody says what it weighs is put in", `${warns("lifting")}step install Seat`],
    ["it is isolated", `${warns("electric")}step isolate Supply`],
    ["it is proved", `${warns("electric")}begin with Supply is isolated\nstep prove Supply dead`],
    ["it is put on again", `${warns("electric")}begin with Supply is isolated\nstep restore Supply`],
    ["own words may mean anything", `${warns("burn")}step { do "Lift the hot lid." }`],
    ["a step in own words may mean anything", `${warns("burn")}step "Lift the hot lid."`],
    ["nothing stands in its block: that is told", `task A "A" { ${warns("burn")} }\nstep inspect Seat`],
    ["it comes too late: that is told", `step install Blade[1]\n${warns("cutting")}step inspect Seat`],
  ])("silent: %s", (_title, lines) => {
    expect(told(lines).filter((one) => one.startsWith("idle"))).toEqual([]);
  });
  test.each<[title: string, lines: string]>([
    [
      "raised before it only, in a way that it is not too late for",
      `task A "A" { step install Blade[1] }\ntask B "B" { ${warns("cutting")}step inspect Seat }`,
    ],
    ["looking at a sharp part is no handling", `${warns("cutting")}step inspect Blade[1]`],
    ["a light part is put in by hand", `${warns("lifting")}step install Pin`],
    [
      "own words stand outside of it",
      `step { do "Lift the hot lid." }\ntask A "A" { ${warns("burn")}step inspect Seat }`,
    ],
    ["a step with own words and its own lines", `${warns("burn")}step "Look." { inspect Seat }`],
  ])("found: %s", (_title, lines) => {
    expect(told(lines, {}, 'part Pin "pin" { mass 1 kg }\n').filter((one) => one.startsWith("idle"))).toHaveLength(1);
  });
  test("what is performed calls for it, too", () => {
    const inner = 'procedure Inner "Inner" { step install Blade[1] }\n';
    expect(told(`${warns("cutting")}perform Inner`, {}, inner)).toEqual([]);
    expect(told(`${warns("burn")}perform Inner`, {}, inner)).toEqual([expect.stringContaining("idle burn")]);
  });
  test("a threshold that cannot be read may be passed anywhere, and so may a line", () => {
    const idle = `${warns("burn")}step inspect Seat`;
    expect(told(idle, {}, "threshold fire 20 °C\n")).toHaveLength(1);
    expect(told(idle, { damaged: true }, "threshold fire 20 .. °C\n")).toEqual([]);
    expect(told(`${idle}\nnonsense here`, { damaged: true })).toEqual([]);
  });
});

describe("what a statement at a place would have to warn of", () => {
  const wanted = (lines: string, block?: string): readonly string[] => {
    const text = work(lines.replace("<|>", ""));
    const offset = work(lines).indexOf("<|>");
    const [run] = onPaper(text, { damaged: true }).runs.slice(-1);
    if (run === undefined) throw new Error("nothing to follow");
    const start = block === undefined ? 0 : text.indexOf(block);
    const end = block === undefined ? text.length : text.indexOf("}", start);
    return wantedAt(run, { path: "work.sprag", start, end }, offset);
  };
  test("all that is raised behind it in its block, each once, in the order of the text", () => {
    expect(wanted("<|>step install Blade[1]\nstep inspect Seat with Grinder\nstep install Blade[2]")).toEqual([
      "cutting",
      "eye",
      "noise",
    ]);
    expect(wanted("step install Blade[1]\n<|>step inspect Seat with Grinder")).toEqual(["eye", "noise"]);
    expect(wanted('task A "A" { <|>step install Blade[1] }\nstep inspect Seat with Grinder', "task A")).toEqual([
      "cutting",
    ]);
  });
  test("less what another statement warns of, but not the one that is written there", () => {
    expect(wanted(`${CUT}\n<|>step install Blade[1]\nstep inspect Seat with Grinder`)).toEqual(["eye", "noise"]);
    expect(wanted(`${CUT.replace("warning", "<|>warning")}\nstep install Blade[1]`)).toEqual(["cutting"]);
    expect(wanted(`${CUT.replace('back."', 'back."<|>')}\nstep install Blade[1]`)).toEqual(["cutting"]);
    expect(wanted(`${CUT}\n <|>step install Blade[1]`)).toEqual([]);
  });
});

test("which thresholds something in a procedure is at or past, or may be", () => {
  const passed = (lines: string, more = ""): readonly string[] => {
    const [run] = onPaper(work(lines, more)).runs.slice(-1);
    return run === undefined ? [] : [...thresholdsPassed(run)].sort();
  };
  expect(passed("step inspect Seat")).toEqual([]);
  expect(passed("step heat Seat to 30 .. 40 °C with Heater")).toEqual(["burn", "fire"]);
  expect(passed("step cool Seat to 10 .. 12 °C")).toEqual(["cold"]);
  expect(passed("step install Cover")).toContain("lifting");
  expect(passed('step { check "noise" with Meter expect at most 60 dB(A) }')).toEqual(["noise"]);
  // A gas takes the place of oxygen: what it raises is called otherwise than its threshold.
  const gas = 'consumable Nitrogen "liquid nitrogen" { expands 694 }\n';
  expect(passed("room 60 m³\nstep apply 10 L of Nitrogen to Seat", gas)).toEqual(["fumes", "oxygen"]);
});
