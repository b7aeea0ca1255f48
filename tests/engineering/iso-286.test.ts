// ISO 286 limit deviations against tables that others print, and all of the tables against the standard's own formulas.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { interferenceByClasses, limitDeviations } from "#engineering/iso-286.ts";
import { show } from "#quantity/display.ts";
import { type Rational, rational, toNumber } from "#quantity/rational.ts";
import { answer, endsIn, explanation, given, refusal } from "./given.ts";

// Ends of the main steps in mm; IT6 and IT7 of ISO 286-1 (second), IT5 and IT8 to IT11 likewise.
const ends = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];
const printed: Readonly<Record<number, readonly number[]>> = {
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
};

describe("the standard tolerances", () => {
  test.each(Object.entries(printed))("IT%s, both sides of each step's end", (grade, widths) => {
    for (const [at, end] of ends.entries()) {
      expect(width(`H${grade}`, end), `to ${end} mm`).toBe(widths[at]);
      expect(width(`h${grade}`, end - 0.001), `just below ${end} mm`).toBe(widths[at]);
      expect(width(`H${grade}`, end + 0.001), `just above ${end} mm`).toBe(widths[at + 1] ?? null);
    }
  });

  // ISO 286-1's formula: i = 0.45·∛D + 0.001·D, D the geometric mean of the step's ends, rounded (memory).
  test.each([
    [5, 7],
    [6, 10],
    [7, 16],
    [8, 25],
    [9, 40],
    [10, 64],
    [11, 100],
  ])("IT%i is %i times the tolerance unit, rounded", (grade, units) => {
    for (const [at, end] of ends.entries()) {
      if (at === 0) continue; // To 3 mm the standard sets values of its own.
      const mean = Math.sqrt((ends[at - 1] ?? 1) * end);
      const unit = 0.45 * Math.cbrt(mean) + 0.001 * mean;
      const found = width(`H${grade}`, end) ?? Number.NaN;
      expect(Math.abs(found - units * unit), `to ${end} mm`).toBeLessThanOrEqual(Math.max(1, 0.06 * units * unit));
    }
  });
});

describe("shafts", () => {
  test.each([
    // Size, class, lower, upper; source.
    [50, "s6", 43, 59, "read"],
    [60, "s6", 53, 72, "memory"],
    [70, "s6", 59, 78, "memory"],
    [50, "g6", -25, -9, "memory"],
    [25, "f7", -41, -20, "memory"],
    [25, "k6", 2, 15, "memory"],
    [25, "k8", 0, 33, "memory"],
    [40, "p6", 26, 42, "memory"],
    [40, "h6", -16, 0, "memory"],
    [100, "js7", -17.5, 17.5, "memory"],
    [30, "j6", -4, 9, "memory"],
    [20, "d9", -117, -65, "memory"],
    [40, "c11", -280, -120, "memory"],
    [40, "n6", 17, 33, "memory"],
    [90, "r6", 51, 73, "memory"],
    [110, "u6", 144, 166, "memory"],
    [30, "t6", 41, 54, "memory"],
  ])("%d %s: %d to %d µm (%s)", (size, name, lower, upper) => {
    expect(deviations(name, size)).toEqual([lower, upper]);
  });

  test("have their sub-steps: s at 65 mm and just above it", () => {
    expect(deviations("s6", 65)?.[0]).toBe(53);
    expect(deviations("s6", 65.001)?.[0]).toBe(59);
    expect(deviations("m6", 65)).toEqual(deviations("m6", 65.001));
  });

  // The formulas behind the table (ISO 286-1, annex; memory), D the geometric mean of the step's ends, from the size
  // given on: below it the standard sets values of its own. The table is rounded: within 6 % or 2.5 µm of the formula.
  const steps = [
    3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
  ];
  const standard = (grade: number, end: number): number => width(`H${grade}`, end) ?? Number.NaN;
  const formulas: readonly (readonly [string, (d: number, end: number) => number, number])[] = [
    ["a", (d) => (d <= 120 ? 265 + 1.3 * d : 3.5 * d), 3],
    ["b", (d) => (d <= 160 ? 140 + 0.85 * d : 1.8 * d), 3],
    ["c", (d) => 95 + 0.8 * d, 40],
    ["d", (d) => 16 * d ** 0.44, 3],
    ["e", (d) => 11 * d ** 0.41, 3],
    ["f", (d) => 5.5 * d ** 0.41, 3],
    ["g", (d) => 2.5 * d ** 0.34, 3],
    ["m", (_, end) => standard(7, end) - standard(6, end), 3],
    ["n", (d) => 5 * d ** 0.34, 3],
    ["p", (_, end) => standard(7, end) + 2.5, 3],
    ["s", (d, end) => (end <= 50 ? standard(8, end) + 2.5 : standard(7, end) + 0.4 * d), 3],
    ["t", (d, end) => standard(7, end) + 0.63 * d, 30],
    ["u", (d, end) => standard(7, end) + d, 18],
    ["v", (d, end) => standard(7, end) + 1.25 * d, 18],
    ["x", (d, end) => standard(7, end) + 1.6 * d, 18],
    ["y", (d, end) => standard(7, end) + 2 * d, 18],
    ["z", (d, end) => standard(7, end) + 2.5 * d, 18],
    ["za", (d, end) => standard(8, end) + 3.15 * d, 18],
    ["zb", (d, end) => standard(9, end) + 4 * d, 18],
    ["zc", (d, end) => standard(10, end) + 5 * d, 18],
  ];
  let compared = 0;
  test.each(formulas)("of letter %s follow the standard's formula", (letter, formula, from) => {
    const coarse = /^[defgmnp]$/.test(letter);
    for (const end of (coarse ? ends : steps).filter((one) => one > from)) {
      const all = coarse ? ends : steps;
      const mean = Math.sqrt((all[all.indexOf(end) - 1] ?? 1) * end);
      const [lower = Number.NaN, upper = Number.NaN] = deviations(`${letter}7`, end) ?? [];
      const found = letter < "h" ? -upper : lower;
      const expected = formula(mean, end);
      expect(Math.abs(found - expected), `${letter} to ${end} mm: ${found}, ${expected}`).toBeLessThanOrEqual(
        Math.max(2.5, 0.06 * expected),
      );
      compared++;
    }
  });

  test("of r lie at the geometric mean of p and s", () => {
    for (const end of steps) {
      const at = (letter: string): number => deviations(`${letter}6`, end)?.[0] ?? Number.NaN;
      expect(Math.abs(at("r") - Math.sqrt(at("p") * at("s"))), `to ${end} mm`).toBeLessThanOrEqual(1.5);
    }
  });

  test("compares many deviations", () => {
    console.log(`fundamental deviations compared with formulas: ${compared}`);
    expect(compared).toBeGreaterThan(300);
  });
});

