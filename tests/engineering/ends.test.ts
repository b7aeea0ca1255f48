// Ends in and out of quantities: digits shown, forms, refusals, and cosines where they are exact.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cosine, sine } from "#engineering/cosine.ts";
import {
  difference,
  fromNumber,
  input,
  limitOf,
  point,
  positive,
  product,
  quantityOf,
  quotient,
  readInput,
  readInputs,
  rising,
  sum,
  unitBeside,
} from "#engineering/ends.ts";
import { show } from "#quantity/display.ts";
import { fromDecimal, type Rational, rational, toNumber } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import { answer, given, refusal } from "./given.ts";

describe("a quantity of computed ends", () => {
  test.each([
    ["40", "N·m", 4, "40 N·m"],
    ["39.13043478", "N·m", 4, "39.13 N·m"],
    ["225", "N·m", 3, "225 N·m"],
    ["12345.678", "N·m", 3, "12300 N·m"],
    ["0.00123456", "N·m", 3, "0.00123 N·m"],
    ["0", "N·m", 4, "0 N·m"],
    ["-1.23456", "N·m", 3, "-1.23 N·m"],
  ])("%s %s with %i digits reads %s", (value, unit, digits, text) => {
    expect(show(quantityOf("torque", point(exact(value)), unitNamed(unit), digits))).toBe(text);
  });

  test("is a range where its ends differ, with the nominal where there is one, each end inwards", () => {
    const unit = unitNamed("N·m");
    const ends = { low: exact("38.9486"), nominal: exact("39.1304"), high: exact("39.2347") };
    expect(show(quantityOf("torque", ends, unit))).toBe("39.13 N·m (38.95 .. 39.23 N·m)");
    expect(show(quantityOf("torque", { ...ends, nominal: null }, unit))).toBe("38.95 .. 39.23 N·m");
    expect(show(quantityOf("torque", { ...ends, low: ends.high, nominal: null }, unit))).toBe("39.23 N·m");
  });

  test("that is a temperature has tenths, in each scale; a limit is rounded to its safe side", () => {
    expect(show(quantityOf("temperature", point(exact("370.8")), unitNamed("°C")))).toBe("97.7 °C");
    expect(show(quantityOf("temperature", point(exact("370.8")), unitNamed("°F")))).toBe("207.8 °F");
    expect(show(limitOf("temperature", "at least", exact("370.81"), unitNamed("°C")))).toBe("at least 97.7 °C");
    expect(show(limitOf("temperature", "at most", exact("370.89"), unitNamed("°C")))).toBe("at most 97.7 °C");
    expect(show(limitOf("mass", "at most", exact("9.9999"), unitNamed("kg"), 3))).toBe("at most 9.99 kg");
  });

  test("stands in the unit of what it comes of, or in the usual one of that system", () => {
    const beside = (text: string) => unitBeside(given(text, "torque").value, "force", exact("20000")).text;
    expect([beside("40 N·m"), beside("400 lbf·in")]).toEqual(["kN", "lbf"]);
    expect(unitBeside(given("400 lbf·in", "torque").value, "torque", exact("40")).text).toBe("lbf·in");
  });
});

describe("an input", () => {
  const length = (text: string) => input("reach", "L", "length", given(text, "length"));

  test("gives the ends of each form, exact", () => {
    const mm = (n: number, d = 1) => rational(n, 1000 * d);
    expect(answer(readInput(length("40 mm")))).toEqual({ low: mm(40), nominal: mm(40), high: mm(40) });
    expect(answer(readInput(length("38 .. 42 mm")))).toEqual({ low: mm(38), nominal: null, high: mm(42) });
    expect(answer(readInput(length("40 ± 2 mm")))).toEqual({ low: mm(38), nominal: mm(40), high: mm(42) });
    expect(answer(readInput(length("40 mm (39 .. 43 mm)")))).toEqual({ low: mm(39), nominal: mm(40), high: mm(43) });
    expect(refusal(readInput(length("at least 40 mm")))).toEqual({ why: "open end", input: "reach", end: "high" });
    expect(refusal(readInput(length("at most 40 mm")))).toEqual({ why: "open end", input: "reach", end: "low" });
  });

  test("must be above zero where that is said: just above it does", () => {
    const above = (text: string) => readInput(positive("reach", "L", "length", given(text, "length")));
    expect(refusal(above("0 mm"))).toEqual({ why: "not above zero", input: "reach" });
    expect(refusal(above("0 .. 5 mm")).why).toBe("not above zero");
    expect(above("0.001 mm").ok).toBe(true);
    expect(readInput(length("0 mm")).ok).toBe(true);
  });

  test("of several, the first that does not serve is told", () => {
    const inputs = {
      a: length("1 mm"),
      b: length("at most 2 mm"),
      c: input("time", "t", "length", given("3 s", "time")),
    };
    expect(refusal(readInputs(inputs))).toEqual({ why: "open end", input: "reach", end: "low" });
    expect(refusal(readInputs({ c: inputs.c }))).toEqual({ why: "wrong kind", input: "time", wanted: "length" });
  });
});

