// Reads a unit text: canonical form, exact factor, the kinds it can express, and whether its spelling or sense is in doubt.
import { DIMENSIONLESS, type Dimension, exponentOf, times } from "./dimension.ts";
import { factsOf, type Kind, kindsOf } from "./kind.ts";
import { nearestUnits } from "./nearest-unit.ts";
import type { Qualifier } from "./quantity.ts";
import { add, div, mul, ONE, power, type Rational, rational, sub, ZERO } from "./rational.ts";
import { type Factor, LONGEST_UNIT, parseUnitExpression } from "./unit-parser.ts";
import {
  type Doubt,
  doubtfulFor,
  doubtfulName,
  plainSpelling,
  spacedSpelling,
  spellingFor,
  weightOf,
  wholeSpelling,
} from "./unit-spellings.ts";
import { type Atom, atomNamed } from "./unit-table.ts";

/** A unit, simple or compound, with what its text says beside it (`V AC`). */
export interface Unit {
  /** The canonical spelling, with its qualifier; empty for the unit of a bare number. */
  readonly text: string;
  readonly dimension: Dimension;
  /** Exact factor to the coherent unit, but for {@link pi}. */
  readonly factor: Rational;
  /** The power of π that belongs to the factor. */
  readonly pi: number;
  /** Kelvin at the zero of an affine temperature scale; counts for temperatures, never for differences. */
  readonly offset: Rational;
  /** The kinds it can express, the likeliest first; empty where its dimension is that of no kind. */
  readonly kinds: readonly Kind[];
  readonly qualifier: Qualifier | null;
  readonly system: "metric" | "customary" | "shared";
}

export type UnitReading =
  | {
      readonly ok: true;
      readonly unit: Unit;
      /** Whether the spelling is one the formatter replaces by {@link Unit.text}, and worth a hint. */
      readonly style: boolean;
      /** Set where the text can mean something else: what it was read as, and why that is in doubt. */
      readonly ambiguous: null | { readonly readAs: string; readonly why: string };
    }
  | { readonly ok: false; readonly nearest: readonly string[] };

