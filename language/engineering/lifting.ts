// What a person, a crew and a sling may carry: NIOSH's multipliers, shares for several people, load on a sling leg. Exact,
// but for the sine of an angle. Knows no threshold but the ones it is given.
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { abs, add, cmp, div, max, min, mul, ONE, type Rational, rational, sub, ZERO } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import { sine } from "./cosine.ts";
import {
  difference,
  type Ends,
  type Given,
  type Input,
  input,
  limitOf,
  point,
  quantityOf,
  readInput,
  termOf,
} from "./ends.ts";
import { type Computed, explained, type Outcome, type Refused, refused, type Term } from "./explanation.ts";

/** How a load is lifted by hand; what is null is taken as ideal. */
export interface HandLift {
  /** From the middle between the ankles to the hands. */
  readonly horizontal: Given | null;
  /** Of the hands above the floor, where the lift begins. */
  readonly height: Given | null;
  /** By which the hands rise or sink. */
  readonly travel: Given | null;
  /** From straight ahead to the load, about the body's axis. */
  readonly twist: Given | null;
}

/** What one thing about a lift leaves of the limit: 1 where it is ideal, 0 where nobody should lift so. */
export interface LiftFactor {
  readonly name: string;
  readonly value: Quantity;
  readonly factor: Quantity;
}

/** One person's limit with what lowered it. */
export type HandLimit = (Extract<Computed, { ok: true }> & { readonly factors: readonly LiftFactor[] }) | Refused;

/**
 * By how much the hands rise or sink between two heights, at most and at least.
 * @returns null where a height has no upper end
 */
export function travelBetween(from: Given, to: Given): Given | null {
  const [begin, end] = [from, to].map((height) => liftEnds(input("height", "V", "length", height)));
  if (begin?.ok !== true || end?.ok !== true) return null;
  const { low, high } = difference(end.value, begin.value);
  const [a, b] = [abs(low), abs(high)];
  const least = cmp(low, ZERO) <= 0 && cmp(high, ZERO) >= 0 ? ZERO : min(a, b);
  const unit = (to.value.nominal ?? to.value.high ?? to.value.low)?.unit ?? unitNamed("cm");
  return { value: quantityOf("length", { low: least, nominal: null, high: max(a, b) }, unit) };
}

/**
 * The mass that one person may lift: `m = LC·HM·VM·DM·AM` with `HM = 25/H`, `VM = 1 − 0.003·|V − 75|`, `DM = 0.82 + 4.5/D`,
 * `AM = 1 − 0.0032·A` in cm and degrees, none above 1 (NIOSH 94-110; second). LC is the limit for an ideal lift. Of bands,
 * the end that allows less. Zero beyond H 63 cm, V 175 cm, D 175 cm and A 135°, as the tables have it.
 *
 * For healthy adults, slow two-handed lifts now and then with a good hold: frequency and coupling are left out.
 */
export function handLimit(limit: Given, lift: HandLift): HandLimit {
  const base = lowMass(limit);
  const lowered: LiftFactor[] = [];
  if (!base.ok) return base;
  const terms: Term[] = [termOf(input("limit of an ideal lift", "LC", "mass", limit))];
  let product = base.value;
  const factors: string[] = ["LC"];
  for (const { given, name, symbol, mark, kind, multiplier } of multipliersOf(lift)) {
    if (given === null) continue;
    const one = input(name, symbol, kind, given);
    const ends = liftEnds(one);
    if (!ends.ok) return ends;
    if (cmp(ends.value.low, ZERO) < 0)
      return refused({ why: "outside", input: name, limits: atLeastZero(kind, given) });
    const factor = multiplier(ends.value);
    product = mul(product, factor);
    terms.push(termOf(one));
    factors.push(mark);
    lowered.push({ name, value: given.value, factor: quantityOf("ratio", point(factor), unitNamed(""), 3) });
  }
  const computed = explained({
    result: {
      name: "mass for one person",
      symbol: "m",
      value: limitOf("mass", "at most", product, massUnit(limit), 3),
    },
    formula: `m = ${factors.join("·")}`,
    inputs: terms,
    source: NIOSH,
    caution: CAUTION,
  });
  return computed.ok ? { ...computed, factors: lowered } : computed;
}

