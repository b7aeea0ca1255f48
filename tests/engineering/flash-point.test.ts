// Within 30 °F of a flash point: 29 CFR 1910.106(a)(19) (read), an interval of 16.7 K.
import { expect, test } from "vitest";
import { isNearFlashPoint, nearFlashPoint } from "#engineering/flash-point.ts";
import { rational, toNumber } from "#quantity/rational.ts";

const celsius = (tenths: number) => rational(27315 + 10 * tenths, 100);

test.each([
  [378, 210, false],
  [378, 211, true],
  [378, 378, true],
  [378, 500, true],
  [600, 432, false],
  [600, 433, true],
])("a flash point of %d and a liquid at %d, in tenths of °C", (flash, liquid, near) => {
  expect(isNearFlashPoint(celsius(liquid), celsius(flash))).toBe(near);
});

test("the warmest that is still far from it", () => {
  expect(toNumber(nearFlashPoint(celsius(621)))).toBeCloseTo(273.15 + 45.4, 9);
});
