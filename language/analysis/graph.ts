// The flow graph of an expanded procedure: one node for each thing that happens, in the order of the text, and edges
// with the condition under which each is taken. Knows no state and no meaning of actions.
import type {
  ExpandedAction,
  ExpandedCondition,
  ExpandedItem,
  ExpandedLine,
  ExpandedProcedure,
  ExpandedStep,
  ExpandedWhen,
} from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Damaged, Jump, StepRef } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";

/** What happens at a node. */
export type Operation =
  | { readonly kind: "start" }
  | { readonly kind: "begin"; readonly condition: ExpandedCondition }
  | { readonly kind: "end" }
  | { readonly kind: "enter"; readonly step: ExpandedStep }
  | { readonly kind: "act"; readonly line: ExpandedAction }
  | { readonly kind: "leave"; readonly step: ExpandedStep }
  | { readonly kind: "stop"; readonly jump: Jump }
  | { readonly kind: "jump"; readonly jump: Jump }
  | { readonly kind: "damaged"; readonly damaged: Damaged }
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
  readonly next: Edge[];
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
  readonly entries: ReadonlyMap<
    string,
    readonly { readonly node: number; readonly leave: number; readonly pass: Pass }[]
  >;
}

export function spanKey(span: Span): string {
  return `${span.path}:${span.start}`;
}

type Context = {
  readonly nodes: Node[];
  readonly arms: Arm[];
  readonly entries: Map<string, { node: number; leave: number; pass: Pass }[]>;
  readonly jumps: { from: number; ref: StepRef; pass: Pass }[];
  step: ExpandedStep | null;
  number: string | null;
  within: readonly number[];
};

/** Loose ends: edges that still have to be led to the next node. */
type Ends = { node: number; guards: Edge["guards"] }[];

/** Builds the graph. Ids rise in the order of the text, so only jumps lead backwards. */
export function buildGraph(expanded: ExpandedProcedure): Graph {
  const context: Context = { nodes: [], arms: [], entries: new Map(), jumps: [], step: null, number: null, within: [] };
  let open: Ends = [{ node: add(context, { kind: "start" }), guards: [] }];
  for (const condition of expanded.begin) open = then(context, open, { kind: "begin", condition });
  const ends = items(context, expanded.items, open);
  const end = add(context, { kind: "end" });
  lead(context, ends, end);
  for (const { from, ref, pass } of context.jumps) {
    const to = resolve(context, ref, pass);
    if (to !== null) context.nodes[from]?.next.push({ to, guards: [] });
  }
  return { nodes: context.nodes, arms: context.arms, end, entries: context.entries };
}

function add(context: Context, operation: Operation): number {
  const id = context.nodes.length;
  context.nodes.push({ id, operation, step: context.step, number: context.number, arms: context.within, next: [] });
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
        open = items(context, item.items, open);
        break;
      case "perform":
        context.number = item.number;
        open = then(context, open, { kind: "act", line: item.line });
        context.number = null;
        break;
      default:
        open = plain(context, item, open);
    }
  }
  return open;
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
  if (list === undefined) context.entries.set(key, [{ node, leave, pass }]);
  else list.push({ node, leave, pass });
}

function lines(context: Context, list: readonly ExpandedLine[], ends: Ends): Ends {
  let open = ends;
  for (const line of list) {
    switch (line.kind) {
      case "action":
        open = then(context, open, { kind: "act", line });
        break;
      case "check":
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
        open = lines(context, line.items, open);
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
  context.jumps.push({ from: node, ref: jump.step, pass: item.pass });
  return [];
}

function when<T>(
  context: Context,
  item: ExpandedWhen<T>,
  ends: Ends,
  inside: (context: Context, list: readonly T[], ends: Ends) => Ends,
): Ends {
  const fork = then(context, ends, { kind: "fork", span: item.span })[0]?.node ?? 0;
  const open: Ends = [];
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

/** The written-out step that a name means: of the same pass from inside a repeat, else the last. */
function resolve(context: Context, ref: StepRef, pass: Pass): number | null {
  const places = ref.target === null ? undefined : context.entries.get(spanKey(ref.target));
  return nearest(places, pass)?.node ?? null;
}

/** Of the passes of one step, the one that shares most of `pass`, the last of those. */
export function nearest<T extends { readonly pass: Pass }>(places: readonly T[] | undefined, pass: Pass): T | null {
  let best: T | null = null;
  let shared = -1;
  for (const place of places ?? []) {
    let same = 0;
    while (
      same < place.pass.length &&
      same < pass.length &&
      place.pass[same]?.value === pass[same]?.value &&
      place.pass[same]?.variable === pass[same]?.variable
    )
      same++;
    if (same >= shared) {
      shared = same;
      best = place;
    }
  }
  return best;
}
