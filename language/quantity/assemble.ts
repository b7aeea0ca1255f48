// Makes a quantity of evaluated parts: fills in a missing unit, settles the kind, builds the ends, refuses what cannot be.

import { show, showMagnitude } from "./display.ts";
import { impossibility } from "./impossible.ts";
import { type Interval, isReversed } from "./interval.ts";
import { factsOf, type Kind } from "./kind.ts";
import { lastDigit } from "./number-text.ts";
import { type Candidate, formOf, type Operand } from "./operand.ts";
import { type Evaluation, kindsOfOperand, mismatched, numberText, withUnitOf } from "./operand-of.ts";
import type { QuantityProblem } from "./problem.ts";
import type { Form, Magnitude, Qualifier, Quantity } from "./quantity.ts";
import { abs, add, eq, mul, type Rational, sub } from "./rational.ts";
import { powerNotAbove } from "./rounding.ts";
import { unitForResult } from "./shown-unit.ts";
import type { Expression } from "./tree.ts";
import { fromBase } from "./unit.ts";

/** A part of a written quantity with its value. */
export interface Part<At> {
  readonly of: Expression<At>;
  readonly operand: Operand;
}

/** The evaluated parts of a written quantity; `value` null for a range. */
export interface Parts<At> {
  readonly form: Form;
  readonly at: At;
  readonly value: Part<At> | null;
  readonly low: Part<At> | null;
  readonly high: Part<At> | null;
  readonly tolerance: Part<At> | null;
}

/** The quantity of its parts; null where a problem, which is noted, leaves none. */
export function assemble<At>(written: Parts<At>, evaluation: Evaluation<At>): Quantity | null {
  const parts = withUnits(written, evaluation);
  if (parts === null) return null;
  const kinds = settledKinds(parts, evaluation);
  const kind = kinds[0];
  if (kind === undefined) return null;
  const built = build(parts, kind, evaluation);
  if (built === null) return null;
  const others = alternatives(parts, kinds);
  const quantity = turned(built, parts, evaluation);
  const refused = impossibility(quantity, evaluation.wanted !== null && evaluation.signed !== true);
  if (refused !== null) {
    const shown = showMagnitude(refused.end, quantity.kind);
    evaluation.problems.push({ kind: "impossible", at: parts.at, why: refused.why, of: quantity.kind, shown });
    return null;
  }
  return others.length === 0 ? quantity : { ...quantity, alternatives: others };
}

// ---- units

/** Gives each part a unit: the one of another part where it has none, which is a problem unless that part is later. */
function withUnits<At>(parts: Parts<At>, evaluation: Evaluation<At>): Parts<At> | null {
  const later = parts.high ?? parts.tolerance;
  const borrowed = later === null ? parts : withUnitsOf(parts, later, evaluation);
  const bare = partsOf(borrowed).filter((part) => part.operand.bare);
  const source = partsOf(borrowed).find((part) => !part.operand.bare && !isRatio(part.operand));
  const ratioWanted = evaluation.wanted === null || evaluation.wanted.includes("ratio");
  if (bare.length === 0 || (ratioWanted && source === undefined)) return borrowed;
  // One finding is enough where a later number has the unit that is missing, too: at the last, where the unit belongs.
  const isOne =
    source === undefined || (parts.form === "nominal in range" && bare.length === 2 && !parts.value?.operand.bare);
  for (const part of isOne ? bare.slice(-1) : bare) {
    evaluation.problems.push({
      kind: "missing unit",
      at: part.of.at,
      number: numberText(part.of),
      usual: usualUnits(source?.operand ?? null, evaluation.wanted),
    });
  }
  return source === undefined ? null : withUnitsOf(borrowed, source, evaluation);
}

function withUnitsOf<At>(parts: Parts<At>, source: Part<At>, { wanted }: Evaluation<At>): Parts<At> {
  const ratioWanted = wanted === null || wanted.includes("ratio") || wanted.includes("concentration");
  if (isRatio(source.operand) && !ratioWanted) return parts;
  const filled = (part: Part<At> | null, kinds: readonly Kind[] | null): Part<At> | null =>
    part && { ...part, operand: withUnitOf(part.operand, source.operand, kinds) };
  return {
    ...parts,
    value: filled(parts.value, wanted),
    low: filled(parts.low, wanted),
    high: filled(parts.high, wanted),
    tolerance: filled(parts.tolerance, ["temperature difference"]),
  };
}

