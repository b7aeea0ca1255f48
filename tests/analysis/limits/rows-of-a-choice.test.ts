// limits.choice, whole: between which values no row holds, or two do; what is expected and no row covers; what a row leaves. 1 in is
// 25.4 mm exactly (NIST SP 811, B.8).
import { describe, expect, test } from "vitest";
import { leftOut, limitFacts, limitsAt, workedOut } from "./whole-limits.ts";

const job = (expected: string, rows: string, leaving = ""): string => `part Shim "shim"
part Thin "thin shim"
value Sheet = 2 mm
tool Gauge "gauge" { measures 0 .. 50 mm }
procedure Fit {
  step measure Gap "gap" with Gauge${expected === "" ? "" : ` expect ${expected}`}
  step choose Shim by Gap${leaving === "" ? "" : ` leaving ${leaving}`} {
    ${rows}
  }
}`;
const row = (how: string, from: string | null, to: string | null, declaredAt: string, span: string) => ({
  ...{ kind: "choice", reading: "Gap", chosen: "Shim", of: "length" },
  ...{ how, from, to, declaredAt, span },
});
const BLOCK = "choose Shim";

test.each<[title: string, expected: string, rows: string, facts: readonly object[]]>([
  ["a gap", "", "2 .. 6 mm: 1 mm  7 .. 8 mm: 2 mm", [row("gap", "6 mm", "7 mm", "2 .. 6 mm", "7 .. 8 mm")]],
  [
    "a gap, told at the upper row wherever it stands",
    "",
    "7 .. 8 mm: 2 mm  2 .. 6 mm: 1 mm",
    [row("gap", "6 mm", "7 mm", "2 .. 6 mm", "7 .. 8 mm")],
  ],
  [
    "a gap after conversion: 0.25 in is 6.35 mm",
    "",
    "2 .. 6 mm: 1 mm  0.25 .. 0.5 in: 2 mm",
    [row("gap", "6 mm", "0.25 in", "2 .. 6 mm", "0.25 .. 0.5 in")],
  ],
  ["an overlap", "", "2 .. 6 mm: 1 mm  5 .. 8 mm: 2 mm", [row("overlap", "5 mm", "6 mm", "2 .. 6 mm", "5 .. 8 mm")]],
  [
    "a row inside another overlaps up to its own end",
    "",
    "2 .. 9 mm: 1 mm  5 .. 8 mm: 2 mm",
    [row("overlap", "5 mm", "8 mm", "2 .. 9 mm", "5 .. 8 mm")],
  ],
  [
    "what comes behind a row inside another begins where the longer one ends",
    "",
    "2 .. 9 mm: 1 mm  5 .. 8 mm: 2 mm  9 .. 12 mm: 3 mm",
    [row("overlap", "5 mm", "8 mm", "2 .. 9 mm", "5 .. 8 mm")],
  ],
  [
    "and a gap behind both is one behind the longer one",
    "",
    "2 .. 9 mm: 1 mm  5 .. 8 mm: 2 mm  10 .. 12 mm: 3 mm",
    [row("overlap", "5 mm", "8 mm", "2 .. 9 mm", "5 .. 8 mm"), row("gap", "9 mm", "10 mm", "2 .. 9 mm", "10 .. 12 mm")],
  ],
  [
    "two rows that are open to the same side",
    "",
    "at most 4 mm: 1 mm  at most 6 mm: 2 mm",
    [row("overlap", null, "4 mm", "at most 4 mm", "at most 6 mm")],
  ],
  [
    "one open row above another",
    "",
    "at least 4 mm: 1 mm  at least 6 mm: 2 mm",
    [row("overlap", "6 mm", null, "at least 4 mm", "at least 6 mm")],
  ],
  [
    "an open row above one with both ends",
    "",
    "at least 4 mm: 1 mm  6 .. 8 mm: 2 mm",
    [row("overlap", "6 mm", "8 mm", "at least 4 mm", "6 .. 8 mm")],
  ],
  ["an open row below one with both ends", "", "4 .. 6 mm: 2 mm  at most 4 mm: 1 mm", []],
  [
    "a gap above an open row",
    "",
    "5 .. 6 mm: 2 mm  at most 4 mm: 1 mm",
    [row("gap", "4 mm", "5 mm", "at most 4 mm", "5 .. 6 mm")],
  ],
  ["one value alone", "", "4 mm: 1 mm  5 .. 6 mm: 2 mm", [row("gap", "4 mm", "5 mm", "4 mm", "5 .. 6 mm")]],
  ["one value at the end of another row", "", "4 .. 5 mm: 1 mm  5 mm: 2 mm", []],
  [
    "one value within another row",
    "",
    "4 .. 6 mm: 1 mm  5 mm: 2 mm",
    [row("overlap", "5 mm", "5 mm", "4 .. 6 mm", "5 mm")],
  ],
  ["expected below", "1 .. 8 mm", "2 .. 8 mm: 1 mm", [row("below", "1 mm", "2 mm", "1 .. 8 mm", BLOCK)]],
  ["expected above", "2 .. 9 mm", "2 .. 8 mm: 1 mm", [row("above", "8 mm", "9 mm", "2 .. 9 mm", BLOCK)]],
  [
    "expected on both sides, by the longest row",
    "1 .. 10 mm",
    "2 .. 9 mm: 1 mm  3 .. 8 mm: 2 mm",
    [
      row("below", "1 mm", "2 mm", "1 .. 10 mm", BLOCK),
      row("above", "9 mm", "10 mm", "1 .. 10 mm", BLOCK),
      row("overlap", "3 mm", "8 mm", "2 .. 9 mm", "3 .. 8 mm"),
    ],
  ],
  ["one value expected, below", "1 mm", "2 .. 8 mm: 1 mm", [row("below", "1 mm", "2 mm", "1 mm", BLOCK)]],
  ["one value expected, above", "9 mm", "2 .. 8 mm: 1 mm", [row("above", "8 mm", "9 mm", "9 mm", BLOCK)]],
  ["one value expected, in it", "8 mm", "2 .. 8 mm: 1 mm", []],
  ["with open ends nothing is left out", "1 .. 99 mm", "at most 6 mm: 1 mm  at least 6 mm: 2 mm", []],
  ["expected without an upper end", "at least 2 mm", "2 .. 8 mm: 1 mm", []],
  ["expected without a lower end", "at most 8 mm", "2 .. 8 mm: 1 mm", []],
])("%s", (_title, expected, rows, facts) => {
  const found = limitFacts(job(expected, rows)).filter((fact) => "kind" in fact && fact.kind === "choice");
  expect(found).toHaveLength(facts.length);
  expect(found).toEqual(expect.arrayContaining([...facts]));
});

