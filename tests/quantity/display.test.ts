// Rounding and display: published conversions, and that a rounded band never leaves the band it must keep.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Role, roundedEnds, show, showBoth, showIn } from "#quantity/display.ts";
import { evaluate } from "#quantity/expression.ts";
import type { Kind } from "#quantity/kind.ts";
import { lastDigit } from "#quantity/number-text.ts";
import { band, type Quantity } from "#quantity/quantity.ts";
import { cmp, eq, fromDecimal, rational, sub, tenTo } from "#quantity/rational.ts";
import { decimal, powerNotAbove, roundTo } from "#quantity/rounding.ts";
import { toBase, unitNamed } from "#quantity/unit.ts";
import { evaluateText, quantity } from "./written.ts";

const fractions = fc
  .tuple(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), fc.bigInt({ min: 1n, max: 10n ** 9n }))
  .map(([n, d]) => rational(n, d));

describe("rounding", () => {
  test.each<[string, number, "down" | "up" | "nearest", string]>([
    ["2.5", 0, "nearest", "3"],
    ["-2.5", 0, "nearest", "-3"],
    ["2.49", 0, "nearest", "2"],
    ["-2.5", 0, "down", "-3"],
    ["-2.5", 0, "up", "-2"],
    ["2.01", 0, "up", "3"],
    ["2.99", 0, "down", "2"],
    ["1234", 2, "nearest", "1200"],
    ["0.125", -2, "up", "0.13"],
    ["0.0004", -3, "nearest", "0.000"],
    ["-0.0004", -3, "nearest", "0.000"],
  ])("%s to 10^%d, %s, is %s", (value, digit, side, expected) => {
    expect(decimal(roundTo(fromDecimal(value) ?? rational(0), digit, side), digit)).toBe(expected);
  });

  test("keeps to its side, and within one step", () => {
    fc.assert(
      fc.property(fractions, fc.integer({ min: -6, max: 6 }), (value, digit) => {
        const [down, near, up] = (["down", "nearest", "up"] as const).map((side) => roundTo(value, digit, side));
        if (!down || !near || !up) throw new Error("three sides");
        expect(cmp(down, value)).toBeLessThanOrEqual(0);
        expect(cmp(up, value)).toBeGreaterThanOrEqual(0);
        expect(cmp(sub(up, down), tenTo(digit))).toBeLessThanOrEqual(0);
        expect(eq(near, down) || eq(near, up)).toBe(true);
        expect(eq(roundTo(down, digit, "up"), down)).toBe(true);
      }),
    );
  });

  test("the largest power of ten not above a value", () => {
    fc.assert(
      fc.property(fractions, (value) => {
        fc.pre(value.n > 0n);
        const digit = powerNotAbove(value);
        expect(cmp(tenTo(digit), value)).toBeLessThanOrEqual(0);
        expect(cmp(tenTo(digit + 1), value)).toBe(1);
      }),
    );
    expect(powerNotAbove(rational(0))).toBe(0);
  });

  test("a decimal reads back as its value", () => {
    fc.assert(
      fc.property(fractions, fc.integer({ min: -6, max: 3 }), (value, digit) => {
        const rounded = roundTo(value, digit, "nearest");
        const back = fromDecimal(decimal(rounded, digit));
        expect(back && eq(back, rounded)).toBe(true);
      }),
    );
  });

  test("the last digit needed", () => {
    expect(lastDigit(rational(3, 8), -6)).toBe(-3);
    expect(lastDigit(rational(1, 3), -4)).toBe(-4);
    expect(lastDigit(rational(120), -4)).toBe(0);
  });
});

