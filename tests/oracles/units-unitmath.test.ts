// Against unitmath, a library of physical units with definitions of its own.

import unitmath from "unitmath";
import { expect, test } from "vitest";
import { rational, toNumber } from "#quantity/rational.ts";
import { fromBase, toBase, unitNamed } from "#quantity/unit.ts";
import { compareFactors, type Dialect, type Pair, pairsFor, prefixes, translated } from "./unit-comparison.ts";

const DIALECT: Dialect = {
  names: {
    in: "inch",
    ft: "foot",
    yd: "yard",
    mi: "mile",
    mil: "mil",
    thou: "mil",
    galUS: "gallon",
    qtUS: "quart",
    ptUS: "pint",
    flozUS: "fluidounce",
    lb: "poundmass",
    oz: "ounce",
    gr: "grain",
    tonUS: "ton",
    t: "tonne",
    min: "min",
    h: "h",
    d: "day",
    "°C": "K",
    "°F": "degR",
    "°R": "degR",
    turn: "cycle",
    "°": "deg",
    "′": "arcmin",
    "″": "arcsec",
    gon: "grad",
    rad: "rad",
    lbf: "lbf",
    kip: "kip",
    dyn: "dyn",
    Btu: "BTU",
    VA: "VA",
    hp: "hp",
    psi: "psi",
    atm: "atm",
    Torr: "torr",
    mmHg: "mmHg",
    inH2O: "inH2O",
    Ω: "ohm",
    rpm: "cycle / minute",
    bar: "bar",
    L: "L",
    g: "g",
    m: "m",
    s: "s",
    K: "K",
    N: "N",
    J: "J",
    W: "W",
    Pa: "Pa",
    V: "V",
    A: "A",
    F: "F",
    Hz: "Hz",
    mrad: "mrad",
    µrad: "urad",
  },
  prefixes: prefixes("u"),
  prefixed: ["m", "g", "s", "N", "J", "W", "Pa", "V", "A", "Ω", "F", "Hz", "L", "bar"],
  times: " ",
  power: (exponent) => `^${exponent}`,
};

function converted(from: string, value: number, to: string): number | null {
  try {
    return unitmath(`${value} ${from}`).to(to).value;
  } catch {
    // A prefix or name it does not have after all: not compared, and the count below would show too few.
    return null;
  }
}

test("unitmath has the same factor for every unit both know", () => {
  const theirs = (pair: Pair) => converted(translated(pair.from, DIALECT) ?? "", 1, translated(pair.to, DIALECT) ?? "");
  // Its inch of water is 249.082 Pa, water at 4 °C; the conventional value is 249.089.
  const tolerance = ({ from }: Pair) => (from === "inH2O" ? 3e-5 : 1e-12);
  const { compared, different } = compareFactors("unitmath", pairsFor(DIALECT), theirs, tolerance);
  expect(different).toEqual([]);
  expect(compared).toBeGreaterThanOrEqual(250);
});

test("unitmath converts the same temperatures between scales", () => {
  const scales = [
    ["K", "K"],
    ["°C", "degC"],
    ["°F", "degF"],
  ] as const;
  let compared = 0;
  for (const value of [-40, 0, 20, 51, 110, 1000]) {
    for (const [from, theirFrom] of scales) {
      for (const [to, theirTo] of scales) {
        const kelvin = toBase(rational(value), unitNamed(from), "temperature");
        const other = converted(theirFrom, value, theirTo);
        expect(toNumber(fromBase(kelvin, unitNamed(to), "temperature"))).toBeCloseTo(other ?? Number.NaN, 9);
        compared++;
      }
    }
  }
  console.log(`unitmath: ${compared} temperatures compared`);
});
