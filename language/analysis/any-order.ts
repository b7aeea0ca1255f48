// Which children of an `in any order` block have anything to do with each other. Those that have are tried in all orders, or
// where there are too many in real orders that show each before, right after and long after each other; those that have not
// follow one another as written, so that twenty independent steps cost no more than twenty steps. Knows no paths.
import type { Declaration } from "#model/declarations.ts";
import type { ExpandedAction, ExpandedCondition, ExpandedItem, ExpandedLine } from "#model/expanded.ts";
import type { Move } from "./action.ts";
import { rested } from "./actions/curing.ts";
import { spanKey } from "./entries.ts";
import { atomsOf, type Formula, type FormulaContext, settle } from "./formula.ts";
import type { Group, Orders } from "./graph.ts";
import { lookedAt } from "./limits/looked-at.ts";
import { passing } from "./passing.ts";
import { carry } from "./standing.ts";
import type { Summary } from "./summary.ts";
import { damagedVariables } from "./unknown.ts";
import type { Update } from "./update.ts";
import type { World } from "./world.ts";

export interface DependenceContext {
  readonly world: World;
  readonly formulas: FormulaContext;
  readonly formula: (condition: ExpandedCondition) => Formula;
  readonly moves: (line: ExpandedAction) => readonly Move[];
  readonly afterTime: () => readonly Update[];
  readonly performed: {
    readonly calleeOf: (line: ExpandedAction) => Summary | null;
    readonly doubtOf: (line: ExpandedAction) => readonly Declaration[];
  };
  /** Steps from whose end time is counted. */
  readonly timed: ReadonlySet<string>;
  /** Whether what is only taken as met counts as done. */
  readonly assumes: boolean;
}

/** What a child touches: variables by number, readings and steps by name. */
interface Footprint {
  readonly reads: Set<number | string>;
  readonly writes: Set<number | string>;
  /** What several may do in whatever order with the same outcome. */
  readonly commutes: Set<number | string>;
  readonly steps: Set<string>;
  readonly targets: Set<string>;
  leaves: boolean;
  /** Whether it may end all work, whatever the checks in it say. */
  ends: boolean;
  size: number;
}

type Child = ExpandedItem | ExpandedLine;

const TIME = "time";

/** Up to this many that depend on each other, all orders are followed. */
const ALL_ORDERS = 8;
/** More nodes than this for one block are not made. */
const MOST_NODES = 20_000;

export function dependences(context: DependenceContext): Orders {
  return (children) => {
    const prints = children.map((child) => footprintOf(context, child));
    return groupsOf(prints).map((group): Group => {
      const [only] = group;
      if (only !== undefined && group.length === 1) return { only };
      const nodes = group.reduce((so, at) => so + (prints[at]?.size ?? 0), 0);
      return tried(group, nodes);
    });
  };
}

/** All orders where they are few, else some that are real, so that nothing is found that could not happen. */
function tried(group: readonly number[], nodes: number): Group {
  if (group.length <= ALL_ORDERS && nodes * 2 ** (group.length - 1) <= MOST_NODES) return { every: group };
  const but = (...without: number[]): readonly number[] => group.filter((at) => !without.includes(at));
  const ends = [group, [...group].reverse()];
  const firstOrLast = group.flatMap((at) => [
    [at, ...but(at)],
    [...but(at), at],
  ]);
  // Each right after each other: what the last but one leaves is what the last finds.
  // And long before each other: all the time that the others take lies between.
  const pairs = group.flatMap((one) =>
    but(one).flatMap((other) => [
      [...but(one, other), one, other],
      [one, ...but(one, other), other],
    ]),
  );
  const affordable = [
    [...ends, ...firstOrLast, ...pairs],
    [...ends, ...firstOrLast],
  ].find((orders) => orders.length * nodes <= MOST_NODES);
  return { some: distinct(affordable ?? ends) };
}

function distinct(orders: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return [...new Map(orders.map((order) => [order.join(","), order])).values()];
}

