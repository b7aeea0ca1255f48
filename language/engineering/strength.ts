// What a bolt of a property class or grade bears: proof strength, yield strength, proof load. Tables, with their sizes;
// outside of them the answer is that it is not known.
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, mul, type Rational, rational, toNumber } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import { fromNumber, point, quantityOf } from "./ends.ts";
import { type Computed, explained, type Outcome, refused } from "./explanation.ts";
import { stressAreaOf, type Thread } from "./thread.ts";

/** The strength of a fastener of a class and size. */
export interface Strength {
  /** Stress under proof load: the bolt bears it without growing for good. */
  readonly proof: Quantity;
  /** Lower yield strength, or stress at 0.2 % elongation. */
  readonly yield: Quantity;
  readonly source: string;
}

/**
 * The strength of a bolt by property class (ISO 898-1:2013, for metric threads M1.6 to M39, fine from M8; second) or by
 * grade (SAE J429, for UNC and UNF from 1/4 to 1 1/2 in; read, from Shigley's table). For bolts, screws and studs of steel
 * at room temperature.
 *
 * Not known: a class on an inch thread and a grade on a metric one; any other size; stainless classes (`A2-70`), for which
 * ISO 3506-1 states no proof load.
 */
export function strengthOf(
  thread: Thread,
  mark: { readonly propertyClass: string } | { readonly grade: string },
): Outcome<Strength> {
  return "grade" in mark ? byGrade(thread, mark.grade) : byClass(thread, mark.propertyClass);
}

/** Proof load `Fp = Sp·As`, with the stress area unrounded: the tables' values come of rounded areas and differ by up to 0.5 %. */
export function proofLoad(thread: Thread, strength: Strength): Computed {
  const stress = strength.proof.nominal;
  const load = stress === null ? null : fromNumber(toNumber(stress.base) * stressAreaOf(thread));
  const area = fromNumber(stressAreaOf(thread));
  if (load === null || area === null) return refused({ why: "missing", input: "proof strength" });
  const metric = thread.system === "metric";
  return explained({
    result: {
      name: "proof load",
      symbol: "Fp",
      value: quantityOf("force", point(load), unitNamed(metric ? "kN" : "lbf"), 3),
    },
    formula: "Fp = Sp·As",
    inputs: [
      { name: "proof strength", symbol: "Sp", value: strength.proof, source: strength.source },
      {
        name: "stress area",
        symbol: "As",
        value: quantityOf("area", point(area), unitNamed(metric ? "mm²" : "in²"), 3),
      },
    ],
    source: strength.source,
    caution: "Of the bolt alone: nut, tapped thread and joint are not checked.",
  });
}

/** Proof and yield in MPa, for diameters up to `to` millimetres. */
interface Row {
  readonly to: number;
  readonly proof: number;
  readonly yield: number;
}

const TO_M39 = 39;
/** ISO 898-1:2013, table 3 (second). */
const CLASSES: Readonly<Record<string, readonly Row[]>> = {
  "4.6": [{ to: TO_M39, proof: 225, yield: 240 }],
  "4.8": [{ to: TO_M39, proof: 310, yield: 340 }],
  "5.6": [{ to: TO_M39, proof: 280, yield: 300 }],
  "5.8": [{ to: TO_M39, proof: 380, yield: 420 }],
  "6.8": [{ to: TO_M39, proof: 440, yield: 480 }],
  "8.8": [
    { to: 16, proof: 580, yield: 640 },
    { to: TO_M39, proof: 600, yield: 660 },
  ],
  "9.8": [{ to: 16, proof: 650, yield: 720 }],
  "10.9": [{ to: TO_M39, proof: 830, yield: 940 }],
  "12.9": [{ to: TO_M39, proof: 970, yield: 1100 }],
};

/** SAE J429, in ksi, for diameters up to `to` inches (read, Shigley's table). */
const GRADES: Readonly<Record<string, readonly Row[]>> = {
  "1": [{ to: 1.5, proof: 33, yield: 36 }],
  "2": [
    { to: 0.75, proof: 55, yield: 57 },
    { to: 1.5, proof: 33, yield: 36 },
  ],
  "4": [{ to: 1.5, proof: 65, yield: 100 }],
  "5": [
    { to: 1, proof: 85, yield: 92 },
    { to: 1.5, proof: 74, yield: 81 },
  ],
  "5.2": [{ to: 1, proof: 85, yield: 92 }],
  "7": [{ to: 1.5, proof: 105, yield: 115 }],
  "8": [{ to: 1.5, proof: 120, yield: 130 }],
  "8.2": [{ to: 1, proof: 120, yield: 130 }],
};

const [METRE, INCH] = [rational(1, 1000), rational(254, 10000)];
const [M1_6, M8, QUARTER_INCH] = [rational(16, 10000), rational(8, 1000), rational(635, 100000)];

function byClass(thread: Thread, given: string): Outcome<Strength> {
  const row = rowFor(CLASSES, given.trim(), thread.diameter, METRE);
  const smallest = thread.series === "coarse" ? M1_6 : M8;
  if (row === undefined || thread.system !== "metric" || cmp(thread.diameter, smallest) < 0) {
    return refused({ why: "not known", input: "property class", given: `${given} of ${thread.designation}` });
  }
  return { ok: true, value: strength(row, "MPa", "ISO 898-1:2013, table 3 (second)") };
}

function byGrade(thread: Thread, given: string): Outcome<Strength> {
  const row = rowFor(GRADES, given.trim().replace(/^(?:SAE )?(?:[Gg]r(?:ade|\.)? ?)?/, ""), thread.diameter, INCH);
  const regular = thread.system === "inch" && thread.series !== "other";
  if (row === undefined || !regular || cmp(thread.diameter, QUARTER_INCH) < 0) {
    return refused({ why: "not known", input: "grade", given: `${given} of ${thread.designation}` });
  }
  return { ok: true, value: strength(row, "ksi", "SAE J429 (read, Shigley's table)") };
}

function rowFor(
  table: Readonly<Record<string, readonly Row[]>>,
  name: string,
  diameter: Rational,
  unit: Rational,
): Row | undefined {
  const rows = Object.hasOwn(table, name) ? (table[name] ?? []) : [];
  return rows.find(({ to }) => cmp(diameter, mul(rational(Math.round(to * 1000), 1000), unit)) <= 0);
}

function strength(row: Row, unit: "MPa" | "ksi", source: string): Strength {
  const stress = (value: number): Quantity => {
    const named = unitNamed(unit);
    return quantityOf("pressure", point(mul(rational(value), named.factor)), named);
  };
  return { proof: stress(row.proof), yield: stress(row.yield), source };
}
