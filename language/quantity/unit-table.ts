// The units, one declaration a line: exact factor to the coherent SI unit, and where it comes from. Knows no spelling
// but the canonical one (spellings: unit-spellings.ts) and no compound (unit.ts).

// Sources: [SI] SI Brochure, 9th edition. [811] NIST SP 811:2008, appendix B. [1959] the international yard and pound
// (0.9144 m, 0.453 592 37 kg, exact), and 231 in³ for the US gallon; [UK] 4.546 09 L for the UK gallon (exact).
// [g] standard gravity 9.806 65 m/s² (exact). [conv] conventional columns: 13 595.1 kg/m³ mercury, 1000 kg/m³ water, with [g].
// [80000] ISO 80000-3, -8.
import type { Dimension } from "./dimension.ts";
import { factsOf, type Kind } from "./kind.ts";
import { div, fromDecimal, mul, ONE, type Rational, rational, tenTo, ZERO } from "./rational.ts";

/** A unit with a name of its own. */
export interface Atom {
  readonly text: string;
  readonly dimension: Dimension;
  /** Exact factor to the coherent unit, but for {@link pi}. */
  readonly factor: Rational;
  /** The power of π that belongs to the factor. */
  readonly pi: number;
  /** Kelvin at the zero of an affine temperature scale, otherwise zero. */
  readonly offset: Rational;
  /** The kinds it is restricted to when it stands alone; null: those of its dimension. */
  readonly only: readonly Kind[] | null;
  readonly system: "metric" | "customary" | "shared";
}

/** The unit with this canonical name (with its prefix); undefined for any other text. */
export function atomNamed(text: string): Atom | undefined {
  return ATOMS.get(text);
}

/** All names, for suggestions and tests. */
export function atomNames(): Iterable<string> {
  return ATOMS.keys();
}

interface Options {
  readonly prefixes?: readonly string[];
  readonly only?: readonly Kind[];
  readonly system?: Atom["system"];
  readonly offset?: Rational;
  readonly pi?: number;
}

const PREFIXES: Readonly<Record<string, number>> = {
  q: -30,
  r: -27,
  y: -24,
  z: -21,
  a: -18,
  f: -15,
  p: -12,
  n: -9,
  µ: -6,
  m: -3,
  c: -2,
  d: -1,
  da: 1,
  h: 2,
  k: 3,
  M: 6,
  G: 9,
  T: 12,
  P: 15,
  E: 18,
  Z: 21,
  Y: 24,
  R: 27,
  Q: 30,
};
const ALL = Object.keys(PREFIXES);
// Without atto: `as` is a word.
const SECOND = ALL.filter((prefix) => prefix !== "a");
const LARGE = ["k", "M", "G"];
const SMALL = ["m", "µ"];
const FEW = ["n", "µ", "m", "c", "d", "h", "k", "M"];

const METRIC = "metric";
const CUSTOMARY = "customary";
const SHARED = "shared";

const [INCH, FOOT, POUND, GRAVITY] = [exact("0.0254"), exact("0.3048"), exact("0.45359237"), exact("9.80665")];
const LBF = mul(POUND, GRAVITY);
const US_GALLON = mul(exact("231e-6"), exact("16.387064")); // 231 in³, in m³
const UK_GALLON = exact("0.00454609");
const MERCURY = mul(exact("13.5951"), GRAVITY); // Pa for one millimetre
const WATER = GRAVITY; // Pa for one millimetre
const RANKINE = rational(5, 9);

const ATOMS = new Map<string, Atom>();

// Length
unit("m", "length", ONE, { prefixes: ALL }); // [SI]
unit("in", "length", INCH, { system: CUSTOMARY }); // [1959]
unit("ft", "length", FOOT, { system: CUSTOMARY }); // [1959]
unit("yd", "length", exact("0.9144"), { system: CUSTOMARY }); // [1959]
unit("mi", "length", exact("1609.344"), { system: CUSTOMARY }); // [1959] 5280 ft
unit("mil", "length", exact("0.0000254"), { system: CUSTOMARY }); // [811] 0.001 in
unit("thou", "length", exact("0.0000254"), { system: CUSTOMARY }); // 0.001 in
unit("µin", "length", exact("0.0000000254"), { system: CUSTOMARY }); // [811]

