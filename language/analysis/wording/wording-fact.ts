// What is found in own words, as data. No message, no severity.
import type { Value } from "#model/declarations.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";

export type WordingFact =
  /** `most`: how many words one of its use may have. */
  | {
      readonly kind: "long sentence";
      readonly span: Span;
      readonly words: number;
      readonly most: number;
      readonly use: "instruction" | "description";
    }
  /** At the second of the actions; `verbs` as written, in order. */
  | { readonly kind: "many actions"; readonly span: Span; readonly verbs: readonly string[] }
  /** At the word where a verb should stand. */
  | { readonly kind: "not imperative"; readonly span: Span; readonly word: string; readonly mayBeVerb: boolean }
  | { readonly kind: "passive"; readonly span: Span; readonly words: string }
  | { readonly kind: "vague"; readonly span: Span; readonly words: string }
  /** `declared`: the values of that kind in the step. */
  | {
      readonly kind: "number drift";
      readonly span: Span;
      readonly words: string;
      readonly quantity: Quantity;
      readonly declared: readonly Value[];
    }
  | {
      readonly kind: "replaced term";
      readonly span: Span;
      readonly words: string;
      readonly approved: string;
      /** The article before it that no longer fits, and the one that does. */
      readonly article: { readonly span: Span; readonly text: string } | null;
      readonly term: Span;
    };
