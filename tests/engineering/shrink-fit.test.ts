// Fits joined hot or cold, against textbook exercises and published data; the safe ends of bands; both sides of the limit.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Computed } from "#engineering/explanation.ts";
import {
  expansionHolds,
  highestInnerTemperature,
  leastClearance,
  leastGrowth,
  neededOuterTemperature,
  type ShrinkFit,
  temperatureAfter,
} from "#engineering/shrink-fit.ts";
import { show } from "#quantity/display.ts";
import { toNumber } from "#quantity/rational.ts";
import { answer, explanation, given, inUnit, refusal } from "./given.ts";

describe("the outer part's temperature", () => {
  test.each([
    // Sample of the design (computed): 60 mm, 36 + 15 µm, α 11.7.
    ["60 mm", "11 .. 36 µm", "15 µm", "11.7", "25 °C", 97.65],
    ["60 mm", "11 .. 36 µm", "15 µm", "11.7", "30 °C", 102.65],
    // Ring of 5.231 m over 5.243 m, α 1.20e-5, both at 27 °C: 218 °C (textbook exercise, read).
    ["5.231 m", "12 mm", "0 mm", "12.0", "27 °C", 218.2],
    // Flywheel 432.450–432.645 mm, ring gear 432.000–432.155 mm: touching at 147.6 °C from 20 °C (computed from read sizes).
    ["432 mm", "0.295 .. 0.645 mm", "0 mm", "11.7", "20 °C", 147.6],
  ])("for %s with %s and %s, α %s, mate at %s: %d °C", (diameter, interference, slip, alpha, inner, wanted) => {
    const needed = neededOuterTemperature(fitOf(diameter, interference, alpha), {
      inner: given(inner, "temperature"),
      slip: given(slip, "length"),
      loss: null,
    });
    expect(celsius(needed)).toBeCloseTo(wanted, 1);
  });

  test("is shown to a tenth, in the writer's unit, rounded to the safe side, with how it came about", () => {
    const needed = neededOuterTemperature(fitOf("60 mm", "11 .. 36 µm", "11.7"), {
      inner: given("15 .. 25 °C", "temperature"),
      slip: given("15 µm", "length"),
      loss: { rate: given("0.2 K/s", "temperature rate"), time: given("40 s", "time") },
    });
    const { result, formula, inputs, caution } = explanation(needed);
    // 97.649… and 8 K lost on the way; up, since less would jam.
    expect(show(result.value)).toBe("at least 105.7 °C");
    expect(formula).toBe("T0 = 20 °C + [(δ + s)/d + αi(Ti − 20 °C)]/αo + c·t");
    expect(inputs.map(({ symbol, value }) => `${symbol} ${show(value)}`)).toEqual([
      "d 60 mm",
      "δ 11 .. 36 µm",
      "αo 11.7 µm/(m·K)",
      "αi 11.7 µm/(m·K)",
      "s 15 µm",
      "Ti 15 .. 25 °C",
      "c 0.2 K/s",
      "t 40 s",
    ]);
    expect(caution).toContain("Measure part and mate");
    const fahrenheit = neededOuterTemperature(fitOf("60 mm", "36 µm", "11.7"), {
      inner: given("77 °F", "temperature"),
      slip: given("15 µm", "length"),
      loss: null,
    });
    expect(show(answer(fahrenheit))).toBe("at least 207.8 °F");
  });

  test("takes the ends of bands that ask for most", () => {
    const at = (alpha: string, inner: string) =>
      celsius(
        neededOuterTemperature(fitOf("60 mm", "36 µm", alpha, "10 .. 12"), {
          inner: given(inner, "temperature"),
          slip: given("15 µm", "length"),
          loss: null,
        }),
      );
    // By hand: 850 µm/m over 11, and the inner's 12 · 10 K or 10 · −10 K.
    expect(at("11 .. 12", "10 .. 30 °C")).toBeCloseTo(20 + (850 + 120) / 11, 6);
    expect(at("11 .. 12", "0 .. 10 °C")).toBeCloseTo(20 + (850 - 100) / 11, 6);
  });
});