function usualUnits(source: Operand | null, wanted: readonly Kind[] | null): readonly string[] {
  const own = source?.unit?.text;
  const usual = (wanted ?? []).flatMap((kind) => factsOf(kind).usual);
  return [...new Set(own === undefined ? usual : [own, ...usual])].slice(0, 4);
}

function isRatio(operand: Operand): boolean {
  return kindsOfOperand(operand).includes("ratio") || kindsOfOperand(operand).includes("concentration");
}

function partsOf<At>(parts: Parts<At>): readonly Part<At>[] {
  return [...endsOf(parts), parts.tolerance].filter((part) => part !== null);
}

function endsOf<At>(parts: Parts<At>): readonly Part<At>[] {
  return [parts.value, parts.low, parts.high].filter((part) => part !== null);
}

// ---- the kind

/** The kinds that all parts and the place have in common, the likeliest first; none, with the problem noted. */
function settledKinds<At>(parts: Parts<At>, evaluation: Evaluation<At>): readonly Kind[] {
  const { wanted, problems } = evaluation;
  const ends = endsOf(parts);
  const strangers = ends.filter((part) => !fits(part.operand, wanted));
  const [first] = strangers;
  if (first !== undefined) {
    const all = strangers.length === ends.length;
    problems.push(foreign(first.operand, all ? parts.at : first.of.at, wanted ?? []));
    return [];
  }
  const [one, ...rest] = ends.map((part) => kindsOfOperand(part.operand));
  const common = (one ?? []).filter((kind) => rest.every((kinds) => kinds.includes(kind)));
  const [a, b] = [ends[0]?.operand, ends.at(-1)?.operand];
  if (a !== undefined && b !== undefined && (common.length === 0 || qualifierOf(parts) === "opposed")) {
    const operands = mismatched("..", a, b);
    problems.push({ kind: "mismatch", at: parts.at, found: [], wanted: [], operands, unit: null });
    return [];
  }
  return wanted === null ? common : wanted.filter((kind) => common.includes(kind));
}

function fits(operand: Operand, wanted: readonly Kind[] | null): boolean {
  const kinds = kindsOfOperand(operand);
  return wanted === null ? kinds.length > 0 : wanted.some((kind) => kinds.includes(kind));
}

function foreign<At>(operand: Operand, at: At, wanted: readonly Kind[]): QuantityProblem<At> {
  const unit = operand.unit?.text || null;
  return { kind: "mismatch", at, found: kindsOfOperand(operand), wanted, operands: null, unit };
}

/** The other kinds for which all parts have the same values. */
function alternatives<At>(parts: Parts<At>, kinds: readonly Kind[]): readonly Kind[] {
  const [kind, ...others] = kinds;
  if (kind === undefined) return [];
  return others.filter((other) =>
    endsOf(parts).every(({ operand }) => sameValues(candidateOf(operand, kind), candidateOf(operand, other))),
  );
}

function sameValues(a: Candidate | undefined, b: Candidate | undefined): boolean {
  const same = (x: Rational | null | undefined, y: Rational | null | undefined) => (x && y ? eq(x, y) : x === y);
  return same(a?.low, b?.low) && same(a?.nominal, b?.nominal) && same(a?.high, b?.high);
}

function qualifierOf<At>(parts: Parts<At>): Qualifier | "opposed" | null {
  const all = new Set(partsOf(parts).flatMap(({ operand }) => operand.qualifier ?? []));
  const [first] = all;
  return all.size > 1 ? "opposed" : (first ?? null);
}

// ---- the ends

function build<At>(parts: Parts<At>, kind: Kind, evaluation: Evaluation<At>): Quantity | null {
  const qualifier = qualifierOf(parts);
  const computed = endsOf(parts).some(({ operand }) => operand.computed);
  const common = { kind, qualifier: qualifier === "opposed" ? null : qualifier, computed };
  const [value, low, high] = [parts.value, parts.low, parts.high].map(
    (part) => part && candidateOf(part.operand, kind),
  );
  const [middleOf, lowOf, highOf] = [parts.value?.operand, parts.low?.operand, parts.high?.operand];
  if (low && high && lowOf && highOf) {
    const nominal = value?.nominal ?? null;
    const ends = {
      low: magnitude(low.low, kind, lowOf),
      nominal: middleOf === undefined ? null : magnitude(nominal, kind, middleOf),
      high: magnitude(high.high, kind, highOf),
    };
    return formed(common, nominal === null ? "range" : "nominal in range", ends);
  }
  if (!value || !middleOf) return null;
  const ends = parts.tolerance === null ? value : toleranceEnds(parts, parts.tolerance, value, kind, evaluation);
  if (ends === null) return null;
  const form = parts.form === "nominal" ? formOf(value, middleOf.form, "nominal") : parts.form;
  const magnitudeOf = (end: Rational | null) => magnitude(end, kind, middleOf);
  const { low: from, high: to } = ends;
  return formed(common, form, { low: magnitudeOf(from), nominal: magnitudeOf(value.nominal), high: magnitudeOf(to) });
}

