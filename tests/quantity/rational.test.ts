// Exact rational arithmetic: examples, and the laws of arithmetic as properties.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  abs,
  add,
  cmp,
  div,
  eq,
  floor,
  fromDecimal,
  isNegative,
  isZero,
  max,
  min,
  mul,
  neg,
  power,
  type Rational,
  rational,
  size,
  sub,
  tenTo,
  toNumber,
} from "#quantity/rational.ts";

const fractions = fc
  .tuple(fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n }), fc.bigInt({ min: 1n, max: 10n ** 20n }))
  .map(([n, d]) => rational(n, d));

function text(value: Rational): string {
  return `${value.n}/${value.d}`;
}

describe("a fraction", () => {
  test.each([
    [6, 4, "3/2"],
    [-6, 4, "-3/2"],
    [6, -4, "-3/2"],
    [-6, -4, "3/2"],
    [0, -7, "0/1"],
    [7, 1, "7/1"],
    [7, -1, "-7/1"],
  ])("%d over %d is in lowest terms with a positive denominator", (n, d, expected) => {
    expect(text(rational(n, d))).toBe(expected);
  });

  test("has no zero denominator", () => {
    expect(() => rational(1, 0)).toThrow(RangeError);
    expect(() => div(rational(1), rational(0))).toThrow(RangeError);
    expect(() => power(rational(0), -1)).toThrow(RangeError);
  });

  test.each([
    ["12", "12/1"],
    ["-0.5", "-1/2"],
    ["0.45359237", "45359237/100000000"],
    ["1.25e-6", "1/800000"],
    ["2E3", "2000/1"],
    ["2e+3", "2000/1"],
    ["007.50", "15/2"],
  ])("is read from %s", (decimal, expected) => {
    const value = fromDecimal(decimal);
    expect(value && text(value)).toBe(expected);
  });

  test.each(["", ".", "1.", ".5", "1,5", "+1", "1e", "x", "1 2", "1e99999"])("is not read from %j", (decimal) => {
    expect(fromDecimal(decimal)).toBeNull();
  });

  test.each([
    [7, 2, 3n],
    [-7, 2, -4n],
    [-8, 2, -4n],
    [0, 5, 0n],
  ])("%d/%d has the floor %s", (n, d, expected) => {
    expect(floor(rational(n, d))).toBe(expected);
  });

  test("is near its floating-point number, also beyond the range of its parts", () => {
    expect(toNumber(rational(1, 8))).toBe(0.125);
    expect(toNumber(rational(0))).toBe(0);
    expect(toNumber(rational(3n * 10n ** 400n, 10n ** 400n))).toBeCloseTo(3, 12);
    expect(toNumber(rational(1n, 3n * 10n ** 320n)) / 1e-320).toBeCloseTo(1 / 3, 2);
    expect(toNumber(rational(-5n * 10n ** 330n, 10n ** 330n))).toBeCloseTo(-5, 12);
  });
});

describe("arithmetic is that of the rational numbers", () => {
  test("a sum and a product are undone exactly", () => {
    fc.assert(
      fc.property(fractions, fractions, (a, b) => {
        expect(eq(sub(add(a, b), b), a)).toBe(true);
        if (!isZero(b)) expect(eq(div(mul(a, b), b), a)).toBe(true);
      }),
    );
  });

  test("a product spreads over a sum", () => {
    fc.assert(
      fc.property(fractions, fractions, fractions, (a, b, c) => {
        expect(eq(mul(a, add(b, c)), add(mul(a, b), mul(a, c)))).toBe(true);
      }),
    );
  });

  test("every result is in lowest terms, so that equal values have equal parts", () => {
    fc.assert(
      fc.property(fractions, fractions, (a, b) => {
        for (const result of [add(a, b), mul(a, b), neg(a), abs(a)]) {
          expect(result.d > 0n).toBe(true);
          expect(text(rational(result.n * 12n, result.d * 12n))).toBe(text(result));
        }
      }),
    );
  });

  test("order agrees with the sign of the difference, and with the smaller and the larger", () => {
    fc.assert(
      fc.property(fractions, fractions, (a, b) => {
        const difference = sub(a, b);
        expect(cmp(a, b)).toBe(isZero(difference) ? 0 : isNegative(difference) ? -1 : 1);
        expect(cmp(min(a, b), max(a, b))).toBeLessThanOrEqual(0);
        expect(eq(add(min(a, b), max(a, b)), add(a, b))).toBe(true);
      }),
    );
  });

  test("powers multiply", () => {
    fc.assert(
      fc.property(fractions, fc.integer({ min: -4, max: 4 }), (a, exponent) => {
        fc.pre(!isZero(a));
        expect(eq(mul(power(a, exponent), power(a, -exponent)), rational(1))).toBe(true);
      }),
    );
    expect(text(tenTo(-3))).toBe("1/1000");
    expect(text(tenTo(3))).toBe("1000/1");
  });

  test("size grows with the larger part", () => {
    expect(size(rational(1, 3))).toBeLessThan(size(rational(1n, 10n ** 40n)));
    expect(size(rational(10n ** 40n))).toBe(size(rational(-(10n ** 40n))));
  });
});
