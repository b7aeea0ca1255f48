// Parts that are joined hot or cold: the clearance left at two temperatures, the temperatures that leave enough, and what
// is lost on the way. Exact; lengths at 20 °C, straight-line expansion. Knows no procedure.
import { addIntervals, divIntervals, type Interval, mulIntervals, negInterval } from "#quantity/interval.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { add, cmp, max, mul, neg, type Rational, rational, sub, ZERO } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import { type Given, type Input, input, limitOf, point, positive, quantityOf, readInputs, termOf } from "./ends.ts";
import { type Computed, explained, type Outcome, refused, type Term } from "./explanation.ts";

/** A fit that is joined hot or cold. Sizes are those at 20 °C (ISO 1; memory). */
export interface ShrinkFit {
  readonly diameter: Given;
  /** Its high end counts: the largest interference there can be. */
  readonly interference: Given;
  /** Mean coefficients from 20 °C; the other part's is taken where one is not known. */
  readonly expansion: { readonly outer: Given | null; readonly inner: Given | null };
  /** The temperatures that the inner's coefficient is a mean for, where that is said. */
  readonly meanFor?: Quantity | null;
}

/** The parts' temperatures when the outer goes over the inner: of the outer the low end counts, of the inner the high one. */
export interface JoiningTemperatures {
  readonly outer: Given;
  readonly inner: Given;
}

/**
 * The least clearance when the outer part goes over the inner: `d·[αo(To − 20) − αi(Ti − 20)] − δ`, with the low end of
 * the outer's temperature, the high end of the inner's, the largest interference, and of coefficients with a band the ends
 * that leave least. Below zero the parts jam. One coefficient does not hold below −50 °C: {@link expansionHolds}.
 */
export function leastClearance(fit: ShrinkFit, temperature: JoiningTemperatures): Computed {
  const grown = growthOf(fit, temperature);
  if (!grown.ok) return grown;
  const { growth, interference, terms } = grown.value;
  const clearance = sub(growth, interference);
  return explained({
    result: { name: "least clearance", symbol: "c", value: quantityOf("length", point(clearance), fineUnit(fit), 3) },
    formula: "c = d·[αo(To − 20 °C) − αi(Ti − 20 °C)] − δ",
    inputs: terms,
    source: EXPANSION,
    caution: cautionFor(fit, temperature.inner.value),
  });
}

/**
 * By how much the outer part has become larger than at 20 °C, beyond the inner: `g = d·[αo(To − 20) − αi(Ti − 20)]`, the
 * least of it, with the ends of {@link leastClearance}.
 */
export function leastGrowth(fit: ShrinkFit, temperature: JoiningTemperatures): Computed {
  const grown = growthOf(fit, temperature);
  if (!grown.ok) return grown;
  return explained({
    result: { name: "growth", symbol: "g", value: quantityOf("length", point(grown.value.growth), fineUnit(fit), 3) },
    formula: "g = d·[αo(To − 20 °C) − αi(Ti − 20 °C)]",
    inputs: grown.value.terms.filter(({ symbol }) => symbol !== INTERFERENCE),
    source: EXPANSION,
    caution: cautionFor(fit, temperature.inner.value),
  });
}

/**
 * The temperature that the outer part must have at least at the moment of joining, raised by what it loses until then:
 * `To = 20 °C + [(δ + s)/d + αi(Ti − 20 °C)]/αo + c·t`, s the slip clearance, Ti the high end of the inner's temperature,
 * c the cooling rate and t the time from the heater. Of bands, the ends that ask for most.
 */
export function neededOuterTemperature(
  fit: ShrinkFit,
  at: { readonly inner: Given; readonly slip: Given; readonly loss: Loss | null },
): Computed {
  const read = readFit(fit);
  const inner = temperatureEnd("temperature of the inner part", "Ti", at.inner, "high");
  const slip = lengthAtMost("slip clearance", "s", at.slip);
  const loss = lossOf(at.loss);
  if (!read.ok) return read;
  if (!inner.ok) return inner;
  if (!slip.ok) return slip;
  if (!loss.ok) return loss;
  const { diameter, interference, outerExpansion, innerExpansion, terms } = read.value;
  const wanted = divIntervals(alone(add(interference, slip.value.length)), diameter);
  const kept = mulIntervals(innerExpansion, alone(inner.value.above));
  const above = wanted && divIntervals(addIntervals(wanted, kept), outerExpansion);
  if (above === null || above.high === null) return refused({ why: "missing", input: "expansion" });
  const needed = add(add(above.high, loss.value.kelvin), REFERENCE);
  const [name, symbol, lost] =
    at.loss === null ? ["temperature of the outer part", "To", ""] : ["temperature at the heater", "T0", " + c·t"];
  return explained({
    result: { name, symbol, value: limitOf("temperature", "at least", needed, temperatureUnit(at.inner.value)) },
    formula: `${symbol} = 20 °C + [(δ + s)/d + αi(Ti − 20 °C)]/αo${lost}`,
    inputs: [...terms, slip.value.term, inner.value.term, ...loss.value.terms],
    source: EXPANSION,
    caution: cautionFor(fit, at.inner.value),
  });
}