/** Reads `text` in a place that wants `wanted` (null: any kind). A unit of another kind than wanted is read too. Total. */
export function readUnit(text: string, wanted: Kind | null): UnitReading {
  if (text.length > LONGEST_UNIT) return { ok: false, nearest: [] };
  const key = `${wanted ?? ""}\n${text}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const reading = read(normalised(text), wanted);
  const result = reading ?? noUnit(text, wanted);
  if (cache.size > CACHE_LIMIT) cache.clear();
  cache.set(key, result);
  return result;
}

/** The lexer asks of every word behind a number whether it is a unit, and wants no other of those that are none. */
function noUnit(text: string, wanted: Kind | null): UnitReading {
  let nearest: readonly string[] | undefined;
  return {
    ok: false,
    get nearest() {
      nearest ??= nearestUnits(text, wanted);
      return nearest;
    },
  };
}

/** A unit of the project's own tables by its canonical text. Throws for any other text. */
export function unitNamed(text: string): Unit {
  if (text === "") return BARE;
  const reading = readUnit(text, null);
  if (!reading.ok) throw new RangeError(`no unit: ${text}`);
  return reading.unit;
}

/** The unit of a number without one. */
export const BARE: Unit = {
  text: "",
  dimension: DIMENSIONLESS,
  factor: ONE,
  pi: 0,
  offset: ZERO,
  kinds: ["ratio"],
  qualifier: null,
  system: "shared",
};

/** The value in the coherent unit of `kind`: with the offset for a temperature, without for anything else. */
export function toBase(written: Rational, unit: Unit, kind: Kind | null): Rational {
  const scaled = mul(written, scaleOf(unit));
  return kind === "temperature" ? add(scaled, unit.offset) : scaled;
}

/** The number in `unit` of a value in the coherent unit of `kind`: the exact inverse of {@link toBase}. */
export function fromBase(base: Rational, unit: Unit, kind: Kind | null): Rational {
  return div(kind === "temperature" ? sub(base, unit.offset) : base, scaleOf(unit));
}

/** The factor with π put in, to 50 decimals. */
export function scaleOf(unit: Unit): Rational {
  return unit.pi === 0 ? unit.factor : mul(unit.factor, power(PI, unit.pi));
}

/** The spelling with the variants that no eye can tell apart made one: µ, ·, Ω, ', blank. */
export function normalised(text: string): string {
  return text
    .trim()
    .replaceAll("\u03bc", "\u00b5")
    .replaceAll("\u2126", "\u03a9")
    .replace(/[\u22c5\u2219\u2022]/g, "\u00b7")
    .replaceAll("\u2019", "'")
    .replace(/[ \t\u00a0\u202f\u2009]+/g, " ");
}

const PI = rational(314159265358979323846264338327950288419716939937510n, 10n ** 50n);
const CACHE_LIMIT = 5000;
const cache = new Map<string, UnitReading>();

/** What reading a name or an expression gave: atoms with exponents in the order written. */
interface Reading {
  readonly powers: readonly AtomPower[];
  readonly qualifier: Qualifier | null;
  readonly doubt: Doubt | null;
}

interface AtomPower {
  readonly atom: Atom;
  readonly exponent: number;
}

function read(text: string, wanted: Kind | null): UnitReading | null {
  const { body, qualifier } = splitQualifier(text);
  const replaced = wanted === null ? undefined : spellingFor(body, wanted);
  const doubted = wanted === null ? undefined : doubtfulFor(body, wanted);
  const expression = readText(doubted?.readAs ?? replaced ?? body);
  if (expression === null) return null;
  const weighed = doubted === undefined ? weighedReading(expression, body, wanted) : { ...expression, doubt: doubted };
  if (qualifier !== null && weighed.qualifier !== null) return null;
  return finished({ ...weighed, qualifier: qualifier ?? weighed.qualifier }, text, wanted);
}

function finished(reading: Reading, text: string, wanted: Kind | null): UnitReading | null {
  const unit = unitOf(reading);
  if (!qualifierFits(unit)) return null;
  const again = wanted === null ? undefined : spellingFor(unit.text, wanted);
  if (again !== undefined && again !== text) {
    const other = read(again, wanted);
    if (other?.ok) return { ...other, style: true };
  }
  const doubt = reading.doubt === null ? null : { readAs: unit.text, why: reading.doubt.why };
  return { ok: true, unit, style: doubt === null && unit.text !== text, ambiguous: doubt };
}

// ---- names and expressions

function readText(text: string): Reading | null {
  const whole = spacedSpelling(text) ?? wholeSpelling(text);
  if (whole !== undefined) {
    const { body, qualifier } = splitQualifier(whole);
    const inner = body === text ? null : readText(body);
    return inner === null ? null : { ...inner, qualifier };
  }
  const parsed = parseUnitExpression(text);
  if (parsed === null) return null;
  const powers: AtomPower[] = [];
  let doubt: Doubt | null = null;
  for (const factor of parsed.factors) {
    const named = readName(factor);
    if (named === null) return null;
    powers.push(...named.powers);
    doubt ??= named.doubt;
  }
  if (parsed.hyphen && !isForceTimesLength(powers)) return null;
  return powers.length === 0 ? null : { powers, qualifier: null, doubt };
}

function readName({ name, exponent }: Factor): Reading | null {
  const atom = atomNamed(name) ?? atomNamed(plainSpelling(name) ?? "");
  if (atom !== undefined) return { powers: [{ atom, exponent }], qualifier: null, doubt: null };
  const doubt = doubtfulName(name);
  const stands = doubt?.readAs ?? wholeSpelling(name);
  const inner = stands === undefined || stands === name ? null : readText(stands);
  if (inner === null || inner.qualifier !== null) return null;
  const powers = inner.powers.map((one) => ({ atom: one.atom, exponent: one.exponent * exponent }));
  return { powers, qualifier: null, doubt: doubt ?? inner.doubt };
}

const QUALIFIERS: Readonly<Record<string, Qualifier>> = {
  ac: "AC",
  dc: "DC",
  absolute: "absolute",
  abs: "absolute",
  gauge: "gauge",
  gage: "gauge",
};

function splitQualifier(text: string): { body: string; qualifier: Qualifier | null } {
  const at = text.lastIndexOf(" ");
  const word = text.slice(at + 1).toLowerCase();
  const qualifier = at > 0 && Object.hasOwn(QUALIFIERS, word) ? QUALIFIERS[word] : undefined;
  return qualifier === undefined ? { body: text, qualifier: null } : { body: text.slice(0, at), qualifier };
}

function qualifierFits(unit: Unit): boolean {
  switch (unit.qualifier) {
    case null:
      return true;
    case "AC":
    case "DC":
      return unit.kinds.includes("voltage") || unit.kinds.includes("current");
    default:
      return unit.kinds.includes("pressure");
  }
}

// ---- units of mass that stand for the force of their weight

/** A pound with a foot is a torque to a fitter: where the mass does not fit the place and its weight does, that is meant. */
function weighedReading(reading: Reading, text: string, wanted: Kind | null): Reading {
  if (!reading.powers.some((one) => weightOf(one.atom.text) !== undefined)) return reading;
  const weighed = { ...reading, powers: reading.powers.map(weigh) };
  if (weighed.powers.length === 1) return reading;
  const own = dimensionOf(reading.powers);
  const other = dimensionOf(weighed.powers);
  const meant =
    wanted === null
      ? isShopTorque(reading.powers, text) || (other === PRESSURE && kindsOf(own).length === 0)
      : factsOf(wanted).dimension !== own && factsOf(wanted).dimension === other;
  if (!meant) return reading;
  const metric = reading.powers.some((one) => one.atom.system === "metric" && weightOf(one.atom.text) !== undefined);
  return metric ? { ...weighed, doubt: { readAs: text, why: "it is built on a unit of mass" } } : weighed;
}

/** `ft-lb`, `in lb`, `ft·lb`: the length first, or no product sign, is how a torque is said. */
function isShopTorque(powers: readonly AtomPower[], text: string): boolean {
  if (!isForceTimesLength(powers)) return false;
  return !/[·*]/.test(text) || exponentOf(powers[0]?.atom.dimension ?? DIMENSIONLESS, "length") === 1;
}

function weigh(one: AtomPower): AtomPower {
  const force = atomNamed(weightOf(one.atom.text) ?? "");
  return force === undefined ? one : { atom: force, exponent: one.exponent };
}

const LENGTH = factsOf("length").dimension;
const FORCE = factsOf("force").dimension;
const MASS = factsOf("mass").dimension;
const PRESSURE = factsOf("pressure").dimension;

/** A force (or a mass) times a length, and nothing else. */
function isForceTimesLength(powers: readonly AtomPower[]): boolean {
  if (powers.length !== 2 || powers.some((one) => one.exponent !== 1)) return false;
  const dimensions = powers.map((one) => one.atom.dimension);
  return dimensions.includes(LENGTH) && (dimensions.includes(FORCE) || dimensions.includes(MASS));
}

// ---- the unit

function unitOf({ powers, qualifier }: Reading): Unit {
  const single = powers.length === 1 && powers[0]?.exponent === 1 ? powers[0].atom : null;
  const own = dimensionOf(powers);
  return {
    text: canonicalText(powers) + (qualifier === null ? "" : ` ${qualifier}`),
    dimension: own,
    factor: powers.reduce((product, one) => mul(product, power(one.atom.factor, one.exponent)), ONE),
    pi: powers.reduce((sum, one) => sum + one.atom.pi * one.exponent, 0),
    offset: single?.offset ?? ZERO,
    kinds: single?.only ?? kindsOf(own).filter((kind) => expresses(powers, own, kind)),
    qualifier,
    system: systemOf(powers),
  };
}

function dimensionOf(powers: readonly AtomPower[]): Dimension {
  return powers.reduce((product, one) => times(product, one.atom.dimension, one.exponent), DIMENSIONLESS);
}

/** Torque and energy share a dimension: a force times a length is a torque, what holds watts or joules an energy. */
function expresses(powers: readonly AtomPower[], own: Dimension, kind: Kind): boolean {
  if (own !== factsOf("torque").dimension) return true;
  if (isForceTimesLength(powers)) return kind === "torque";
  const ofEnergy = powers.some((one) => {
    return one.atom.only?.includes("energy") || one.atom.dimension === factsOf("power").dimension;
  });
  return ofEnergy ? kind === "energy" : true;
}

function systemOf(powers: readonly AtomPower[]): Unit["system"] {
  if (powers.some((one) => one.atom.system === "customary")) return "customary";
  return powers.some((one) => one.atom.system === "metric") ? "metric" : "shared";
}

function canonicalText(powers: readonly AtomPower[]): string {
  const above = powers.filter((one) => one.exponent > 0).sort(heavyFirst);
  const below = powers.filter((one) => one.exponent < 0);
  const bottom = below.map((one) => one.atom.text + superscript(-one.exponent)).join("·");
  const top = above.map((one) => one.atom.text + superscript(one.exponent)).join("·");
  if (below.length === 0) return top;
  return `${top === "" ? "1" : top}/${below.length > 1 ? `(${bottom})` : bottom}`;
}

/** Forces and masses stand before lengths (`lbf·ft`, `g·mm`); anything else stays as written. */
function heavyFirst(a: AtomPower, b: AtomPower): number {
  return lightness(a) - lightness(b);
}

function lightness(one: AtomPower): number {
  return exponentOf(one.atom.dimension, "mass") === 0 ? 1 : 0;
}

function superscript(exponent: number): string {
  if (exponent === 1) return "";
  return { 2: "²", 3: "³" }[exponent] ?? `^${exponent}`;
}
