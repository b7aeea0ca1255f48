// Residual unbalance against sums done another way, and ISO 21940-11's permissible unbalance against worked examples.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Placed, permissibleUnbalance, residualUnbalance } from "#engineering/balance.ts";
import { show } from "#quantity/display.ts";
import { toNumber } from "#quantity/rational.ts";
import { answer, explanation, given, inUnit, refusal } from "./given.ts";

describe("the residual unbalance", () => {
  test("of equal masses all round, and of pairs across, is nothing", () => {
    for (const count of [2, 3, 7, 16, 60]) {
      const { computed, direction } = residualUnbalance(circle(count), placed(Array(count).fill(2.3)));
      expect(inUnit(computed, "g·mm"), `${count} places`).toBe(0);
      expect(direction).toBeNull();
    }
    const pairs = [2.3, 2.1, 2.4, 2.2, 2.3, 2.1, 2.4, 2.2];
    expect(inUnit(residualUnbalance(circle(8), placed(pairs)).computed, "g·mm")).toBe(0);
  });

  test("of one mass is that mass at its radius, where it stands", () => {
    const { computed, direction } = residualUnbalance(circle(16), [{ position: 5, weight: given("10 g", "mass") }]);
    expect(inUnit(computed, "g·mm")).toBeCloseTo(4200, 9);
    expect(direction).toBeCloseTo(4 / 16, 12);
  });

  test("of two masses a quarter turn apart is that of the right triangle: 3 and 4 make 5", () => {
    const parts = [
      { position: 1, weight: given("3 g", "mass") },
      { position: 2, weight: given("4 g", "mass") },
    ];
    const { computed, direction } = residualUnbalance(circle(4), parts);
    expect(inUnit(computed, "g·mm")).toBeCloseTo(2100, 9);
    expect(direction).toBeCloseTo(Math.atan2(4, 3) / (2 * Math.PI), 12);
    const { inputs } = explanation(computed);
    expect(inputs.map(({ symbol, value }) => `${symbol} ${show(value)}`)).toEqual(["r 420 mm", "m1 3 g", "m2 4 g"]);
  });

  test("of measured moments needs no radius", () => {
    const parts = [
      { position: 1, weight: given("600 g·mm", "mass moment") },
      { position: 3, weight: given("200 g·mm", "mass moment") },
    ];
    expect(inUnit(residualUnbalance({ count: 4, radius: null }, parts).computed, "g·mm")).toBeCloseTo(400, 9);
  });

  test("does not change when all are turned on or the numbering is reversed, and doubles with the radius", () => {
    const masses = fc.array(fc.integer({ min: 2000, max: 2600 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(masses, fc.nat({ max: 11 }), (grams, by) => {
        const count = grams.length;
        const at = (list: readonly number[], radius = "420 mm") =>
          inUnit(
            residualUnbalance({ count, radius: given(radius, "length") }, placed(list.map((g) => g / 1000))).computed,
            "g·mm",
          );
        const turned = grams.map((_, index) => grams[(index + by) % count] ?? 0);
        expect(at(turned)).toBeCloseTo(at(grams), 6);
        expect(at([...grams].reverse())).toBeCloseTo(at(grams), 6);
        expect(at(grams, "840 mm")).toBeCloseTo(2 * at(grams), 6);
      }),
    );
  });

  test("adding a like mass in every place changes nothing", () => {
    const masses = fc.array(fc.integer({ min: 1, max: 600 }), { minLength: 3, maxLength: 10 });
    fc.assert(
      fc.property(masses, (grams) => {
        const at = (add: number) =>
          inUnit(residualUnbalance(circle(grams.length), placed(grams.map((g) => (g + add) / 1000))).computed, "g·mm");
        expect(at(500)).toBeCloseTo(at(0), 5);
      }),
    );
  });

  test("is refused for two parts in one place, a place that is none, no radius, another kind", () => {
    const weight = given("2.3 kg", "mass");
    const refuse = (parts: readonly Placed[], count = 16) => refusal(residualUnbalance(circle(count), parts).computed);
    expect(
      refuse([
        { position: 1, weight },
        { position: 1, weight },
      ]),
    ).toEqual({ why: "not known", input: "position", given: "1" });
    for (const position of [0, 17, 1.5, Number.NaN]) expect(refuse([{ position, weight }]).why).toBe("not known");
    expect(refuse([], 0)).toMatchObject({ why: "not known", input: "places" });
    expect(refuse([{ position: 1, weight: given("2 N", "force") }]).why).toBe("wrong kind");
    expect(refusal(residualUnbalance({ count: 4, radius: null }, [{ position: 1, weight }]).computed)).toEqual({
      why: "missing",
      input: "radius",
    });
    expect(inUnit(residualUnbalance(circle(16), []).computed, "g·mm")).toBe(0);
  });
});

describe("the permissible unbalance", () => {
  test.each([
    // A tool maker's worked example of ISO 1940-1 (second): 2 kg, G6.3, 10 000 rpm: 12 g·mm.
    ["G6.3", "2 kg", "10000 rpm", 12.03],
    // ISO 21940-11, figure of specific unbalance (memory): G6.3 at 3000 rpm 20 µm, G2.5 at 3000 rpm 8 µm, G16 at 1500 rpm 102 µm.
    ["G 6.3", "1 kg", "3000 rpm", 20.05],
    ["G2.5", "1 kg", "3000 rpm", 7.96],
    ["16", "1 kg", "1500 rpm", 101.9],
    ["G40", "1 kg", "9549 rpm", 40.0],
  ])("of %s, %s at %s is %d g·mm", (grade, mass, speed, printed) => {
    const most = answer(permissibleUnbalance(grade, given(mass, "mass"), given(speed, "rotational speed"))).high;
    expect(most === null ? 0 : toNumber(most.base) * 1e6).toBeCloseTo(printed, 1);
  });

  test("comes with how it was computed, and of bands the safe ends count", () => {
    const at = (mass: string, speed: string) =>
      permissibleUnbalance("G6.3", given(mass, "mass"), given(speed, "rotational speed"));
    expect(show(answer(at("2 .. 3 kg", "8000 .. 10000 rpm")))).toBe(show(answer(at("2 kg", "10000 rpm"))));
    const { result, formula, inputs, source } = explanation(at("2 kg", "10000 rpm"));
    expect(show(result.value)).toBe("at most 12.0 g·mm");
    expect(formula).toBe("U = m·G/(2π·n)");
    expect(inputs.map(({ symbol, value }) => `${symbol} ${show(value)}`)).toEqual([
      "G 6.3 mm/s",
      "m 2 kg",
      "n 10000 rpm",
    ]);
    expect(source).toContain("ISO 21940-11");
  });

  test.each(["", "G", "6.2", "G6.30", "H6.3", "G6.3 at 3000"])("no grade is %o", (grade) => {
    const found = permissibleUnbalance(grade, given("2 kg", "mass"), given("3000 rpm", "rotational speed"));
    expect(refusal(found)).toEqual({ why: "not known", input: "balance grade", given: grade });
  });

  test("is none at no speed or without a mass", () => {
    expect(refusal(permissibleUnbalance("G16", given("2 kg", "mass"), given("0 rpm", "rotational speed"))).why).toBe(
      "not above zero",
    );
    expect(refusal(permissibleUnbalance("G16", given("2 kg", "mass"), given("50 Hz", "frequency"))).why).toBe(
      "wrong kind",
    );
  });
});

function circle(count: number) {
  return { count, radius: given("420 mm", "length") };
}

function placed(kilograms: readonly number[]): readonly Placed[] {
  return kilograms.map((mass, at) => ({ position: at + 1, weight: given(`${mass.toFixed(4)} kg`, "mass") }));
}
