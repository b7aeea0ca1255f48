// What a finding shows beside its place: the state in words, where it came from, what gives what is wanted, what could be put
// in and where.
import { describe, expect, test } from "vitest";
import { onPaper } from "./run-on-paper.ts";

const PARTS = `ring Circle "circle" { count 4  numbered clockwise seen from "drive end"  position 1 at 12 o'clock }
ring Loose "loose ring" { count 4  numbered clockwise seen from "drive end" }
part Bearing "bearing"
part Cover "cover"
part Screw "screw" { secures Cover }
part Bolt[1..2] "bolt" { seats in Circle }
part Foot[left, right] "foot"
part Valve "valve" { states shut, open }
part Seal "seal" { single use }
temporary part Cap "cap"
energy Supply "supply" { voltage 400 V AC }
energy Steam "steam" { pressure 6 bar  off }
fact Signed "the sheet is signed"
consumable Grease "grease"
tool Heater "heater" { heats to 300 °C }
option Extent "extent of work" { Full Part }
`;

interface Shown {
  readonly state: string;
  readonly since: string;
  readonly givers: readonly string[];
  readonly mend: string | null;
  readonly stepSpan: string | null;
}

/** What the one unmet need of the text shows. */
function shown(steps: string, head = ""): Shown | null {
  const text = `${PARTS}procedure Work "Work" {\n${head}\n${steps}\n}`;
  const at = (span: { start: number; end: number }): string => text.slice(span.start, span.end).replace(/\s+/g, " ");
  const fact = onPaper(text, { damaged: true }).facts.find(({ code }) => code === "order.unmet-need")?.fact;
  if (fact?.kind !== "unmet need") return null;
  return {
    state: fact.state,
    since: `${fact.since.step ?? "-"}: ${at(fact.since.span)}`,
    givers: fact.givers.map(({ step, span }) => `${step ?? "-"}: ${at(span)}`),
    mend: fact.mend,
    stepSpan: fact.stepSpan === null ? null : at(fact.stepSpan),
  };
}
const ask = (condition: string): string => `step { needs ${condition} do "Look." }`;
const give = (condition: string): string => `step { do "See to it."  gives ${condition} }`;
const heat = (part: string, to: string): string => `step heat ${part} to ${to} °C with Heater`;

describe("the state in words", () => {
  test.each([
    ["Bearing is installed", "", "Bearing is removed"],
    ["Bearing is removed", "step install Bearing", "Bearing is installed"],
    ["Bearing is removed", "step install Cover\nstep install Bearing on Cover", "Bearing is installed on Cover"],
    ["Bearing is installed", "step install Bearing on Cover", "Bearing is on Cover on the bench"],
    ["Bolt[2] is removed", "step install Bolt[2] in Circle[3]", "Bolt[2] is installed in Circle[3]"],
    ["Foot[left] is removed", "step install Foot[left]", "Foot[left] is installed"],
    ["Screw is tightened", "step install Cover, Screw", "Screw is loose"],
    ["Screw is tightened", "step install Cover, Screw\nstep tighten Screw by hand", "Screw is loose"],
    ["Screw is tightened", "", "Screw is removed"],
    ["Screw is loose", "step install Cover, Screw\nstep tighten Screw", "Screw is tightened"],
    [
      "Screw is loose",
      "step install Cover, Screw\nstep tighten Screw\nstep loosen Screw by 1/4 turn",
      "Screw is tightened",
    ],
    ["Bearing is clean", "", "Bearing is as it was found"],
    ["Bearing is clean", "step lubricate Bearing with Grease", "Bearing is lubricated"],
    ["Bearing is lubricated", "step clean Bearing", "Bearing is clean"],
    ["Bearing is aligned", "", "Bearing is not aligned"],
    ["Bearing is not aligned", "step align Bearing with Cover", "Bearing is aligned"],
    ["Signed", "", "Signed is not given"],
    ["not Signed", give("Signed"), "Signed is given"],
    ["Valve is open", "", "Valve is shut"],
    ["Valve is shut", give("Valve is open"), "Valve is open"],
    ["Supply is isolated", "", "Supply is live"],
    ["Supply is live", "step isolate Supply", "Supply is isolated"],
    ["Steam is live", "", "Steam is off"],
    ["Bearing is at least 60 °C", "", "Bearing is at 20 °C"],
    ["Bearing is at most 60 °C", heat("Bearing", "80 .. 90.26"), "Bearing may be at 80 .. 90.3 °C"],
    ["Bearing is at most 60 °C", heat("Bearing", "80"), "Bearing is at 80 °C"],
    ["Circle[1] at 3 o'clock", "", "Circle[1] is at 12 o'clock"],
    ["Circle[1] at 3 o'clock", "step turn Circle[2] to 3 o'clock", "Circle[1] is at 12 o'clock"],
    ["Circle[1] at 3 o'clock", "step turn Circle[1] to 6.5 o'clock", "Circle[1] is at 6.5 o'clock"],
  ])("%s, after “%s”", (condition, steps, state) => {
    expect(shown(`${steps}\n${ask(condition)}`)?.state).toBe(state);
  });
  test("as it was found: neither loose nor tight for certain", () => {
    const found = "begin with Cover is installed, Screw is installed";
    expect(shown(ask("Screw is removed"), found)?.state).toBe("Screw is installed");
    expect(shown(ask("Screw is tightened"), found)?.state).toBe("Screw is in as it was found");
  });
  test("where a position stands goes by the way its ring is numbered", () => {
    expect(shown(ask("Circle[2] at 3 o'clock"))).toBeNull();
    expect(shown(ask("Circle[4] at 9 o'clock"))).toBeNull();
    expect(shown(`step turn Circle[4] to 6 o'clock\n${ask("Circle[2] at 3 o'clock")}`)?.state).toBe(
      "Circle[1] is at 9 o'clock",
    );
  });
  test("as warm as the shop may be", () => {
    const ambient = "ambient 15 .. 25 °C";
    expect(shown(ask("Bearing is at most 20 °C"), ambient)?.state).toBe("Bearing may be at 15 .. 25 °C");
    expect(shown(ask("Bearing is at least 15 °C, Bearing is at most 25 °C"), ambient)).toBeNull();
  });
  test("a ring that may stand anywhere is not told of", () => {
    expect(shown(ask("Loose[1] at 3 o'clock"))).toBeNull();
    expect(shown(`step turn Loose[1] to 6 o'clock\n${ask("Loose[1] at 3 o'clock")}`)?.state).toBe(
      "Loose[1] is at 6 o'clock",
    );
  });
});

