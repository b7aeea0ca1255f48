// Parts that are pressed together: the pressure between them and the force it takes. The pressure is exact; the force has
// π in it, to 16 digits. Knows no procedure and no press.
import { add, cmp, div, mul, ONE, type Rational, sub } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import {
  difference,
  type Ends,
  fromNumber,
  type Given,
  point,
  positive,
  product,
  quantityOf,
  quotient,
  readInputs,
  sum,
  termOf,
  unitBeside,
} from "./ends.ts";
import { type Computed, explained, refused, type Term } from "./explanation.ts";

/** How a part gives way: modulus of elasticity and Poisson's ratio. */
export interface Elastic {
  readonly modulus: Given;
  readonly poisson: Given;
}

/** A press fit: a ring on a shaft, which may be hollow. */
export interface PressFit {
  readonly diameter: Given;
  readonly interference: Given;
  readonly outside: Given;
  /** Null for a solid shaft. */
  readonly bore: Given | null;
  readonly ring: Elastic;
  readonly shaft: Elastic;
}

/**
 * The pressure between ring and shaft, by Lamé: `p = δ/(d·[(Co + νo)/Eo + (Ci − νi)/Ei])`, with `Co = (D² + d²)/(D² − d²)`
 * and `Ci = (d² + b²)/(d² − b²)`, 1 for a solid shaft (any text on machine elements; second). For thick rings of one
 * diameter, as long as the shaft in them, while both stay elastic; form and roughness take some of the interference.
 */
export function contactPressure(fit: PressFit): Computed {
  const inputs = {
    diameter: positive("diameter", "d", "length", fit.diameter),
    interference: positive("interference", "δ", "length", fit.interference),
    outside: positive("outside diameter", "D", "length", fit.outside),
    bore: positive("bore of the shaft", "b", "length", fit.bore ?? fit.diameter),
    ringModulus: positive("modulus of the ring", "Eo", "pressure", fit.ring.modulus),
    ringPoisson: positive("Poisson's ratio of the ring", "νo", "ratio", fit.ring.poisson),
    shaftModulus: positive("modulus of the shaft", "Ei", "pressure", fit.shaft.modulus),
    shaftPoisson: positive("Poisson's ratio of the shaft", "νi", "ratio", fit.shaft.poisson),
  };
  const read = readInputs(inputs);
  if (!read.ok) return read;
  const { diameter, interference, outside, bore, ringModulus, ringPoisson, shaftModulus, shaftPoisson } = read.value;
  const ring = stiffness(outside, diameter);
  if (ring === null) return refused({ why: "not above zero", input: "wall of the ring" });
  const shaft = fit.bore === null ? point(ONE) : stiffness(diameter, bore);
  if (shaft === null) return refused({ why: "not above zero", input: "wall of the shaft" });
  const given = quotient(sum(ring, ringPoisson), ringModulus);
  const taken = quotient(difference(shaft, shaftPoisson), shaftModulus);
  const yielding = given && taken && product(diameter, sum(given, taken));
  const pressure = yielding && quotient(interference, yielding);
  if (pressure === null) return refused({ why: "not above zero", input: inputs.ringModulus.name });
  const shown: readonly Term[] = Object.entries(inputs)
    .filter(([name]) => name !== "bore" || fit.bore !== null)
    .map(([, one]) => termOf(one));
  return explained({
    result: {
      name: "pressure in the joint",
      symbol: "p",
      value: quantityOf("pressure", pressure, unitNamed(isInch(fit) ? "psi" : "MPa"), 3),
    },
    formula: `p = δ/(d·[((D² + d²)/(D² − d²) + νo)/Eo + (${fit.bore === null ? "1" : "(d² + b²)/(d² − b²)"} − νi)/Ei])`,
    inputs: shown,
    source: "Lamé's thick cylinders (second)",
    caution: "While both parts stay elastic; form and roughness take some of the interference.",
  });
}

/** The force to press a shaft home: `F = π·d·L·p·µ`. At the end of the stroke, where it is greatest; the press needs more. */
export function pressingForce(given: {
  readonly pressure: Given;
  readonly diameter: Given;
  readonly length: Given;
  readonly friction: Given;
}): Computed {
  const inputs = {
    diameter: positive("diameter", "d", "length", given.diameter),
    length: positive("length of the joint", "L", "length", given.length),
    pressure: positive("pressure in the joint", "p", "pressure", given.pressure),
    friction: positive("friction", "µ", "ratio", given.friction),
  };
  const read = readInputs(inputs);
  const pi = fromNumber(Math.PI);
  if (!read.ok) return read;
  if (pi === null) return refused({ why: "missing", input: "π" });
  const force = product(point(pi), read.value.diameter, read.value.length, read.value.pressure, read.value.friction);
  return explained({
    result: {
      name: "pressing force",
      symbol: "F",
      value: quantityOf("force", force, unitBeside(given.diameter.value, "force", force.high), 3),
    },
    formula: "F = π·d·L·p·µ",
    inputs: Object.values(inputs).map(termOf),
    source: "friction on the face of the joint (second)",
    caution: "An estimate: friction alone moves it by half. Take a press with room above it.",
  });
}

/** `(A² + a²)/(A² − a²)` over all walls between the ends: it falls as the wall grows. Null where there is no wall. */
function stiffness(outside: Ends, inside: Ends): Ends | null {
  const at = (outer: Rational, inner: Rational): Rational | null => {
    const [a, b] = [mul(outer, outer), mul(inner, inner)];
    return cmp(a, b) > 0 ? div(add(a, b), sub(a, b)) : null;
  };
  const [low, high] = [at(outside.high, inside.low), at(outside.low, inside.high)];
  const nominal = outside.nominal && inside.nominal && at(outside.nominal, inside.nominal);
  return low === null || high === null ? null : { low, nominal, high };
}

function isInch({ diameter }: PressFit): boolean {
  return diameter.value.nominal?.unit.system === "customary";
}