describe("holes", () => {
  test.each([
    [50, "H7", 0, 25, "read"],
    [50, "F8", 25, 64, "memory"],
    [50, "G7", 9, 34, "memory"],
    [25, "D10", 65, 149, "memory"],
    [50, "JS7", -12.5, 12.5, "memory"],
    [50, "J7", -11, 14, "memory"],
    [50, "K7", -18, 7, "memory"],
    [50, "K6", -13, 3, "memory"],
    [50, "M7", -25, 0, "memory"],
    [50, "K8", -27, 12, "memory"],
    [50, "M8", -34, 5, "memory"],
    [50, "N8", -42, -3, "memory"],
    [50, "N7", -33, -8, "memory"],
    [50, "N9", -62, 0, "memory"],
    [50, "P7", -42, -17, "memory"],
    [50, "P9", -88, -26, "memory"],
    [60, "R7", -60, -30, "memory"],
    [60, "S7", -72, -42, "memory"],
    [30, "T7", -54, -33, "memory"],
    [280, "M6", -41, -9, "memory: the standard's one exception"],
    [2, "K7", -10, 0, "memory"],
    [2, "N9", -29, -4, "memory"],
    [2, "P7", -16, -6, "memory"],
    [8, "J6", -4, 5, "memory"],
  ])("%d %s: %d to %d µm (%s)", (size, name, lower, upper) => {
    expect(deviations(name, size)).toEqual([lower, upper]);
  });
});

describe("nothing is known", () => {
  test.each([
    [500.001, "H7"],
    [0, "H7"],
    [50, "H12"],
    [50, "H4"],
    [50, "i6"],
    [50, "l6"],
    [50, "7H"],
    [50, "Hs7"],
    [50, "j8"],
    [24, "t6"],
    [14, "v6"],
    [18, "y6"],
    [10.001, "cd9"],
    [1, "a11"],
    [50, "K9"],
    [50, ""],
    [50, "constructor6"],
  ])("of %d %s", (size, name) => {
    expect(deviations(name, size)).toBeNull();
  });

  test("and just inside there is", () => {
    for (const [size, name] of [
      [24.001, "t6"],
      [14.001, "v6"],
      [18.001, "y6"],
      [10, "cd9"],
      [1.001, "a11"],
      [500, "H7"],
    ] as const) {
      expect(deviations(name, size), `${size} ${name}`).not.toBeNull();
    }
  });
});

