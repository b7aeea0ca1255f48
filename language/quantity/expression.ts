// Evaluates a value place: reads its units, infers its kind, computes its ends. Problems come out as data; wording, and
// what a place is, belong to others.
import { assemble, type Part, type Parts } from "./assemble.ts";
import type { Kind } from "./kind.ts";
import { type Evaluation, numberText, operandOf } from "./operand-of.ts";
import type { QuantityProblem } from "./problem.ts";
import type { Quantity } from "./quantity.ts";
import type { Expression, Written } from "./tree.ts";

export type { QuantityProblem } from "./problem.ts";
export type { Expression, Written } from "./tree.ts";

/** What a place takes: one kind, one of several, or (null) any. */
export type Wanted = Kind | readonly Kind[] | null;

/** What a value place came to; a null quantity has a problem, or an unknown name that is reported elsewhere. */
export interface Evaluated<At> {
  readonly quantity: Quantity | null;
  readonly problems: readonly QuantityProblem<At>[];
}

/**
 * Evaluates what is written in a place that wants this kind. A missing unit is taken from the later end. Total: no tree
 * makes it throw. Where several kinds are wanted or any, a value that still fits more than one carries the others as
 * `alternatives`. A reversed range is given back turned; a quantity of the wrong kind, or one that cannot be, is null.
 * @param signed whether the value may lie on either side of zero though its kind does not: an interference
 */
export function evaluate<At>(written: Written<At>, wanted: Wanted, signed = false): Evaluated<At> {
  const kinds = typeof wanted === "string" ? [wanted] : wanted;
  const evaluation: Evaluation<At> = { wanted: kinds, problems: [], signed };
  const parts = partsOf(written, evaluation);
  const quantity = parts && assemble(parts, evaluation);
  return { quantity: quantity && asNamed(written, quantity), problems: evaluation.problems };
}

/** A name alone keeps what its declaration wrote: the unit of each end, and its digits. */
function asNamed<At>(written: Written<At>, settled: Quantity): Quantity {
  const named = written.form === "nominal" && written.value.op === "name" ? written.value.value : null;
  if (named === null || named.kind !== settled.kind) return settled;
  const { alternatives: _, ...ends } = named;
  return { ...ends, ...(settled.alternatives && { alternatives: settled.alternatives }) };
}

/** Evaluates a list such as `30 %, 70 %, 100 % of V`: the `of` of the last spreads back over the bare percentages. */
export function evaluateStages<At>(list: readonly Written<At>[], wanted: Wanted): readonly Evaluated<At>[] {
  const last = list[list.length - 1];
  const whole = last?.form === "nominal" && last.value.op === "percent of" ? last.value.of : null;
  if (whole === null) return list.map((written) => evaluate(written, wanted));
  // `30, 70, 100 % of V`: the sign of the last is meant for all, and told once.
  const bare = list.find(isBareNumber);
  const told: QuantityProblem<At>[] = [];
  return list.map((written) => {
    const { quantity, problems } = evaluate(spread(asShare(written), whole), wanted);
    const fresh = problems.filter((problem) => !told.some((one) => isAlike(one, problem)));
    told.push(...fresh);
    return { quantity, problems: written === bare ? [...missingSign(bare), ...fresh] : fresh };
  });
}

/** What is wrong with the whole is told with its first share. */
function isAlike<At>(one: QuantityProblem<At>, other: QuantityProblem<At>): boolean {
  if (one.kind !== "mismatch" || other.kind !== "mismatch" || one.operands !== null) return false;
  return one.unit === other.unit && one.found.join() === other.found.join();
}

function isBareNumber<At>(written: Written<At>): boolean {
  return written.form === "nominal" && written.value.op === "literal" && written.value.unit === null;
}

function asShare<At>(written: Written<At>): Written<At> {
  const bare = isBareNumber(written) && written.form === "nominal" && written.value.op === "literal";
  return bare ? { ...written, value: { ...written.value, unit: "%" } as Expression<At> } : written;
}

function missingSign<At>({ at, ...written }: Written<At>): readonly QuantityProblem<At>[] {
  const number = "value" in written ? numberText(written.value) : "";
  return [{ kind: "missing unit", at, number, usual: ["%"] }];
}

/** The parts evaluated; null where one of them has no value. */
function partsOf<At>(written: Written<At>, evaluation: Evaluation<At>): Parts<At> | null {
  const { form, at } = written;
  const none = { form, at, value: null, low: null, high: null, tolerance: null };
  if (form === "range") {
    const [low, high] = [part(written.low, evaluation), part(written.high, evaluation)];
    return low && high && { ...none, low, high };
  }
  const value = part(written.value, evaluation);
  if (form === "tolerance") {
    const tolerance = part(written.tolerance, { ...evaluation, wanted: toleranceKinds(evaluation.wanted) });
    return value && tolerance && { ...none, value, tolerance };
  }
  if (form === "nominal in range") {
    const [low, high] = [part(written.low, evaluation), part(written.high, evaluation)];
    return value && low && high && { ...none, value, low, high };
  }
  return value && { ...none, value };
}

function part<At>(of: Expression<At>, evaluation: Evaluation<At>): Part<At> | null {
  const operand = operandOf(of, evaluation);
  return operand && { of, operand };
}

/** After a temperature, the tolerance is an interval. */
function toleranceKinds(wanted: readonly Kind[] | null): readonly Kind[] {
  return (wanted ?? ["temperature"]).map((kind) => (kind === "temperature" ? "temperature difference" : kind));
}

function spread<At>(written: Written<At>, whole: Expression<At>): Written<At> {
  const scaled = (share: Expression<At>): Expression<At> =>
    isShare(share) ? { op: "percent of", share, of: whole, at: share.at } : share;
  switch (written.form) {
    case "range":
      return { ...written, low: scaled(withPercent(written.low, written.high)), high: scaled(written.high) };
    case "nominal in range":
      return {
        ...written,
        value: scaled(withPercent(written.value, written.high)),
        low: scaled(withPercent(written.low, written.high)),
        high: scaled(written.high),
      };
    case "tolerance":
      return written;
    default:
      return { ...written, value: scaled(written.value) };
  }
}

function isShare<At>(of: Expression<At>): boolean {
  return of.op === "literal" && of.unit !== null && /^(?:%|percent|pct)$/.test(of.unit.trim());
}

/** The `30` of `30 .. 40 %`, with the sign of the later end. */
function withPercent<At>(of: Expression<At>, later: Expression<At>): Expression<At> {
  if (of.op !== "literal" || of.unit !== null || !isShare(later) || later.op !== "literal") return of;
  return { ...of, unit: later.unit };
}
