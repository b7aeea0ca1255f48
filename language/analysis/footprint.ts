// What a child of an `in any order` block asks about and changes: what has to be known to say in which orders the children must be
// tried. Knows no orders and no paths.
import type { Declaration } from "#model/declarations.ts";
import type { ExpandedAction, ExpandedCondition, ExpandedItem, ExpandedLine } from "#model/expanded.ts";
import type { Move } from "./action.ts";
import { rested } from "./actions/curing.ts";
import type { Asked } from "./asked-of-caller.ts";
import { spanKey } from "./entries.ts";
import { atomsOf, type Formula, type FormulaContext, settle } from "./formula.ts";
import { lookedAt } from "./limits/looked-at.ts";
import { passing } from "./passing.ts";
import { carry } from "./standing.ts";
import type { Summary } from "./summary.ts";
import { damagedVariables } from "./unknown.ts";
import type { Update } from "./update.ts";
import type { World } from "./world.ts";

export interface FootprintContext {
  readonly world: World;
  readonly formulas: FormulaContext;
  readonly formula: (condition: ExpandedCondition) => Formula;
  readonly moves: (line: ExpandedAction) => readonly Move[];
  readonly afterTime: () => readonly Update[];
  readonly performed: {
    readonly calleeOf: (line: ExpandedAction) => Summary | null;
    readonly doubtOf: (line: ExpandedAction) => readonly Declaration[];
  };
  readonly asked: (callee: Summary) => readonly Asked[];
  /** Steps from whose end time is counted. */
  readonly timed: ReadonlySet<string>;
  /** Whether what is only taken as met counts as done. */
  readonly assumes: boolean;
}

/** A variable by its number; a reading, a step that has been done, and the time by name. */
export type Key = number | string;

/** A change of one variable. */
export interface Write {
  /** What several may do in whatever order with the same outcome. */
  readonly commutes: boolean;
  /** What decides what the variable becomes. */
  readonly reads: ReadonlySet<Key>;
}

export interface Footprint {
  /** Each time something is asked: all that the answer rests on. */
  readonly looks: readonly (readonly Key[])[];
  readonly writes: ReadonlyMap<Key, Write>;
  /** What decides whether any of the work in the child is done. */
  readonly control: ReadonlySet<Key>;
  /** Whether it may lead out of the block, past children that are still to be done. */
  readonly leaves: boolean;
  /** Whether it may end all work, whatever the checks in it say. */
  readonly ends: boolean;
  /** About as many things happen in it. */
  readonly size: number;
}

interface Print extends Footprint {
  readonly looks: (readonly Key[])[];
  readonly writes: Map<Key, { commutes: boolean; readonly reads: Set<Key> }>;
  readonly control: Set<Key>;
  /** The steps and tasks in it, and those that are jumped to. */
  readonly steps: Set<string>;
  readonly jumps: Set<string>;
  ends: boolean;
  size: number;
}

type Child = ExpandedItem | ExpandedLine;

const TIME = "time";

export function footprintOf(context: FootprintContext, child: readonly Child[]): Footprint {
  const print: Print = {
    looks: [],
    writes: new Map(),
    control: new Set(),
    leaves: false,
    ends: false,
    size: 0,
    steps: new Set(),
    jumps: new Set(),
  };
  walk(context, print, child);
  return { ...print, leaves: [...print.jumps].some((target) => !print.steps.has(target)) };
}

function walk(context: FootprintContext, print: Print, list: readonly Child[]): void {
  for (const item of list) {
    print.size++;
    switch (item.kind) {
      case "task":
        isDone(print, spanKey(item.task.span));
        walk(context, print, item.items);
        changes(print, context.afterTime());
        break;
      case "step":
        step(context, print, item);
        walk(context, print, item.lines);
        break;
      case "check":
        changes(print, passing(context.world, { kind: "look", check: item.check, pass: item.pass }));
        failing(context, print, item.fails ?? []);
        break;
      case "when":
        for (const arm of item.arms) {
          for (const key of asks(context, print, arm.condition)) print.control.add(key);
          walk(context, print, arm.items);
        }
        walk(context, print, item.otherwise ?? []);
        break;
      case "any order":
        walk(context, print, item.items);
        break;
      case "perform":
        action(context, print, item.line);
        break;
      case "action":
        action(context, print, item);
        break;
      case "jump":
        if (item.jump.kind === "stop") print.ends = true;
        else if (item.jump.step.target !== null) print.jumps.add(spanKey(item.jump.step.target));
        break;
      case "damaged":
        for (const thing of item.damaged.mentions) inDoubt(context, print, thing);
        break;
    }
  }
}

/** Where a check may fail it may also hold: a stop there keeps nobody from what comes behind. */
function failing(context: FootprintContext, print: Print, list: readonly Child[]): void {
  const { ends } = print;
  walk(context, print, list);
  print.ends = ends;
}

