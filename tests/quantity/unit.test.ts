// Units: factors of NIST SP 811, kinds, spellings, suggestions; every unit of the table reads as itself.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { factsOf, isKind, type Kind, kindsOf } from "#quantity/kind.ts";
import { div, eq, mul, rational, toNumber } from "#quantity/rational.ts";
import { canonicalNumber, canonicalUnit } from "#quantity/spelling.ts";
import { fromBase, normalised, readUnit, scaleOf, toBase, type Unit, unitNamed } from "#quantity/unit.ts";
import { atomNamed, atomNames } from "#quantity/unit-table.ts";

function unit(text: string, wanted: Kind | null = null): Unit {
  const reading = readUnit(text, wanted);
  if (!reading.ok) throw new Error(`unknown: ${text}`);
  return reading.unit;
}

/** The value of one `from` in `to`. */
function factor(from: string, to: string): number {
  return toNumber(div(scaleOf(unit(from)), scaleOf(unit(to))));
}

const ALL_KINDS: readonly Kind[] = [
  "length",
  "area",
  "volume",
  "mass",
  "time",
  "temperature",
  "temperature difference",
  "temperature rate",
  "angle",
  "clock position",
  "force",
  "torque",
  "energy",
  "power",
  "pressure",
  "voltage",
  "current",
  "resistance",
  "capacitance",
  "frequency",
  "rotational speed",
  "velocity",
  "acceleration",
  "flow rate",
  "density",
  "stiffness",
  "dynamic viscosity",
  "kinematic viscosity",
  "thermal expansion coefficient",
  "mass moment",
  "sound level",
  "concentration",
  "ratio",
];

// NIST SP 811:2008, appendix B.8, rounded there to seven digits. "read": in engineering.md's table of values read in a
// copy of it; the others are from memory, and are checked again by the oracles (GNU units, UCUM, unitmath).
const SP811: readonly [from: string, to: string, value: number, mark: "read" | "memory"][] = [
  ["lbf·ft", "N·m", 1.355818, "read"],
  ["lbf·in", "N·m", 1.129848e-1, "read"],
  ["kgf·m", "N·m", 9.80665, "read"],
  ["psi", "Pa", 6.894757e3, "read"],
  ["ozf·in", "N·m", 7.061552e-3, "memory"],
  ["in", "m", 2.54e-2, "memory"],
  ["ft", "m", 3.048e-1, "memory"],
  ["yd", "m", 9.144e-1, "memory"],
  ["mi", "m", 1.609344e3, "memory"],
  ["mil", "m", 2.54e-5, "memory"],
  ["µin", "m", 2.54e-8, "memory"],
  ["in²", "m²", 6.4516e-4, "memory"],
  ["ft²", "m²", 9.290304e-2, "memory"],
  ["in³", "m³", 1.638706e-5, "memory"],
  ["ft³", "m³", 2.831685e-2, "memory"],
  ["galUS", "m³", 3.785412e-3, "memory"],
  ["qtUS", "m³", 9.463529e-4, "memory"],
  ["ptUS", "m³", 4.731765e-4, "memory"],
  ["flozUS", "m³", 2.957353e-5, "memory"],
  ["galUK", "m³", 4.54609e-3, "memory"],
  ["flozUK", "m³", 2.841306e-5, "memory"],
  ["lb", "kg", 4.535924e-1, "memory"],
  ["oz", "kg", 2.834952e-2, "memory"],
  ["gr", "kg", 6.479891e-5, "memory"],
  ["slug", "kg", 1.45939e1, "memory"],
  ["tonUS", "kg", 9.071847e2, "memory"],
  ["tonUK", "kg", 1.016047e3, "memory"],
  ["lbf", "N", 4.448222, "memory"],
  ["ozf", "N", 2.780139e-1, "memory"],
  ["kip", "N", 4.448222e3, "memory"],
  ["kgf", "N", 9.80665, "memory"],
  ["dyn", "N", 1e-5, "memory"],
  ["atm", "Pa", 1.01325e5, "memory"],
  ["Torr", "Pa", 1.333224e2, "memory"],
  ["mmHg", "Pa", 1.333224e2, "memory"],
  ["inHg", "Pa", 3.386389e3, "memory"],
  ["inH2O", "Pa", 2.490889e2, "memory"],
  ["ftH2O", "Pa", 2.989067e3, "memory"],
  ["cmH2O", "Pa", 9.80665e1, "memory"],
  ["kgf/cm²", "Pa", 9.80665e4, "memory"],
  ["ksi", "Pa", 6.894757e6, "memory"],
  ["Btu", "J", 1.055056e3, "memory"],
  ["cal", "J", 4.184, "memory"],
  ["kW·h", "J", 3.6e6, "memory"],
  ["hp", "W", 7.456999e2, "memory"],
  ["PS", "W", 7.354988e2, "memory"],
  ["mph", "m/s", 4.4704e-1, "memory"],
  ["kn", "m/s", 5.144444e-1, "memory"],
  ["ft/min", "m/s", 5.08e-3, "memory"],
  ["km/h", "m/s", 2.777778e-1, "memory"],
  ["galUS/min", "m³/s", 6.30902e-5, "memory"],
  ["ft³/min", "m³/s", 4.719474e-4, "memory"],
  ["lb/ft³", "kg/m³", 1.601846e1, "memory"],
  ["lbf/in", "N/m", 1.751268e2, "memory"],
  ["cP", "Pa·s", 1e-3, "memory"],
  ["cSt", "m²/s", 1e-6, "memory"],
  ["°", "rad", 1.745329e-2, "memory"],
  ["′", "rad", 2.908882e-4, "memory"],
  ["″", "rad", 4.848137e-6, "memory"],
  ["gon", "rad", 1.570796e-2, "memory"],
  ["rpm", "rad/s", 1.047198e-1, "memory"],
];