/* ---- who depends on whom ---- */

function groupsOf(prints: readonly Footprint[]): readonly (readonly number[])[] {
  const leader = prints.map((_, at) => at);
  const find = (at: number): number => {
    const above = leader[at] ?? at;
    return above === at ? at : find(above);
  };
  const join = (together: readonly number[]): void => {
    const [first, ...others] = together.map(find).sort((a, b) => a - b);
    for (const other of others) if (first !== undefined) leader[other] = first;
  };
  for (const together of sharing(prints)) join(together);
  prints.forEach((print, at) => {
    // A jump out of the block sees whatever the others have done by then.
    if (print.ends) join(prints.map((_, index) => index));
    if (print.leaves) join([at, ...prints.flatMap((other, index) => (touches(other) ? [index] : []))]);
    join([at, ...prints.flatMap((other, index) => (intersects(print.targets, other.steps) ? [index] : []))]);
  });
  const groups = new Map<number, number[]>();
  prints.forEach((_, at) => {
    const of = find(at);
    groups.set(of, [...(groups.get(of) ?? []), at]);
  });
  return [...groups.values()];
}

/** For each variable that order matters for, those that touch it. */
function sharing(prints: readonly Footprint[]): readonly (readonly number[])[] {
  const users = new Map<number | string, { all: Set<number>; writers: number; readers: number; commuters: number }>();
  const note = (of: "writers" | "readers" | "commuters", keys: Iterable<number | string>, at: number): void => {
    for (const key of keys) {
      const user = users.get(key) ?? { all: new Set(), writers: 0, readers: 0, commuters: 0 };
      users.set(key, user);
      user.all.add(at);
      user[of]++;
    }
  };
  prints.forEach((print, at) => {
    note("writers", print.writes, at);
    note("readers", print.reads, at);
    note("commuters", print.commutes, at);
  });
  return [...users.values()].flatMap(({ all, writers, readers, commuters }) =>
    writers > 0 || (commuters > 0 && readers > 0) ? [[...all]] : [],
  );
}

function touches(print: Footprint): boolean {
  return print.writes.size > 0 || print.commutes.size > 0;
}

function intersects(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  for (const one of a) if (b.has(one)) return true;
  return false;
}

/* ---- what a child touches ---- */

function footprintOf(context: DependenceContext, child: readonly Child[]): Footprint {
  const print: Footprint = {
    reads: new Set(),
    writes: new Set(),
    commutes: new Set(),
    steps: new Set(),
    targets: new Set(),
    leaves: false,
    ends: false,
    size: 0,
  };
  const jumps: string[] = [];
  walk(context, print, jumps, child);
  print.leaves = jumps.some((target) => !print.steps.has(target));
  return print;
}

function walk(context: DependenceContext, print: Footprint, jumps: string[], list: readonly Child[]): void {
  for (const item of list) {
    print.size++;
    switch (item.kind) {
      case "task":
        print.steps.add(spanKey(item.task.span));
        walk(context, print, jumps, item.items);
        changes(print, context.afterTime());
        break;
      case "step":
        step(context, print, item);
        walk(context, print, jumps, item.lines);
        break;
      case "check":
        changes(print, passing(context.world, { kind: "look", check: item.check, pass: item.pass }));
        failing(context, print, jumps, item.fails ?? []);
        break;
      case "when":
        for (const arm of item.arms) {
          asks(context, print, arm.condition);
          walk(context, print, jumps, arm.items);
        }
        walk(context, print, jumps, item.otherwise ?? []);
        break;
      case "any order":
        walk(context, print, jumps, item.items);
        break;
      case "perform":
        action(context, print, item.line);
        break;
      case "action":
        action(context, print, item);
        break;
      case "jump":
        if (item.jump.kind === "stop") print.ends = true;
        else if (item.jump.step.target !== null) jumps.push(spanKey(item.jump.step.target));
        break;
      case "damaged":
        for (const thing of item.damaged.mentions)
          for (const variable of damagedVariables(context.world, thing)) print.writes.add(variable);
        break;
    }
  }
}

