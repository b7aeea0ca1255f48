// What running a procedure on paper finds, as data: places, subjects and where states came from. No wording, no severity.
import type { Pass } from "#model/problem.ts";
import type { Span } from "#syntax/span.ts";
import type { CribFact } from "./crib/crib-facts.ts";
import type { HazardFact } from "./hazards/hazard-fact.ts";
import type { LimitFact } from "./limits/limit-fact.ts";
import type { StatementFact } from "./statement-fact.ts";
import type { TraceFact } from "./trace/trace-fact.ts";

/** One choice for some of the options; options not named may have any value. */
export type Assignment = Readonly<Record<string, string>>;

/** Where something was done: for "removed in step 4.2". `step` null: at the start. */
export interface Origin {
  readonly step: string | null;
  readonly span: Span;
}

/** What each fact says: where, for which choices, in which passes. */
export interface Found {
  readonly span: Span;
  /** Exactly the assignments for which it holds; absent if for all. */
  readonly options?: readonly Assignment[];
  /** How many further ones are not listed. */
  readonly moreOptions?: number;
  /** The first pass it was found in, and in how many more. */
  readonly pass: Pass;
  readonly more: number;
  /** Where it does not hold in the order of the text: what comes one after the other in an order in which it does. */
  readonly inOrder?: readonly Origin[];
  /** The line of a performed procedure that it is about. */
  readonly inside?: { readonly performed: string; readonly span: Span };
  /** Other parts of the same line of which it holds as well. */
  readonly also?: readonly string[];
}

/** Where a step that is missing belongs: before the one that begins here, or last in the block that ends here. */
export type MendPlace = { readonly before: Span } | { readonly lastIn: Span };

/**
 * Parts are written as in the text: `Cover`, `Segment[3]`. `spare`: the action, or its step, that can simply go; `mend` and
 * `mendAt`: the action to put in and where. They are null where that would not be right on every path. `implied`: not
 * written, but what a performed procedure touches and does not mention must be as at a start. `stepSpan`: the step before which a
 * line could be put in; null where that would not be right.
 */