describe("factors of NIST SP 811", () => {
  test.each(SP811)("1 %s is %s × its factor (%d, %s)", (from, to, value) => {
    expect(Math.abs(factor(from, to) / value - 1)).toBeLessThan(5e-7);
  });

  test("0 °C is 273.15 K, 1 K is 1.8 °F of interval (NIST, read)", () => {
    expect(toNumber(toBase(rational(0), unit("°C"), "temperature"))).toBe(273.15);
    expect(eq(div(scaleOf(unit("K")), scaleOf(unit("°F"))), rational(9, 5))).toBe(true);
  });

  test("250 °F is 121.1 °C, 30 °F of interval 16.7 K (29 CFR 1910.106(a)(19), read)", () => {
    const kelvin = toBase(rational(250), unit("°F"), "temperature");
    expect(toNumber(fromBase(kelvin, unit("°C"), "temperature"))).toBeCloseTo(121.1, 1);
    expect(toNumber(toBase(rational(30), unit("°F"), "temperature difference"))).toBeCloseTo(16.7, 1);
  });
});

describe("kinds", () => {
  test("are those of the language, and each has units of its own dimension", () => {
    for (const kind of ALL_KINDS) {
      expect(isKind(kind)).toBe(true);
      const facts = factsOf(kind);
      const shown = [...facts.metric, ...facts.customary].map((entry) => entry.unit);
      for (const text of [facts.coherent, ...shown, ...facts.usual]) {
        const named = unitNamed(text);
        expect(named.dimension, `${kind}: ${text}`).toBe(facts.dimension);
        if (text !== "") expect(named.kinds, `${kind}: ${text}`).toContain(kind);
        expect(named.text).toBe(text);
      }
      const coherent = unitNamed(facts.coherent);
      expect(eq(scaleOf(coherent), rational(1)), `${kind}: ${facts.coherent}`).toBe(true);
    }
    expect(isKind("luminance")).toBe(false);
    expect(isKind("constructor")).toBe(false);
  });

  test.each<[string, readonly Kind[]]>([
    ["N·m", ["torque"]],
    ["lbf·ft", ["torque"]],
    ["kgf·cm", ["torque"]],
    ["J", ["energy"]],
    ["kW·h", ["energy"]],
    ["Pa·m³", ["torque", "energy"]],
    ["Hz", ["frequency"]],
    ["1/s", ["frequency"]],
    ["rpm", ["rotational speed"]],
    ["turn/s", ["rotational speed"]],
    ["rad/s", ["rotational speed"]],
    ["°/s", ["rotational speed"]],
    ["°", ["angle"]],
    ["turn", ["angle"]],
    ["o'clock", ["clock position"]],
    ["dB(A)", ["sound level"]],
    ["K", ["temperature", "temperature difference"]],
    ["°C", ["temperature", "temperature difference"]],
    ["°C/min", ["temperature rate"]],
    ["µm/(m·K)", ["thermal expansion coefficient"]],
    ["1/K", ["thermal expansion coefficient"]],
    ["g·mm", ["mass moment"]],
    ["oz·in", ["mass moment"]],
    ["N/mm", ["stiffness"]],
    ["N/mm²", ["pressure"]],
    ["MPa", ["pressure"]],
    ["mPa·s", ["dynamic viscosity"]],
    ["cSt", ["kinematic viscosity"]],
    ["mm²/s", ["kinematic viscosity"]],
    ["V·A", ["power"]],
    ["%", ["ratio", "concentration"]],
    ["mm/m", ["ratio", "concentration"]],
    ["ppm", ["concentration", "ratio"]],
    ["kg·m²", []],
    ["J/(kg·K)", []],
    ["N·m/°", []],
  ])("%s is %j", (text, kinds) => {
    expect(unit(text).kinds).toEqual(kinds);
  });

  test("of one dimension stand together", () => {
    expect(kindsOf(factsOf("torque").dimension)).toEqual(["torque", "energy"]);
    expect(kindsOf(unit("kg·m²").dimension)).toEqual([]);
  });
});

