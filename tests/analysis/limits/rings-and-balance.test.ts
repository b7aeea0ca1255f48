// limits.spacing and limits.balance, whole. k equally spaced of n positions exist exactly when k divides n (engineering.md); moments
// of four parts a quarter apart are added by hand: opposite ones leave their difference.
import { describe, expect, test } from "vitest";
import { balanceFacts } from "#analysis/limits/balance.ts";
import { computedOf } from "#analysis/limits/limits.ts";
import { lowerFiles } from "#model/lower.ts";
import { show } from "#quantity/display.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";
import { inWords, leftOut, limitFacts } from "./whole-limits.ts";

describe("equally spaced", () => {
  const job = (
    steps: string,
    { count = 8, pins = "1..4", rule = "equally spaced", more = "" } = {},
  ): string => `option On { yes no }
ring Circle "circle" { count ${count}  numbered clockwise seen from "front"  position 1 at 12 o'clock }
ring Other "other circle" { count 8  numbered clockwise seen from "front"  position 1 at 12 o'clock }
holes Feet "feet" { count 4  order 1, 3, 2, 4 }
part Pin[${pins}] "pin" { seats in Circle ${rule} }
part Plug[1..2] "plug"
${more}
procedure Fit {
  ${steps}
}`;
  const put = (...positions: readonly number[]): string =>
    positions.map((position, at) => `step install Pin[${at + 1}] in Circle[${position}]\n`).join("");
  const common = {
    ...{
      kind: "spacing",
      ring: "Circle",
      count: 8,
      instead: null,
      declaredAt: expect.stringContaining("equally spaced"),
    },
  };
  const bad = (part: string, place: string, other: string, at: string, could: readonly number[], wanted = 2) => ({
    ...common,
    ...{ part, place, wanted, with: { part: other, place: at }, could, span: `install ${part}` },
  });

  test.each<[title: string, positions: readonly number[], facts: readonly object[]]>([
    ["opposite", [1, 5], []],
    ["opposite, the other way round", [7, 3], []],
    ["not opposite", [1, 4], [bad("Pin[2]", "Circle[4]", "Pin[1]", "Circle[1]", [5])]],
    ["four, a quarter apart", [2, 4, 6, 8], []],
    ["four, in any order", [8, 2, 6, 4], []],
  ])("%s", (_title, positions, facts) => {
    expect(limitFacts(job(put(...positions)))).toEqual(facts);
  });
  test("each that is out of step, with the first that it is out of step with, and where it could go", () => {
    expect(limitFacts(job(put(1, 3, 6, 7)))).toEqual([
      bad("Pin[3]", "Circle[6]", "Pin[1]", "Circle[1]", [3, 5, 7], 4),
      // It fits the first two, and not the third.
      bad("Pin[4]", "Circle[7]", "Pin[3]", "Circle[6]", [2, 4, 8], 4),
    ]);
  });
  test("positions of two digits", () => {
    expect(limitFacts(job(put(12, 5), { count: 12 }))).toEqual([
      { ...bad("Pin[2]", "Circle[5]", "Pin[1]", "Circle[12]", [6]), count: 12 },
    ]);
  });
  test("a count that allows no such spacing: of what is installed, not of what there is", () => {
    expect(limitFacts(job(put(1, 4, 6)))).toEqual(
      [1, 4, 6].map((position, at) => ({
        ...common,
        ...{ part: `Pin[${at + 1}]`, place: `Circle[${position}]`, wanted: 3, with: null, could: [] },
        span: `install Pin[${at + 1}]`,
      })),
    );
    expect(limitFacts(job(put(1, 5, 9), { count: 12 }))).toEqual([]);
  });
  test("one alone is spaced; one that goes in twice is one", () => {
    expect(limitFacts(job(put(3)))).toEqual([]);
    expect(limitFacts(job(`${put(3)}step remove Pin[1]\nstep install Pin[1] in Circle[4]\n`))).toEqual([]);
  });
  test("what was taken out is no neighbour", () => {
    expect(limitFacts(job(`${put(1)}step remove Pin[1]\nstep install Pin[2] in Circle[4]\n`))).toEqual([]);
  });
  test("for the choice in which the other one is in", () => {
    const text = job("when On is yes { step install Pin[1] in Circle[1] }\nstep install Pin[2] in Circle[4]\n");
    expect(limitFacts(text)).toMatchObject([{ kind: "spacing", part: "Pin[2]", options: [{ On: "yes" }] }]);
  });
  test("others on the ring do not count, nor does what is only turned or taken out", () => {
    const others = "step install Plug[1] in Circle[2]\nstep install Plug[2] in Circle[3]\n";
    expect(limitFacts(job(`${others}${put(1, 5)}step remove Pin[1]\nstep remove Plug[1]\n`))).toEqual([]);
    // Pin[3] is taken out, and not put in by this procedure: two are installed.
    expect(limitFacts(job(`${put(1, 5)}step remove Pin[3]\n`, { more: "" }))).toEqual([]);
  });
  test.each<[title: string, settings: Parameters<typeof job>[1], steps: string]>([
    ["seats by number", { rule: "by number" }, "step install Pin[1] in Circle[1]\nstep install Pin[4] in Circle[4]\n"],
    ["seats at places", { rule: "at 1, 4" }, put(1, 4)],
    ["seats anywhere", { rule: "" }, put(1, 4)],
    ["on another ring", {}, "step install Pin[1] in Other[1]\nstep install Pin[2] in Other[4]\n"],
    ["no place is said", {}, "step install Pin[1]\nstep install Pin[2]\n"],
    ["on a part", {}, "step install Pin[1] on Plug[1]\nstep install Pin[2] on Plug[2]\n"],
  ])("silent: %s", (_title, settings, steps) => {
    expect(limitFacts(job(steps, settings))).toEqual([]);
  });
  test("silent: what could not be read, the part or the ring", () => {
    const text = job(put(1, 4));
    expect(limitFacts(text)).toHaveLength(1);
    expect(limitFacts(text.replace("equally spaced", "equally spaced  mass"), { damaged: true })).toEqual([]);
    expect(limitFacts(text.replace("count 8  numbered", "count 8  fill  numbered"), { damaged: true })).toEqual([]);
  });
});