export type OrderFact =
  | (Found & {
      readonly kind: "not installed";
      readonly part: string;
      readonly verb: string;
      readonly by: string | null;
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
      readonly stepSpan: Span | null;
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
      /** One of them came before what made it as it is. */
      readonly undone: boolean;
      readonly performed: string | null;
      readonly implied: boolean;
      /** The line of the performed procedure that wants it. */
      readonly askedAt: Span | null;
      readonly stepSpan: Span | null;
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

/**
 * What is wrong with fasteners, locks, single use, loads, films, heat, energies and places. `stepSpan`: the step before which a
 * line could be put in; null where that would not be right.
 */
export type WorkFact =
  /** `atEnd`: it is tightened and stays without the lock; found at what left it so. */
  | (Found & {
      readonly kind: "locked";
      readonly part: string;
      readonly by: string;
      readonly verb: string;
      readonly atEnd: boolean;
      readonly declaredAt: Span;
      readonly since: Origin;
      readonly mendAt: MendPlace | null;
    })
  | (Found & { readonly kind: "not tightened"; readonly part: string; readonly since: Origin })
  | (Found & { readonly kind: "left seated"; readonly part: string; readonly mendAt: MendPlace | null })
  | (Found & {
      readonly kind: "reused";
      readonly part: string;
      readonly how: "removed" | "loosened";
      readonly verb: string;
      readonly since: Origin;
      /** The verb as written, where `new` can be put in after it. */
      readonly verbSpan: Span;
    })
  /** `fastener`: the last one that held; null where a lift is given up. */
  | (Found & {
      readonly kind: "unsupported";
      readonly part: string;
      readonly fastener: string | null;
      readonly verb: string;
      /** As written. */
      readonly mass: string;
      readonly stepSpan: Span | null;
    })
  /** `by`: the fastener, cover or energy that loads, closes over or restores. `left`: seconds still to go. */
  | (Found & {
      readonly kind: "uncured";
      readonly part: string;
      readonly consumable: string;
      readonly how: "loaded" | "closed over" | "restored";
      readonly by: string;
      readonly left: number;
      readonly since: Origin;
      readonly stepSpan: Span | null;
    })
  /** `skipped`: the place that is never filled; null where one is filled the wrong way round. */
  | (Found & {
      readonly kind: "direction";
      readonly part: string;
      readonly place: string;
      readonly wanted: "clockwise" | "counterclockwise";
      readonly skipped: string | null;
      readonly declaredAt: Span;
    })
  /** Hours of the clock, 0 to below 12; `now` null where it is not known. */
  | (Found & {
      readonly kind: "position";
      readonly part: string;
      readonly place: string;
      readonly wanted: number;
      readonly now: number | null;
      readonly ring: string;
      readonly since: Origin;
      readonly stepSpan: Span | null;
    })
  | (Found & { readonly kind: "cold fit"; readonly part: string; readonly mate: string; readonly declaredAt: Span })
  | (Found & {
      readonly kind: "energised";
      readonly part: string;
      readonly energy: string;
      readonly verb: string;
      readonly declaredAt: Span;
      readonly since: Origin;
      readonly stepSpan: Span | null;
    })
  /** `provesOthers`: the procedure shows another energy to be dead. */
  | (Found & {
      readonly kind: "not proved";
      readonly part: string;
      readonly energy: string;
      readonly verb: string;
      readonly provesOthers: boolean;
      readonly since: Origin;
      readonly stepSpan: Span | null;
    })
  | (Found & {
      readonly kind: "restored open";
      readonly energy: string;
      readonly part: string;
      readonly what: string;
      readonly how: "out" | "loose" | "temporary";
      readonly since: Origin;
    })
  /** `performed`: the procedure that left it so. */
  | (Found & {
      readonly kind: "not final";
      readonly part: string;
      readonly how: "loose" | "out";
      readonly performed: string | null;
    })
  /** `first`: what was done, and is undone with nothing between that used it. */
  | (Found & {
      readonly kind: "wasted";
      readonly what: string;
      readonly first: "lubricated" | "coated" | "heated" | "turned";
      readonly verb: string;
      readonly since: Origin;
    })
  /** Seconds. `time` null where a loop lies on the way, so that it may take any time; `undeclared`: steps whose time is not said. */
  | (Found & {
      readonly kind: "too late";
      readonly after: string;
      readonly limit: number;
      readonly time: number | null;
      readonly undeclared: readonly Origin[];
      readonly certain: boolean;
      readonly afterSpan: Span;
    });

export type FlowFact =
  | (Found & { readonly kind: "endless"; readonly to: string; readonly toSpan: Span })
  | (Found & {
      readonly kind: "bad jump";
      readonly to: string;
      readonly why: "into a repeat" | "into a branch" | "into any order" | "forwards" | "backwards";
      readonly toSpan: Span;
    })
  | (Found & { readonly kind: "empty"; readonly what: "task" | "repeat" | "when" | "otherwise" | "in any order" })
  | (Found & {
      readonly kind: "unreachable";
      readonly why: "stop" | "jump" | "condition" | "no pass";
      readonly cause: Span;
      readonly steps: number;
    })
  | (Found & { readonly kind: "impossible condition"; readonly arm: "when" | "otherwise"; readonly condition: string })
  | (Found & { readonly kind: "too large"; readonly limit: number; readonly wanted: number | null });

export type AnalysisFact =
  | OrderFact
  | WorkFact
  | FlowFact
  | LimitFact
  | CribFact
  | StatementFact
  | TraceFact
  | HazardFact;

type Without<Fact, Key extends PropertyKey> = Fact extends unknown ? Omit<Fact, Key> : never;
/** A fact before the passes and paths it was found on are put together. */
export type BareFact = Without<AnalysisFact, "options" | "pass" | "more">;