// language.md section 2: what is read, reported as style and made canonical.
const STYLE: readonly [text: string, wanted: Kind | null, canonical: string][] = [
  ["N*m", null, "N·m"],
  ["N.m", null, "N·m"],
  ["Nm", null, "N·m"],
  ["N m", null, "N·m"],
  ["N-m", "torque", "N·m"],
  ["m·N", "torque", "N·m"],
  ["kNm", "torque", "kN·m"],
  ["Nmm", "torque", "N·mm"],
  ["degC", null, "°C"],
  ["℃", null, "°C"],
  ["° C", null, "°C"],
  ["deg F", null, "°F"],
  ["um", null, "µm"],
  ["micron", null, "µm"],
  ["um/(m*K)", null, "µm/(m·K)"],
  ["µm/m/K", null, "µm/(m·K)"],
  ["ft·lbf", "torque", "lbf·ft"],
  ["ft-lb", "torque", "lbf·ft"],
  ["lb-ft", "torque", "lbf·ft"],
  ["in-lb", "torque", "lbf·in"],
  ["lb-in", "torque", "lbf·in"],
  ["lb·ft", "torque", "lbf·ft"],
  ["ft lb", "torque", "lbf·ft"],
  ["lb ft", "torque", "lbf·ft"],
  ["in lb", "torque", "lbf·in"],
  ["ft-lb", null, "lbf·ft"],
  ["oz-in", "torque", "ozf·in"],
  ["oz·in", "torque", "ozf·in"],
  ["lb/in²", "pressure", "lbf/in²"],
  ["lb/in", "stiffness", "lbf/in"],
  ["m2", null, "m²"],
  ["m^2", null, "m²"],
  ["mm^3", null, "mm³"],
  ["kg/m3", null, "kg/m³"],
  ["m/s^2", null, "m/s²"],
  ["s⁻¹", null, "1/s"],
  ["min^-1", "rotational speed", "rpm"],
  ["1/min", "rotational speed", "rpm"],
  ["rev/min", "rotational speed", "rpm"],
  ["r/min", "rotational speed", "rpm"],
  ["RPM", null, "rpm"],
  ["ohm", null, "Ω"],
  ["kohm", null, "kΩ"],
  ["uF", null, "µF"],
  ["l/min", null, "L/min"],
  ["lpm", null, "L/min"],
  ["ml", null, "mL"],
  ["cc", null, "cm³"],
  ["kWh", null, "kW·h"],
  ["kph", null, "km/h"],
  ["cfm", null, "ft³/min"],
  ["lbs", null, "lb"],
  ["inch", null, "in"],
  ["feet", null, "ft"],
  ["sec", null, "s"],
  ["hours", null, "h"],
  ["degrees", null, "°"],
  ["dBA", null, "dB(A)"],
  ["dB (A)", null, "dB(A)"],
  ["psig", null, "psi gauge"],
  ["psia", null, "psi absolute"],
  ["bar(a)", null, "bar absolute"],
  ["VAC", null, "V AC"],
  ["Vdc", null, "V DC"],
  ["V ac", null, "V AC"],
  ["in Hg", null, "inHg"],
  ["inH₂O", null, "inH2O"],
  ["mPas", null, "mPa·s"],
  ["(N·m)", null, "N·m"],
  ["kg*m/s^2", null, "kg·m/s²"],
  ["oclock", null, "o'clock"],
  ["percent", null, "%"],
  ["'", "angle", "′"],
  ["US gal", null, "galUS"],
  ["mm·g", "mass moment", "g·mm"],
];

