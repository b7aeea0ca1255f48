// Against GNU units (Debian package `units`), which knows nearly every unit of ours by a definition of its own.
import { spawnSync } from "node:child_process";
import fc from "fast-check";
import { expect, test } from "vitest";
import { rational, toNumber } from "#quantity/rational.ts";
import { fromBase, toBase, unitNamed } from "#quantity/unit.ts";
import { atomNames } from "#quantity/unit-table.ts";
import { compareFactors, type Dialect, type Pair, pairsFor, translated } from "./unit-comparison.ts";

const DIALECT: Dialect = {
  names: {
    in: "inch",
    ft: "foot",
    yd: "yard",
    mi: "mile",
    mil: "mil",
    thou: "mil",
    µin: "microinch",
    L: "liter",
    galUS: "gallon",
    qtUS: "quart",
    ptUS: "pint",
    flozUS: "usfluidounce",
    galUK: "brgallon",
    qtUK: "brquart",
    ptUK: "brpint",
    flozUK: "brfluidounce",
    t: "tonne",
    kt: "kilotonne",
    Mt: "megatonne",
    Gt: "gigatonne",
    lb: "pound",
    oz: "ounce",
    gr: "grain",
    slug: "slug",
    tonUS: "ton",
    tonUK: "brton",
    min: "minute",
    h: "hour",
    d: "day",
    "°C": "degC",
    "°F": "degF",
    "°R": "degR",
    turn: "turn",
    "°": "degree",
    "′": "arcminute",
    "″": "arcsecond",
    gon: "gon",
    rad: "radian",
    mrad: "milliradian",
    µrad: "microradian",
    lbf: "lbf",
    ozf: "(ounce gravity)",
    kip: "kip",
    kgf: "kgf",
    gf: "(gram gravity)",
    tf: "(tonne gravity)",
    dyn: "dyne",
    cal: "calorie_th",
    kcal: "kilocalorie_th",
    Btu: "btu_IT",
    VA: "(volt ampere)",
    kVA: "(kilovolt ampere)",
    MVA: "(megavolt ampere)",
    GVA: "(gigavolt ampere)",
    hp: "horsepower",
    PS: "metrichorsepower",
    bar: "bar",
    µbar: "microbar",
    mbar: "millibar",
    kbar: "kilobar",
    Mbar: "megabar",
    psi: "psi",
    ksi: "ksi",
    atm: "atm",
    Torr: "torr",
    mTorr: "millitorr",
    mmHg: "mmHg",
    inHg: "inHg",
    mmH2O: "mmH2O",
    cmH2O: "(cm water)",
    inH2O: "inH2O",
    ftH2O: "(foot water)",
    rpm: "(turn/minute)",
    mph: "mph",
    kn: "knot",
    gn: "gravity",
    P: "poise",
    cP: "centipoise",
    mP: "millipoise",
    St: "stokes",
    cSt: "centistokes",
    mSt: "millistokes",
    "%": "percent",
    "‰": "(1|1000)",
    ppm: "ppm",
    ppb: "ppb",
    "": "1",
    m: "meter",
    g: "gram",
    s: "second",
    K: "kelvin",
    N: "newton",
    J: "joule",
    W: "watt",
    Pa: "pascal",
    V: "volt",
    A: "ampere",
    Ω: "ohm",
    F: "farad",
    Hz: "hertz",
  },
  // In full: `Hg` would be mercury, `Gs` the gauss and `nanos` the plural of a number.
  prefixes: {
    y: "yocto",
    z: "zepto",
    a: "atto",
    f: "femto",
    p: "pico",
    n: "nano",
    µ: "micro",
    m: "milli",
    c: "centi",
    d: "deci",
    da: "deka",
    h: "hecto",
    k: "kilo",
    M: "mega",
    G: "giga",
    T: "tera",
    P: "peta",
    E: "exa",
    Z: "zetta",
    Y: "yotta",
  },
  prefixed: ["m", "g", "s", "N", "J", "W", "Pa", "V", "A", "Ω", "F", "Hz", "L", "K"],
  times: "*",
  power: (exponent) => `^${exponent}`,
};

const PROGRAM = "units";
const present = spawnSync(PROGRAM, ["--version"]).error === undefined;

