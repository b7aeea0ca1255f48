// What running a procedure on paper finds, as data: places, subjects and where states came from. No wording, no severity.
import type { Pass } from "#model/problem.ts";
import type { Span } from "#syntax/span.ts";

/** One choice for some of the options; options not named may have any value. */
export type Assignment = Readonly<Record<string, string>>;

/** Where something was done: for "removed in step 4.2". `step` null: at the start. */
export interface Origin {
  readonly step: string | null;
  readonly span: Span;
}

interface Found {
  readonly span: Span;
  /** Exactly the assignments for which it holds; absent if for all. */
  readonly options?: readonly Assignment[];
  /** The first pass it was found in, and in how many more. */
  readonly pass: Pass;
  readonly more: number;
}

/** Where a step that is missing belongs: before the one that begins here, or last in the block that ends here. */
export type MendPlace = { readonly before: Span } | { readonly lastIn: Span };

/**
 * Parts are written as in the text: `Cover`, `Segment[3]`. `spare`: the action, or its step, that can simply go; `mend` and
 * `mendAt`: the action to put in and where. They are null where that would not be right on every path. `implied`: not
 * written, but what a performed procedure touches and does not mention must be as at a start.
 */
export type OrderFact =
  | (Found & {
      readonly kind: "not installed";
      readonly part: string;
      readonly verb: string;
      readonly since: Origin;
    })
  | (Found & {
      readonly kind: "already installed";
      readonly part: string;
      readonly since: Origin;
      readonly spare: Span | null;
    })
  | (Found & {
      readonly kind: "occupied";
      readonly part: string;
      readonly place: string;
      readonly by: string;
      readonly since: Origin;
    })
  | (Found & {
      readonly kind: "wrong place";
      readonly part: string;
      readonly place: string;
      readonly own: string;
      readonly seats: Span;
    })
  | (Found & {
      readonly kind: "missing support";
      readonly part: string;
      readonly needs: string;
      readonly declaredAt: Span;
      readonly since: Origin;
      readonly laterAt: Origin | null;
    })
  | (Found & {
      readonly kind: "enclosed";
      readonly part: string;
      readonly by: string;
      readonly verb: string;
      readonly declaredAt: Span;
      readonly since: Origin;
    })
  | (Found & {
      readonly kind: "retained";
      readonly part: string;
      readonly by: string;
      readonly how: "retains" | "tightened" | "loose";
      readonly declaredAt: Span;
      readonly since: Origin;
    })
  | (Found & {
      readonly kind: "unmet need";
      readonly condition: string;
      readonly state: string;
      readonly since: Origin;
      readonly givers: readonly Origin[];
      readonly performed: string | null;
      readonly implied: boolean;
      readonly stepSpan: Span;
      readonly mend: string | null;
    })
  | (Found & {
      readonly kind: "declared";
      readonly step: string;
      readonly other: string;
      readonly wanted: "after" | "before";
      readonly otherSpan: Span;
    })
  | (Found & {
      readonly kind: "left behind";
      readonly what: string;
      readonly nature: "temporary" | "isolated";
      readonly closedBy: string | null;
      readonly closedAt: Span | null;
      readonly removeText: string;
      readonly mendAt: MendPlace | null;
    })
  | (Found & {
      readonly kind: "unfinished";
      readonly condition: string;
      readonly state: string;
      readonly since: Origin;
    });

export type FlowFact =
  | (Found & {
      readonly kind: "unreachable";
      readonly why: "stop" | "jump" | "condition" | "no pass";
      readonly cause: Span;
      readonly steps: number;
    })
  | (Found & { readonly kind: "impossible condition"; readonly arm: "when" | "otherwise"; readonly condition: string })
  | (Found & { readonly kind: "too large"; readonly limit: number; readonly wanted: number | null });

export type AnalysisFact = OrderFact | FlowFact;

type Without<Fact, Key extends PropertyKey> = Fact extends unknown ? Omit<Fact, Key> : never;
/** A fact before the passes and paths it was found on are put together. */
export type BareFact = Without<AnalysisFact, "options" | "pass" | "more">;