describe("spellings", () => {
  test.each(STYLE)("%s (%s) is a matter of style: %s", (text, wanted, canonical) => {
    const reading = readUnit(text, wanted);
    expect(reading).toMatchObject({ ok: true, style: true, ambiguous: null, unit: { text: canonical } });
    expect(canonicalUnit(text, wanted)).toBe(canonical);
  });

  test.each<[string, Kind | null, string]>([
    ["lb", "force", "lbf"],
    ["lb", "torque", "lbf·ft"],
    ["oz", "force", "ozf"],
    ["oz", "volume", "flozUS"],
    ["C", "temperature", "°C"],
    ["C", null, "°C"],
    ["F", "temperature", "°F"],
    ["ton", "mass", "tonUS"],
    ["gal", "volume", "galUS"],
    ["gal/min", "flow rate", "galUS/min"],
    ["gpm", null, "galUS/min"],
    ["fl oz", "volume", "flozUS"],
    ["g", "acceleration", "gn"],
    ["kg/cm²", "pressure", "kgf/cm²"],
    ["kg·cm", "torque", "kgf·cm"],
    ["kg m", "torque", "kgf·m"],
    ["dB", "sound level", "dB(A)"],
    ["'", "length", "ft"],
  ])("%s (%s) is in doubt, read as %s, and left as written", (text, wanted, readAs) => {
    const reading = readUnit(text, wanted);
    expect(reading).toMatchObject({ ok: true, style: false, ambiguous: { readAs }, unit: { text: readAs } });
    expect(canonicalUnit(text, wanted)).toBe(text);
  });

  test.each<[string, Kind | null]>([
    ["lb", "mass"],
    ["oz", "mass"],
    ["g", "mass"],
    ["F", "capacitance"],
    ["oz·in", "mass moment"],
    ["lb·in", "mass moment"],
    ["N·m", "torque"],
    ["lbf·ft", "torque"],
    ["µm/(m·K)", "thermal expansion coefficient"],
    ["galUS", "volume"],
    ["kg/m", null],
    ["lb/ft", null],
    ["g/N", null],
  ])("%s (%s) is as it should be", (text, wanted) => {
    expect(readUnit(text, wanted)).toMatchObject({ ok: true, style: false, ambiguous: null, unit: { text } });
  });

  test("both µ, both ·, both Ω and a typographic apostrophe are read without a word", () => {
    for (const [text, canonical] of [
      ["\u03bcm", "µm"],
      ["N\u22c5m", "N·m"],
      ["\u2126", "Ω"],
      ["o\u2019clock", "o'clock"],
      ["V\u00a0AC", "V AC"],
    ] as const) {
      expect(readUnit(text, null)).toMatchObject({ ok: true, style: false, unit: { text: canonical } });
      expect(normalised(text)).toBe(canonical);
    }
  });

  test.each([
    "Nn",
    "N·q",
    "m²²",
    "m^",
    "/s",
    "·",
    "()",
    "N··m",
    "N-s",
    "mm-x",
    "m s",
    "Hz AC",
    "m absolute",
    "V AC DC",
    "psig gauge",
    "",
    " ",
    "constructor",
    "__proto__",
    "toString",
    "x".repeat(500),
    `${"(".repeat(20)}m${")".repeat(20)}/x`,
  ])("%j is no unit", (text) => {
    expect(readUnit(text, null).ok).toBe(false);
    expect(canonicalUnit(text, null)).toBe(text);
  });

  test("a qualifier belongs to the unit", () => {
    expect(unit("V AC").qualifier).toBe("AC");
    expect(unit("kV DC").qualifier).toBe("DC");
    expect(unit("bar absolute").qualifier).toBe("absolute");
    expect(unit("psi gauge").qualifier).toBe("gauge");
    expect(unit("bar").qualifier).toBeNull();
  });

  test.each([
    ["1\u00a01 / 2", "1 1/2"],
    ["3 /8", "3/8"],
    [" 1_000 ", "1_000"],
    ["0.50", "0.50"],
  ])("the number %j is written %s", (text, canonical) => {
    expect(canonicalNumber(text)).toBe(canonical);
  });
});