// Volume
unit("L", "volume", exact("0.001"), { prefixes: FEW }); // [SI]
unit("galUS", "volume", US_GALLON, { system: CUSTOMARY }); // [1959]
unit("qtUS", "volume", div(US_GALLON, rational(4)), { system: CUSTOMARY }); // [811]
unit("ptUS", "volume", div(US_GALLON, rational(8)), { system: CUSTOMARY }); // [811]
unit("flozUS", "volume", div(US_GALLON, rational(128)), { system: CUSTOMARY }); // [811]
unit("galUK", "volume", UK_GALLON, { system: CUSTOMARY }); // [UK]
unit("qtUK", "volume", div(UK_GALLON, rational(4)), { system: CUSTOMARY }); // [UK]
unit("ptUK", "volume", div(UK_GALLON, rational(8)), { system: CUSTOMARY }); // [UK]
unit("flozUK", "volume", div(UK_GALLON, rational(160)), { system: CUSTOMARY }); // [UK]

// Mass
unit("g", "mass", exact("0.001"), { prefixes: ALL }); // [SI]
unit("t", "mass", rational(1000), { prefixes: LARGE }); // [SI]
unit("lb", "mass", POUND, { system: CUSTOMARY }); // [1959]
unit("oz", "mass", div(POUND, rational(16)), { system: CUSTOMARY }); // [811]
unit("gr", "mass", div(POUND, rational(7000)), { system: CUSTOMARY }); // [811] grain
unit("slug", "mass", div(LBF, FOOT), { system: CUSTOMARY }); // [811] lbf·s²/ft
unit("tonUS", "mass", mul(POUND, rational(2000)), { system: CUSTOMARY }); // [811] short ton
unit("tonUK", "mass", mul(POUND, rational(2240)), { system: CUSTOMARY }); // [811] long ton

// Time
unit("s", "time", ONE, { prefixes: SECOND, system: SHARED }); // [SI]
unit("min", "time", rational(60), { system: SHARED }); // [SI]
unit("h", "time", rational(3600), { system: SHARED }); // [SI]
unit("d", "time", rational(86400), { system: SHARED }); // [SI]

// Temperature
unit("K", "temperature", ONE, { prefixes: SMALL }); // [SI]
unit("°C", "temperature", ONE, { offset: exact("273.15") }); // [SI]
unit("°F", "temperature", RANKINE, { offset: mul(RANKINE, exact("459.67")), system: CUSTOMARY }); // [811]
unit("°R", "temperature", RANKINE, { system: CUSTOMARY }); // [811] degree Rankine

// Angle (coherent here: the turn), clock position, sound level
unit("turn", "angle", ONE, { system: SHARED }); // [80000] one revolution
unit("°", "angle", rational(1, 360), { system: SHARED }); // [SI] π/180 rad
unit("′", "angle", rational(1, 21600), { system: SHARED }); // [SI]
unit("″", "angle", rational(1, 1296000), { system: SHARED }); // [SI]
unit("gon", "angle", rational(1, 400), { system: SHARED }); // [811] gon, grade
unit("rad", "angle", rational(1, 2), { prefixes: SMALL, pi: -1, system: SHARED }); // [SI] 1/(2π) turn
unit("o'clock", "clock position", ONE, { system: SHARED });
unit("dB(A)", "sound level", ONE, { system: SHARED }); // IEC 61672-1

// Force
unit("N", "force", ONE, { prefixes: ALL }); // [SI]
unit("lbf", "force", LBF, { system: CUSTOMARY }); // [811]
unit("ozf", "force", div(LBF, rational(16)), { system: CUSTOMARY }); // [811]
unit("kip", "force", mul(LBF, rational(1000)), { system: CUSTOMARY }); // [811]
unit("kgf", "force", GRAVITY); // [811]
unit("gf", "force", div(GRAVITY, rational(1000))); // [811]
unit("tf", "force", mul(GRAVITY, rational(1000))); // [811]
unit("dyn", "force", exact("1e-5")); // [811]

// Energy and power
unit("J", "energy", ONE, { prefixes: ALL, only: ["energy"] }); // [SI]
unit("cal", "energy", exact("4.184"), { prefixes: ["k"], only: ["energy"] }); // [811] thermochemical
unit("Btu", "energy", exact("1055.05585262"), { only: ["energy"], system: CUSTOMARY }); // [811] International Table
unit("W", "power", ONE, { prefixes: ALL }); // [SI]
unit("VA", "power", ONE, { prefixes: LARGE }); // IEC 80000-6 apparent power
unit("hp", "power", mul(LBF, mul(FOOT, rational(550))), { system: CUSTOMARY }); // [811] 550 ft·lbf/s
unit("PS", "power", mul(GRAVITY, rational(75))); // [811] metric horsepower, 75 kgf·m/s