describe("the inner part's temperature", () => {
  test("a shaft of 8.70 cm into 8.69 cm, α 1.20e-5, from 27 °C: −69 °C (textbook exercise, read; α assumed)", () => {
    const cold = highestInnerTemperature(fitOf("8.70 cm", "0.01 cm", "12.0"), {
      outer: given("27 °C", "temperature"),
      slip: given("0 mm", "length"),
    });
    expect(celsius(cold)).toBeCloseTo(-68.8, 1);
    expect(explanation(cold).caution).toContain("Below −50 °C");
  });

  test("that the mate of a heated ring may have is the one that its heat was computed for", () => {
    const sizes = fc.integer({ min: 10, max: 500 });
    const microns = fc.integer({ min: 1, max: 300 });
    fc.assert(
      fc.property(sizes, microns, microns, fc.integer({ min: -10, max: 40 }), (d, interference, slip, ambient) => {
        const fit = fitOf(`${d} mm`, `${interference} µm`, "11.7", "23");
        const inner = given(`${ambient} °C`, "temperature");
        const needed = neededOuterTemperature(fit, { inner, slip: given(`${slip} µm`, "length"), loss: null });
        const outer = { value: answer(needed) };
        const highest = highestInnerTemperature(fit, { outer, slip: given(`${slip} µm`, "length") });
        expect(celsius(highest)).toBeCloseTo(ambient, 9);
        // At just these temperatures exactly the slip clearance is left.
        expect(inUnit(leastClearance(fit, { outer, inner }), "µm")).toBeCloseTo(slip, 9);
      }),
    );
  });

  test("cannot lie below absolute zero", () => {
    const none = highestInnerTemperature(fitOf("10 mm", "1 mm", "11.7"), {
      outer: given("20 °C", "temperature"),
      slip: given("0 mm", "length"),
    });
    expect(refusal(none)).toEqual({ why: "not above zero", input: "temperature of the inner part" });
  });
});

describe("the least clearance", () => {
  test("of the flywheel's ring gear at 200 °C is 0.265 mm (computed from read sizes)", () => {
    const fit = fitOf("432 mm", "0.295 .. 0.645 mm", "11.7");
    const at = { outer: given("200 .. 230 °C", "temperature"), inner: given("20 °C", "temperature") };
    expect(inUnit(leastClearance(fit, at), "mm")).toBeCloseTo(0.265, 3);
    expect(show(answer(leastClearance(fit, at)))).toBe("265 µm");
  });

  test("is what the slip clearance is held against: on both sides of 15 µm", () => {
    const at = (outer: string) =>
      inUnit(
        leastClearance(fitOf("60 mm", "11 .. 36 µm", "11.7"), {
          outer: given(outer, "temperature"),
          inner: given("15 .. 25 °C", "temperature"),
        }),
        "µm",
      );
    expect(at("97.7 .. 112 °C")).toBeGreaterThan(15);
    expect(at("97.6 .. 112 °C")).toBeLessThan(15);
  });

  test("is the growth beyond the inner's, less the interference", () => {
    const fit = fitOf("60 mm", "11 .. 36 µm", "11.7");
    const at = { outer: given("100 °C", "temperature"), inner: given("30 °C", "temperature") };
    const growth = leastGrowth(fit, at);
    // By hand: 60 mm · 11.7e-6 · (80 − 10) K.
    expect(inUnit(growth, "µm")).toBeCloseTo(49.14, 9);
    expect(inUnit(growth, "µm") - inUnit(leastClearance(fit, at), "µm")).toBeCloseTo(36, 9);
    expect(explanation(growth).inputs.map(({ symbol }) => symbol)).toEqual(["d", "αo", "αi", "To", "Ti"]);
    expect(refusal(leastGrowth(fitOf("0 mm", "36 µm", "11.7"), at)).why).toBe("not above zero");
  });

  test("rises with the outer's heat and falls with the inner's", () => {
    const temperatures = fc.integer({ min: 21, max: 250 });
    fc.assert(
      fc.property(temperatures, fc.integer({ min: -40, max: 60 }), (outer, inner) => {
        const at = (o: number, i: number) =>
          inUnit(
            leastClearance(fitOf("100 mm", "40 µm", "11 .. 12", "18 .. 23"), {
              outer: given(`${o} °C`, "temperature"),
              inner: given(`${i} °C`, "temperature"),
            }),
            "µm",
          );
        expect(at(outer + 1, inner)).toBeGreaterThan(at(outer, inner));
        expect(at(outer, inner + 1)).toBeLessThan(at(outer, inner));
      }),
    );
  });

  test("takes the other part's expansion where one is not known, and says so", () => {
    const expansion = { outer: given("11.7 µm/(m·K)", "thermal expansion coefficient"), inner: null };
    const fit = { ...fitOf("60 mm", "36 µm", "11.7"), expansion };
    const at = { outer: given("100 °C", "temperature"), inner: given("20 °C", "temperature") };
    const clearance = leastClearance(fit, at);
    expect(inUnit(clearance, "µm")).toBeCloseTo(60 * 11.7e-3 * 80 - 36, 6);
    expect(explanation(clearance).inputs.find(({ symbol }) => symbol === "αi")?.source).toBe(
      "taken as the other part's",
    );
    const none = { ...fit, expansion: { outer: null, inner: null } };
    expect(refusal(leastClearance(none, at))).toEqual({ why: "missing", input: "expansion" });
  });

  test("needs only the ends that count", () => {
    const fit = fitOf("60 mm", "at most 36 µm", "11.7");
    const open = { outer: given("at least 100 °C", "temperature"), inner: given("at most 25 °C", "temperature") };
    expect(inUnit(leastClearance(fit, open), "µm")).toBeCloseTo(60 * 11.7e-3 * 75 - 36, 6);
    const other = { outer: given("at most 100 °C", "temperature"), inner: given("25 °C", "temperature") };
    expect(refusal(leastClearance(fit, other))).toEqual({
      why: "open end",
      input: "temperature of the outer part",
      end: "low",
    });
    expect(refusal(leastClearance(fitOf("60 mm", "at least 36 µm", "11.7"), open)).why).toBe("open end");
    expect(refusal(leastClearance(fitOf("0 mm", "36 µm", "11.7"), open)).why).toBe("not above zero");
    const kelvin = { outer: given("100 K", "temperature difference"), inner: given("25 °C", "temperature") };
    expect(refusal(leastClearance(fit, kelvin)).why).toBe("wrong kind");
  });
});

