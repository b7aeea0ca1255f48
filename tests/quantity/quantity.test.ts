// Bands of quantities and how two quantities compare.
import { describe, expect, test } from "vitest";
import type { Kind } from "#quantity/kind.ts";
import { band, overlaps, sameQuantity, within } from "#quantity/quantity.ts";
import { toNumber } from "#quantity/rational.ts";
import { quantity } from "./written.ts";

function ends(text: string, kind: Kind): (number | null)[] {
  const { low, high } = band(quantity(text, kind));
  return [low && toNumber(low), high && toNumber(high)];
}

describe("the band of a quantity", () => {
  test.each<[string, Kind, (number | null)[]]>([
    ["40 N·m", "torque", [40, 40]],
    ["38 .. 42 N·m", "torque", [38, 42]],
    ["40 ± 2 N·m", "torque", [38, 42]],
    ["40 N·m (39 .. 43 N·m)", "torque", [39, 43]],
    ["at least 2 kg", "mass", [2, null]],
    ["at most 2 kg", "mass", [null, 2]],
    ["20 ± 5 °C", "temperature", [288.15, 298.15]],
  ])("%s (%s) is %j", (text, kind, expected) => {
    expect(ends(text, kind)).toEqual(expected);
  });
});

describe("two quantities", () => {
  test.each<[string, string, Kind, boolean, boolean]>([
    ["40 N·m", "38 .. 42 N·m", "torque", true, true],
    ["38 .. 42 N·m", "38 .. 42 N·m", "torque", true, true],
    ["38 .. 43 N·m", "38 .. 42 N·m", "torque", false, true],
    ["43 .. 44 N·m", "38 .. 42 N·m", "torque", false, false],
    ["42 .. 44 N·m", "38 .. 42 N·m", "torque", false, true],
    ["350 lbf·in", "38 .. 42 N·m", "torque", true, true],
    ["at most 40 N·m", "at most 42 N·m", "torque", true, true],
    ["at least 40 N·m", "at most 42 N·m", "torque", false, true],
    ["at least 43 N·m", "at most 42 N·m", "torque", false, false],
    ["40 N·m", "at least 38 N·m", "torque", true, true],
    ["at least 80 °C", "at least 70 °C", "temperature", true, true],
    ["12 o'clock", "11 .. 1 o'clock", "clock position", true, false],
    ["6 o'clock", "11 .. 1 o'clock", "clock position", false, false],
    ["1 o'clock", "11 .. 1 o'clock", "clock position", true, false],
  ])("%s within %s (%s): %s; overlapping: %s", (inner, outer, kind, inside, touching) => {
    expect(within(quantity(inner, kind), quantity(outer, kind))).toBe(inside);
    if (kind !== "clock position") expect(overlaps(quantity(inner, kind), quantity(outer, kind))).toBe(touching);
  });

  test.each<[string, string, Kind, boolean]>([
    ["1 in", "25.4 mm", "length", true],
    ["100 cm", "1.00 m", "length", true],
    ["0 °C", "273.15 K", "temperature", true],
    ["32 °F", "0 °C", "temperature", true],
    ["40 ± 2 N·m", "40 N·m ± 5 %", "torque", true],
    ["40 ± 2 N·m", "38 .. 42 N·m", "torque", false],
    ["400 V AC", "400 V DC", "voltage", false],
    ["6 bar", "6 bar absolute", "pressure", false],
    ["1 mm", "1.001 mm", "length", false],
    ["at least 1 mm", "at most 1 mm", "length", false],
  ])("%s and %s (%s) say the same: %s", (a, b, kind, expected) => {
    expect(sameQuantity(quantity(a, kind), quantity(b, kind))).toBe(expected);
  });
});
