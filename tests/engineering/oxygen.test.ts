// Air that a boiling gas needs. 10 L of liquid nitrogen (694 times as much gas) in 60 m³ leave 18.5 % of oxygen (computed from
// 20.9 %·(1 − Vg/Vr), practice); nitrogen's ratio is from common tables (practice).
import { expect, test } from "vitest";
import { airFor, oxygenLeft } from "#engineering/oxygen.ts";
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

const left = (liquid: string, expands: string, room: string): number | string => {
  const result = oxygenLeft(given(liquid, "volume"), given(expands, "ratio"), given(room, "volume"));
  return result.ok ? 100 * toNumber(result.value.nominal?.base ?? { n: -1n, d: 1n }) : result.refusal.why;
};

// The design's own row: 10 L of liquid nitrogen in 60 m³ leave 18.5 % (computed); the others by the same formula, by hand.
test.each([
  ["10 L", "694", "60 m³", 18.48],
  ["10 L", "694", "120 m³", 19.69],
  ["9 .. 10 L", "690 .. 694", "60 .. 70 m³", 18.48],
  ["100 L", "694", "60 m³", 0],
])("%s that become %s times as much leave in %s %d %% of oxygen", (liquid, expands, room, share) => {
  expect(left(liquid, expands, room)).toBeCloseTo(share, 2);
});

test("no room, no answer", () => {
  expect(left("10 L", "694", "0 m³")).toBe("not above zero");
  expect(left("10 L", "694", "at least 60 m³")).toBe("open end");
});

test("more oxygen than there is in air cannot be kept", () => {
  expect(air("10 L", "694", "20.9 %")).toBe("outside");
  expect(air("10 L", "694", "21 %")).toBe("outside");
});