/** Where a check may fail it may also hold: a stop there keeps nobody from what comes behind. */
function failing(context: DependenceContext, print: Footprint, jumps: string[], list: readonly Child[]): void {
  const { ends } = print;
  walk(context, print, jumps, list);
  print.ends = ends;
}

function step(context: DependenceContext, print: Footprint, item: Extract<Child, { kind: "step" }>): void {
  const { step } = item;
  print.steps.add(spanKey(step.span));
  // Time runs whoever takes it, but matters only where it is counted.
  print.commutes.add(TIME);
  if (step.within !== null || context.timed.has(spanKey(step.span))) print.reads.add(TIME);
  for (const ref of [...step.after, ...step.before, ...(step.within === null ? [] : [step.within.step])])
    if (ref.target !== null) print.targets.add(spanKey(ref.target));
  for (const condition of item.needs) takesAsMet(context, print, condition);
  for (const condition of item.gives) makes(context, print, condition);
  changes(print, passing(context.world, { kind: "enter", step: item }));
  changes(print, passing(context.world, { kind: "leave", step: item }));
}

function action(context: DependenceContext, print: Footprint, line: ExpandedAction): void {
  print.commutes.add(TIME);
  for (const move of context.moves(line)) {
    for (const need of move.needs) for (const { variable } of need.bad) print.reads.add(variable);
    changes(
      print,
      move.updates.filter((update) => context.assumes || update.assumed !== true),
    );
  }
  const { variables, time } = lookedAt(context.world, line);
  for (const variable of variables) print.reads.add(variable);
  if (time) print.reads.add(TIME);
  if (line.until !== null) makes(context, print, line.until);
  if (line.action.verb === "measure" && line.action.reading !== null)
    print.writes.add(`reading ${line.action.reading.id}`);
  for (const thing of context.performed.doubtOf(line))
    for (const variable of damagedVariables(context.world, thing)) print.writes.add(variable);
  const callee = context.performed.calleeOf(line);
  if (callee !== null) performs(context, print, callee);
}

function performs(context: DependenceContext, print: Footprint, callee: Summary): void {
  const { world } = context;
  for (const condition of callee.begin) takesAsMet(context, print, condition);
  for (const condition of callee.finish) makes(context, print, condition);
  for (const { key, initial } of callee.asAtStart) print.reads.add(world.byKey(key, initial));
  for (const { key, initial } of callee.leaves) {
    print.writes.add(world.byKey(key, initial));
    const moved = key.startsWith("place:") ? world.partOf(key.slice("place:".length)) : undefined;
    if (moved !== undefined) changes(print, carry(world, moved.part, moved.index));
  }
  if (callee.takesTime) changes(print, context.afterTime());
  changes(print, rested(world, callee.leastTime));
}

function changes(print: Footprint, updates: readonly Update[]): void {
  for (const { variable, by, when, commutes } of updates) {
    (commutes === true ? print.commutes : print.writes).add(variable);
    if (by !== undefined) print.reads.add(by);
    for (const alternative of when ?? []) for (const test of alternative) print.reads.add(test.variable);
  }
}

function asks(context: DependenceContext, print: Footprint, condition: ExpandedCondition): void {
  for (const { variable } of atomsOf(context.formula(condition))) print.reads.add(variable);
  if (condition.form === "reading") print.reads.add(`reading ${condition.reading.id}`);
  if (condition.form === "all" || condition.form === "any")
    for (const operand of condition.operands) asks(context, print, operand);
  if (condition.form === "not") asks(context, print, condition.operand);
}

function takesAsMet(context: DependenceContext, print: Footprint, condition: ExpandedCondition): void {
  asks(context, print, condition);
  if (context.assumes) makes(context, print, condition);
}

function makes(context: DependenceContext, print: Footprint, condition: ExpandedCondition): void {
  changes(print, settle(context.formulas, context.formula(condition)));
}