describe("a quantity in another unit", () => {
  test.each<[string, Kind, string, Role, string, string]>([
    ["36 ft", "length", "m", "nominal", "11.0 m", "NIST SP 811 B.7.2 (second)"],
    [
      "11 ± 0.3 mm",
      "length",
      "in",
      "must be met",
      "0.433 in (0.422 .. 0.444 in)",
      "SP 811 B.7 rule read, pair computed",
    ],
    ["30 °F", "temperature difference", "K", "nominal", "16.7 K", "29 CFR 1910.106 (read)"],
    ["250 °F", "temperature", "°C", "nominal", "121.1 °C", "29 CFR 1910.106 (read)"],
    [
      "140 .. 160 lbf·ft",
      "torque",
      "N·m",
      "must be met",
      "190 .. 216 N·m",
      "engineering.md: printed 190–217 leaves the band (read)",
    ],
    ["140 .. 160 lbf·ft", "torque", "N·m", "occurs", "189 .. 217 N·m", "the other side of it"],
    ["300 lbf·ft", "torque", "N·m", "nominal", "407 N·m", "engineering.md: 406.75, that manual prints 408 (read)"],
    ["300 lbf·ft", "torque", "N·m", "at most safe", "406 N·m", "the same, never above"],
    ["11 .. 36 µm", "length", "in", "occurs", "0.00043 .. 0.00142 in", "computed"],
    ["11 .. 36 µm", "length", "in", "must be met", "0.00044 .. 0.00141 in", "computed"],
    ["250 kg", "mass", "lb", "at most safe", "551 lb", "a capacity, 551.16; computed"],
    ["64 kg", "mass", "lb", "at least safe", "142 lb", "a load, 141.1; computed"],
    ["at most 120 °C", "temperature", "°F", "must be met", "at most 248 °F", "computed"],
    ["at most 121 °C", "temperature", "°F", "must be met", "at most 249 °F", "249.8; computed"],
    ["at least 121 °C", "temperature", "°F", "must be met", "at least 250 °F", "249.8; computed"],
    ["45 ± 2 N·m", "torque", "N·m", "must be met", "45 N·m (43 .. 47 N·m)", "the same unit"],
    ["1.00 .. 1.01 mm", "length", "in", "must be met", "0.0394 .. 0.0397 in", "computed"],
    ["0.44 .. 0.45 mm", "length", "in", "must be met", "0.0174 .. 0.0177 in", "digits as given are enough; computed"],
    ["10 .. 11 mm", "length", "ft", "must be met", "0.033 .. 0.036 ft", "computed"],
    ["7 .. 8 K", "temperature difference", "°F", "must be met", "13 .. 14 °F", "12.6 and 14.4; computed"],
    ["40 N·m", "torque", "bar", "nominal", "40 N·m", "a unit of another kind is not used"],
    ["6 bar absolute", "pressure", "psi", "nominal", "90 psi absolute", "computed"],
    ["3/8 in", "length", "mm", "nominal", "9.53 mm", "computed"],
  ])("%s (%s) in %s, %s, is %s (%s)", (text, kind, unit, role, expected) => {
    expect(showIn(quantity(text, kind), unitNamed(unit), role)).toBe(expected);
  });

  test.each<[string, Kind, Role, string]>([
    ["45 ± 2 N·m", "torque", "must be met", "45 ± 2 N·m (31.8 .. 34.6 lbf·ft)"],
    ["8 .. 12 lbf·in", "torque", "must be met", "8 .. 12 lbf·in (1.0 .. 1.3 N·m)"],
    ["36 ft", "length", "nominal", "36 ft (11.0 m)"],
    ["60 mm", "length", "nominal", "60 mm (2.36 in)"],
    ["110 .. 120 °C", "temperature", "must be met", "110 .. 120 °C (230 .. 248 °F)"],
    ["20 K", "temperature difference", "nominal", "20 K (36 °F)"],
    ["2.3 kg", "mass", "at least safe", "2.3 kg (5.1 lb)"],
    ["11.7 µm/(m·K)", "thermal expansion coefficient", "nominal", "11.7 µm/(m·K) (6.50 µin/(in·°F))"],
    ["40 N·m (39 .. 43 N·m)", "torque", "must be met", "40 N·m (39 .. 43 N·m) (28.8 .. 31.7 lbf·ft)"],
    // A room, and a container: NIST SP 811 B.8, 1 ft³ = 2.831 685 E-02 m³ and 1 gal (US) = 3.785 412 L.
    ["60 m³", "volume", "nominal", "60 m³ (2120 ft³)"],
    ["60 m³", "volume", "at most safe", "60 m³ (2110 ft³)"],
    ["2000 ft³", "volume", "nominal", "2000 ft³ (56.63 m³)"],
    ["1000 L", "volume", "nominal", "1000 L (264.2 galUS)"],
    ["55 galUS", "volume", "nominal", "55 galUS (208 L)"],
    ["400 V AC", "voltage", "nominal", "400 V AC"],
    ["90 s", "time", "must be met", "90 s"],
    ["90 ± 5°", "angle", "must be met", "90 ± 5°"],
    ["12 %", "ratio", "nominal", "12 %"],
    ["100 cP", "dynamic viscosity", "nominal", "100 cP"],
  ])("%s (%s, %s) in both systems is %s", (text, kind, role, expected) => {
    expect(showBoth(quantity(text, kind), role)).toBe(expected);
  });

  // Each is a band, its low end before its high end, in a unit a shop uses.
  const bands = fc
    .tuple(
      fc.constantFrom<[Kind, string, string]>(
        ["torque", "N·m", "lbf·in"],
        ["torque", "lbf·ft", "N·m"],
        ["length", "mm", "in"],
        ["length", "in", "mm"],
        ["temperature", "°C", "°F"],
        ["temperature", "°F", "°C"],
        ["pressure", "bar", "psi"],
        ["mass", "kg", "lb"],
        ["angle", "°", "rad"],
      ),
      fc.integer({ min: 1, max: 99_999 }),
      fc.integer({ min: 1, max: 9_999 }),
      fc.integer({ min: 0, max: 4 }),
    )
    .map(([[kind, unit, other], low, width, places]) => {
      const number = (n: number) => decimal(rational(n, 10 ** places), -places);
      const written = evaluateText(`${number(low)} .. ${number(low + width)} ${unit}`, kind).quantity;
      if (written === null) throw new Error("a band");
      return { written, other: unitNamed(other) };
    });

  /** The shown band, in coherent units. */
  function shownBand(q: Quantity, unit: ReturnType<typeof unitNamed>, role: Role) {
    const { low, high } = roundedEnds(q, unit, role);
    if (low === null || high === null) throw new Error("a band");
    return { low: toBase(low.value, unit, q.kind), high: toBase(high.value, unit, q.kind) };
  }

  test("a band to be met never leaves the band, and is never empty", () => {
    fc.assert(
      fc.property(bands, ({ written, other }) => {
        const shown = shownBand(written, other, "must be met");
        const exact = band(written);
        expect(exact.low && cmp(shown.low, exact.low)).toBeGreaterThanOrEqual(0);
        expect(exact.high && cmp(shown.high, exact.high)).toBeLessThanOrEqual(0);
        expect(cmp(shown.low, shown.high)).toBeLessThanOrEqual(0);
      }),
    );
  });

  test("a band that occurs covers the band; the safe sides are never passed", () => {
    fc.assert(
      fc.property(bands, ({ written, other }) => {
        const exact = band(written);
        const outer = shownBand(written, other, "occurs");
        expect(exact.low && cmp(outer.low, exact.low)).toBeLessThanOrEqual(0);
        expect(exact.high && cmp(outer.high, exact.high)).toBeGreaterThanOrEqual(0);
        const load = shownBand(written, other, "at least safe");
        expect(exact.high && cmp(load.high, exact.high)).toBeGreaterThanOrEqual(0);
        const capacity = shownBand(written, other, "at most safe");
        expect(exact.low && cmp(capacity.low, exact.low)).toBeLessThanOrEqual(0);
      }),
    );
  });

  test("a band that no decimal lies in is still shown, to the nearest", () => {
    const point = evaluate(
      {
        form: "range",
        low: { op: "literal", number: "1", unit: "mm", at: 0, unitAt: 0 },
        high: { op: "literal", number: "1", unit: "mm", at: 0, unitAt: 0 },
        at: 0,
      },
      "length",
    ).quantity;
    expect(point && showIn(point, unitNamed("in"), "must be met")).toMatch(
      /^0\.0393700787\d* \.\. 0\.0393700787\d* in$/,
    );
  });
});

describe("a quantity as its writer wrote it", () => {
  test("reads back as the same quantity", () => {
    const numbers = fc
      .tuple(fc.nat(9999), fc.integer({ min: 0, max: 3 }))
      .map(([n, places]) => decimal(rational(n, 10 ** places), -places));
    const units = fc.constantFrom<[string, Kind]>(
      ["N·m", "torque"],
      ["°C", "temperature"],
      ["in", "length"],
      ["%", "ratio"],
      ["°", "angle"],
      ["V AC", "voltage"],
    );
    const forms = fc.constantFrom("A U", "at least A U", "at most A U", "A .. B U", "A ± B U", "-A U");
    fc.assert(
      fc.property(forms, numbers, numbers, units, (form, a, b, [unit, kind]) => {
        const text = form.replace("A", a).replace("B", b).replace("U", unit);
        const { quantity: first } = evaluateText(text, kind);
        fc.pre(first !== null);
        const second = first && evaluateText(show(first), kind).quantity;
        expect(second && show(second)).toBe(first && show(first));
        expect(second && band(second)).toEqual(first && band(first));
      }),
    );
  });
});
