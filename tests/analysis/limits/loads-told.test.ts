// limits.overload, whole: what hangs, on what, for which choices; and what is worked out of it and left out. 23 kg for one person is
// NIOSH 94-110 (second); m/(n·sin θ) on a leg is ASME B30.9 (memory).
import { describe, expect, test } from "vitest";
import { leftOut, limitFacts, limitsAt, workedOut } from "./whole-limits.ts";

const job = (steps: string, more = "", crew = ""): string => `option On { yes no }
option Both { yes no }
tool Hoist "hoist" { lifts 50 kg }
tool Sling "sling" { each leg lifts 20 kg }
tool Rope "rope"
part Frame "frame" { mass 40 kg }
part Bush "bush" { mass 8 kg }
part Pin "pin" { mass 3 kg }
part Cap "cap"
${more}
procedure Lift {
  ${crew}
  ${steps}
}`;
const LIFT = "step lift Frame with Hoist\n";
const common = {
  ...{ kind: "overload", how: "tool", part: "Frame", limit: "50 kg", tool: "Hoist", legs: null, people: 0 },
  ...{ lowered: null, limitAt: "50 kg", fitting: null, instead: null, span: "lift Frame" },
};

describe("what hangs", () => {
  test("all that stands on it, layer by layer, for the choices that put it there", () => {
    const steps = `when On is yes { step install Bush in Frame }
  when Both is yes { step install Pin in Bush }
  ${LIFT}`;
    // 40 + 8 + 3 kg; the pin alone on the bench adds nothing, nor does one that went into a bush on the bench.
    expect(limitFacts(job(steps))).toEqual([
      { ...common, mass: "51 kg", with: ["Bush", "Pin"], options: [{ On: "yes", Both: "yes" }] },
    ]);
  });
  test("each load by itself, where several are too much", () => {
    const steps = `step install Bush in Frame
  when On is yes { step install Pin in Frame }
  ${LIFT}`;
    const found = limitFacts(job(steps, "").replace("lifts 50 kg", "lifts 45 kg"));
    // Of one place it is one finding, for both.
    expect(found).toMatchObject([{ kind: "overload", limit: "45 kg" }]);
    expect(found[0]).not.toHaveProperty("options");
  });
  test("what was taken off again does not hang", () => {
    const steps = "step install Bush in Frame\nstep install Pin in Frame\nstep remove Pin\n";
    expect(limitFacts(job(`${steps}${LIFT}`))).toEqual([]);
    expect(limitFacts(job(`${steps}step install Pin in Bush\n${LIFT}`))).toMatchObject([{ with: ["Bush", "Pin"] }]);
  });
  test("the high end of a mass counts, and what is shown is in the part's own unit, not below what it is", () => {
    const of = (mass: string): readonly object[] => limitFacts(job(LIFT).replace("mass 40 kg", `mass ${mass}`));
    expect(of("45 .. 50 kg")).toEqual([]);
    expect(of("45 .. 50.5 kg")).toMatchObject([{ mass: "50.5 kg" }]);
    expect(of("48 ± 3 kg")).toMatchObject([{ mass: "51 kg" }]);
    expect(of("at most 51 kg")).toMatchObject([{ mass: "51 kg" }]);
    expect(of("at least 51 kg")).toMatchObject([{ mass: "51 kg" }]);
    // 110.23 lb are 50.0 kg and a little less: 110 lb is 49.90 kg, 111 lb 50.35 kg (NIST SP 811: 0.453 592 37 kg).
    expect(of("110 lb")).toEqual([]);
    expect(of("111 lb")).toMatchObject([{ mass: "111 lb", limit: "50 kg" }]);
    // With 8 kg on it, in pounds: 17.64.
    const onIt = job(`step install Bush in Frame\n${LIFT}`).replace("mass 40 kg", "mass 100 lb");
    expect(limitFacts(onIt)).toMatchObject([{ mass: expect.stringMatching(/^11(7\.[67]\d*|8) lb$/) }]);
  });
  test("what has no mass counts for nothing, and that is told; what is lifted without one is not looked at", () => {
    expect(leftOut(job(`step install Cap on Frame\n${LIFT}`))).toEqual(["load | Frame | mass | Cap @ lift Frame"]);
    expect(leftOut(job("step lift Cap with Hoist\n"))).toEqual(["load | Cap | mass | Cap @ lift Cap"]);
    expect(limitFacts(job("step lift Cap with Hoist\n"))).toEqual([]);
    expect(leftOut(job(`step install Bush in Frame\n${LIFT}`))).toEqual([]);
  });
  test("a part whose declaration could not be read", () => {
    const hurt = (name: string, steps: string): string =>
      job(steps).replace(`part ${name} "${name.toLowerCase()}" {`, `part ${name} "${name.toLowerCase()}" { thread`);
    const onIt = `step install Bush in Frame\nstep install Pin in Bush\n${LIFT}`;
    expect(limitsAt(job(onIt))).toEqual(["overload tool: lift Frame"]);
    for (const name of ["Frame", "Bush", "Pin"]) {
      expect(limitsAt(hurt(name, onIt), { damaged: true })).toEqual([]);
      expect(leftOut(hurt(name, onIt), { damaged: true })).toEqual([]);
    }
  });
  test("more things that may be on it than ways are told apart: what is certainly on it is counted", () => {
    const riders = Array.from({ length: 8 }, (_, at) => at + 1);
    const more = `${riders.map((n) => `option O${n} { yes no }`).join("\n")}
${riders.map((n) => `part R${n} "rider" { mass 1 kg }`).join("\n")}
part Sure "rider" { mass 9 kg }`;
    const steps = riders.map((n) => `when O${n} is yes { step install R${n} in Frame }`).join("\n");
    // 40 + 9 kg are certain, and six of the others are told apart.
    const found = limitFacts(job(`${steps}\nstep install Sure in Frame\n${LIFT}`, more));
    expect(found).toMatchObject([{ kind: "overload", how: "tool" }]);
    expect(
      limitFacts(job(`${steps}\nstep install Sure in Frame\n${LIFT}`, more.replace("9 kg", "10.1 kg"))),
    ).toMatchObject([{ kind: "overload", how: "tool" }]);
    expect(limitFacts(job(`${steps}\n${LIFT}`, more))).toEqual([]);
  });
});

