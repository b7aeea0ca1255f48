// What can be wrong with names, indices and quantities, as data found while lowering. No wording, no severity.
import type { QuantityProblem } from "#quantity/expression.ts";
import type { Span } from "#syntax/span.ts";
import type { TableProblem } from "./arrangement-table.ts";

export type ModelProblem =
  /** `wanted`: what kind of thing belongs there, in the writer's words ("a part", "a tool", "a choice of Extent"). */
  | {
      readonly kind: "unknown name";
      readonly span: Span;
      readonly name: string;
      readonly wanted: string;
      readonly nearest: readonly string[];
    }
  /** The name is declared, but as something else. */
  | {
      readonly kind: "wrong kind";
      readonly span: Span;
      readonly name: string;
      readonly wanted: string;
      readonly found: string;
      readonly declaredAt: Span;
      readonly nearest: readonly string[];
    }
  | { readonly kind: "duplicate name"; readonly span: Span; readonly name: string; readonly first: Span }
  | {
      readonly kind: "no such instance";
      readonly span: Span;
      readonly name: string;
      readonly index: string;
      readonly range: string;
      readonly declaredAt: Span;
      readonly pass: Pass | null;
      readonly more: number;
    }
  | {
      readonly kind: "needs instance";
      readonly span: Span;
      readonly name: string;
      readonly range: string | null;
      readonly declaredAt: Span;
    }
  | {
      readonly kind: "outside workspace";
      readonly span: Span;
      readonly path: string;
      readonly why: "absolute" | "leaves" | "absent";
    }
  | {
      readonly kind: "use cycle";
      readonly span: Span;
      readonly what: "use" | "perform" | "value";
      readonly names: readonly string[];
    }
  | {
      readonly kind: "unused";
      readonly span: Span;
      readonly name: string;
      readonly what: string;
      readonly extent: Span;
    }
  | { readonly kind: "quantity"; readonly span: Span; readonly problem: QuantityProblem<Span> }
  /** A count, an index or a bound that is no whole number from `least` to `most`; no `text`: it is not there at all. */
  | {
      readonly kind: "whole number";
      readonly span: Span;
      readonly text: string;
      readonly least: number;
      readonly most: number;
    }
  /** In the table of an arrangement; the place is the arrangement's name. `moreRows`: others with the same. */
  | {
      readonly kind: "table";
      readonly span: Span;
      readonly path: string;
      readonly problem: TableProblem;
      readonly moreRows: number;
    }
  /** Well formed, but not at this place: `what` says what, `belongs` goes on after "it belongs …". */
  | { readonly kind: "misplaced"; readonly span: Span; readonly what: string; readonly belongs: string };

/** The pass of a repeat, outermost first. */
export type Pass = readonly { readonly variable: string; readonly value: number }[];