/** Answers of one run, by query; every query must have a number. */
function ask(queries: readonly (readonly [from: string, to: string])[]): readonly number[] {
  const input = queries.map(([from, to]) => `${from}\n${to}\n`).join("");
  const { stdout } = spawnSync(PROGRAM, ["--terse", "--output-format", "%.17g"], { input, encoding: "utf8" });
  const lines = stdout.trim().split("\n");
  expect(lines.filter((line) => !Number.isFinite(Number(line)))).toEqual([]);
  expect(lines).toHaveLength(queries.length);
  return lines.map(Number);
}

/** Where the program is absent that is said aloud, and fails where everything has to be there. */
function leftOut(what: string): void {
  console.log(`GNU units is not installed (Debian package units): ${what} left out`);
  expect(process.env.CI ?? "").not.toBe("true");
}

test("GNU units has the same factor for every unit both know", () => {
  if (!present) return leftOut("the comparison of factors");
  const pairs = pairsFor(DIALECT);
  const answers = ask(pairs.map((pair) => [translated(pair.from, DIALECT) ?? "", translated(pair.to, DIALECT) ?? ""]));
  const byPair = new Map<Pair, number>(pairs.map((pair, i) => [pair, answers[i] ?? Number.NaN]));
  const { compared, different } = compareFactors(
    "GNU units",
    pairs,
    (pair) => byPair.get(pair) ?? null,
    () => 1e-14,
  );
  expect(different).toEqual([]);
  expect(compared).toBeGreaterThanOrEqual(390);
});

test("GNU units has the same factor for compounds of any two units", () => {
  if (!present) return leftOut("the comparison of compounds");
  const single = fc.constantFrom(...pairsFor(DIALECT).filter(({ from }) => !/[·/²³]/.test(from)));
  const sign = fc.constantFrom("·", "/");
  const pairs = fc.sample(fc.tuple(single, sign, single), { numRuns: 300, seed: 2026 }).map(([a, op, b]): Pair => {
    return { from: `${a.from}${op}${b.from}`, to: `${a.to || "%"}${op}(${b.to || "%"})` };
  });
  const answers = ask(pairs.map((pair) => [translated(pair.from, DIALECT) ?? "", translated(pair.to, DIALECT) ?? ""]));
  const byPair = new Map<Pair, number>(pairs.map((pair, i) => [pair, answers[i] ?? Number.NaN]));
  const { compared, different } = compareFactors(
    "GNU units, compounds",
    pairs,
    (pair) => byPair.get(pair) ?? null,
    () => 1e-13,
  );
  expect(different).toEqual([]);
  expect(compared).toBe(300);
});

test("GNU units is asked for all but what it has no name for", () => {
  const asked = new Set(pairsFor(DIALECT).map((pair) => pair.from));
  const notAsked = [...atomNames()].filter((name) => !asked.has(name));
  // The prefixes of 2022, and what it does not measure.
  expect(notAsked.filter((name) => !/^[rqRQ]./.test(name))).toEqual(["o'clock", "dB(A)"]);
});

test("GNU units converts the same temperatures between scales", () => {
  if (!present) return leftOut("the comparison of temperatures");
  const scales = [
    ["K", "tempK"],
    ["°C", "tempC"],
    ["°F", "tempF"],
  ] as const;
  const values = [-40, -17.5, 0, 20, 51, 110, 273.15, 1000];
  const cases = values.flatMap((value) =>
    scales.flatMap(([from, theirFrom]) => scales.map(([to, theirTo]) => ({ value, from, theirFrom, to, theirTo }))),
  );
  const possible = cases.filter(({ value, from }) => from !== "K" || value >= 0);
  const answers = ask(possible.map(({ value, theirFrom, theirTo }) => [`${theirFrom}(${value})`, theirTo]));
  possible.forEach(({ value, from, to }, i) => {
    const kelvin = toBase(rational(Math.round(value * 100), 100), unitNamed(from), "temperature");
    expect(toNumber(fromBase(kelvin, unitNamed(to), "temperature"))).toBeCloseTo(answers[i] ?? Number.NaN, 9);
  });
  console.log(`GNU units: ${possible.length} temperatures compared`);
  expect(possible.length).toBeGreaterThan(50);
});
