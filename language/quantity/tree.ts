// The tree of a value place, as whoever parses one hands it in. Knows no syntax node.
import type { Formula } from "./formula.ts";
import type { Quantity } from "./quantity.ts";

/** An expression; `At` is the caller's own sort of place. */
export type Expression<At> =
  | Literal<At>
  /** A named value; null where the name is unknown, which is reported elsewhere. `formula` where it hangs on a reading. */
  | { readonly op: "name"; readonly value: Quantity | null; readonly at: At; readonly formula?: Formula }
  | Binary<At>
  | { readonly op: "negate"; readonly of: Expression<At>; readonly at: At }
  | { readonly op: "percent of"; readonly share: Expression<At>; readonly of: Expression<At>; readonly at: At };

/** A number as in the source: `1_000`, `3/8`, `1 1/2`, `0.5`, `13,5`; with its unit's text. */
export interface Literal<At> {
  readonly op: "literal";
  readonly number: string;
  readonly unit: string | null;
  readonly at: At;
  readonly unitAt: At | null;
}

export interface Binary<At> {
  readonly op: "+" | "-" | "*" | "/";
  readonly left: Expression<At>;
  readonly right: Expression<At>;
  readonly at: At;
}

/** A quantity as written, in one of its forms. */
export type Written<At> =
  | { readonly form: "nominal" | "at least" | "at most"; readonly value: Expression<At>; readonly at: At }
  | { readonly form: "range"; readonly low: Expression<At>; readonly high: Expression<At>; readonly at: At }
  | { readonly form: "tolerance"; readonly value: Expression<At>; readonly tolerance: Expression<At>; readonly at: At }
  | {
      readonly form: "nominal in range";
      readonly value: Expression<At>;
      readonly low: Expression<At>;
      readonly high: Expression<At>;
      readonly at: At;
    };
