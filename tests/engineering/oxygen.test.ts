// Air that a boiling gas needs. 10 L of liquid nitrogen (694 times as much gas) in 60 m³ leave 18.5 % of oxygen (computed from
// 20.9 %·(1 − Vg/Vr), practice); nitrogen's ratio is from common tables (practice).
import { expect, test } from "vitest";
import { airFor } from "#engineering/oxygen.ts";
import { band } from "#quantity/quantity.ts";
import { toNumber } from "#quantity/rational.ts";
import { given } from "./given.ts";

const air = (liquid: string, expands: string, least: string): number | string => {
  const result = airFor(given(liquid, "volume"), given(expands, "ratio"), given(least, "ratio"));
  const high = result.ok ? band(result.value).high : null;
  return result.ok ? toNumber(high ?? { n: 0n, d: 1n }) : result.refusal.why;
};

test.each([
  ["10 L", "694", "18.4826 %", 60],
  ["10 L", "694", "19.5 %", 6.94 / (1 - 19.5 / 20.9)],
  ["1 L", "694", "18 %", 0.694 / (1 - 18 / 20.9)],
])("%s that become %s times as much, for %s", (liquid, expands, least, wanted) => {
  expect(Number(air(liquid, expands, least)) / wanted).toBeCloseTo(1, 2);
});

test("more oxygen than there is in air cannot be kept", () => {
  expect(air("10 L", "694", "20.9 %")).toBe("outside");
  expect(air("10 L", "694", "21 %")).toBe("outside");
});
