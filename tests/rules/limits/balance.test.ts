// limits.balance: vector sums done by hand, ISO 21940-11 as m·e·ω = constant, both sides of each limit, and each way in which a
// table is no arrangement.
import { describe, expect, test } from "vitest";
import { expectMarked, findingsIn } from "#harness/check.ts";
import { readMarks } from "#harness/marks.ts";

interface Wish {
  readonly lines?: string;
  readonly count?: number;
}

const text = ({ lines = "radius 500 mm  unbalance at most 600 g·mm", count = 4 }: Wish = {}): string => `ring R {
  count ${count}
  numbered clockwise seen from "drive end"
  position 1 at 12 o'clock
}
part S[1..${count}] "segment" { seats in R by number }
arrangement Order of S in R { ${lines}  from "t.csv" }
`;

const table = (weights: readonly string[], column = "mass"): string =>
  `position,serial,${column}\n${weights.map((weight, at) => `${at + 1},S-${at + 1},${weight}\n`).join("")}`;

const found = (csv: string, wish: Wish = {}) => findingsIn(text(wish), { "t.csv": csv });
const codes = (csv: string, wish: Wish = {}): readonly string[] =>
  found(csv, wish).map(({ code, severity }) => `${code} ${severity}`);
const ERROR = "limits.balance error";

describe("the limit", () => {
  test.each([
    // Four places: x = (m1 − m3)·r, y = (m2 − m4)·r. 1.2 g and nothing: 600 g·mm, at the limit (computed).
    ["at the limit", ["1001.2 g", "1000 g", "1000 g", "1000 g"], []],
    ["just above", ["1001.2001 g", "1000 g", "1000 g", "1000 g"], [ERROR]],
    // 3-4-5: 0.72 g and 0.96 g at 500 mm: 360 and 480 make 600 (computed).
    ["3, 4 and 5 at the limit", ["1000.72 g", "1000.96 g", "1000 g", "1000 g"], []],
    ["3, 4 and 5 above", ["1000.72 g", "1000.97 g", "1000 g", "1000 g"], [ERROR]],
    ["like pairs across", ["1.3 kg", "1.1 kg", "1.3 kg", "1.1 kg"], []],
    ["like pairs beside each other", ["1.3 kg", "1.3 kg", "1.1 kg", "1.1 kg"], [ERROR]],
  ])("%s", (_, weights, wanted) => {
    expect(codes(table(weights))).toEqual(wanted);
  });

  test("in inch units: 1 oz·in is 28.349523125 g times 25.4 mm (NIST SP 811)", () => {
    // 0.5 oz at 12 in is 6 oz·in.
    const lines = "radius 12 in  unbalance at most 6 oz·in";
    expect(codes(table(["32.5 oz", "32 oz", "32 oz", "32 oz"]), { lines })).toEqual([]);
    expect(codes(table(["32.501 oz", "32 oz", "32 oz", "32 oz"]), { lines })).toEqual([ERROR]);
    const [why] = found(table(["32.501 oz", "32 oz", "32 oz", "32 oz"]), { lines }).map((one) => one.why ?? "");
    expect(why).toContain("6.012 oz·in");
  });

  test("of moments: no radius is asked for", () => {
    const lines = "unbalance at most 600 g·mm";
    expect(codes(table(["5600 g·mm", "5000 g·mm", "5000 g·mm", "5000 g·mm"], "moment"), { lines })).toEqual([]);
    expect(codes(table(["5601 g·mm", "5000 g·mm", "5000 g·mm", "5000 g·mm"], "moment"), { lines })).toEqual([ERROR]);
  });

  test("is set in the file that declares it, and found there alone", () => {
    const [file] = readMarks(`use "lib.sprag"
procedure P { step install S[all] }`);
    const used = { "lib.sprag": text(), "t.csv": table(["2 kg", "1 kg", "1 kg", "1 kg"]) };
    expectMarked(file === undefined ? [] : [{ ...file, path: "main.sprag" }], {}, used);
    expect(findingsIn(text(), used).map(({ range }) => range.start)).toEqual([{ line: 6, character: 12 }]);
  });
});