/**
 * What a crew may lift by hand: the sum of one person's limits, and the mass from which a warning is due: two thirds of
 * the sum for two people, half for three and more (HSE guidance; read).
 */
export function crewLimit(onePerson: Given, people: number, which: "sum" | "warning"): Computed {
  const base = lowMass(onePerson, "none may be");
  if (!base.ok) return base;
  if (!Number.isInteger(people) || people < 1)
    return refused({ why: "not known", input: "crew", given: String(people) });
  const share = which === "sum" || people === 1 ? ONE : people === 2 ? rational(2, 3) : rational(1, 2);
  const limit = mul(mul(base.value, rational(people)), share);
  const value = limitOf("mass", "at most", limit, massUnit(onePerson), 3);
  return explained({
    result: { name: which === "sum" ? "limit for the crew" : "mass with care for the crew", symbol: "m", value },
    formula: `m = ${people}·m1${share === ONE ? "" : `·${share.n}/${share.d}`}`,
    inputs: [termOf(input("limit for one person", "m1", "mass", onePerson))],
    source: "HSE guidance on handling as a team (read)",
    caution: CAUTION,
  });
}

/**
 * The load on one leg of a sling, as a mass: `m/(n·sin θ)`, θ between leg and the horizontal at its low end, m at its high
 * end. Three and more legs count as two, since a stiff load can hang on two of them. Refused under 30° and above 90°; `at least
 * 60°` ends there (ASME B30.9; memory). For a load whose centre lies midway between legs of one length.
 */
export function slingLegLoad(load: Given, legs: number, angle: Given): Computed {
  const mass = input("mass", "m", "mass", load);
  const inclined = input("angle to the horizontal", "θ", "angle", angle);
  const read = readInput(mass);
  const turned = readInput(angle.value.form === "at least" ? upTo(inclined, NINETY) : inclined);
  if (!read.ok) return read;
  if (!turned.ok) return turned;
  if (!Number.isInteger(legs) || legs < 1)
    return refused({ why: "not known", input: "sling legs", given: String(legs) });
  const { low, high } = turned.value;
  if (cmp(low, THIRTY) < 0 || cmp(high, NINETY) > 0) {
    const limits = quantityOf("angle", { low: THIRTY, nominal: null, high: NINETY }, unitNamed("°"));
    return refused({ why: "outside", input: inclined.name, limits });
  }
  const carrying = Math.min(legs, 2);
  const share = div(read.value.high, mul(rational(carrying), sine(point(low)).low));
  return explained({
    result: { name: "load on one leg", symbol: "m1", value: quantityOf("mass", point(share), massUnit(load), 4) },
    formula: `m1 = m/(${carrying}·sin θ)`,
    inputs: [termOf(mass), termOf(inclined)],
    source: "ASME B30.9 (memory)",
    caution: LOAD_CAUTION,
  });
}

/** A mass, and whose it is. */
export interface Weight {
  readonly of: string;
  readonly mass: Given;
}

/**
 * The mass of all that hangs together: `m = Σ mᵢ`, each at its high end, since it may weigh as much.
 * @param weights at least one
 * @param most what the tool or the crew may lift, to be shown beside it
 */
export function hangingMass(weights: readonly Weight[], most: Weight | null): Computed {
  const inputs = weights.map(({ of, mass }, at) => input(`mass of ${of}`, `m${at + 1}`, "mass", mass));
  const [first] = inputs;
  if (first === undefined) return refused({ why: "missing", input: "mass" });
  let total = ZERO;
  for (const { name, value } of inputs) {
    const end = value.high ?? value.nominal ?? value.low;
    if (value.kind !== "mass") return refused({ why: "wrong kind", input: name, wanted: "mass" });
    if (end === null) return refused({ why: "open end", input: name, end: "high" });
    total = add(total, end.base);
  }
  const limit = most === null ? [] : [input(`limit of ${most.of}`, "C", "mass", most.mass)];
  return explained({
    result: { name: "mass that hangs", symbol: "m", value: quantityOf("mass", point(total), massUnit(first), 4) },
    formula: `m = ${inputs.map(({ symbol }) => symbol).join(" + ")}${most === null ? "" : ", at most C"}`,
    inputs: [...inputs, ...limit].map(termOf),
    source: "the sum of the masses as declared, each at its high end",
    caution: LOAD_CAUTION,
  });
}