describe("the temperature after a time", () => {
  const cooled = (time: string) =>
    celsius(
      temperatureAfter(
        given("110 .. 120 °C", "temperature"),
        { rate: given("0.1 .. 0.2 K/s", "temperature rate"), time: given(time, "time") },
        given("20 °C", "temperature"),
      ),
    );

  test("falls in a straight line: 110 to 40 °C in 350 s (computed)", () => {
    expect(cooled("350 s")).toBeCloseTo(40, 9);
    expect(cooled("0 s")).toBeCloseTo(110, 9);
  });

  test("lies below Newton's law, which takes 677 s for the same: safe for a fit, not for a burn", () => {
    for (let seconds = 0; seconds <= 700; seconds += 50) {
      const newton = 20 + 90 * Math.exp((-0.2 / 90) * seconds);
      expect(cooled(`${seconds} s`)).toBeLessThanOrEqual(newton + 1e-9);
    }
    expect(20 + 90 * Math.exp((-0.2 / 90) * 677)).toBeCloseTo(40, 1);
  });

  test("does not fall below ambient", () => {
    expect(cooled("450 s")).toBeCloseTo(20, 9);
    expect(cooled("1 h")).toBeCloseTo(20, 9);
  });
});

test.each([
  ["-50 °C", true],
  ["-50.1 °C", false],
  ["-60 .. 20 °C", false],
  ["at most -80 °C", false],
  ["20 °C", true],
])("one coefficient holds at %s: %s", (temperature, holds) => {
  expect(expansionHolds(given(temperature, "temperature").value)).toBe(holds);
});

test.each([
  ["-190 °C", "-190 .. 20 °C", true],
  ["-190 °C", "-189 .. 20 °C", false],
  ["-190 °C", "20 .. 100 °C", false],
  ["-20 °C", "20 .. 100 °C", true],
])("at %s a mean for %s holds: %s", (temperature, range, holds) => {
  const [cold, mean] = [temperature, range].map((text) => given(text, "temperature").value);
  if (cold === undefined || mean === undefined) throw new Error("two temperatures are needed");
  expect(expansionHolds(cold, mean)).toBe(holds);
});

function fitOf(diameter: string, interference: string, outer: string, inner = outer): ShrinkFit {
  const coefficient = (text: string) => given(`${text} µm/(m·K)`, "thermal expansion coefficient");
  return {
    diameter: given(diameter, "length"),
    interference: given(interference, "length"),
    expansion: { outer: coefficient(outer), inner: coefficient(inner) },
  };
}

/** The end of a one-sided temperature in °C. */
function celsius(computed: Computed): number {
  const value = answer(computed);
  const end = value.low ?? value.high;
  if (end === null) throw new Error("no end");
  return toNumber(end.base) - 273.15;
}