describe("the grade", () => {
  // e_per·ω = G (ISO 21940-11; second). With n in rpm U = G·m·30000/(π·n) g·mm, kg: G6.3, 4 kg, 3000 rpm: 80.2 g·mm.
  const lines = 'radius 500 mm  mass 4 kg  speed 3000 rpm  grade "G6.3"';
  const permitted = (6.3 * 4 * 30_000) / (Math.PI * 3000);
  const at = (share: number): string =>
    table([`${(1000 + (permitted * share) / 500).toFixed(9)} g`, "1000 g", "1000 g", "1000 g"]);
  test("holds on both sides", () => {
    expect(permitted).toBeCloseTo(80.2, 1);
    expect(codes(at(0.999_999), { lines })).toEqual([]);
    expect(codes(at(1.000_001), { lines })).toEqual([ERROR]);
  });
  test("without the rotor's mass takes that of the set, and says so", () => {
    const ofSet = lines.replace("mass 4 kg  ", "");
    expect(codes(at(0.999_999), { lines: ofSet })).toEqual([]);
    const [over] = found(at(1.001), { lines: ofSet });
    expect(over?.why).toContain("The mass is that of the set alone");
    expect(over?.remedy).toContain("declare the “mass” of the whole rotor");
  });
  test("and a limit are both looked at", () => {
    const both = `${lines}  unbalance at most 60 g·mm`;
    expect(codes(at(0.9), { lines: both })).toEqual([ERROR]);
    expect(codes(at(1.1), { lines: both })).toEqual([ERROR, ERROR]);
  });
  test.each([
    ['radius 500 mm  grade "G6.3"', ["limits.balance warning"], "no speed"],
    ["radius 500 mm  speed 3000 rpm", ["limits.balance warning"], "no balance grade"],
    ['radius 500 mm  speed 3000 rpm  grade "G7"', ["limits.balance error"], "“G7” is no balance grade"],
    ["unbalance at most 600 g·mm", ["limits.balance warning"], "no radius"],
  ])("%s lacks something", (own, wanted, words) => {
    const csv = table(["1 kg", "1 kg", "1 kg", "1 kg"]);
    expect(codes(csv, { lines: own })).toEqual(wanted);
    expect(found(csv, { lines: own })[0]?.message).toContain(words);
  });
  test("of moments lacks the rotor's mass", () => {
    const csv = table(["1 kg·mm", "1 kg·mm", "1 kg·mm", "1 kg·mm"], "moment");
    expect(found(csv, { lines: 'speed 3000 rpm  grade "G6.3"' })[0]?.message).toContain("no mass");
    expect(codes(csv, { lines: 'mass 4 kg  speed 3000 rpm  grade "G6.3"' })).toEqual([]);
  });
});

describe("each position exactly one", () => {
  const row = (position: string, serial: string): string => `${position},${serial},1 kg\n`;
  const csv = (...places: readonly (readonly [string, string])[]): string =>
    `position,serial,mass\n${places.map(([position, serial]) => row(position, serial)).join("")}`;
  test.each([
    ["all", csv(["3", "A"], ["1", "B"], ["4", "C"], ["2", "D"]), []],
    ["one missing", csv(["1", "A"], ["2", "B"], ["3", "C"]), ["Position 4 of R holds no part."]],
    ["one twice", csv(["1", "A"], ["2", "B"], ["3", "C"], ["3", "D"]), ["t.csv: position 3 holds both C and D."]],
    ["one outside", csv(["1", "A"], ["2", "B"], ["3", "C"], ["5", "D"]), ["t.csv, line 5: R has no position 5."]],
    ["zero", csv(["0", "A"], ["2", "B"], ["3", "C"], ["4", "D"]), ["t.csv, line 2: R has no position 0."]],
    ["one nowhere", csv(["1", "A"], ["2", "B"], ["3", "C"], ["", "D"]), ["t.csv, line 5: D has no position."]],
    ["a serial twice", csv(["1", "A"], ["2", "A"], ["3", "C"], ["4", "D"]), ["t.csv has A twice."]],
  ])("%s", (_, table_, wanted) => {
    expect(found(table_).map(({ message }) => message)).toEqual(wanted);
    expect(codes(table_)).toEqual(wanted.map(() => ERROR));
  });
});

test("what is wrong in the table is told with its line and what to write", () => {
  const [one] = found("position,serial,mass\n1,A,1 kg\n2,B,1\n3,C,1\n4,D,1 kg\n");
  expect([one?.message, one?.why, one?.remedy].join("\n")).toMatchInlineSnapshot(`
    "t.csv, line 3: “1” has no unit.
    Kilograms, grams and pounds look alike without one. The same is so in 1 more row.
    Write 2.304 kg, or the unit once in the first line: “mass (kg)”."
  `);
  expect(one?.code).toBe("limits.balance");
});

test("what is left is said in one line, in the unit of the limit", () => {
  const [one] = found(table(["1002 g", "1001 g", "1000 g", "1000 g"]));
  expect([one?.message, one?.why, one?.remedy].join("\n")).toMatchInlineSnapshot(`
    "Order leaves more unbalance than it may.
    Wanted: at most 600 g·mm
    Found: 1118 g·mm, the sum of 4 masses at 500 mm, between positions 1 and 2
    Ask for a better order with “sprag arrange main.sprag”."
  `);
});

test("of two that differ in the fifth digit both are told apart", () => {
  const [one] = found(table(["1001.20002 g", "1000 g", "1000 g", "1000 g"]));
  expect(one?.why).toContain("Found: 600.01 g·mm");
});

test("nothing is said of a damaged arrangement, or of one without a table", () => {
  expect(
    findingsIn(text({ lines: "radius" }), { "t.csv": table(["9 kg", "1 kg", "1 kg", "1 kg"]) }).map(({ code }) => code),
  ).not.toContain("limits.balance");
  expect(findingsIn(text().replace('from "t.csv"', ""))).toEqual([]);
});