function step(context: FootprintContext, print: Print, item: Extract<Child, { kind: "step" }>): void {
  const { step } = item;
  const key = spanKey(step.span);
  isDone(print, key);
  // Time runs whoever takes it, but matters only where it is counted.
  write(print, TIME, true);
  if (context.timed.has(key)) print.looks.push([TIME]);
  for (const { target } of [...step.after, ...step.before])
    if (target !== null) print.looks.push([doneKey(spanKey(target))]);
  const since = step.within?.step.target ?? null;
  if (step.within !== null) print.looks.push([TIME, ...(since === null ? [] : [doneKey(spanKey(since))])]);
  for (const condition of item.needs) takesAsMet(context, print, condition);
  for (const condition of item.gives) makes(context, print, condition);
  changes(print, passing(context.world, { kind: "enter", step: item }));
  changes(print, passing(context.world, { kind: "leave", step: item }));
}

function isDone(print: Print, step: string): void {
  print.steps.add(step);
  write(print, doneKey(step), false);
}

function doneKey(step: string): Key {
  return `done ${step}`;
}

function action(context: FootprintContext, print: Print, line: ExpandedAction): void {
  write(print, TIME, true);
  const needed = new Set<Key>();
  for (const move of context.moves(line)) {
    for (const { bad } of move.needs) {
      const asked = bad.map(({ variable }) => variable);
      print.looks.push(asked);
      for (const variable of asked) needed.add(variable);
    }
    const { updates } = move;
    changes(
      print,
      updates.filter((update) => update.assumed !== true),
    );
    if (context.assumes)
      takesAsSo(
        print,
        updates.filter((update) => update.assumed === true),
      );
  }
  const { variables, time } = lookedAt(context.world, line);
  // How long something has been so depends on all that it depends on that it is so.
  print.looks.push(time ? [TIME, ...variables, ...needed] : variables);
  if (line.until !== null) makes(context, print, line.until);
  if (line.action.verb === "measure" && line.action.reading !== null)
    write(print, readingKey(line.action.reading.id), false);
  for (const thing of context.performed.doubtOf(line)) inDoubt(context, print, thing);
  const callee = context.performed.calleeOf(line);
  if (callee !== null) performs(context, print, callee);
}

function performs(context: FootprintContext, print: Print, callee: Summary): void {
  const { world } = context;
  const asked = new Set<Key>();
  const asks = (keys: readonly Key[]): void => {
    for (const key of keys) asked.add(key);
  };
  for (const condition of callee.begin) asks(takesAsMet(context, print, condition));
  for (const { key, initial } of callee.asAtStart) {
    const variable = world.byKey(key, initial);
    print.looks.push([variable]);
    asks([variable]);
  }
  for (const { need } of context.asked(callee)) print.looks.push(need.bad.map(({ variable }) => variable));
  for (const condition of callee.finish) makes(context, print, condition);
  for (const { key, initial } of callee.leaves) {
    write(print, world.byKey(key, initial), false, asked);
    const moved = key.startsWith("place:") ? world.partOf(key.slice("place:".length)) : undefined;
    if (moved !== undefined) changes(print, carry(world, moved.part, moved.index));
  }
  if (callee.takesTime) changes(print, context.afterTime());
  changes(print, rested(world, callee.leastTime));
}

function inDoubt(context: FootprintContext, print: Print, thing: Declaration): void {
  for (const variable of damagedVariables(context.world, thing)) write(print, variable, false);
}

function changes(print: Print, updates: readonly Update[]): void {
  for (const { variable, by, when, commutes } of updates) {
    const reads = (when ?? []).flatMap((alternative) => alternative.map((test) => test.variable));
    write(print, variable, commutes === true, by === undefined ? reads : [by, ...reads]);
  }
}

function write(print: Print, key: Key, commutes: boolean, reads: Iterable<Key> = []): void {
  const known = print.writes.get(key) ?? { commutes: true, reads: new Set() };
  print.writes.set(key, known);
  if (!commutes) known.commutes = false;
  for (const read of reads) known.reads.add(read);
}

/** Returns all that the answer rests on. */
function asks(context: FootprintContext, print: Print, condition: ExpandedCondition): readonly Key[] {
  const keys = [...atomsOf(context.formula(condition)).map(({ variable }) => variable), ...readingsIn(condition)];
  print.looks.push(keys);
  return keys;
}

function readingsIn(condition: ExpandedCondition): readonly Key[] {
  switch (condition.form) {
    case "reading":
      return [readingKey(condition.reading.id)];
    case "all":
    case "any":
      return condition.operands.flatMap(readingsIn);
    case "not":
      return readingsIn(condition.operand);
    default:
      return [];
  }
}

function readingKey(id: string): Key {
  return `reading ${id}`;
}

function takesAsMet(context: FootprintContext, print: Print, condition: ExpandedCondition): readonly Key[] {
  const keys = asks(context, print, condition);
  if (context.assumes) takesAsSo(print, settle(context.formulas, context.formula(condition)));
  return keys;
}

/** What is taken as so is held against nobody, so all of it may come before an answer or none. */
function takesAsSo(print: Print, updates: readonly Update[]): void {
  changes(
    print,
    updates.map((update) => ({ ...update, commutes: true })),
  );
}

function makes(context: FootprintContext, print: Print, condition: ExpandedCondition): void {
  changes(print, settle(context.formulas, context.formula(condition)));
}
