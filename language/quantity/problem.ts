// What can be wrong with a quantity, as data: the wording is for the rules.
import type { Kind } from "./kind.ts";
import type { Qualifier } from "./quantity.ts";

/** One thing wrong or unclear with a written quantity, at a place of the caller's own sort. */
export type QuantityProblem<At> =
  | { readonly kind: "unknown unit"; readonly at: At; readonly text: string; readonly nearest: readonly string[] }
  /**
   * Without `operands`: a quantity of another kind than its place wants (`found` is empty where its dimension is that of
   * no kind). With them: two operands that do not go together; `found` and `wanted` are then empty.
   */
  | {
      readonly kind: "mismatch";
      readonly at: At;
      readonly found: readonly Kind[];
      readonly wanted: readonly Kind[];
      readonly operands: MismatchedOperands | null;
      /** The unit in question, in canonical spelling. */
      readonly unit: string | null;
    }
  /** `usual`: units to offer, the likeliest first. */
  | { readonly kind: "missing unit"; readonly at: At; readonly number: string; readonly usual: readonly string[] }
  /** `mended`: the whole quantity with its ends the right way round. */
  | {
      readonly kind: "reversed range";
      readonly at: At;
      readonly low: string;
      readonly high: string;
      readonly mended: string;
    }
  | {
      readonly kind: "impossible";
      readonly at: At;
      readonly why: Impossibility;
      readonly of: Kind | null;
      readonly shown: string;
    }
  | {
      readonly kind: "ambiguous";
      readonly at: At;
      readonly text: string;
      readonly readAs: string;
      readonly why: string;
    }
  | { readonly kind: "style"; readonly at: At; readonly text: string; readonly canonical: string }
  /** `whole`: the number without its comma, where that may part thousands and nobody can know; else null. */
  | {
      readonly kind: "decimal comma";
      readonly at: At;
      readonly text: string;
      readonly canonical: string;
      readonly whole: string | null;
    }
  | { readonly kind: "division by zero"; readonly at: At };

export type Impossibility =
  | "below absolute zero"
  | "negative"
  | "nominal outside its range"
  | "no such clock position"
  | "all of the reading"
  | "too many digits";

/** The two sides of an operation that does not work out. */
export interface MismatchedOperands {
  readonly op: "+" | "-" | "*" | "/" | "of" | "±" | "..";
  readonly left: Operand;
  readonly right: Operand;
}

export interface Operand {
  readonly kinds: readonly Kind[];
  readonly qualifier: Qualifier | null;
}