describe("the tool that is offered", () => {
  const offered = (more: string, lifted = LIFT): unknown => {
    const [found] = limitFacts(job(`step install Bush in Frame\nstep install Pin in Bush\n${lifted}`, more));
    const { fitting, instead } = found as { fitting: string | null; instead: unknown };
    return { fitting, instead };
  };
  const NOBODY = { fitting: null, instead: null };
  const named = (text: string, span = "Hoist") => ({ fitting: text, instead: { span, text } });
  test.each<[title: string, more: string, wanted: unknown]>([
    ["none", "", NOBODY],
    ["one that lifts just as much", 'tool Crane "crane" { lifts 51 kg }', named("Crane")],
    ["one that lifts a little less", 'tool Crane "crane" { lifts 50.9 kg }', NOBODY],
    [
      "the one that lifts least of those that do",
      'tool Crane "crane" { lifts 900 kg }\ntool Jib "jib" { lifts 60 kg }',
      named("Jib"),
    ],
    ["a sling is no hoist", 'tool Belt "belt" { each leg lifts 90 kg }', NOBODY],
    ["one by its lower end", 'tool Crane "crane" { lifts 50 .. 60 kg }', NOBODY],
  ])("%s", (_title, more, wanted) => {
    expect(offered(more)).toEqual(wanted);
  });
  test("one that could not be read is none", () => {
    const text = job(
      `step install Bush in Frame\nstep install Pin in Bush\n${LIFT}`,
      'tool Crane "crane" { lifts 90 kg  arm }',
    );
    expect(limitFacts(text, { damaged: true })).toMatchObject([NOBODY]);
    const own = text.replace("lifts 50 kg", "lifts 50 kg  arm").replace("lifts 90 kg  arm", "lifts 90 kg");
    expect(limitFacts(own, { damaged: true })).toEqual([]);
  });
});