describe("a mistyped unit", () => {
  test.each<[string, Kind | null, string]>([
    ["Nn", "torque", "N·m"],
    ["NM", "torque", "N·m"],
    ["kgg", "mass", "kg"],
    ["pis", "pressure", "psi"],
    ["Mm²x", null, "mm²"],
    ["lbf·fft", "torque", "lbf·ft"],
    ["rmp", "rotational speed", "rpm"],
    ["mmm", "length", "mm"],
    ["minn", "time", "min"],
    ["Bra", "pressure", "bar"],
  ])("%s (%s) is offered %s", (text, wanted, nearest) => {
    const reading = readUnit(text, wanted);
    expect(reading.ok ? [] : reading.nearest).toContain(nearest);
  });

  test("is offered nothing where nothing is close", () => {
    for (const text of ["numbered", "clockwise", "Δ", "·", "x".repeat(90)]) {
      expect(readUnit(text, null)).toEqual({ ok: false, nearest: [] });
    }
  });

  test("is offered three at most, and each is a unit", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."Nmkgbarpsilft°C·/"), minLength: 1, maxLength: 8 }), (text) => {
        const reading = readUnit(text, "torque");
        if (reading.ok) return;
        expect(reading.nearest.length).toBeLessThanOrEqual(3);
        for (const name of reading.nearest) expect(readUnit(name, null).ok).toBe(true);
      }),
    );
  });
});

describe("reading units", () => {
  const names = fc.constantFrom(...atomNames());

  test("every name of the table reads as itself, in every kind it expresses", () => {
    for (const name of atomNames()) {
      const reading = readUnit(name, null);
      expect(reading, name).toMatchObject({ ok: true, style: false, ambiguous: null, unit: { text: name } });
      expect(unit(name).dimension).toBe(atomNamed(name)?.dimension);
      for (const kind of unit(name).kinds) {
        const inPlace = readUnit(name, kind);
        if (inPlace.ok && inPlace.ambiguous === null) expect(unit(name, kind).text).toBe(name);
      }
    }
  });

  test("the canonical text of any compound reads as the same unit, and stays", () => {
    const factor = fc.tuple(names, fc.constantFrom("", "^2", "³", "^-1"), fc.constantFrom("·", "/", "*"));
    fc.assert(
      fc.property(fc.array(factor, { minLength: 1, maxLength: 4 }), (factors) => {
        const text = factors.map(([name, power, sign], i) => (i === 0 ? "" : sign) + name + power).join("");
        const first = readUnit(text, null);
        fc.pre(first.ok && first.ambiguous === null);
        const second = readUnit(first.ok ? first.unit.text : "", null);
        expect(second).toMatchObject({ ok: true, style: false });
        if (!first.ok || !second.ok) return;
        expect(second.unit.text).toBe(first.unit.text);
        expect(second.unit.dimension).toBe(first.unit.dimension);
        expect(eq(scaleOf(second.unit), scaleOf(first.unit))).toBe(true);
      }),
    );
  });

  test("is total on any text, and answers the same twice", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), fc.constantFrom(null, ...ALL_KINDS), (text, wanted) => {
        expect(readUnit(text, wanted)).toBe(readUnit(text, wanted));
      }),
    );
  });

  test("converting there and back is exact", () => {
    const value = fc.tuple(fc.bigInt(), fc.bigInt({ min: 1n, max: 10n ** 12n })).map(([n, d]) => rational(n, d));
    fc.assert(
      fc.property(names, value, (name, number) => {
        const one = unit(name);
        for (const kind of one.kinds) expect(eq(fromBase(toBase(number, one, kind), one, kind), number)).toBe(true);
        expect(eq(mul(scaleOf(one), div(rational(1), scaleOf(one))), rational(1))).toBe(true);
      }),
    );
  });
});