describe("where it came from", () => {
  test("the start, the words of begin with, a step's action, a step's word", () => {
    expect(shown(ask("Signed"))?.since).toBe("-: Work");
    expect(shown(ask("not Signed"), "begin with Signed")?.since).toBe("-: Signed");
    expect(shown(`step install Bearing\n${ask("Bearing is removed")}`)?.since).toBe("1: install Bearing");
    expect(shown(`${give("Signed")}\n${ask("not Signed")}`)?.since).toBe("1: step");
    expect(shown(`task "T" { step inspect Cover\nstep install Bearing }\n${ask("Bearing is removed")}`)?.since).toBe(
      "1.2: install Bearing",
    );
  });
  test("the last that did it, and who brought it along", () => {
    expect(
      shown(`step install Bearing\nstep remove Bearing\nstep install Bearing\n${ask("Bearing is removed")}`)?.since,
    ).toBe("3: install Bearing");
    expect(
      shown(`step install Cover\nstep install Bearing on Cover\nstep remove Cover\n${ask("Bearing is installed")}`)
        ?.since,
    ).toBe("3: remove Cover");
  });
  test("one of several paths", () => {
    const steps = `when Extent is Full { step install Bearing } otherwise { step install Cover }\n${ask("Bearing is removed, Cover is removed")}`;
    expect(shown(steps)?.since).toBe("1: install Bearing");
  });
});

describe("what gives it", () => {
  test("steps elsewhere, before or behind, each once, three at most", () => {
    expect(shown(`${ask("Bearing is installed")}\nstep install Bearing`)?.givers).toEqual(["2: install Bearing"]);
    expect(shown(`step install Bearing\nstep remove Bearing\n${ask("Bearing is installed")}`)?.givers).toEqual([
      "1: install Bearing",
    ]);
    const five = Array.from({ length: 5 }, () => "step install Bearing\nstep remove Bearing").join("\n");
    expect(shown(`${five}\n${ask("Bearing is installed")}`)?.givers).toEqual([
      "1: install Bearing",
      "3: install Bearing",
      "5: install Bearing",
    ]);
    expect(
      shown(`repeat n from 1 to 4 { step install Bearing\nstep remove Bearing }\n${ask("Bearing is installed")}`)
        ?.givers,
    ).toEqual(["1: install Bearing"]);
  });
  test("what gives something else is none", () => {
    expect(shown(`step remove Bearing\nstep install Cover\n${ask("Bearing is installed")}`)?.givers).toEqual([]);
    expect(
      shown(`${ask("Screw is tightened")}\nstep install Cover, Screw\nstep tighten Screw by hand`)?.givers,
    ).toEqual([]);
    expect(shown(`${ask("Valve is open")}\n${give("Valve is shut")}`)?.givers).toEqual([]);
  });
  test("a step's word, heat, an energy, a performed procedure", () => {
    expect(shown(`${ask("Signed")}\n${give("Signed")}`)?.givers).toEqual(["2: step"]);
    expect(shown(`${ask("Valve is open")}\n${give("Valve is open")}`)?.givers).toEqual(["2: step"]);
    expect(shown(`${ask("Bearing is at least 60 °C")}\n${heat("Bearing", "80")}`)?.givers).toEqual(["2: heat Bearing"]);
    expect(shown(`${ask("Bearing is at least 60 °C")}\n${heat("Bearing", "50")}`)?.givers).toEqual([]);
    expect(shown(`${ask("Supply is isolated")}\nstep isolate Supply`)?.givers).toEqual(["2: isolate Supply"]);
  });
  test("of several wants, for the one that fails", () => {
    const both = ask("Bearing is installed and Cover is installed");
    expect(shown(`step install Bearing\n${both}\nstep install Cover`)).toMatchObject({
      state: "Cover is removed",
      givers: ["3: install Cover"],
      mend: null,
    });
  });
});