/** A quantity of this form, or the form its open ends leave it; null where nothing is left. */
function formed(
  { kind, qualifier, computed }: Pick<Quantity, "kind" | "qualifier" | "computed">,
  form: Form,
  { low, nominal, high }: Pick<Quantity, "low" | "nominal" | "high">,
): Quantity | null {
  if (form === "nominal") return nominal && { kind, form, low: null, nominal, high: null, qualifier, computed };
  if (low !== null && high !== null && form !== "at least" && form !== "at most") {
    return { kind, form: nominal === null ? "range" : form, low, nominal, high, qualifier, computed };
  }
  if (low !== null && form !== "at most")
    return { kind, form: "at least", low, nominal: null, high: null, qualifier, computed };
  if (high !== null && form !== "at least")
    return { kind, form: "at most", low: null, nominal: null, high, qualifier, computed };
  return null;
}

function candidateOf(operand: Operand, kind: Kind): Candidate | undefined {
  return operand.candidates.find((candidate) => candidate.kind === kind);
}

/** The ends a tolerance gives: of the same kind (an interval after a temperature), or a share of the nominal value. */
function toleranceEnds<At>(
  parts: Parts<At>,
  tolerance: Part<At>,
  value: Candidate,
  kind: Kind,
  evaluation: Evaluation<At>,
): Interval | null {
  const own = candidateOf(tolerance.operand, kind === "temperature" ? "temperature difference" : kind);
  const share = kind === "temperature" ? undefined : candidateOf(tolerance.operand, "ratio");
  const width = own?.nominal ?? (share?.nominal && value.nominal && mul(share.nominal, value.nominal));
  if (!width) {
    const operands = parts.value && mismatched("±", parts.value.operand, tolerance.operand);
    if (operands)
      evaluation.problems.push({ kind: "mismatch", at: tolerance.of.at, found: [], wanted: [], operands, unit: null });
    return null;
  }
  return { low: value.low && sub(value.low, abs(width)), high: value.high && add(value.high, abs(width)) };
}

/** How many more digits than its operands a computed value is given, where it takes them to be exact. */
const MORE_DIGITS = 3;
const SIGNIFICANT_DIGITS = 6;

function magnitude(base: Rational | null, kind: Kind, operand: Operand): Magnitude | null {
  if (base === null) return null;
  const own = operand.unit;
  const unit = own?.kinds.includes(kind) ? own : unitForResult(kind, base, own?.system ?? "shared");
  const written = fromBase(base, unit, kind);
  const digit = unit === own ? operand.digit : null;
  const asWritten =
    !operand.computed && operand.candidates.some((c) => c.kind === kind && c.nominal && eq(c.nominal, base));
  if (digit !== null && asWritten)
    return { base, written, unit, digit, ...(operand.fraction ? { fraction: true } : {}) };
  return { base, written, unit, digit: computedDigit(written, digit) };
}

/** The last digit of a computed value: as exact as it can be within a few digits of what it was computed from. */
function computedDigit(written: Rational, given: number | null): number {
  if (given !== null) return Math.min(given, lastDigit(written, Math.min(given, 0) - MORE_DIGITS));
  return lastDigit(written, Math.min(0, powerNotAbove(abs(written)) + 1 - SIGNIFICANT_DIGITS));
}

// ---- the right way round

/** A reversed range is noted, and turned: what is meant is plain. Clock positions wrap round. */
function turned<At>(q: Quantity, parts: Parts<At>, evaluation: Evaluation<At>): Quantity {
  const { low, high } = q;
  if (low === null || high === null || q.kind === "clock position") return q;
  if (!isReversed({ low: low.base, high: high.base })) return q;
  const mended = { ...q, low: high, high: low };
  evaluation.problems.push({
    kind: "reversed range",
    at: parts.at,
    low: showMagnitude(low, q.kind),
    high: showMagnitude(high, q.kind),
    mended: show(mended),
  });
  return mended;
}
