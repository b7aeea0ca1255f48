// Lifting by hand and by sling against published tables and worked examples; both sides of each limit.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Computed } from "#engineering/explanation.ts";
import { crewLimit, type HandLift, handLimit, slingLegLoad } from "#engineering/lifting.ts";
import { show } from "#quantity/display.ts";
import { toNumber } from "#quantity/rational.ts";
import { fromBase, unitNamed } from "#quantity/unit.ts";
import { answer, explanation, given, inUnit, refusal } from "./given.ts";

// NIOSH 94-110, tables 1 to 4, metric columns (memory): the multiplier, to two digits.
const multipliers = [
  ["H", "20 cm", 1.0],
  ["H", "25 cm", 1.0],
  ["H", "28 cm", 0.89],
  ["H", "30 cm", 0.83],
  ["H", "40 cm", 0.63],
  ["H", "50 cm", 0.5],
  ["H", "63 cm", 0.4],
  ["H", "63.1 cm", 0],
  ["V", "0 cm", 0.78],
  ["V", "30 cm", 0.87],
  ["V", "50 cm", 0.93],
  ["V", "75 cm", 1.0],
  ["V", "100 cm", 0.93],
  ["V", "150 cm", 0.78],
  ["V", "175 cm", 0.7],
  ["V", "175.1 cm", 0],
  ["D", "10 cm", 1.0],
  ["D", "25 cm", 1.0],
  ["D", "40 cm", 0.93],
  ["D", "55 cm", 0.9],
  ["D", "100 cm", 0.87],
  ["D", "175 cm", 0.85],
  ["D", "175.1 cm", 0],
  ["A", "0°", 1.0],
  ["A", "15°", 0.95],
  ["A", "30°", 0.9],
  ["A", "45°", 0.86],
  ["A", "60°", 0.81],
  ["A", "90°", 0.71],
  ["A", "120°", 0.62],
  ["A", "135°", 0.57],
  ["A", "135.1°", 0],
] as const;

describe("one person's limit", () => {
  test.each(multipliers)("by %s %s is %d of the ideal one", (which, value, printed) => {
    const limit = handLimit(given("100 kg", "mass"), lift({ [which]: value }));
    expect(Math.abs(most(limit, "kg") / 100 - printed)).toBeLessThanOrEqual(0.0051);
  });

  test("multiplies them: 23 kg at H 40, V 30, D 50 cm, A 45° (computed by hand)", () => {
    const limit = handLimit(given("23 kg", "mass"), lift({ H: "40 cm", V: "30 cm", D: "50 cm", A: "45°" }));
    expect(most(limit, "kg")).toBeCloseTo(23 * 0.625 * 0.865 * 0.91 * 0.856, 9);
    const { result, formula, inputs, source } = explanation(limit);
    expect(show(result.value)).toBe("at most 9.68 kg");
    expect(formula).toBe("m = LC·25/H·(1 − 0.003·|V − 75|)·(0.82 + 4.5/D)·(1 − 0.0032·A)");
    expect(inputs.map(({ symbol, value }) => `${symbol} ${show(value)}`)).toEqual([
      "LC 23 kg",
      "H 40 cm",
      "V 30 cm",
      "D 50 cm",
      "A 45°",
    ]);
    expect(source).toContain("NIOSH");
  });

  test("in inches and pounds is that of the customary table: 51 lb, H 15 in, V 15 in", () => {
    // HM 10/15 = 0.67, VM 1 − 0.0075·15 = 0.89 (NIOSH 94-110, customary form; memory).
    const limit = handLimit(given("51 lb", "mass"), lift({ H: "15 in", V: "15 in" }));
    // Its 10 in and 30 in stand for 25 and 75 cm: within 2.5 %.
    expect(Math.abs(most(limit, "lb") / (51 * 0.67 * 0.89) - 1)).toBeLessThan(0.025);
  });

  test("is the ideal one where nothing is said, and the worst end of a band counts", () => {
    expect(most(handLimit(given("23 kg", "mass"), lift({})), "kg")).toBe(23);
    expect(most(handLimit(given("23 kg", "mass"), lift({ H: "25 .. 50 cm" })), "kg")).toBe(11.5);
    expect(most(handLimit(given("100 kg", "mass"), lift({ V: "70 .. 100 cm" })), "kg")).toBeCloseTo(92.5, 9);
    expect(most(handLimit(given("at most 23 kg", "mass"), lift({})), "kg")).toBe(23);
  });

  test("never rises with reach, travel or twist", () => {
    const centimetres = fc.integer({ min: 0, max: 180 });
    fc.assert(
      fc.property(centimetres, centimetres, fc.integer({ min: 0, max: 170 }), (h, d, a) => {
        const at = (H: number, D: number, A: number) =>
          most(handLimit(given("23 kg", "mass"), lift({ H: `${H} cm`, D: `${D} cm`, A: `${A}°` })), "kg");
        expect(at(h + 1, d, a)).toBeLessThanOrEqual(at(h, d, a));
        expect(at(h, d + 1, a)).toBeLessThanOrEqual(at(h, d, a));
        expect(at(h, d, a + 1)).toBeLessThanOrEqual(at(h, d, a));
        expect(at(h, d, a)).toBeLessThanOrEqual(23);
      }),
    );
  });

  test("is none for a negative length, an open end or another kind", () => {
    expect(refusal(handLimit(given("23 kg", "mass"), lift({ H: "-1 cm" }))).why).toBe("outside");
    expect(refusal(handLimit(given("23 kg", "mass"), lift({ D: "at least 30 cm" }))).why).toBe("open end");
    expect(refusal(handLimit(given("23 kg", "mass"), lift({ A: "30 cm" }, "length"))).why).toBe("wrong kind");
    expect(refusal(handLimit(given("0 kg", "mass"), lift({}))).why).toBe("not above zero");
    expect(refusal(handLimit(given("230 N", "force"), lift({}))).why).toBe("wrong kind");
  });
});