// Pressure
unit("Pa", "pressure", ONE, { prefixes: ALL, only: ["pressure"] }); // [SI]
unit("bar", "pressure", rational(100000), { prefixes: ["µ", "m", "k", "M"], only: ["pressure"] }); // [811]
unit("psi", "pressure", div(LBF, mul(INCH, INCH)), { only: ["pressure"], system: CUSTOMARY }); // [811]
unit("ksi", "pressure", div(mul(LBF, rational(1000)), mul(INCH, INCH)), { only: ["pressure"], system: CUSTOMARY }); // [811]
unit("atm", "pressure", rational(101325), { only: ["pressure"] }); // [811]
unit("Torr", "pressure", rational(101325, 760), { prefixes: ["m"], only: ["pressure"] }); // [811]
unit("mmHg", "pressure", MERCURY, { only: ["pressure"] }); // [conv] [811]
unit("inHg", "pressure", mul(MERCURY, exact("25.4")), { only: ["pressure"], system: CUSTOMARY }); // [conv] [811]
unit("mmH2O", "pressure", WATER, { only: ["pressure"] }); // [conv] [811]
unit("cmH2O", "pressure", mul(WATER, rational(10)), { only: ["pressure"] }); // [conv] [811]
unit("inH2O", "pressure", mul(WATER, exact("25.4")), { only: ["pressure"], system: CUSTOMARY }); // [conv] [811]
unit("ftH2O", "pressure", mul(WATER, exact("304.8")), { only: ["pressure"], system: CUSTOMARY }); // [conv] [811]

// Electricity
unit("V", "voltage", ONE, { prefixes: ALL, system: SHARED }); // [SI]
unit("A", "current", ONE, { prefixes: ALL, system: SHARED }); // [SI]
unit("Ω", "resistance", ONE, { prefixes: ALL, system: SHARED }); // [SI]
unit("F", "capacitance", ONE, { prefixes: ALL, system: SHARED }); // [SI]

// Frequency and rotational speed
unit("Hz", "frequency", ONE, { prefixes: ALL, only: ["frequency"], system: SHARED }); // [SI]
unit("rpm", "rotational speed", rational(1, 60), { only: ["rotational speed"], system: SHARED }); // [811] turn/min

// Speed and acceleration
unit("mph", "velocity", div(exact("1609.344"), rational(3600)), { system: CUSTOMARY }); // [811]
unit("kn", "velocity", rational(1852, 3600)); // [SI] knot
unit("gn", "acceleration", GRAVITY, { system: SHARED }); // [g] standard gravity

// Viscosity
unit("P", "dynamic viscosity", exact("0.1"), { prefixes: ["c", "m"] }); // [811] poise
unit("St", "kinematic viscosity", exact("0.0001"), { prefixes: ["c", "m"] }); // [811] stokes

// Ratio
unit("%", "ratio", rational(1, 100), { system: SHARED }); // [80000]
unit("‰", "ratio", rational(1, 1000), { system: SHARED });
unit("ppm", "ratio", exact("1e-6"), { only: ["concentration", "ratio"], system: SHARED }); // [811]
unit("ppb", "ratio", exact("1e-9"), { only: ["concentration", "ratio"], system: SHARED }); // [811]

function unit(text: string, kind: Kind, factor: Rational, options: Options = {}): void {
  for (const prefix of ["", ...(options.prefixes ?? [])]) {
    if (ATOMS.has(prefix + text)) throw new RangeError(`declared twice: ${prefix}${text}`);
    ATOMS.set(prefix + text, {
      text: prefix + text,
      dimension: factsOf(kind).dimension,
      factor: mul(factor, tenTo(PREFIXES[prefix] ?? 0)),
      pi: options.pi ?? 0,
      offset: options.offset ?? ZERO,
      only: options.only ?? null,
      system: options.system ?? METRIC,
    });
  }
}

/** A decimal constant of this table. */
function exact(text: string): Rational {
  const value = fromDecimal(text);
  if (value === null) throw new RangeError(`no decimal: ${text}`);
  return value;
}
