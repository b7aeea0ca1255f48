// The flow graph of an expanded procedure: one node for each thing that happens, in the order of the text, and edges
// with the condition under which each is taken. Knows no state and no meaning of actions.
import type {
  ExpandedAction,
  ExpandedAnyOrder,
  ExpandedCondition,
  ExpandedItem,
  ExpandedLine,
  ExpandedProcedure,
  ExpandedStep,
  ExpandedWhen,
} from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Check, Damaged, Jump, StepRef } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import { type Trial, waysThrough } from "./any-order-ways.ts";
import { type Entry, nearest, samePass, spanKey } from "./entries.ts";

/** What happens at a node. */
export type Operation =
  | { readonly kind: "start" }
  | { readonly kind: "begin"; readonly condition: ExpandedCondition }
  | { readonly kind: "end" }
  | { readonly kind: "enter"; readonly step: ExpandedStep }
  /** What a performed procedure asks for is asked here, before it is performed. */
  | { readonly kind: "ask"; readonly line: ExpandedAction }
  | { readonly kind: "act"; readonly line: ExpandedAction }
  | { readonly kind: "leave"; readonly step: ExpandedStep }
  | { readonly kind: "stop"; readonly jump: Jump }
  | { readonly kind: "jump"; readonly jump: Jump }
  | { readonly kind: "damaged"; readonly damaged: Damaged }
  /** Somebody looks: a check. */
  | { readonly kind: "look"; readonly check: Check; readonly pass: Pass }
  /** A parting of ways or a meeting of them. */
  | { readonly kind: "fork"; readonly span: Span }
  | { readonly kind: "meet" }
  | { readonly kind: "end of task" };

/** `when` with `holds: false`: taken where the condition does not hold. No condition: may always be taken. */
export interface Edge {
  readonly to: number;
  readonly guards: readonly { readonly condition: ExpandedCondition; readonly holds: boolean }[];
}

export interface Node {
  readonly id: number;
  readonly operation: Operation;
  /** The step it belongs to; null between steps. */
  readonly step: ExpandedStep | null;
  readonly number: string | null;
  /** The arms of `when` that it stands in, innermost last. */
  readonly arms: readonly number[];
  /** Its turns in blocks that may be done in any order, innermost last; empty where the order of the text is the only one. */
  readonly turns: readonly Turn[];
  /** Whether it stands in such a block at all. */
  readonly anyOrder: boolean;
  readonly next: Edge[];
}

/** One child of an `in any order` block, done after some of the others and before the rest. */
export interface Turn {
  /** The children that were done before, one after the other, and then the one whose turn it is. */
  readonly done: readonly number[];
  /** Those whose order matters, as written. */
  readonly group: readonly number[];
  readonly children: readonly { readonly number: string | null; readonly span: Span }[];
  /** The same for all turns of one block. */
  readonly block: number;
}

/** Which children of an `in any order` block must be tried in which orders; each group by itself, in the order of the text. */
export type Orders = (children: readonly (readonly (ExpandedItem | ExpandedLine)[])[]) => readonly Group[];
export type Group = { readonly only: number } | { readonly trials: readonly Trial[] };

/** What is known before the graph is made. */
export interface GraphPlan {
  readonly orders: Orders;
  /** Jumps that are not followed, by the place of the jump. */
  readonly badJumps: { readonly has: (key: string) => boolean };
}

/** An arm of a `when`, for saying that it is never taken. */
export interface Arm {
  readonly fork: number;
  readonly edge: Edge;
  readonly which: "when" | "otherwise";
  readonly span: Span;
  readonly condition: ExpandedCondition | null;
}

export interface Graph {
  readonly nodes: readonly Node[];
  readonly arms: readonly Arm[];
  readonly end: number;
  /** Where each written-out step begins, by the place of the step it was written as. */
  readonly entries: ReadonlyMap<string, readonly Entry[]>;
}

type Context = {
  readonly nodes: Node[];
  readonly arms: Arm[];
  readonly entries: Map<string, Entry[]>;
  readonly jumps: { from: number; ref: StepRef; pass: Pass; turns: readonly Turn[] }[];
  readonly plan: GraphPlan;
  step: ExpandedStep | null;
  number: string | null;
  within: readonly number[];
  turns: readonly Turn[];
  blocks: number;
  /** Blocks that may be done in any order, one in the other, that it is in. */
  depth: number;
};

/** Loose ends: edges that still have to be led to the next node. */
type Ends = readonly { readonly node: number; readonly guards: Edge["guards"] }[];