const NIOSH = "NIOSH 94-110 (second)";
const LOAD_CAUTION = "Mass as declared; centre of gravity and attachment not checked; nobody under or beside the load.";
const CAUTION = "For healthy adults with a good hold, now and then; the site's own assessment governs.";
const [THIRTY, NINETY] = [rational(1, 12), rational(1, 4)];

interface Multiplier {
  readonly given: Given | null;
  readonly name: string;
  readonly symbol: string;
  readonly mark: string;
  readonly kind: Kind;
  readonly multiplier: (ends: Ends) => Rational;
}

function multipliersOf({ horizontal, height, travel, twist }: HandLift): readonly Multiplier[] {
  return [
    { given: horizontal, name: "reach", symbol: "H", mark: "25/H", kind: "length", multiplier: byReach },
    { given: height, name: "height", symbol: "V", mark: "(1 − 0.003·|V − 75|)", kind: "length", multiplier: byHeight },
    { given: travel, name: "travel", symbol: "D", mark: "(0.82 + 4.5/D)", kind: "length", multiplier: byTravel },
    { given: twist, name: "twist", symbol: "A", mark: "(1 − 0.0032·A)", kind: "angle", multiplier: byTwist },
  ];
}

/** Metres: `25 cm` is 1/4. */
const [NEAR, FAR, KNUCKLE, REACHABLE] = [rational(1, 4), rational(63, 100), rational(3, 4), rational(7, 4)];

function byReach({ high }: Ends): Rational {
  if (cmp(high, FAR) > 0) return ZERO;
  return cmp(high, NEAR) <= 0 ? ONE : div(NEAR, high);
}

function byHeight({ low, high }: Ends): Rational {
  if (cmp(high, REACHABLE) > 0) return ZERO;
  const off = max(abs(sub(low, KNUCKLE)), abs(sub(high, KNUCKLE)));
  return sub(ONE, mul(rational(3, 10), off));
}

function byTravel({ high }: Ends): Rational {
  if (cmp(high, REACHABLE) > 0) return ZERO;
  return cmp(high, NEAR) <= 0 ? ONE : add(rational(82, 100), div(rational(45, 1000), high));
}

/** In turns: 0.0032 for each of 360 degrees, none beyond three eighths of a turn. */
function byTwist({ high }: Ends): Rational {
  return cmp(high, rational(3, 8)) > 0 ? ZERO : sub(ONE, mul(rational(1152, 1000), high));
}

/** Both ends; what is given as `at most` begins at zero. */
function liftEnds(one: Input): Outcome<Ends> {
  const { high } = one.value;
  if (one.value.form !== "at most" || high === null) return readInput(one);
  return readInput({ ...one, value: { ...one.value, form: "range", low: { ...high, base: ZERO, written: ZERO } } });
}

/** What is given as `at least`, ended there. */
function upTo(one: Input, end: Rational): Input {
  const { low } = one.value;
  if (low === null) return one;
  return { ...one, value: { ...one.value, form: "range", high: { ...low, base: max(end, low.base) } } };
}

/**
 * The low end of a mass, which may be all that is given of it: a limit counts at its lowest.
 * @param zero whether a limit of nothing is one: nobody should lift so
 */
function lowMass(given: Given, zero: "none may be" | "refused" = "refused"): Outcome<Rational> {
  const { value } = given;
  if (value.kind !== "mass") return refused({ why: "wrong kind", input: "limit", wanted: "mass" });
  const end = value.low ?? value.nominal ?? value.high;
  if (end === null || cmp(end.base, ZERO) < (zero === "refused" ? 1 : 0))
    return refused({ why: "not above zero", input: "limit" });
  return { ok: true, value: end.base };
}

function massUnit({ value }: Given): Unit {
  return (value.nominal ?? value.low ?? value.high)?.unit ?? unitNamed("kg");
}

function atLeastZero(kind: Kind, { value }: Given): Quantity {
  const unit = (value.nominal ?? value.low)?.unit ?? unitNamed("m");
  return limitOf(kind, "at least", ZERO, unit);
}
