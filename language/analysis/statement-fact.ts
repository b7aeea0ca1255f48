// What is found of safety statements, notes and second persons. Data; no wording, no severity.
import type { Statement } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import type { Found } from "./fact.ts";

export type StatementFact =
  /** `hazards`: those that the signal word does not fit; `wordSpan`: the signal word. */
  | (Found & {
      readonly kind: "signal word";
      readonly harms: "people" | "equipment";
      readonly signal: Statement["signal"];
      readonly hazards: readonly string[];
      readonly wordSpan: Span;
    })
  | (Found & {
      readonly kind: "no avoidance";
      readonly signal: Statement["signal"];
      readonly hazards: readonly string[];
    })
  /** `protection`: what is worn against them; `wears`: it names something, which says nothing yet. */
  | (Found & {
      readonly kind: "no protection";
      readonly hazards: readonly string[];
      readonly protection: readonly string[];
      readonly wears: boolean;
    })
  /** `sentence`: the one that asks for something to be done. */
  | (Found & {
      readonly kind: "instruction in note";
      readonly signal: Statement["signal"] | "note";
      readonly sentence: string;
    })
  /** `other`: what it backs up, or what backs it up; `others`: names of roles that could look at it. */
  | (Found & {
      readonly kind: "dual maintenance";
      readonly part: string;
      readonly other: string;
      readonly verb: string;
      readonly role: string;
      readonly otherAt: Span;
      readonly others: readonly string[];
      /** Where a hold would go; null where there is one, of the same role. */
      readonly holdIn: Span | null;
    })
  /** `signs`: who signs, or does it where nobody signs. `others`: names of roles that could hold it. */
  | (Found & {
      readonly kind: "no second check";
      readonly signs: readonly string[];
      readonly hold: string | null;
      readonly others: readonly string[];
      readonly stepSpan: Span;
    });
