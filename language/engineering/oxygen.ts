// What a liquefied gas does to the air of a room as it boils off. Knows no ventilation and no place within the room.
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, div, max, mul, ONE, rational, sub, ZERO } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import { type Given, input, point, positive, quantityOf, readInputs, termOf } from "./ends.ts";
import { type Computed, explained, refused } from "./explanation.ts";

/** Oxygen in dry air (practice). */
const IN_AIR = rational(209, 1000);

/**
 * The air that is needed for the oxygen to stay at a share of it, from `x = 20.9 %·(1 − Vg/Vr)` with Vg the gas: so
 * `Vr = V·e/(1 − x/20.9 %)` in m³. All that boils off is taken to stay and mix evenly; near the liquid there is less oxygen.
 * Entry into a room is never cleared by this (practice).
 */
export function airFor(liquid: Given, expands: Given, least: Given): Computed {
  const inputs = {
    volume: positive("liquid", "V", "volume", liquid),
    times: positive("gas from one part of liquid", "e", "ratio", expands),
    share: input("oxygen at least", "x", "ratio", least),
  };
  const read = readInputs(inputs);
  if (!read.ok) return read;
  const { volume, times, share } = read.value;
  if (cmp(share.high, IN_AIR) >= 0 || cmp(share.low, ZERO) < 0)
    return refused({ why: "outside", input: "oxygen at least", limits: SHARES });
  const air = div(mul(volume.high, times.high), sub(ONE, div(share.high, IN_AIR)));
  return explained({
    result: { name: "air for the gas", symbol: "Vr", value: quantityOf("volume", point(air), unitNamed("m³"), 3) },
    formula: "Vr = V·e/(1 − x/20.9 %)",
    inputs: [termOf(inputs.volume), termOf(inputs.times), termOf(inputs.share)],
    source: SOURCE,
    caution: CAUTION,
  });
}

/**
 * The oxygen left in a room: `x = 20.9 %·(1 − V·e/Vr)`, none where the gas fills it. The least of all bands: the most liquid, the
 * smallest room. All that boils off is taken to stay and mix evenly; near the liquid there is less oxygen. Entry into a room is
 * never cleared by this (practice).
 */
export function oxygenLeft(liquid: Given, expands: Given, room: Given): Computed {
  const inputs = {
    volume: positive("liquid", "V", "volume", liquid),
    times: positive("gas from one part of liquid", "e", "ratio", expands),
    air: positive("air of the room", "Vr", "volume", room),
  };
  const read = readInputs(inputs);
  if (!read.ok) return read;
  const { volume, times, air } = read.value;
  const share = mul(IN_AIR, max(ZERO, sub(ONE, div(mul(volume.high, times.high), air.low))));
  return explained({
    result: { name: "oxygen left", symbol: "x", value: quantityOf("ratio", point(share), unitNamed("%"), 3) },
    formula: "x = 20.9 %·(1 − V·e/Vr)",
    inputs: [termOf(inputs.volume), termOf(inputs.times), termOf(inputs.air)],
    source: SOURCE,
    caution: CAUTION,
  });
}

const SOURCE = "oxygen displaced by an even mixture (practice)";
const CAUTION = "Near the liquid and near the floor there is less oxygen; entry is never cleared by a computation.";

const SHARES: Quantity = quantityOf("ratio", { low: ZERO, nominal: null, high: IN_AIR }, unitNamed("%"));
