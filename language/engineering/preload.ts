// The preload that a torque gives by nut factor, the torque for a preload, what a further angle adds, and the share of the
// proof load. Exact throughout. Knows no rule's limits; friction: preload-by-friction.ts.
import type { Quantity } from "#quantity/quantity.ts";
import { cmp, ZERO } from "#quantity/rational.ts";
import { unitNamed } from "#quantity/unit.ts";
import {
  difference,
  type Ends,
  type Given,
  input,
  point,
  positive,
  product,
  quantityOf,
  quotient,
  readInput,
  readInputs,
  sum,
  termOf,
  unitBeside,
} from "./ends.ts";
import { type Computed, type Explanation, explained, type Outcome, refused, type Term } from "./explanation.ts";
import { type Thread, threadTerm } from "./thread.ts";

/** A torque at the bolt, and the prevailing torque in it that clamps nothing. */
export interface Tightening {
  readonly torque: Given;
  readonly prevailing: Given | null;
}

/**
 * Preload by nut factor: `F = (T − Tp)/(K·d)`, K for the condition the thread is in. Exact; bands are carried through, so
 * the low end comes of the low torque and the high nut factor. K is measured, never derived: about 0.20 dry and 0.15 oiled
 * (memory), and a published table's effect is −10 % oiled, −20 % plated (TM 9-2320-362-14P; read).
 */
export function preloadByNutFactor(thread: Thread, tightening: Tightening, nutFactor: Given): Computed {
  const clamping = clampingOf(tightening);
  const factor = positive("nut factor", "K", "ratio", nutFactor);
  const read = readInput(factor);
  if (!clamping.ok) return clamping;
  if (!read.ok) return read;
  const force = quotient(clamping.value.torque, product(read.value, point(thread.diameter)));
  return explainedPreload(tightening, force, {
    formula: `F = ${clamping.value.symbol}/(K·d)`,
    inputs: [...clamping.value.terms, termOf(factor), threadTerm("diameter", "d", thread.diameter, thread)],
    source: NUT_FACTOR,
    caution: ESTIMATE,
  });
}

/** The torque for a preload by nut factor: `T = K·d·F + Tp`, the inverse of {@link preloadByNutFactor}. Exact. */
export function torqueByNutFactor(thread: Thread, force: Given, nutFactor: Given, prevailing: Given | null): Computed {
  const inputs = {
    factor: positive("nut factor", "K", "ratio", nutFactor),
    force: positive("preload", "F", "force", force),
  };
  const read = readInputs(inputs);
  if (!read.ok) return read;
  const clamping = product(read.value.factor, point(thread.diameter), read.value.force);
  const diameter = threadTerm("diameter", "d", thread.diameter, thread);
  return explainedTorque(clamping, prevailing, force.value, {
    formula: "T = K·d·F",
    inputs: [termOf(inputs.factor), diameter, termOf(inputs.force)],
    source: NUT_FACTOR,
    caution: ESTIMATE,
  });
}

/**
 * Preload after a further angle: `F = F0 + c·P·φ/360°`, c the stiffness of bolt and clamped parts together (in series).
 * Exact. Only while all stays elastic: past the bolt's yield the preload hardly rises, and this says too much.
 */
export function preloadAfterAngle(thread: Thread, snug: Given, angle: Given, stiffness: Given): Computed {
  const inputs = {
    snug: input("preload before the angle", "F0", "force", snug),
    angle: input("angle", "φ", "angle", angle),
    stiffness: positive("stiffness of bolt and joint", "c", "stiffness", stiffness),
  };
  const read = readInputs(inputs);
  if (!read.ok) return read;
  // An angle's coherent unit is the turn, in which a thread advances by one pitch.
  const added = product(read.value.stiffness, point(thread.pitch), read.value.angle);
  const force = sum(read.value.snug, added);
  return explained({
    result: {
      name: "preload",
      symbol: "F",
      value: quantityOf("force", force, unitBeside(snug.value, "force", force.high), 3),
    },
    formula: "F = F0 + c·P·φ/360°",
    inputs: [...Object.values(inputs).map(termOf), threadTerm("pitch", "P", thread.pitch, thread)],
    source: "a thread advances by its pitch in a turn, and Hooke's law (memory)",
    caution: `Only while all stays elastic: an angle past the bolt's yield adds hardly any preload. ${ESTIMATE}`,
  });
}

/** The part of the proof load that a preload is: `F/Fp`. Exact. */
export function shareOfProof(force: Given, load: Given): Computed {
  const inputs = { force: input("preload", "F", "force", force), load: positive("proof load", "Fp", "force", load) };
  const read = readInputs(inputs);
  if (!read.ok) return read;
  const share = quotient(read.value.force, read.value.load);
  if (share === null) return refused({ why: "not above zero", input: inputs.load.name });
  return explained({
    result: { name: "share of the proof load", symbol: "s", value: quantityOf("ratio", share, unitNamed("%"), 3) },
    formula: "s = F/Fp",
    inputs: Object.values(inputs).map(termOf),
    source: "definition",
    caution: ESTIMATE,
  });
}

/** The part of a torque that clamps, with what to show of it. */
export interface Clamping {
  readonly torque: Ends;
  readonly symbol: string;
  readonly terms: readonly Term[];
}

/** The torque less the prevailing torque; refused where nothing may be left of it. */
export function clampingOf({ torque, prevailing }: Tightening): Outcome<Clamping> {
  const whole = input("torque", "T", "torque", torque);
  const running = prevailing && input("prevailing torque", "Tp", "torque", prevailing);
  const read = readInputs({ whole, running: running ?? whole });
  if (!read.ok) return read;
  if (running === null) return { ok: true, value: { torque: read.value.whole, symbol: "T", terms: [termOf(whole)] } };
  const rest = difference(read.value.whole, read.value.running);
  if (cmp(rest.low, ZERO) <= 0) return refused({ why: "not above zero", input: "torque above the prevailing torque" });
  return { ok: true, value: { torque: rest, symbol: "(T − Tp)", terms: [whole, running].map(termOf) } };
}

/** A preload in the units of the torque it comes of. */
export function explainedPreload(
  { torque }: Tightening,
  force: Ends | null,
  rest: Pick<Extract<Computed, { ok: true }>["explanation"], "formula" | "inputs" | "source" | "caution">,
): Computed {
  if (force === null) return refused({ why: "not above zero", input: "nut factor or friction" });
  const value = quantityOf("force", force, unitBeside(torque.value, "force", force.high), 3);
  return explained({ result: { name: "preload", symbol: "F", value }, ...rest });
}

/** The torque that clamps so much, with the prevailing torque on top of it, in a unit that goes with the force. */
export function explainedTorque(
  clamping: Ends,
  prevailing: Given | null,
  force: Quantity,
  how: Omit<Explanation, "result">,
  digits = 4,
): Computed {
  const running = prevailing && input("prevailing torque", "Tp", "torque", prevailing);
  const added = running && readInput(running);
  if (added !== null && !added.ok) return added;
  const torque = added === null ? clamping : sum(clamping, added.value);
  const value = quantityOf("torque", torque, unitBeside(force, "torque", torque.high), digits);
  return explained({
    ...how,
    result: { name: "torque", symbol: "T", value },
    formula: `${how.formula}${running === null ? "" : " + Tp"}`,
    inputs: [...how.inputs, ...(running === null ? [] : [termOf(running)])],
  });
}

/** What is said beside every preload. */
export const ESTIMATE =
  "An estimate: friction alone moves it by a third. No proof of strength; tapped threads are not checked.";

const NUT_FACTOR = "F = T/(K·d), the usual short form (Shigley; second)";