describe("on a sling", () => {
  // 40 kg on two legs: 20 kg on each at 90°, 23.09 kg at 60°, 40 kg at 30°.
  const SLUNG = "step lift Frame with Hoist + Sling on 2 legs at ";
  test("whole, with the load on a leg, and the sling that bears least of those that bear it", () => {
    const text = job(
      `${SLUNG}30°\n`,
      'tool Belt "belt" { each leg lifts 40 kg }\ntool Chain "chain" { each leg lifts 90 kg }',
    );
    const legs = { count: 2, angle: "30°", load: "40 kg" };
    expect(limitFacts(text)).toEqual([
      {
        ...common,
        ...{ how: "leg", mass: "40 kg", with: [], limit: "20 kg", tool: "Sling", limitAt: "20 kg", legs },
        ...{ fitting: "Belt", instead: { span: "Sling", text: "Belt" } },
      },
    ]);
    expect(limitFacts(job(`${SLUNG}90°\n`))).toEqual([]);
  });
  test("a sling that carries it no better is not offered; a hoist is no sling", () => {
    const text = job(`${SLUNG}60°\n`, 'tool Belt "belt" { each leg lifts 23 kg }\ntool Crane "crane" { lifts 90 kg }');
    expect(limitFacts(text)).toMatchObject([{ how: "leg", fitting: null, instead: null }]);
  });
  test("too flat: told at the legs, of no tool", () => {
    expect(limitFacts(job(`${SLUNG}29°\n`, 'tool Chain "chain" { each leg lifts 900 kg }'))).toEqual([
      {
        ...common,
        ...{ how: "leg angle", mass: "40 kg", with: [], tool: null, limitAt: null, limit: "30 .. 90°" },
        ...{ legs: { count: 2, angle: "29°", load: null }, span: expect.stringContaining("2 legs at 29°") },
      },
    ]);
  });
  test("two hoists, each too weak, are two findings", () => {
    const text = job(
      "step install Bush in Frame\nstep install Pin in Bush\nstep lift Frame with Hoist + Jib\n",
      'tool Jib "jib" { lifts 45 kg }',
    );
    expect(limitFacts(text)).toMatchObject([
      { tool: "Hoist", limit: "50 kg" },
      { tool: "Jib", limit: "45 kg" },
    ]);
  });
  test("hoist and sling at once are two findings", () => {
    const text = job(`step install Bush in Frame\nstep install Pin in Bush\n${SLUNG}60°\n`);
    expect(limitsAt(text)).toEqual(["overload tool: lift Frame", "overload leg: lift Frame"]);
  });
  test("nothing said of legs: that is left out; one leg at right angles carries all", () => {
    expect(leftOut(job("step lift Frame with Hoist + Sling\n"))).toEqual([
      "load | Frame | sling legs | Sling @ lift Frame",
    ]);
    expect(limitsAt(job("step lift Frame with Hoist + Sling on 1 leg at 90°\n"))).toEqual(["overload leg: lift Frame"]);
    expect(leftOut(job(`${SLUNG}60°\n`))).toEqual([]);
    expect(leftOut(job(LIFT))).toEqual([]);
  });
  test("a support hangs as a lift does", () => {
    expect(limitsAt(job(`${SLUNG.replace("lift", "support")}60°\n`))).toEqual(["overload leg: support Frame"]);
  });
  test("set down: nothing hangs any more", () => {
    expect(limitFacts(job("step set down Frame\n").replace("mass 40 kg", "mass 900 kg"))).toEqual([]);
  });
});

