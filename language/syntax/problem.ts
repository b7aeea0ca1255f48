// What can be wrong with the form of a text, as data. No wording, no severity.
import type { Span } from "./span.ts";

/**
 * One mistake of form. `expected` holds keywords and signs as written, names of tokens (`NUMBER`, `DATE`) and of the things a
 * writer knows (`part`, `quantity`, `step line`); `within` is the keyword the statement begins with, `after` the word before
 * the place. `found` is "" where something is missing at the end.
 */
export type SyntaxProblem =
  | {
      readonly kind: "unclosed";
      readonly span: Span;
      readonly what: "block" | "string" | "long text" | "parenthesis" | "bracket" | "comment";
      readonly header: string;
      readonly closeAt: Span;
    }
  /** `whole`: the number without its comma, where that may part thousands; else null. */
  | {
      readonly kind: "decimal comma";
      readonly span: Span;
      readonly text: string;
      readonly mended: string;
      readonly whole: string | null;
    }
  | {
      readonly kind: "dash range";
      readonly span: Span;
      readonly text: string;
      readonly mended: string;
      readonly dash: Span;
    }
  /** `begins`: whether a statement can begin with the word. */
  | {
      readonly kind: "reserved word";
      readonly span: Span;
      readonly word: string;
      readonly begins: boolean;
      readonly suggestion: string;
    }
  | {
      readonly kind: "unexpected";
      readonly span: Span;
      readonly found: string;
      readonly expected: readonly string[];
      readonly within: string;
      readonly after: string;
      readonly slip: Slip | null;
    }
  | { readonly kind: "character"; readonly span: Span; readonly character: string; readonly instead: string | null };

/** A mistake that many writers make, recognised from the tokens round it; the rule has words for each. */
export interface Slip {
  readonly name: string;
  /** What the writer probably meant, as text to put in place of `span`; null where only words can help. */
  readonly mended: string | null;
}