describe("a fit", () => {
  test("50 H7/s6 has 18 to 59 µm of interference (read)", () => {
    const fit = interferenceByClasses("H7/s6", given("50 mm", "length"));
    expect(show(answer(fit))).toBe("18 .. 59 µm");
    expect(explanation(fit).inputs.map(({ symbol, value }) => `${symbol} ${show(value)}`)).toEqual([
      "d 50 mm",
      "EI .. ES 0 .. 25 µm",
      "ei .. es 43 .. 59 µm",
    ]);
  });

  test.each([
    ["60 mm", "H7/s6", 23, 72, "memory"],
    ["70 mm", "H7/s6", 29, 78, "memory"],
    ["50 mm", "H7/p6", 1, 42, "memory"],
    ["3 mm", "H7/r6", 0, 16, "memory"],
    ["50 mm", "H7/h6", -41, 0, "memory"],
    ["50 mm", "H7/g6", -50, -9, "memory"],
    ["50 mm", "S7/h6", 18, 59, "memory"],
    ["2 in", "H7/s6", 23, 72, "memory: 50.8 mm"],
  ])("%s %s: %d to %d µm (%s)", (diameter, text, low, high) => {
    const [least, most] = endsIn(interferenceByClasses(text, given(diameter, "length")), "µm");
    expect(least).toBeCloseTo(low, 9);
    expect(most).toBeCloseTo(high, 9);
  });

  test("is read with blanks, and in thousandths beside inches", () => {
    expect(show(answer(interferenceByClasses(" H7 / s6 ", given("2 in", "length"))))).toMatch(/thou$/);
  });

  test.each(["", "H7", "s6/H7", "h7/s6", "H7/S6", "H7/s6/k6", "H77/s6", "H7//s6"])("%o is not known", (text) => {
    expect(refusal(interferenceByClasses(text, given("50 mm", "length")))).toEqual({
      why: "not known",
      input: "tolerance",
      given: text,
    });
  });

  test("wants a diameter", () => {
    expect(refusal(interferenceByClasses("H7/s6", given("0 mm", "length"))).why).toBe("not above zero");
    expect(refusal(interferenceByClasses("H7/s6", given("50 kg", "mass"))).why).toBe("wrong kind");
    expect(refusal(interferenceByClasses("H7/s6", given("50 .. 60 mm", "length"))).why).toBe("missing");
  });
});

test("every class is as wide as its grade, and a hole mirrors the shaft up to H", () => {
  const letters = fc.constantFrom(
    "a",
    "b",
    "c",
    "d",
    "e",
    "f",
    "g",
    "h",
    "js",
    "k",
    "m",
    "n",
    "p",
    "r",
    "s",
    "t",
    "u",
    "v",
    "x",
    "y",
    "z",
    "za",
    "zb",
    "zc",
  );
  fc.assert(
    fc.property(
      letters,
      fc.integer({ min: 5, max: 11 }),
      fc.integer({ min: 1001, max: 500_000 }),
      (letter, grade, micrometres) => {
        const size = micrometres / 1000;
        for (const name of [`${letter}${grade}`, `${letter.toUpperCase()}${grade}`]) {
          const found = deviations(name, size);
          if (found !== null) expect(found[1] - found[0]).toBe(width(`H${grade}`, size));
        }
        const [shaft, hole] = [
          deviations(`${letter}${grade}`, size),
          deviations(`${letter.toUpperCase()}${grade}`, size),
        ];
        if (shaft !== null && letter <= "h") expect(hole?.[0]).toBe(shaft[1] === 0 ? 0 : -shaft[1]);
      },
    ),
  );
});

function deviations(name: string, millimetres: number): readonly [number, number] | null {
  const found = limitDeviations(name, metres(millimetres));
  return (
    found &&
    ([toNumber(found.lower) * 1e6, toNumber(found.upper) * 1e6].map((x) => Math.round(x * 1e6) / 1e6) as [
      number,
      number,
    ])
  );
}

function width(name: string, millimetres: number): number | null {
  const found = deviations(name, millimetres);
  return found && found[1] - found[0];
}

function metres(millimetres: number): Rational {
  return rational(Math.round(millimetres * 1000), 1_000_000);
}