/**
 * The temperature that the inner part may have at most: how cold a cooled shaft must be, or how warm the mate of a heated
 * ring may be. `Ti = 20 °C + [αo(To − 20 °C) − (δ + s)/d]/αi`, To the low end of the outer's temperature.
 */
export function highestInnerTemperature(fit: ShrinkFit, at: { readonly outer: Given; readonly slip: Given }): Computed {
  const read = readFit(fit);
  const outer = temperatureEnd("temperature of the outer part", "To", at.outer, "low");
  const slip = lengthAtMost("slip clearance", "s", at.slip);
  if (!read.ok) return read;
  if (!outer.ok) return outer;
  if (!slip.ok) return slip;
  const { diameter, interference, outerExpansion, innerExpansion, terms } = read.value;
  const wanted = divIntervals(alone(add(interference, slip.value.length)), diameter);
  const grown = mulIntervals(outerExpansion, alone(outer.value.above));
  const above = wanted && divIntervals(addIntervals(grown, negInterval(wanted)), innerExpansion);
  if (above === null || above.low === null) return refused({ why: "missing", input: "expansion" });
  const highest = add(above.low, REFERENCE);
  if (cmp(highest, ZERO) <= 0) return refused({ why: "not above zero", input: "temperature of the inner part" });
  const value = limitOf("temperature", "at most", highest, temperatureUnit(at.outer.value));
  return explained({
    result: { name: "temperature of the inner part", symbol: "Ti", value },
    formula: "Ti = 20 °C + [αo(To − 20 °C) − (δ + s)/d]/αi",
    inputs: [...terms, slip.value.term, outer.value.term],
    source: EXPANSION,
    caution: cautionFor(fit, value),
  });
}

/** What a part loses between heater and joining. */
export interface Loss {
  readonly rate: Given;
  readonly time: Given;
}

/**
 * The lowest temperature of a heated part after a time: `T = T0 − c·t`, not below ambient; low T0, high rate and time.
 * A constant rate is on the safe side for a fit and never for a burn: a part cools ever more slowly.
 */
export function temperatureAfter(start: Given, loss: Loss, ambient: Given): Computed {
  const from = temperatureEnd("temperature at the heater", "T0", start, "low");
  const around = temperatureEnd("ambient temperature", "Ta", ambient, "low");
  const lost = lossOf(loss);
  if (!from.ok) return from;
  if (!around.ok) return around;
  if (!lost.ok) return lost;
  const lowest = max(sub(from.value.above, lost.value.kelvin), around.value.above);
  return explained({
    result: {
      name: "temperature after the time",
      symbol: "T",
      value: limitOf("temperature", "at least", add(lowest, REFERENCE), temperatureUnit(start.value)),
    },
    formula: "T = T0 − c·t, not below Ta",
    inputs: [from.value.term, ...lost.value.terms, around.value.term],
    source: "a constant cooling rate, as declared (practice)",
    caution: "On the safe side for a fit, not for a burn: treat the part as hot until it is measured cool.",
  });
}

/**
 * Whether one mean coefficient may be used down to a temperature: from −50 °C upward (memory), or in the range that it is
 * declared for.
 */
export function expansionHolds({ low, nominal, high }: Quantity, meanFor: Quantity | null = null): boolean {
  const coldest = low ?? nominal ?? high;
  if (coldest === null || cmp(coldest.base, COLD) >= 0) return true;
  return meanFor !== null && meanFor.low !== null && cmp(meanFor.low.base, coldest.base) <= 0;
}

const REFERENCE = rational(29315, 100);
const COLD = rational(22315, 100);
const EXPANSION = "straight-line thermal expansion from 20 °C (ISO 1 for the reference; memory)";
const CAUTION =
  "Measure part and mate at contact; treat as hot until measured cool; if it sticks, take it off and heat again.";
const COLD_CAUTION =
  "Below −50 °C steel shrinks less than one coefficient says: use a mean for the range, or expect the part to stick.";

interface FitEnds {
  readonly diameter: Interval;
  readonly interference: Rational;
  readonly outerExpansion: Interval;
  readonly innerExpansion: Interval;
  readonly terms: readonly Term[];
}