describe("silent, where something could not be read or is of another kind: that is told by itself", () => {
  test.each<[title: string, expected: string, rows: string]>([
    ["a row", "", "2 .. 6 mm: 1 mm  7 .. 8 N: 2 mm"],
    ["the first row", "", "2 .. 6 N: 1 mm  7 .. 8 mm: 2 mm"],
    ["what is expected", "1 .. 9 bar", "2 .. 6 mm: 1 mm  7 .. 8 mm: 2 mm"],
    ["a row that is none", "", "2 .. 6 mm: 1 mm  7 .. mm: 2 mm  9 .. 10 mm: 3 mm"],
  ])("%s", (_title, expected, rows) => {
    const choices = limitsAt(job(expected, rows), { damaged: true }).filter((one) => one.startsWith("choice"));
    expect(choices).toEqual([]);
  });
  test("the reading", () => {
    const text = job("", "2 .. 6 mm: 1 mm  7 .. 8 mm: 2 mm", "1 .. 2 mm").replace("by Gap", "by Gpa");
    expect(limitsAt(text, { damaged: true })).toEqual([]);
  });
});

describe("what a row leaves of the reading", () => {
  const left = (more: object) => ({
    ...{ kind: "choice", how: "remainder", reading: "Gap", chosen: "Shim" },
    ...more,
  });
  test.each<[title: string, expected: string, rows: string, leaving: string, facts: readonly object[]]>([
    [
      "too much at the upper end",
      "",
      "3 .. 4 mm: 2 mm",
      "1 .. 1.9 mm",
      [
        left({
          ...{ value: "2 mm", readings: "3 .. 4 mm", remainder: "1 .. 2 mm", limit: "1 .. 1.9 mm" },
          // 4 − 1.9 and 3 − 1 mm: no one value does for both ends.
          ...{ fitting: null, declaredAt: "1 .. 1.9 mm", span: "2 mm" },
        }),
      ],
    ],
    [
      "a value that would do is told",
      "",
      "3 .. 3.5 mm: 1 mm",
      "1 .. 2 mm",
      [
        left({
          ...{ value: "1 mm", readings: "3 .. 3.5 mm", remainder: "2.0 .. 2.5 mm", limit: "1 .. 2 mm" },
          // From 3.5 − 2 to 3 − 1 mm.
          ...{ fitting: "1.5 .. 2.0 mm", declaredAt: "1 .. 2 mm", span: "1 mm" },
        }),
      ],
    ],
    [
      "only as far as it is expected, and in the unit of what is to be left",
      "2.54 .. 5.08 mm",
      "at least 0 mm: 1.27 mm",
      "0.06 .. 0.15 in",
      [
        left({
          // 0.1 .. 0.2 in less 0.05 in.
          ...{
            value: "1.27 mm",
            readings: "2.54 .. 5.08 mm",
            remainder: expect.stringMatching(/^0\.050* \.\. 0\.150* in$/),
          },
          ...{ limit: "0.06 .. 0.15 in", declaredAt: "0.06 .. 0.15 in", span: "1.27 mm", fitting: null },
        }),
      ],
    ],
    ["by name", "", "3 .. 4 mm: Sheet", "1 .. 2 mm", []],
    ["a row in which nothing is expected", "3 .. 4 mm", "3 .. 4 mm: 2 mm  4.1 .. 9 mm: 9 mm", "1 .. 2 mm", []],
    ["to be left with one end only", "", "3 .. 4 mm: 2 mm", "at most 2 mm", []],
    ["nothing is to be left", "", "3 .. 4 mm: 9 mm", "", []],
    ["of another kind: told as that", "", "3 .. 4 mm: 2 N", "1 .. 1.5 mm", []],
    ["expected of another kind: told as that", "3 .. 4 bar", "3 .. 4 mm: 2 mm", "1 .. 1.5 mm", []],
    ["to be left of another kind: told as that", "", "3 .. 4 mm: 2 mm", "1 .. 1.5 N", []],
    ["a result that is not known", "", "3 .. 4 mm: Sheat", "1 .. 1.5 mm", []],
  ])("%s", (_title, expected, rows, leaving, facts) => {
    const found = limitFacts(job(expected, rows, leaving), { damaged: true });
    expect(found.filter((fact) => "how" in fact && fact.how === "remainder")).toEqual(facts);
  });

  test("how it came about, for each row with a value; a part has none", () => {
    const text = job("", "3 .. 4 mm: 2 mm  4 .. 5 mm: Thin  5 .. 6 mm: 4 mm", "0.5 .. 2 mm");
    const worked = workedOut(text);
    expect(worked).toHaveLength(2);
    expect(worked[0]).toMatch(/^2: Shim by Gap @ 2 mm: .* 1 \.\. 2 mm$/);
    expect(worked[1]).toMatch(/^2: Shim by Gap @ 4 mm: .* 1 \.\. 2 mm$/);
    expect(leftOut(text)).toEqual(["remainder | Shim | value | Thin @ 4 .. 5 mm: Thin"]);
    expect(leftOut(job("", "3 .. 4 mm: 2 mm", "0.5 .. 2 mm"))).toEqual([]);
  });
});

test("in a repeat, with the pass; for the choice that has it", () => {
  const text = `option Wide { yes no }
${job("", "2 .. 6 mm: 1 mm  7 .. 8 mm: 2 mm", "1 .. 9 mm")}`
    .replace("step choose", "when Wide is yes { repeat n from 1 to 2 { step choose")
    .replace(/\}\n\}$/, "} } }\n}");
  expect(limitFacts(text)).toMatchObject([
    { how: "gap", options: [{ Wide: "yes" }], pass: [{ variable: "n", value: 1 }], more: 1 },
  ]);
});