/** Builds the graph. Ids rise in the order of the text, so only jumps lead backwards. */
export function buildGraph(expanded: ExpandedProcedure, plan: GraphPlan): Graph {
  const context: Context = {
    nodes: [],
    arms: [],
    entries: new Map(),
    jumps: [],
    plan,
    step: null,
    number: null,
    within: [],
    turns: [],
    blocks: 0,
    depth: 0,
  };
  let open: Ends = [{ node: add(context, { kind: "start" }), guards: [] }];
  for (const condition of expanded.begin) open = then(context, open, { kind: "begin", condition });
  const ends = items(context, expanded.items, open);
  const end = add(context, { kind: "end" });
  lead(context, ends, end);
  for (const { from, ref, pass, turns } of context.jumps) {
    const to = resolve(context, ref, pass, turns);
    if (to !== null) context.nodes[from]?.next.push({ to, guards: [] });
  }
  return { nodes: context.nodes, arms: context.arms, end, entries: context.entries };
}

function add(context: Context, operation: Operation): number {
  const id = context.nodes.length;
  const { step, number, within: arms, turns } = context;
  const anyOrder = context.depth > 0;
  context.nodes.push({ id, operation, step, number, arms, turns, anyOrder, next: [] });
  return id;
}

function lead(context: Context, ends: Ends, to: number): void {
  for (const { node, guards } of ends) context.nodes[node]?.next.push({ to, guards });
}

/** Adds a node after `ends`; it becomes the only end. */
function then(context: Context, ends: Ends, operation: Operation): Ends {
  const id = add(context, operation);
  lead(context, ends, id);
  return [{ node: id, guards: [] }];
}

function items(context: Context, list: readonly ExpandedItem[], ends: Ends): Ends {
  let open = ends;
  for (const item of list) {
    switch (item.kind) {
      case "task":
        open = task(context, item, open);
        break;
      case "step":
        open = step(context, item, open);
        break;
      case "when":
        open = when(context, item, open, items);
        break;
      case "any order":
        open = anyOrder(context, childrenOf(item), open, items);
        break;
      case "perform":
        context.number = item.number;
        open = act(context, item.line, open);
        context.number = null;
        break;
      default:
        open = plain(context, item, open);
    }
  }
  return open;
}

function act(context: Context, line: ExpandedAction, ends: Ends): Ends {
  const open = line.action.verb === "perform" ? then(context, ends, { kind: "ask", line }) : ends;
  return then(context, open, { kind: "act", line });
}

function task(context: Context, item: Extract<ExpandedItem, { kind: "task" }>, ends: Ends): Ends {
  const label = then(context, ends, { kind: "meet" });
  const open = items(context, item.items, label);
  const leave = then(context, open, { kind: "end of task" });
  remember(context, item.task.span, label[0]?.node ?? 0, leave[0]?.node ?? 0, item.pass);
  return leave;
}

function step(context: Context, item: ExpandedStep, ends: Ends): Ends {
  context.step = item;
  context.number = item.step.number;
  const enter = then(context, ends, { kind: "enter", step: item });
  const open = lines(context, item.lines, enter);
  const leave = then(context, open, { kind: "leave", step: item });
  remember(context, item.step.span, enter[0]?.node ?? 0, leave[0]?.node ?? 0, item.pass);
  context.step = null;
  context.number = null;
  return leave;
}

function remember(context: Context, span: Span, node: number, leave: number, pass: Pass): void {
  const key = spanKey(span);
  const list = context.entries.get(key);
  const entry = { node, leave, pass, turns: context.turns };
  if (list === undefined) context.entries.set(key, [entry]);
  else list.push(entry);
}

function lines(context: Context, list: readonly ExpandedLine[], ends: Ends): Ends {
  let open = ends;
  for (const line of list) {
    switch (line.kind) {
      case "action":
        open = act(context, line, open);
        break;
      case "check":
        open = then(context, open, { kind: "look", check: line.check, pass: line.pass });
        if (line.fails !== null) {
          const fork = then(context, open, { kind: "fork", span: line.check.span });
          open = [...fork, ...lines(context, line.fails, fork)];
          open = then(context, open, { kind: "meet" });
        }
        break;
      case "when":
        open = when(context, line, open, lines);
        break;
      case "any order":
        open = anyOrder(context, childrenOf(line), open, lines);
        break;
      default:
        open = plain(context, line, open);
    }
  }
  return open;
}

function plain(
  context: Context,
  item: Extract<ExpandedItem | ExpandedLine, { kind: "jump" | "statement" | "note" | "damaged" }>,
  ends: Ends,
): Ends {
  if (item.kind === "damaged") return then(context, ends, { kind: "damaged", damaged: item.damaged });
  if (item.kind !== "jump") return ends;
  const { jump } = item;
  if (jump.kind === "stop") {
    then(context, ends, { kind: "stop", jump });
    return [];
  }
  const node = then(context, ends, { kind: "jump", jump })[0]?.node ?? 0;
  if (!context.plan.badJumps.has(spanKey(jump.span)))
    context.jumps.push({ from: node, ref: jump.step, pass: item.pass, turns: context.turns });
  return [];
}

