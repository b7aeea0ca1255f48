// A procedure with repeats written out and every index worked out: what the flow graph and the outputs are made from.

import type { Span } from "#syntax/span.ts";
import type { Declaration, PartInstance, Places, Reading } from "./declarations.ts";
import type { Pass } from "./problem.ts";
import type { Action, Check, Condition, Damaged, Jump, Procedure, Statement, Step, Task, Text } from "./procedure.ts";

export interface ExpandedProcedure {
  readonly procedure: Procedure;
  readonly begin: readonly ExpandedCondition[];
  readonly finish: readonly ExpandedCondition[];
  readonly items: readonly ExpandedItem[];
  /** Steps written out. */
  readonly steps: number;
  /** Set where the limit was reached: nothing beyond it was written out, and the procedure is not followed. */
  readonly tooLarge: { readonly span: Span; readonly limit: number; readonly wanted: number | null } | null;
}

export type ExpandedItem =
  | { readonly kind: "task"; readonly task: Task; readonly pass: Pass; readonly items: readonly ExpandedItem[] }
  | ExpandedStep
  | ExpandedWhen<ExpandedItem>
  | ExpandedAnyOrder<ExpandedItem>
  | { readonly kind: "perform"; readonly line: ExpandedAction; readonly number: string; readonly pass: Pass }
  | { readonly kind: "jump"; readonly jump: Jump; readonly pass: Pass }
  | { readonly kind: "statement"; readonly statement: Statement; readonly pass: Pass }
  | { readonly kind: "note"; readonly note: Text; readonly pass: Pass }
  | { readonly kind: "damaged"; readonly damaged: Damaged };

export interface ExpandedStep {
  readonly kind: "step";
  readonly step: Step;
  readonly pass: Pass;
  readonly needs: readonly ExpandedCondition[];
  readonly gives: readonly ExpandedCondition[];
  readonly lines: readonly ExpandedLine[];
}

export interface ExpandedAnyOrder<T> {
  readonly kind: "any order";
  readonly items: readonly T[];
  /** Where each child begins among the items: a repeat is one child, with all its passes. */
  readonly starts: readonly number[];
  readonly span: Span;
}

export interface ExpandedWhen<T> {
  readonly kind: "when";
  readonly arms: readonly { readonly condition: ExpandedCondition; readonly items: readonly T[] }[];
  readonly otherwise: readonly T[] | null;
  readonly span: Span;
  readonly otherwiseSpan: Span | null;
}

export type ExpandedLine =
  | ExpandedAction
  | {
      readonly kind: "check";
      readonly check: Check;
      readonly pass: Pass;
      readonly fails: readonly ExpandedLine[] | null;
    }
  | ExpandedWhen<ExpandedLine>
  | ExpandedAnyOrder<ExpandedLine>
  | { readonly kind: "jump"; readonly jump: Jump; readonly pass: Pass }
  | { readonly kind: "statement"; readonly statement: Statement; readonly pass: Pass }
  | { readonly kind: "note"; readonly note: Text; readonly pass: Pass }
  | { readonly kind: "damaged"; readonly damaged: Damaged };

/** One action of one pass, on the instances in working order. */
export interface ExpandedAction {
  readonly kind: "action";
  readonly action: Action;
  readonly pass: Pass;
  readonly objects: readonly Thing[];
  /** `on`, `other`, `put`: the second thing, where the action has one. */
  readonly second: Thing | null;
  /** Of `wait until`. */
  readonly until: ExpandedCondition | null;
}

/** What a target comes to: a part instance, a place of a ring or holes, or anything else that is one. */
export type Thing =
  | {
      readonly kind: "part";
      readonly part: PartInstance["part"];
      readonly index: number | string | null;
      readonly span: Span;
    }
  | { readonly kind: "place"; readonly places: Places; readonly position: number | null; readonly span: Span }
  | {
      readonly kind: "other";
      readonly thing: Exclude<Declaration, { kind: "part" | "ring" | "holes" }>;
      readonly span: Span;
    };

export type ExpandedCondition =
  | { readonly form: "all" | "any"; readonly operands: readonly ExpandedCondition[]; readonly span: Span }
  | { readonly form: "not"; readonly operand: ExpandedCondition; readonly span: Span }
  | { readonly form: "no temporary parts"; readonly span: Span }
  /** Holds when all things are in the state. */
  | {
      readonly form: "state";
      readonly things: readonly Thing[];
      readonly state: string;
      readonly negated: boolean;
      readonly span: Span;
      readonly source: Condition;
    }
  | { readonly form: "fact"; readonly fact: string; readonly span: Span; readonly source: Condition }
  | {
      readonly form: "bound";
      readonly things: readonly Thing[];
      readonly negated: boolean;
      readonly span: Span;
      readonly source: Condition & { form: "bound" };
    }
  | {
      readonly form: "clock";
      readonly things: readonly Thing[];
      readonly negated: boolean;
      readonly span: Span;
      readonly source: Condition & { form: "clock" };
    }
  | {
      readonly form: "reading";
      readonly reading: Reading;
      readonly span: Span;
      readonly source: Condition & { form: "bound" };
    }
  | { readonly form: "unknown"; readonly span: Span };
