// The unbalance that a set of parts leaves on a ring, and how much of it a grade permits. Sines and π: floating-point
// numbers in SI between exact ends. Knows no arrangement and no file.
import { cmp, toNumber, ZERO } from "#quantity/rational.ts";
import { type Unit, unitNamed } from "#quantity/unit.ts";
import {
  fromNumber,
  type Given,
  type Input,
  input,
  limitOf,
  point,
  positive,
  quantityOf,
  readInput,
  readInputs,
  termOf,
} from "./ends.ts";
import { type Computed, explained, type Outcome, refused, type Term } from "./explanation.ts";

/** A part on a ring: its position from 1, and its mass, or its mass moment about the axis where that was measured. */
export interface Placed {
  readonly position: number;
  readonly weight: Given;
}

/** Equally spaced places at a radius. The radius is not needed where all parts have a moment. */
export interface PlaceCircle {
  readonly count: number;
  readonly radius: Given | null;
}

/** A residual unbalance, and where it is: in turns from position 1 toward position 2; null where nothing is left. */
export interface Unbalance {
  readonly computed: Computed;
  readonly direction: number | null;
}

/**
 * The residual unbalance of parts on a circle: `U = |Σ mᵢ·r·(cos θᵢ, sin θᵢ)|`, θ = 360°·(position − 1)/count (statics; memory).
 * With nominal masses; static unbalance in one plane only. Places without a part count as empty. Refused: two parts in one
 * place, a place that the circle has not.
 * @param unit of the result
 */
export function residualUnbalance(
  circle: PlaceCircle,
  parts: readonly Placed[],
  unit: Unit = unitNamed("g·mm"),
): Unbalance {
  const read = momentsOf(circle, parts);
  if (!read.ok) return { computed: read, direction: null };
  const { moments, terms } = read.value;
  const turn = (position: number): number => (2 * Math.PI * (position - 1)) / circle.count;
  const x = total(moments.map(({ position, moment }) => moment * Math.cos(turn(position))));
  const y = total(moments.map(({ position, moment }) => moment * Math.sin(turn(position))));
  const size = Math.hypot(x, y);
  // What is left of equal parts is the rounding of the sines, not of the shop.
  const left = size <= NEGLIGIBLE * total(moments.map(({ moment }) => Math.abs(moment))) ? 0 : size;
  const ends = fromNumber(left);
  if (ends === null) return { computed: refused({ why: "missing", input: "mass" }), direction: null };
  const computed = explained({
    result: {
      name: "residual unbalance",
      symbol: "U",
      value: quantityOf("mass moment", point(ends), unit, 4),
    },
    formula: "U = |Σ m·r·(cos θ, sin θ)|, θ = 360°·(position − 1)/count",
    inputs: terms,
    source: "the sum of the parts' moments (statics; memory)",
    caution: "Static unbalance in one plane, of the set alone: what it stands on is not in it.",
  });
  const angle = Math.atan2(y, x) / (2 * Math.PI);
  return { computed, direction: left === 0 ? null : (angle + 1) % 1 };
}

/**
 * The residual unbalance that a grade permits at a speed: `U = m·G/Ω`, G the grade in mm/s, Ω = 2π·n (ISO 21940-11;
 * second), which is 9549·G·m/n in g·mm, kg and rpm. m is the mass of the whole rotor; speed at its high end, mass at its
 * low one. For rotors of rigid behaviour; the whole of it, before it is shared between two planes.
 */
export function permissibleUnbalance(grade: string, rotor: Given, speed: Given): Computed {
  const inputs = {
    mass: positive("mass of the rotor", "m", "mass", rotor),
    speed: positive("speed", "n", "rotational speed", speed),
  };
  const quality = readGrade(grade);
  if (quality === null) return refused({ why: "not known", input: "balance grade", given: grade });
  const read = readInputs(inputs);
  if (!read.ok) return read;
  const { mass, speed: turns } = read.value;
  const permitted = fromNumber((toNumber(mass.low) * (quality / 1000)) / (2 * Math.PI * toNumber(turns.high)));
  const velocity = fromNumber(quality / 1000);
  if (permitted === null || velocity === null) return refused({ why: "missing", input: "speed" });
  return explained({
    result: {
      name: "permissible unbalance",
      symbol: "U",
      value: limitOf("mass moment", "at most", permitted, unitNamed("g·mm"), 3),
    },
    formula: "U = m·G/(2π·n)",
    inputs: [
      {
        name: "balance grade",
        symbol: "G",
        value: quantityOf("velocity", point(velocity), unitNamed("mm/s")),
        source: ISO,
      },
      ...Object.values(inputs).map(termOf),
    ],
    source: ISO,
    caution: "For a rotor of rigid behaviour, the whole of it before it is shared between planes.",
  });
}

const ISO = "ISO 21940-11 (second)";
const NEGLIGIBLE = 1e-12;
/** The grades of ISO 21940-11 in mm/s (second). */
const GRADES: readonly number[] = [0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000];

/** `G6.3`, `G 2.5`, `16`: one of the standard's grades in mm/s; null for anything else. */
function readGrade(text: string): number | null {
  const [, digits] = /^\s*G?\s?(\d{1,4}(?:\.\d)?)\s*$/.exec(text) ?? [];
  return GRADES.find((grade) => digits !== undefined && grade === Number(digits)) ?? null;
}

interface Moments {
  readonly moments: readonly { readonly position: number; readonly moment: number }[];
  readonly terms: readonly Term[];
}

function momentsOf({ count, radius }: PlaceCircle, parts: readonly Placed[]): Outcome<Moments> {
  if (!Number.isInteger(count) || count < 1)
    return refused({ why: "not known", input: "places", given: String(count) });
  const arm: Input | null = radius && positive("radius", "r", "length", radius);
  const length = arm && readInput(arm);
  if (length !== null && !length.ok) return length;
  const taken = new Set<number>();
  const moments: { position: number; moment: number }[] = [];
  const terms: Term[] = arm === null ? [] : [termOf(arm)];
  for (const { position, weight } of parts) {
    const known = Number.isInteger(position) && position >= 1 && position <= count && !taken.has(position);
    if (!known) return refused({ why: "not known", input: "position", given: String(position) });
    taken.add(position);
    const byMoment = weight.value.kind === "mass moment";
    const one = byMoment
      ? input(`moment in position ${position}`, `U${position}`, "mass moment", weight)
      : input(`mass in position ${position}`, `m${position}`, "mass", weight);
    const read = readInput(one);
    if (!read.ok) return read;
    if (cmp(read.value.low, ZERO) < 0) return refused({ why: "not above zero", input: one.name });
    if (!byMoment && length === null) return refused({ why: "missing", input: "radius" });
    const at = byMoment || length === null ? 1 : middle(length.value);
    moments.push({ position, moment: middle(read.value) * at });
    terms.push(termOf(one));
  }
  return { ok: true, value: { moments, terms } };
}

function middle({ low, nominal, high }: Parameters<typeof quantityOf>[1]): number {
  return nominal === null ? (toNumber(low) + toNumber(high)) / 2 : toNumber(nominal);
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
