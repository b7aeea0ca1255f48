// The preload that a torque gives by friction in thread and under head, in VDI 2230's form, and the highest a bolt bears
// while it is tightened. The pitch diameter and what has a root in it are floating-point numbers in SI, the rest is exact.
import { fromDecimal, mul, type Rational, rational, toNumber } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import {
  type Ends,
  fromNumber,
  type Given,
  input,
  point,
  positive,
  product,
  quantityOf,
  quotient,
  readInput,
  readInputs,
  rising,
  sum,
  termOf,
} from "./ends.ts";
import { type Computed, explained, type Outcome, refused, type Term } from "./explanation.ts";
import { clampingOf, ESTIMATE, explainedPreload, explainedTorque, type Tightening } from "./preload.ts";
import type { Strength } from "./strength.ts";
import { pitchDiameterOf, stressAreaOf, type Thread, threadTerm } from "./thread.ts";

/** Where a bolt's head or nut rubs. */
export interface Bearing {
  /** Outer diameter of the bearing face. */
  readonly outer: Given;
  /** Diameter of the hole, or inner diameter of the bearing face where that is larger. */
  readonly hole: Given;
}

/** Coefficients of friction, for the condition thread and bearing face are in. */
export interface Friction {
  readonly inThread: Given;
  readonly underHead: Given;
}

/**
 * Preload by friction: `F = (T − Tp)/(0.16 P + 0.58 d2 µG + µK (dw + dh)/4)` (VDI 2230 part 1; second). For 60° threads
 * and a flat ring-shaped bearing face.
 */
export function preloadByFriction(
  thread: Thread,
  tightening: Tightening,
  friction: Friction,
  bearing: Bearing,
): Computed {
  const clamping = clampingOf(tightening);
  const lever = leverOf(thread, friction, bearing);
  if (!clamping.ok) return clamping;
  if (!lever.ok) return lever;
  return explainedPreload(tightening, quotient(clamping.value.torque, lever.value.ends), {
    formula: `F = ${clamping.value.symbol}/(${LEVER})`,
    inputs: [...clamping.value.terms, ...lever.value.terms],
    source: VDI,
    caution: ESTIMATE,
  });
}

/** The torque for a preload by friction: the inverse of {@link preloadByFriction}. */
export function torqueByFriction(
  thread: Thread,
  force: Given,
  friction: Friction,
  bearing: Bearing,
  prevailing: Given | null,
): Computed {
  const wanted = positive("preload", "F", "force", force);
  const read = readInput(wanted);
  const lever = leverOf(thread, friction, bearing);
  if (!read.ok) return read;
  if (!lever.ok) return lever;
  const clamping = product(read.value, lever.value.ends);
  const how = {
    formula: `T = F·(${LEVER})`,
    inputs: [termOf(wanted), ...lever.value.terms],
    source: VDI,
    caution: ESTIMATE,
  };
  return explainedTorque(clamping, prevailing, force.value, how, 3);
}

/**
 * The preload at which tension and torsion together reach 90 % of the yield strength while the bolt is tightened:
 * `F = As·0.9·Rp/√(1 + 3·(3/2·d2/d0·(P/(π·d2) + 1.155 µG))²)`, d0 the diameter of the stress area's circle (VDI 2230 part
 * 1, 2001 and later; second). For bolts with a full shank. Falls as the friction in the thread rises.
 */
export function assemblyPreload(thread: Thread, strength: Strength, frictionInThread: Given): Computed {
  const friction = input("friction in the thread", "µG", "ratio", frictionInThread);
  const read = readInput(friction);
  const limit = strength.yield.nominal;
  if (!read.ok) return read;
  if (limit === null) return refused({ why: "missing", input: "yield strength" });
  const area = stressAreaOf(thread);
  const d2 = pitchDiameterOf(thread);
  const d0 = Math.sqrt((4 * area) / Math.PI);
  const lead = toNumber(thread.pitch) / (Math.PI * d2);
  const tension = (mu: Rational): number => {
    const torsion = ((1.5 * d2) / d0) * (lead + 1.155 * toNumber(mu));
    return (area * UTILISATION * toNumber(limit.base)) / Math.sqrt(1 + 3 * torsion ** 2);
  };
  // The more friction, the less preload: the ends change places.
  const { low, nominal, high } = read.value;
  const force = rising({ low: high, nominal, high: low }, tension);
  if (force === null) return refused({ why: "missing", input: friction.name });
  const unit = unitNamed(thread.system === "metric" ? "kN" : "lbf");
  return explained({
    result: { name: "assembly preload", symbol: "F", value: quantityOf("force", force, unit, 3) },
    formula: "F = As·0.9·Rp/√(1 + 3·(3/2·d2/d0·(P/(π·d2) + 1.155 µG))²)",
    inputs: [
      { name: "yield strength", symbol: "Rp", value: strength.yield, source: strength.source },
      termOf(friction),
      ...geometryOf(thread),
    ],
    source: VDI,
    caution: "Of the bolt alone: nut, tapped thread, bearing face and joint are not checked.",
  });
}