// HSE guidance (read): two thirds of the sum for two, half for three and more. One person: 23 kg.
test.each([
  [1, 23, 23],
  [2, 46, 30.667],
  [3, 69, 34.5],
  [4, 92, 46],
])("a crew of %i may lift %d kg, with a warning from %d kg", (people, all, careful) => {
  expect(most(crewLimit(given("23 kg", "mass"), people, "sum"), "kg")).toBe(all);
  expect(most(crewLimit(given("23 kg", "mass"), people, "warning"), "kg")).toBeCloseTo(careful, 3);
});

test.each([0, -1, 1.5, Number.NaN])("no crew has %d people", (people) => {
  expect(refusal(crewLimit(given("23 kg", "mass"), people, "sum"))).toMatchObject({ why: "not known", input: "crew" });
});

describe("the load on a sling leg", () => {
  test.each([
    // ASME B30.9 (memory): 200 kg on two legs.
    ["200 kg", 2, "60°", 115.47],
    ["200 kg", 2, "45°", 141.42],
    ["200 kg", 2, "30°", 200],
    ["200 kg", 2, "90°", 100],
    ["200 kg", 4, "30°", 200],
    ["200 kg", 3, "90°", 100],
    ["200 kg", 1, "90°", 200],
    // A wire rope maker's worked example (second): 1000 lb at 60° and 45° put 577 and 707 lb on each of two legs.
    ["1000 lb", 2, "60°", 577.35],
    ["1000 lb", 2, "45°", 707.11],
    ["190 .. 200 kg", 2, "30 .. 40°", 200],
  ])("of %s on %i at %s is %d", (mass, legs, angle, load) => {
    const unit = mass.endsWith("lb") ? "lb" : "kg";
    expect(inUnit(slingLegLoad(given(mass, "mass"), legs, given(angle, "angle")), unit)).toBeCloseTo(load, 2);
  });

  test("is refused under 30°, above 90° and without legs", () => {
    const at = (angle: string, legs = 2) => refusal(slingLegLoad(given("200 kg", "mass"), legs, given(angle, "angle")));
    const outside = at("29.9°");
    expect(outside).toMatchObject({ why: "outside", input: "angle to the horizontal" });
    expect(outside.why === "outside" && show(outside.limits)).toBe("30 .. 90°");
    expect(at("29 .. 60°").why).toBe("outside");
    expect(at("90.1°").why).toBe("outside");
    expect(at("60°", 0)).toMatchObject({ why: "not known", input: "sling legs" });
    expect(at("60°", 2.5).why).toBe("not known");
  });

  test("grows as the sling lies flatter, and never lies under half the load", () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 89 }), fc.integer({ min: 2, max: 8 }), (degrees, legs) => {
        const at = (angle: number) =>
          inUnit(slingLegLoad(given("200 kg", "mass"), legs, given(`${angle}°`, "angle")), "kg");
        expect(at(degrees)).toBeGreaterThan(at(degrees + 1));
        expect(at(degrees + 1)).toBeGreaterThanOrEqual(100);
      }),
    );
  });
});

function lift(said: { H?: string; V?: string; D?: string; A?: string }, twist: "angle" | "length" = "angle"): HandLift {
  const length = (text: string | undefined) => (text === undefined ? null : given(text, "length"));
  return {
    horizontal: length(said.H),
    height: length(said.V),
    travel: length(said.D),
    twist: said.A === undefined ? null : given(said.A, twist),
  };
}

/** The end of an `at most`. */
function most(computed: Computed, unit: string): number {
  const { high, kind } = answer(computed);
  if (high === null) throw new Error("no upper end");
  return toNumber(fromBase(high.base, unitNamed(unit), kind));
}
