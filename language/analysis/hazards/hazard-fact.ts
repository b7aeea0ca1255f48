// What is found of hazards and of the statements against them. Data, no wording, no severity.
import type { Span } from "#syntax/span.ts";
import type { Found } from "../fact.ts";
import type { Cause, Passed, Source } from "./raise.ts";

/** What raises hazards at one place. */
export interface Raised {
  readonly cause: Cause;
  readonly of: Source;
  readonly hazards: readonly string[];
  readonly passed: Passed | null;
}

/** A block that a statement could stand at the head of: before what begins there. */
export interface HeadPlace {
  readonly block: "procedure" | "task" | "step" | "branch";
  readonly before: Span;
}

export type HazardFact =
  /** `places`: where a statement would hold for all of it, innermost first. */
  | (Found & {
      readonly kind: "hazard not covered";
      readonly raised: Raised;
      readonly grave: boolean;
      /** One of the hazards is enough. */
      readonly anyOf: boolean;
      readonly places: readonly HeadPlace[];
      /** Of the hazards that the shop has declared itself, its words for them. */
      readonly titles: Readonly<Record<string, string>>;
    })
  /** At the statement. */
  | (Found & { readonly kind: "statement too late"; readonly raised: Raised; readonly raisedAt: Span })
  | (Found & { readonly kind: "idle statement"; readonly hazards: readonly string[] });