/**
 * The bearing face of a hexagon head or nut over a hole of the medium series, for metric coarse sizes M4 to M36: dw the
 * least of ISO 4014 (grade A to M24, B above), dh of ISO 273 (memory). Null for any other size.
 */
export function hexagonBearing({ system, diameter }: Thread): Bearing | null {
  const row = system === "metric" ? HEXAGON.get(Math.round(toNumber(diameter) * 1000)) : undefined;
  if (row === undefined || diameter.n * 1000n !== diameter.d * BigInt(Math.round(toNumber(diameter) * 1000)))
    return null;
  const [outer, hole] = row.map((text) => fromDecimal(text));
  if (outer == null || hole == null) return null;
  const given = (millimetres: Rational, source: string): Given => ({
    value: quantityOf("length", point(mul(millimetres, rational(1, 1000))), unitNamed("mm")),
    source,
  });
  return { outer: given(outer, "ISO 4014 (memory)"), hole: given(hole, "ISO 273, medium (memory)") };
}

/** By nominal diameter in mm: the least bearing face, the hole. */
const HEXAGON: ReadonlyMap<number, readonly [string, string]> = new Map([
  [4, ["5.88", "4.5"]],
  [5, ["6.88", "5.5"]],
  [6, ["8.88", "6.6"]],
  [8, ["11.63", "9"]],
  [10, ["14.63", "11"]],
  [12, ["16.63", "13.5"]],
  [14, ["19.64", "15.5"]],
  [16, ["22.49", "17.5"]],
  [18, ["25.34", "20"]],
  [20, ["28.19", "22"]],
  [22, ["31.71", "24"]],
  [24, ["33.61", "26"]],
  [27, ["38", "30"]],
  [30, ["42.75", "33"]],
  [36, ["51.11", "39"]],
]);

const VDI = "VDI 2230 part 1 (second)";
const LEVER = "0.16 P + 0.58 d2 µG + µK (dw + dh)/4";
const UTILISATION = 0.9;
const [LEAD, QUARTER] = [rational(16, 100), rational(1, 4)];

function leverOf(
  thread: Thread,
  friction: Friction,
  bearing: Bearing,
): Outcome<{ readonly ends: Ends; readonly terms: readonly Term[] }> {
  const inputs = {
    thread: input("friction in the thread", "µG", "ratio", friction.inThread),
    head: input("friction under the head", "µK", "ratio", friction.underHead),
    outer: positive("outer diameter of the bearing face", "dw", "length", bearing.outer),
    hole: positive("hole", "dh", "length", bearing.hole),
  };
  const read = readInputs(inputs);
  const slope = fromNumber(0.58 * pitchDiameterOf(thread));
  if (!read.ok) return read;
  if (slope === null) return refused({ why: "missing", input: "pitch diameter" });
  const { thread: inThread, head, outer, hole } = read.value;
  const ends = sum(
    point(mul(thread.pitch, LEAD)),
    product(inThread, point(slope)),
    product(head, sum(outer, hole), point(QUARTER)),
  );
  return { ok: true, value: { ends, terms: [...Object.values(inputs).map(termOf), ...geometryOf(thread)] } };
}

function geometryOf(thread: Thread): readonly Term[] {
  const d2 = fromNumber(pitchDiameterOf(thread));
  const pitch = threadTerm("pitch", "P", thread.pitch, thread);
  return d2 === null ? [pitch] : [pitch, threadTerm("pitch diameter", "d2", d2, thread)];
}