describe("by hand", () => {
  const hand = (mass: string, crew = "", how = "", more = ""): string =>
    job(`step lift Frame by hand ${how}\n`, more, crew).replace("mass 40 kg", `mass ${mass}`);
  const byHand = { ...common, tool: null, limitAt: null };
  test("whole: one person, a crew, and a crew with care", () => {
    expect(limitFacts(hand("24 kg"))).toEqual([
      { ...byHand, how: "hands", mass: "24 kg", with: [], people: 1, limit: "at most 23 kg" },
    ]);
    // Two: 46 kg together, 30.66 kg with care; three: 69 kg and 34.5 kg (HSE, read).
    expect(limitFacts(hand("47 kg", "crew 2"))).toEqual([
      { ...byHand, how: "hands", mass: "47 kg", with: [], people: 2, limit: "at most 46 kg" },
    ]);
    expect(limitFacts(hand("46 kg", "crew 2"))).toEqual([
      {
        ...byHand,
        how: "hands with care",
        mass: "46 kg",
        with: [],
        people: 2,
        limit: expect.stringMatching(/^at most 30\.6/),
      },
    ]);
    expect(limitFacts(hand("35 kg", "crew 3"))).toEqual([
      { ...byHand, how: "hands with care", mass: "35 kg", with: [], people: 3, limit: "at most 34.5 kg" },
    ]);
    expect(limitFacts(hand("23 kg"))).toEqual([]);
  });
  test("the shop's own limit stands where it is declared", () => {
    expect(limitFacts(hand("21 kg", "", "", "threshold lifting 20 kg"))).toMatchObject([
      { how: "hands", limit: "at most 20 kg", limitAt: "lifting" },
    ]);
    expect(limitFacts(hand("24 kg", "", "", "threshold lifting 25 kg"))).toEqual([]);
    // One that could not be read may be any.
    expect(limitFacts(hand("24 kg", "", "", "threshold lifting 25 N"), { damaged: true })).toEqual([]);
  });
  test("what lowered it: 23 kg·25/40 is 14.375 kg, told with its factor", () => {
    const [found] = limitFacts(hand("15 kg", "", "reach 40 cm"));
    expect(found).toMatchObject({ how: "hands", limit: expect.stringMatching(/^at most 14\.3/) });
    const { lowered } = found as { lowered: { one: string; factors: readonly object[] } };
    expect(lowered.one).toMatch(/^at most 14\.3/);
    expect(lowered.factors).toHaveLength(1);
    // At 25 cm nothing is lowered (HM = 25/H, NIOSH 94-110).
    expect(leftOut(hand("15 kg", "", "reach 40 cm"))).toEqual([]);
  });
  test("an open end lowers nothing, and that is told", () => {
    expect(leftOut(hand("20 kg", "", "reach at least 40 cm"))).toEqual(["load | Frame | reach | Frame @ lift Frame"]);
    expect(limitFacts(hand("24 kg", "", "reach at least 40 cm"))).toMatchObject([{ how: "hands", lowered: null }]);
    expect(leftOut(hand("20 kg", "", "from height 70 cm to at least 90 cm"))).toEqual([
      "load | Frame | travel | Frame @ lift Frame",
    ]);
    expect(leftOut(hand("20 kg", "", "from height 70 cm to 90 cm"))).toEqual([]);
    expect(leftOut(hand("20 kg", "", "from height 70 cm"))).toEqual([]);
  });
});

describe("what is worked out", () => {
  const ON = "step install Bush in Frame\n";
  test("what hangs, for each tool that says what it lifts; else of the part", () => {
    expect(workedOut(job(ON + LIFT))).toEqual([expect.stringMatching(/^2: Hoist for Frame @ lift Frame: .*48 kg$/)]);
    expect(workedOut(job(`${ON}step lift Frame with Rope\n`))).toEqual([
      expect.stringMatching(/^2: Frame @ lift Frame: .*48 kg$/),
    ]);
    expect(workedOut(job(`${ON}step lift Frame with Hoist + Rope\n`))).toEqual([
      expect.stringMatching(/^2: Hoist for Frame @ lift Frame: .*48 kg$/),
    ]);
  });
  test("a part alone, where no tool says what it lifts", () => {
    expect(workedOut(job("step lift Frame with Rope\n"))).toEqual([
      expect.stringMatching(/^1: Frame @ lift Frame: .*40 kg$/),
    ]);
  });
  test("the load on a leg", () => {
    const worked = workedOut(job("step lift Frame with Hoist + Sling on 2 legs at 30°\n"));
    expect(worked.filter((one) => one.startsWith("1: Frame @ lift Frame: "))).toEqual([
      expect.stringMatching(/ 40 kg$/),
    ]);
  });
  test("what a crew may lift, with what lowered it for each", () => {
    const hand = (how: string): readonly string[] =>
      workedOut(job(`${ON}step lift Frame by hand ${how}\n`, "", "crew 2").replace("mass 40 kg", "mass 20 kg"));
    const plain = hand("");
    expect(plain.every((one) => one.startsWith("2: Frame by hand @ lift Frame: "))).toBe(true);
    expect(plain.some((one) => one.endsWith("at most 46 kg"))).toBe(true);
    expect(plain.some((one) => one.endsWith("28 kg"))).toBe(true);
    const lowered = hand("reach 40 cm");
    expect(lowered).toHaveLength(plain.length + 1);
    // 14.375 kg each, 28.75 kg for two.
    expect(lowered.some((one) => /at most 14\.3\d* kg$/.test(one))).toBe(true);
    expect(lowered.some((one) => /at most 28\.[67]\d* kg$/.test(one))).toBe(true);
  });
});