function when<T>(
  context: Context,
  item: ExpandedWhen<T>,
  ends: Ends,
  inside: (context: Context, list: readonly T[], ends: Ends) => Ends,
): Ends {
  const fork = then(context, ends, { kind: "fork", span: item.span })[0]?.node ?? 0;
  const open: Ends[number][] = [];
  const failed: { condition: ExpandedCondition; holds: boolean }[] = [];
  const arm = (
    guards: Edge["guards"],
    list: readonly T[],
    which: Arm["which"],
    span: Span,
    condition: ExpandedCondition | null,
  ): void => {
    const entry = add(context, { kind: "meet" });
    const edge: Edge = { to: entry, guards };
    context.nodes[fork]?.next.push(edge);
    const outside = context.within;
    context.within = [...outside, context.arms.length];
    context.arms.push({ fork, edge, which, span, condition });
    open.push(...inside(context, list, [{ node: entry, guards: [] }]));
    context.within = outside;
  };
  for (const { condition, items: list } of item.arms) {
    arm([...failed, { condition, holds: true }], list, "when", condition.span, condition);
    failed.push({ condition, holds: false });
  }
  if (item.otherwise === null) open.push({ node: fork, guards: failed });
  else arm([...failed], item.otherwise, "otherwise", item.otherwiseSpan ?? item.span, null);
  return open.length === 0 ? [] : then(context, open, { kind: "meet" });
}

type Children<T> = readonly (readonly T[])[];

function childrenOf<T>({ items, starts }: ExpandedAnyOrder<T>): Children<T> {
  return starts.map((start, at) => items.slice(start, starts[at + 1]));
}

type Inside<T> = (context: Context, list: readonly T[], ends: Ends) => Ends;

/** Children that have nothing to do with each other follow one another as written; others in all the orders that matter. */
function anyOrder<T extends ExpandedItem | ExpandedLine>(
  context: Context,
  children: Children<T>,
  ends: Ends,
  inside: Inside<T>,
): Ends {
  let open = ends;
  context.depth++;
  // Where nothing leads to, there is no order to be tried: it stands as it is written.
  const groups = ends.length === 0 ? children.map((_, only) => ({ only })) : context.plan.orders(children);
  for (const group of groups) {
    if ("only" in group) open = inside(context, picked(children, [group.only]), open);
    else open = tried(context, children, group.trials, open, inside);
  }
  context.depth--;
  return open;
}

/** Each trial by itself; behind them all ways meet. */
function tried<T extends ExpandedItem | ExpandedLine>(
  context: Context,
  children: Children<T>,
  trials: readonly Trial[],
  ends: Ends,
  inside: Inside<T>,
): Ends {
  const [first] = trials;
  const group = [...(first?.every.flat() ?? []), ...(first?.after ?? [])].sort((a, b) => a - b);
  const block = context.blocks++;
  const places = children.flatMap((child) => child.slice(0, 1).map(place));
  const left = waysThrough(trials, then(context, ends, { kind: "meet" }), {
    meet: (open) => (open.length === 0 ? [] : then(context, open, { kind: "meet" })),
    take: (done, open) => {
      // The last of `done` is done now.
      const outside = context.turns;
      context.turns = [...outside, { done, group, block, children: places }];
      const ended = inside(context, picked(children, done.slice(-1)), open);
      context.turns = outside;
      return ended;
    },
  });
  return left.length === 0 ? [] : then(context, left, { kind: "meet" });
}

function picked<T>(children: Children<T>, at: readonly number[]): readonly T[] {
  return at.flatMap((each) => children[each] ?? []);
}

/** Where a child stands, for showing an order. */
function place(child: ExpandedItem | ExpandedLine): Turn["children"][number] {
  switch (child.kind) {
    case "step":
      return { number: child.step.number, span: child.step.headSpan };
    case "task":
      return { number: child.task.number, span: child.task.headSpan };
    case "perform":
      return { number: child.number, span: child.line.action.place };
    case "action":
      return { number: null, span: child.action.place };
    case "check":
      return { number: null, span: child.check.span };
    case "jump":
      return { number: null, span: child.jump.span };
    case "statement":
      return { number: null, span: child.statement.span };
    case "note":
      return { number: null, span: child.note.span };
    case "damaged":
      return { number: null, span: child.damaged.span };
    default:
      return { number: null, span: child.span };
  }
}

/** The written-out step that a name means: of the same pass and turn from inside, else the last. */
function resolve(context: Context, ref: StepRef, pass: Pass, turns: readonly Turn[]): number | null {
  const places = (ref.target === null ? undefined : context.entries.get(spanKey(ref.target))) ?? [];
  const ofPass = samePass(places, nearest(places, pass));
  const shared = (place: Entry): number => {
    const differing = turns.findIndex((turn, at) => place.turns[at] !== turn);
    return differing < 0 ? turns.length : differing;
  };
  const most = Math.max(...ofPass.map(shared));
  return ofPass.filter((place) => shared(place) === most).at(-1)?.node ?? null;
}