test("sums, differences, products and quotients hold every pair of values in the bands", () => {
  const whole = fc.integer({ min: -50, max: 50 });
  const bands = fc
    .tuple(whole, fc.nat({ max: 20 }))
    .map(([low, width]) => ({ low: rational(low), nominal: rational(low), high: rational(low + width) }));
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(bands, bands, share, share, (a, b, s, t) => {
      const [x, y] = [inside(a, s), inside(b, t)];
      const cases = [
        [sum(a, b), x + y],
        [difference(a, b), x - y],
        [product(a, b), x * y],
        [quotient(a, b), x / y],
      ] as const;
      for (const [band, value] of cases) {
        if (band === null) continue;
        expect(value).toBeGreaterThanOrEqual(toNumber(band.low) - 1e-9);
        expect(value).toBeLessThanOrEqual(toNumber(band.high) + 1e-9);
      }
      expect(quotient(a, b) === null).toBe(toNumber(b.low) <= 0 && toNumber(b.high) >= 0);
      expect(sum(a, b).nominal).toEqual(sum(point(a.low), point(b.low)).low);
    }),
  );
});

describe("cosine and sine", () => {
  test.each([
    [0, "1"],
    [60, "0.5"],
    [90, "0"],
    [120, "-0.5"],
    [180, "-1"],
    [240, "-0.5"],
    [270, "0"],
    [300, "0.5"],
    [360, "1"],
    [-90, "0"],
    [450, "0"],
  ])("of %i° are exact: %s", (degrees, value) => {
    expect(cosine(point(rational(degrees, 360))).low).toEqual(exact(value));
    expect(sine(point(rational(degrees + 90, 360))).low).toEqual(exact(value));
  });

  test("of any angle are those of the machine", () => {
    fc.assert(
      fc.property(fc.integer({ min: -7200, max: 7200 }), (tenths) => {
        const turns = rational(tenths, 3600);
        expect(toNumber(cosine(point(turns)).low)).toBeCloseTo(Math.cos((tenths * Math.PI) / 1800), 12);
        expect(toNumber(sine(point(turns)).low)).toBeCloseTo(Math.sin((tenths * Math.PI) / 1800), 12);
      }),
    );
  });

  test("of a band hold every angle in it, up to 1 and down to −1", () => {
    const degrees = fc.tuple(
      fc.integer({ min: -400, max: 400 }),
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: 0, max: 100 }),
    );
    fc.assert(
      fc.property(degrees, ([from, width, percent]) => {
        const band = cosine({ low: rational(from, 360), nominal: null, high: rational(from + width, 360) });
        const value = Math.cos(((from + (width * percent) / 100) * Math.PI) / 180);
        expect(value).toBeGreaterThanOrEqual(toNumber(band.low) - 1e-12);
        expect(value).toBeLessThanOrEqual(toNumber(band.high) + 1e-12);
      }),
    );
  });
});

test("a number becomes a fraction with its first 16 digits; what is no number becomes none", () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, min: -1e300, max: 1e300 }), (value) => {
      const back = fromNumber(value);
      expect(back === null ? Number.NaN : toNumber(back) / (value === 0 ? 1 : value)).toBeCloseTo(
        value === 0 ? 0 : 1,
        12,
      );
    }),
  );
  expect([Number.NaN, Number.POSITIVE_INFINITY].map(fromNumber)).toEqual([null, null]);
  expect(rising(point(exact("2")), (x) => toNumber(x) ** 2)).toEqual(point(exact("4")));
  expect(rising(point(exact("2")), () => Number.NaN)).toBeNull();
});

function exact(text: string): Rational {
  const value = fromDecimal(text);
  if (value === null) throw new Error(text);
  return value;
}

function inside({ low, high }: { low: Rational; high: Rational }, share: number): number {
  return toNumber(low) + (toNumber(high) - toNumber(low)) * share;
}
