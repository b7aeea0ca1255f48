// Against UCUM (Regenstrief's and NLM's ucum-lhc), whose codes cover most units of ours.
import ucum from "@lhncbc/ucum-lhc";
import { expect, test } from "vitest";
import { rational, toNumber } from "#quantity/rational.ts";
import { fromBase, toBase, unitNamed } from "#quantity/unit.ts";
import { compareFactors, type Dialect, type Pair, pairsFor, prefixes, translated } from "./unit-comparison.ts";

const DIALECT: Dialect = {
  names: {
    in: "[in_i]",
    ft: "[ft_i]",
    yd: "[yd_i]",
    mi: "[mi_i]",
    mil: "[mil_i]",
    thou: "[mil_i]",
    galUS: "[gal_us]",
    qtUS: "[qt_us]",
    ptUS: "[pt_us]",
    flozUS: "[foz_us]",
    galUK: "[gal_br]",
    qtUK: "[qt_br]",
    ptUK: "[pt_br]",
    flozUK: "[foz_br]",
    lb: "[lb_av]",
    oz: "[oz_av]",
    gr: "[gr]",
    tonUS: "[ston_av]",
    tonUK: "[lton_av]",
    min: "min",
    h: "h",
    d: "d",
    "°C": "K",
    "°F": "[degR]",
    "°R": "[degR]",
    turn: "circ",
    "°": "deg",
    "′": "'",
    "″": "''",
    gon: "gon",
    rad: "rad",
    mrad: "mrad",
    µrad: "urad",
    lbf: "[lbf_av]",
    tf: "Mgf",
    dyn: "dyn",
    cal: "cal_th",
    kcal: "kcal_th",
    Btu: "[Btu_IT]",
    VA: "(V.A)",
    hp: "[HP]",
    psi: "[psi]",
    atm: "atm",
    mmHg: "mm[Hg]",
    inHg: "[in_i'Hg]",
    mmH2O: "mm[H2O]",
    cmH2O: "cm[H2O]",
    inH2O: "[in_i'H2O]",
    Ω: "Ohm",
    "%": "%",
    "‰": "[ppth]",
    ppm: "[ppm]",
    ppb: "[ppb]",
    kn: "[kn_i]",
    gn: "[g]",
    P: "P",
    cP: "cP",
    mP: "mP",
    St: "St",
    cSt: "cSt",
    mSt: "mSt",
    µbar: "ubar",
    "": "1",
    gf: "gf",
    kgf: "kgf",
    bar: "bar",
    L: "L",
    g: "g",
    t: "t",
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
    rpm: "(circ/min)",
  },
  prefixes: prefixes("u"),
  prefixed: ["m", "g", "t", "s", "N", "J", "W", "Pa", "bar", "V", "A", "Ω", "F", "Hz", "L", "K"],
  times: ".",
  power: (exponent) => exponent,
};

const utilities = ucum.UcumLhcUtils.getInstance();

function converted(from: string, value: number, to: string): number | null {
  const answer = utilities.convertUnitTo(from, value, to);
  return answer.status === "succeeded" ? answer.toVal : null;
}

test("UCUM has the same factor for every unit both know", () => {
  const theirs = (pair: Pair) => converted(translated(pair.from, DIALECT) ?? "", 1, translated(pair.to, DIALECT) ?? "");
  // UCUM has 133.322 kPa for the metre of mercury, in six digits; the conventional value has more.
  const tolerance = ({ from }: Pair) => (from.endsWith("Hg") ? 4e-6 : 1e-12);
  const { compared, different } = compareFactors("UCUM", pairsFor(DIALECT), theirs, tolerance);
  expect(different).toEqual([]);
  expect(compared).toBeGreaterThanOrEqual(380);
});

test("UCUM converts the same temperatures between scales", () => {
  const scales = [
    ["K", "K"],
    ["°C", "Cel"],
    ["°F", "[degF]"],
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
  console.log(`UCUM: ${compared} temperatures compared`);
});