describe("what could be put in", () => {
  test.each([
    ["Bearing is installed", "", "install Bearing"],
    ["Bearing is removed", "step install Bearing", "remove Bearing"],
    ["Bearing is not installed", "step install Bearing", "remove Bearing"],
    ["Bolt[1] is installed", "", "install Bolt[1]"],
    ["Screw is tightened", "step install Cover, Screw", "tighten Screw"],
    ["Screw is loose", "step install Cover, Screw\nstep tighten Screw", "loosen Screw"],
    ["Bearing is clean", "", "clean Bearing"],
    ["Bearing is lubricated", "", null],
    ["Bearing is aligned", "", null],
    ["Supply is isolated", "", "isolate Supply"],
    ["Supply is not live", "", "isolate Supply"],
    ["Supply is live", "step isolate Supply", "restore Supply"],
    ["Supply is not isolated", "step isolate Supply", "restore Supply"],
    ["Signed", "", null],
    ["Valve is open", "", null],
    ["Bearing is at least 60 °C", "", null],
    ["Cover is secured", "", null],
    ["Bearing is installed and Cover is installed", "", null],
    ["Bearing is installed or Cover is installed", "", null],
  ])("for %s after “%s”: %s", (condition, steps, mend) => {
    expect(shown(`${steps}\n${ask(condition)}`)).toMatchObject({ mend });
  });
  test("only where it fails on every path", () => {
    expect(shown(`when Extent is Full { step install Bearing }\n${ask("Bearing is installed")}`)?.mend).toBeNull();
    expect(
      shown(`step { check "It fits" if it fails { install Bearing } }\n${ask("Bearing is installed")}`)?.mend,
    ).toBeNull();
    expect(shown(`when Extent is Full { ${ask("Bearing is installed")} }`)).toMatchObject({ mend: "install Bearing" });
  });
  test("before the step that wants it; nowhere in a block that may be done in any order", () => {
    expect(shown(ask("Bearing is installed"))?.stepSpan).toBe(ask("Bearing is installed"));
    expect(shown(`in any order {\n${ask("Bearing is installed")}\nstep inspect Cover\n}`)?.stepSpan).toBeNull();
    expect(
      shown(`in any order {\nstep inspect Bearing\nstep inspect Cover\n}\n${ask("Bearing is installed")}`)?.stepSpan,
    ).toBe(ask("Bearing is installed"));
  });
});

describe("one fact for one place", () => {
  const facts = (steps: string): readonly string[] =>
    onPaper(`${PARTS}procedure Work "Work" {\n${steps}\n}`)
      .facts.filter(({ code }) => code !== "order.not-final")
      .map(({ code, fact: { pass, more, options, inOrder } }) =>
        [
          code,
          pass.map(({ variable, value }) => `${variable}=${value}`).join(),
          more,
          JSON.stringify(options ?? null),
          inOrder?.length ?? 0,
        ].join(" "),
      );
  test("passes are counted, the first is shown", () => {
    expect(facts("repeat n from 2 to 5 { step remove Bearing }")).toEqual(["order.not-installed n=2 3 null 0"]);
    expect(facts("repeat n from 2 to 3 { repeat m in 7, 9 { step remove Bearing } }")).toEqual([
      "order.not-installed n=2,m=7 3 null 0",
    ]);
  });
  test("options of several passes are put together", () => {
    expect(
      facts("when Extent is Full { step install Bearing }\nrepeat n from 1 to 2 { step install Bearing }"),
    ).toEqual(["order.already-installed n=1 1 null 0"]);
    expect(facts("when Extent is Full { repeat n from 1 to 2 { step remove Bearing } }")).toEqual([
      'order.not-installed n=1 1 [{"Extent":"Full"}] 0',
    ]);
    expect(facts("when Extent is Full { step inspect Cover } otherwise { step remove Bearing }")).toEqual([
      'order.not-installed  0 [{"Extent":"Part"}] 0',
    ]);
  });
  test("two parts at one place are two; instances of one part are one", () => {
    expect(facts("step remove Bearing, Cover")).toEqual([
      "order.not-installed  0 null 0",
      "order.not-installed  0 null 0",
    ]);
    expect(facts("step remove Bolt[1], Bolt[2]")).toEqual(["order.not-installed  0 null 0"]);
    expect(facts("step remove Bearing\nstep remove Bearing")).toHaveLength(2);
  });
  test("an order is shown only where the order of the text has it not", () => {
    expect(facts("in any order {\nstep install Bearing\nstep remove Bearing\n}")).toEqual([
      "order.not-installed  0 null 1",
    ]);
    expect(facts("in any order {\nstep remove Bearing\nstep install Bearing\n}")).toEqual([
      "order.not-installed  0 null 0",
    ]);
    expect(
      facts(`finish with Bearing is installed\nin any order {\nstep remove Bearing\nstep install Bearing\n}`),
    ).toEqual(["order.not-installed  0 null 0", "order.unfinished  0 null 2"]);
  });
});
