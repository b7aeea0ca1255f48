// What a rule of limits looks at: one action or look at one node, with the state before it. Knows no single limit.
import type { Explanation } from "#engineering/explanation.ts";
import type { Declaration, Part, Tool, Value } from "#model/declarations.ts";
import type { ExpandedAction, Thing } from "#model/expanded.ts";
import { band, type Quantity } from "#quantity/quantity.ts";
import { cmp, type Rational } from "#quantity/rational.ts";
import type { Span } from "#syntax/span.ts";
import type { Decision } from "../decision.ts";
import type { State } from "../flow-state.ts";
import type { Run } from "../follow.ts";
import type { Node } from "../graph.ts";
import type { Collect } from "../raw-fact.ts";
import type { Index } from "../world.ts";
import type { Unchecked } from "./unchecked.ts";

/** Where limits are looked at. `where` is given by each fact: at most the state's reach. */
export interface At {
  readonly run: Run;
  readonly node: Node;
  readonly state: State;
  readonly collect: Collect;
  /** What could not be checked for want of data. */
  readonly leaveOut: (unchecked: Unchecked) => void;
  /** What is worked out on the way, whether it holds or not. */
  readonly explain?: (worked: { readonly of: string; readonly span: Span; readonly explanation: Explanation }) => void;
  /** How far what is looked at is from its limit, whether it holds or not. */
  readonly margin?: (margin: Margin) => void;
  /** Called where what is found of one instance need not hold for another of its sort. */
  readonly hangsOnWhichOne?: () => void;
  /** At which temperatures two parts go together, and where that holds. */
  readonly joining?: (joined: JoinedAt, where: Decision) => void;
}

/**
 * Of parts that are fitted hot or cold: with the outer at its lowest, after what it loses on the way, the inner may be so warm at
 * most (`highestInnerTemperature`).
 */
export interface JoinedAt {
  readonly outer: Instance;
  readonly inner: Instance;
  readonly outerAtLeast: Quantity;
  readonly innerAtMost: Quantity;
}

/** Of a preload its share of the proof load, of a temperature what is left to the heat limit: below zero, where none is. */
export interface Margin {
  readonly kind: "preload" | "heat";
  readonly part: string;
  /** Whose limit it is. */
  readonly limitOf: string;
  readonly value: Quantity;
}

export interface Instance {
  readonly part: Part;
  readonly index: Index;
}

export function partsOf({ objects }: Pick<ExpandedAction, "objects">): readonly ThingPart[] {
  return objects.every(isPart) ? objects : objects.filter(isPart);
}

type ThingPart = Extract<Thing, { readonly kind: "part" }>;

function isPart(thing: Thing): thing is ThingPart {
  return thing.kind === "part";
}

/** What the procedure can name, of one kind. Asked at every node, so sorted once. */
export function declared<Kind extends Declaration["kind"]>(
  run: Run,
  kind: Kind,
): readonly Extract<Declaration, { kind: Kind }>[] {
  const { declarations } = run.expanded.procedure;
  const byKind = sorted.get(declarations) ?? byKindOf(declarations);
  sorted.set(declarations, byKind);
  return (byKind.get(kind) ?? []) as Extract<Declaration, { kind: Kind }>[];
}

/** The tools that their names lead to: what a procedure declares itself may hide an outer one. */
export function toolsByName(run: Run): readonly Tool[] {
  const { declarations } = run.expanded.procedure;
  return declared(run, "tool").filter((tool) => {
    // What stands in the procedure comes first; a threshold and a fit have no name of their own.
    const first = declarations.find(({ kind, name }) => name === tool.name && kind !== "threshold" && kind !== "fit");
    return first === tool;
  });
}

const sorted = new WeakMap<readonly Declaration[], Map<Declaration["kind"], Declaration[]>>();

function byKindOf(declarations: readonly Declaration[]): Map<Declaration["kind"], Declaration[]> {
  const byKind = new Map<Declaration["kind"], Declaration[]>();
  for (const one of declarations) {
    const list = byKind.get(one.kind);
    if (list === undefined) byKind.set(one.kind, [one]);
    else list.push(one);
  }
  return byKind;
}

/** The shop's own threshold of that name. */
export function thresholdOf(run: Run, name: string): Value | null {
  return declared(run, "threshold").find((one) => one.name === name && !one.damaged)?.value ?? null;
}

/** The upper end, or the one value there is; null where it is open. */
export function topOf(quantity: Quantity | null | undefined): Rational | null {
  return quantity == null ? null : band(quantity).high;
}

/** The lower end, or the one value there is. */
export function bottomOf(quantity: Quantity | null | undefined): Rational | null {
  return quantity == null ? null : band(quantity).low;
}

/** Of a limit that must not be exceeded, the lowest value that is given of it. */
export function limitBase({ low, nominal, high }: Quantity): Rational | null {
  return (low ?? nominal ?? high)?.base ?? null;
}

export function isAbove(a: Rational | null, b: Rational | null): boolean {
  return a !== null && b !== null && cmp(a, b) > 0;
}

/** What the thread itself takes up, as an input; null where the part says nothing of it. */
export function prevailingOf({ prevailingTorque }: Part): { value: Quantity } | null {
  return prevailingTorque === null ? null : { value: prevailingTorque.quantity };
}