function readFit({ diameter, interference, expansion }: ShrinkFit): Outcome<FitEnds> {
  const { outer, inner } = expansion;
  const either = outer ?? inner;
  if (either === null) return refused({ why: "missing", input: "expansion" });
  const taken = { value: either.value, source: "taken as the other part's" };
  const inputs = {
    diameter: positive("diameter", "d", "length", diameter),
    outer: positive("expansion of the outer part", "αo", COEFFICIENT, outer ?? taken),
    inner: positive("expansion of the inner part", "αi", COEFFICIENT, inner ?? taken),
  };
  const read = readInputs(inputs);
  const largest = lengthAtMost("largest interference", INTERFERENCE, interference);
  if (!read.ok) return read;
  if (!largest.ok) return largest;
  return {
    ok: true,
    value: {
      diameter: read.value.diameter,
      interference: largest.value.length,
      outerExpansion: read.value.outer,
      innerExpansion: read.value.inner,
      terms: [termOf(inputs.diameter), largest.value.term, termOf(inputs.outer), termOf(inputs.inner)],
    },
  };
}

function growthOf(
  fit: ShrinkFit,
  temperature: JoiningTemperatures,
): Outcome<{ readonly growth: Rational; readonly interference: Rational; readonly terms: readonly Term[] }> {
  const read = readFit(fit);
  const outer = temperatureEnd("temperature of the outer part", "To", temperature.outer, "low");
  const inner = temperatureEnd("temperature of the inner part", "Ti", temperature.inner, "high");
  if (!read.ok) return read;
  if (!outer.ok) return outer;
  if (!inner.ok) return inner;
  const { diameter, interference, outerExpansion, innerExpansion, terms } = read.value;
  const grown = mulIntervals(outerExpansion, alone(outer.value.above));
  const kept = mulIntervals(innerExpansion, alone(inner.value.above));
  const growth = mulIntervals(diameter, addIntervals(grown, negInterval(kept))).low;
  if (growth === null) return refused({ why: "missing", input: "temperature" });
  return { ok: true, value: { growth, interference, terms: [...terms, outer.value.term, inner.value.term] } };
}

const INTERFERENCE = "δ";
const COEFFICIENT = "thermal expansion coefficient";

/** One end of a temperature, in kelvin above 20 °C. */
function temperatureEnd(
  name: string,
  symbol: string,
  given: Given,
  end: "low" | "high",
): Outcome<{ readonly above: Rational; readonly term: Term }> {
  const asked: Input = input(name, symbol, "temperature", given);
  if (given.value.kind !== "temperature") return refused({ why: "wrong kind", input: name, wanted: "temperature" });
  const found = given.value.form === "nominal" ? given.value.nominal : given.value[end];
  if (found === null) return refused({ why: "open end", input: name, end });
  return { ok: true, value: { above: sub(found.base, REFERENCE), term: termOf(asked) } };
}

/** The high end of a length; its low end may be open. */
function lengthAtMost(
  name: string,
  symbol: string,
  given: Given,
): Outcome<{ readonly length: Rational; readonly term: Term }> {
  if (given.value.kind !== "length") return refused({ why: "wrong kind", input: name, wanted: "length" });
  const found = given.value.form === "nominal" ? given.value.nominal : given.value.high;
  if (found === null) return refused({ why: "open end", input: name, end: "high" });
  return { ok: true, value: { length: found.base, term: termOf(input(name, symbol, "length", given)) } };
}

/** The kelvin lost at most. */
function lossOf(loss: Loss | null): Outcome<{ readonly kelvin: Rational; readonly terms: readonly Term[] }> {
  if (loss === null) return { ok: true, value: { kelvin: ZERO, terms: [] } };
  const inputs = {
    rate: input("cooling rate", "c", "temperature rate", loss.rate),
    time: input("time", "t", "time", loss.time),
  };
  const read = readInputs(inputs);
  if (!read.ok) return read;
  const kelvin = mul(read.value.rate.high, read.value.time.high);
  return { ok: true, value: { kelvin: max(kelvin, neg(kelvin)), terms: Object.values(inputs).map(termOf) } };
}

function alone(value: Rational): Interval {
  return { low: value, high: value };
}

function cautionFor({ meanFor = null }: ShrinkFit, cold: Quantity): string {
  return expansionHolds(cold, meanFor) ? CAUTION : `${COLD_CAUTION} ${CAUTION}`;
}

/** Micrometres or thousandths of an inch, as the diameter is metric or not. */
function fineUnit({ diameter }: ShrinkFit): Unit {
  return unitNamed(diameter.value.nominal?.unit.system === "customary" ? "thou" : "µm");
}

function temperatureUnit(given: Quantity): Unit {
  return (given.nominal ?? given.low ?? given.high)?.unit ?? unitNamed("°C");
}
