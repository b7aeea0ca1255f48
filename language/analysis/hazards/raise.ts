// What a hazard comes of at one node, as data. Knows no statement and no wording.
import type { LiftFactor } from "#engineering/lifting.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Action, Check, Step } from "#model/procedure.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";
import type { Decision } from "../decision.ts";
import type { State } from "../flow-state.ts";
import type { Run } from "../follow.ts";
import type { Node } from "../graph.ts";
import type { Threshold } from "./thresholds.ts";

/** Which fact raises it. */
export type Cause =
  | "hot part"
  | "cold part"
  | "hand lift"
  | "overhead lift"
  | "part held by nothing"
  | "live energy"
  | "unproved energy"
  | "energy uncovered"
  | "energy held back"
  | "energy released"
  | "consumable used"
  | "flammable liquid"
  | "flammable liquid in the warm"
  | "flammable liquid heated"
  | "gas set free"
  | "oxygen displaced"
  | "sharp part"
  | "part handled"
  | "tool used"
  | "air at a nozzle"
  | "noise measured"
  | "said to be raised";

/** What raises a hazard: its name, its title, and what makes it one source among others. */
export interface Source {
  readonly name: string;
  readonly title: string;
}

/** A value past its threshold. */
export interface Passed {
  /** Null where it has no end. */
  readonly value: Quantity | null;
  readonly threshold: Threshold;
  /** What lowered the threshold here. */
  readonly lowered?: readonly LiftFactor[];
}

/** A line of a step, or the step as a whole: where statements have to stand before it. */
export type Site = Action | Check | Step;

export interface Raise {
  readonly cause: Cause;
  readonly of: Source;
  readonly hazards: readonly string[];
  /** A statement of one of them is enough. */
  readonly anyOf: boolean;
  readonly passed: Passed | null;
  /** Somebody is hurt for certain who is not warned. */
  readonly grave: boolean;
  readonly where: Decision;
  readonly site: Site;
  readonly span: Span;
  readonly pass: Pass;
  readonly node: number;
}

/** One node, with the state before it, and what is to be told of it. */
export interface At {
  readonly run: Run;
  readonly node: Node;
  readonly state: State;
  /** A statement is wanted. */
  readonly raise: (what: Raise) => void;
  /** A statement about this is not out of place, though none is wanted. */
  readonly admit: (site: Site, hazards: readonly string[]) => void;
}

type Given = Pick<Raise, "cause" | "of" | "hazards" | "where"> & Partial<Pick<Raise, "anyOf" | "passed" | "grave">>;

/** Tells that an action raises something. */
export function raiseAt(at: At, { action, pass }: Pick<ExpandedAction, "action" | "pass">, given: Given): void {
  raiseFrom(at, { site: action, span: action.place, pass }, given);
}

/** The same for a check or a whole step. */
export function raiseFrom(at: At, from: Pick<Raise, "site" | "span" | "pass">, given: Given): void {
  if (given.hazards.length === 0) return;
  at.raise({ anyOf: false, passed: null, grave: false, ...given, ...from, node: at.node.id });
}