describe("an arrangement", () => {
  const shop = (
    says: string,
    count = 4,
  ): string => `ring Seat "seat" { count ${count}  numbered clockwise seen from "front"  position 1 at 12 o'clock }
part Segment[1..${count}] "segment" { seats in Seat }
arrangement Order of Segment in Seat { ${says} }
procedure Fit { step install Segment[1] in Seat[1] }
`;
  /** With the rows of the table; null where there is none. */
  function read(text: string, table: string | null) {
    const parsed = new Map([["work.sprag", parseText(text, "work.sprag")]]);
    linkFiles(parsed);
    const tables = (path: string): string | null => (path.endsWith("segments.csv") ? table : null);
    const model = lowerFiles(parsed, () => table !== null, tables).get("work.sprag");
    return model?.declarations ?? [];
  }
  const facts = (text: string, table: string | null): unknown =>
    balanceFacts(read(text, table)).map(({ pass, more, ...fact }) =>
      inWords(text, { ...fact, passes: [...pass, more] }),
    );
  const explained = (text: string, table: string | null): readonly string[] =>
    computedOf(read(text, table)).map(
      ({ of, step, explanation: { result } }) => `${of} ${step}: ${result.name} ${show(result.value)}`,
    );
  const rows = (...all: readonly (readonly [string, number | "", string])[]): string =>
    ["serial,position,mass", ...all.map((row) => row.join(","))].join("\n");
  const MASSES = rows(["A", 1, "2.01 kg"], ["B", 2, "2 kg"], ["C", 3, "2 kg"], ["D", 4, "2 kg"]);
  const FROM = 'from "segments.csv"';
  const common = { arrangement: "Order", passes: [0], span: "Order" };

  test("the residual is what opposite parts do not share: 10 g at 400 mm are 4000 g·mm, at position 1", () => {
    const text = shop(`radius 400 mm  unbalance at most 3000 g·mm  ${FROM}`);
    expect(facts(text, MASSES)).toEqual([
      {
        ...common,
        ...{
          kind: "unbalance",
          how: "limit",
          residual: "4000 g·mm",
          limit: "at most 3000 g·mm",
          direction: 1,
          count: 4,
        },
        ...{ radius: "400 mm", limitAt: "at most 3000 g·mm", grade: null, explanation: expect.any(String) },
      },
    ]);
    expect(explained(text, MASSES)).toEqual([expect.stringMatching(/^Order null: .*4000 g·mm$/)]);
    expect(facts(text.replace("3000", "4000"), MASSES)).toEqual([]);
    expect(facts(text.replace("at most 3000 g·mm", "3999 g·mm"), MASSES)).toMatchObject([{ residual: "4000 g·mm" }]);
    expect(explained(text.replace("3000", "4000"), MASSES)).toHaveLength(1);
  });
  test("with as many digits as it takes to be seen above the limit", () => {
    const text = shop(`radius 400 mm  unbalance at most 3999.9 g·mm  ${FROM}`);
    expect(facts(text, MASSES)).toMatchObject([{ residual: expect.stringMatching(/^4000(?:\.0*)? g·mm$/) }]);
    const hair = rows(["A", 1, "2.0100001 kg"], ["B", 2, "2 kg"], ["C", 3, "2 kg"], ["D", 4, "2 kg"]);
    // 10.0001 g at 400 mm are 4000.04 g·mm.
    expect(facts(text.replace("3999.9", "4000"), hair)).toMatchObject([{ residual: "4000.04 g·mm" }]);
  });
  test("two neighbours: between them, and the square root of two as much", () => {
    const text = shop(`radius 400 mm  unbalance at most 3000 g·mm  ${FROM}`);
    const table = rows(["A", 1, "2.01 kg"], ["B", 2, "2.01 kg"], ["C", 3, "2 kg"], ["D", 4, "2 kg"]);
    // √2 · 4000 = 5656.85.
    expect(facts(text, table)).toMatchObject([{ residual: "5657 g·mm", direction: 1.5 }]);
    const last = rows(["A", 1, "2.01 kg"], ["B", 2, "2 kg"], ["C", 3, "2 kg"], ["D", 4, "2.01 kg"]);
    expect(facts(text, last)).toMatchObject([{ residual: "5657 g·mm", direction: 4.5 }]);
  });
  test("nothing is left of equal parts", () => {
    const table = rows(["A", 1, "2 kg"], ["B", 2, "2 kg"], ["C", 3, "2 kg"], ["D", 4, "2 kg"]);
    expect(facts(shop(`radius 400 mm  unbalance at most 0 g·mm  ${FROM}`), table)).toEqual([]);
  });
  test("moments need no radius, and show none", () => {
    const table = "serial,position,moment\nA,1,804 g·mm\nB,2,800 g·mm\nC,3,800 g·mm\nD,4,800 g·mm\n";
    expect(facts(shop(`radius 400 mm  unbalance at most 3 g·mm  ${FROM}`), table)).toMatchObject([
      { kind: "unbalance", residual: expect.stringMatching(/^4(?:\.0+)? g·mm$/), radius: null, direction: 1 },
    ]);
    expect(facts(shop(`unbalance at most 4 g·mm  ${FROM}`), table)).toEqual([]);
  });

  // ISO 21940-11: G 6.3 is 6.3 mm/s of eccentricity times angular speed; at 3000 rpm (100·π rad/s) 20.05 g·mm/kg (computed).
  test("a grade, of the rotor's mass, else of the set's, and that is said", () => {
    const of = (mass: string, radius = "400 mm"): unknown =>
      facts(shop(`radius ${radius}  grade "G 6.3"  speed 3000 rpm  ${mass}  ${FROM}`), MASSES);
    // 8.01 kg: 160.6 g·mm; 100 kg: 2005 g·mm; 200 kg: 4011 g·mm.
    expect(of("")).toMatchObject([
      {
        how: "grade",
        grade: { grade: "G 6.3", speed: "3000 rpm", mass: "8.01 kg", ofSet: true },
        limit: expect.stringMatching(/^at most 160/),
      },
    ]);
    expect(of("mass 100 kg")).toMatchObject([
      { how: "grade", grade: { mass: "100 kg", ofSet: false }, limit: expect.stringMatching(/^at most 200[05]/) },
    ]);
    expect(of("mass 200 kg")).toEqual([]);
  });
  test("a limit and a grade: each by itself, the smaller first; both are shown how they came about", () => {
    const text = shop(
      `radius 400 mm  unbalance at most 3000 g·mm  grade "G 6.3"  speed 3000 rpm  mass 100 kg  ${FROM}`,
    );
    expect((facts(text, MASSES) as { how: string }[]).map(({ how }) => how)).toEqual(["grade", "limit"]);
    expect(explained(text, MASSES)).toHaveLength(2);
    const far = text.replace("mass 100 kg", "mass 190 kg");
    expect((facts(far, MASSES) as { how: string }[]).map(({ how }) => how)).toEqual(["limit", "grade"]);
  });
  test.each<[title: string, says: string, table: string | null, lacks: readonly object[]]>([
    ["no radius", `unbalance at most 3000 g·mm  ${FROM}`, MASSES, [{ lacks: "radius", given: null }]],
    ["no speed", `radius 400 mm  grade "G 6.3"  ${FROM}`, MASSES, [{ lacks: "speed", given: "G 6.3" }]],
    [
      "no grade",
      `radius 400 mm  unbalance at most 9000 g·mm  speed 3000 rpm  ${FROM}`,
      MASSES,
      [{ lacks: "grade", given: null }],
    ],
    [
      "a grade that is none",
      `radius 400 mm  grade "fine"  speed 3000 rpm  ${FROM}`,
      MASSES,
      [{ lacks: "known grade", given: "fine" }],
    ],
    [
      "a grade that is none, and no table",
      'radius 400 mm  grade "fine"  speed 3000 rpm',
      null,
      [{ lacks: "known grade", given: "fine" }],
    ],
    ["a grade that is one, and no table", 'radius 400 mm  grade "G 6.3"  speed 3000 rpm', null, []],
    ["nothing is wanted", `radius 400 mm  ${FROM}`, MASSES, []],
    ["all is there", `radius 400 mm  unbalance at most 9000 g·mm  ${FROM}`, MASSES, []],
  ])("lacks: %s", (_title, says, table, lacks) => {
    expect(facts(shop(says), table)).toEqual(lacks.map((one) => ({ ...common, kind: "balance data", ...one })));
  });
  test("by moments without a mass, a grade lacks it", () => {
    const table = "serial,position,moment\nA,1,804 g·mm\nB,2,800 g·mm\nC,3,800 g·mm\nD,4,800 g·mm\n";
    expect(facts(shop(`grade "G 6.3"  speed 3000 rpm  ${FROM}`), table)).toMatchObject([
      { lacks: "mass", given: "G 6.3" },
    ]);
    expect(facts(shop(`grade "G 6.3"  speed 3000 rpm  mass 1 kg  ${FROM}`), table)).toEqual([]);
  });

  test.each<[title: string, table: string, faults: readonly object[]]>([
    ["a position empty", rows(["A", 1, "2 kg"], ["B", 3, "2 kg"]), [{ how: "empty", positions: [2, 4] }]],
    [
      "a position twice, with its lines",
      rows(["A", 1, "2 kg"], ["B", 2, "2 kg"], ["C", 2, "2 kg"], ["D", 4, "2 kg"]),
      [{ how: "twice", position: 2, serials: ["B", "C"], lines: [3, 4] }],
    ],
    [
      "outside the ring, on either side",
      rows(["A", 1, "2 kg"], ["B", 2, "2 kg"], ["C", 5, "2 kg"], ["D", 0, "2 kg"]),
      [
        { how: "outside", position: 5, serial: "C", line: 4 },
        { how: "outside", position: 0, serial: "D", line: 5 },
      ],
    ],
    [
      "one serial twice",
      rows(["A", 1, "2 kg"], ["B", 2, "2 kg"], ["A", 3, "2 kg"], ["D", 4, "2 kg"]),
      [{ how: "same serial", serial: "A", lines: [2, 4] }],
    ],
    [
      "nowhere, all in one, at the first",
      rows(["A", 1, "2 kg"], ["B", "", "2 kg"], ["C", "", "2 kg"], ["D", 4, "2 kg"]),
      [{ how: "nowhere", serials: ["B", "C"], line: 3 }],
    ],
  ])("no arrangement yet: %s; then there is no unbalance to speak of", (_title, table, faults) => {
    const text = shop(`radius 400 mm  unbalance at most 0.001 g·mm  ${FROM}`);
    expect(facts(text, table)).toEqual(
      faults.map((fault) => ({
        ...common,
        ...{ kind: "occupancy", ring: "Seat", count: 4, table: "segments.csv", fault },
      })),
    );
    expect(explained(text, table)).toEqual([]);
  });

  test("what is not checked is told: no table, no limit", () => {
    const told = (says: string): readonly string[] => leftOut(shop(says), { damaged: true });
    expect(told("radius 400 mm")).toEqual(["balance | Order | table | Order @ Order"]);
    expect(told(`radius 400 mm  ${FROM}`)).toEqual(["balance | Order | unbalance or grade | Order @ Order"]);
    expect(told(`radius 400 mm  unbalance at most 3 g·mm  ${FROM}`)).toEqual([]);
    expect(told(`radius 400 mm  grade "G 6.3"  ${FROM}`)).toEqual([]);
    expect(told("radius  ")).toEqual([]);
  });
});
