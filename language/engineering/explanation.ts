// How a computed value came about, as data that the command, the hover and the outputs share, and how a computation says
// that it has no answer. Knows no procedure, no place and no wording of findings.
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";

/** A value with the name a shop gives it and the sign it has in the formula. */
export interface Term {
  readonly name: string;
  readonly symbol: string;
  readonly value: Quantity;
  /** Where the value was read, with its mark: read, second, memory or practice. */
  readonly source?: string;
}

/** A computed value and all it was made of. All values are quantities, so that each can be shown in both unit systems. */
export interface Explanation {
  readonly result: Term;
  /** The formula in plain text, in the signs of {@link inputs}. */
  readonly formula: string;
  readonly inputs: readonly Term[];
  /** Where the formula comes from, with its mark. */
  readonly source: string;
  /** What the value does not tell. */
  readonly caution: string;
}

/**
 * Why there is no answer. `input` is the name of the value in doubt, as in {@link Term}.
 *
 * - `missing`: the value is needed here and was not given.
 * - `not known`: a designation, class or letter that no table here holds; `given` is what was written.
 * - `wrong kind`: a quantity of another kind than the computation takes.
 * - `open end`: no low, or no high end where one is needed.
 * - `not above zero`: zero or less where only more makes sense.
 * - `outside`: beyond the limits of use of the formula, which are given.
 * - `nothing left`: two limits that leave no value between them.
 */
export type Refusal =
  | { readonly why: "missing"; readonly input: string }
  | { readonly why: "not known"; readonly input: string; readonly given: string }
  | { readonly why: "wrong kind"; readonly input: string; readonly wanted: Kind }
  | { readonly why: "open end"; readonly input: string; readonly end: "low" | "high" }
  | { readonly why: "not above zero"; readonly input: string }
  | { readonly why: "outside"; readonly input: string; readonly limits: Quantity }
  | { readonly why: "nothing left"; readonly input: string; readonly low: Quantity; readonly high: Quantity };

export interface Refused {
  readonly ok: false;
  readonly refusal: Refusal;
}

/** An answer, or why there is none. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | Refused;

/** A computed quantity with how it came about, or why there is none. */
export type Computed = { readonly ok: true; readonly value: Quantity; readonly explanation: Explanation } | Refused;

/** The computed value of an explanation. */
export function explained(explanation: Explanation): Computed {
  return { ok: true, value: explanation.result.value, explanation };
}

/** No answer, and why. */
export function refused(refusal: Refusal): Refused {
  return { ok: false, refusal };
}
