// Writes a procedure out: every pass of every repeat, every index worked out. Counts first, so that a procedure that is
// too large costs nothing. Pure and total; knows no state.

import type { Span } from "#syntax/span.ts";
import type { Declaration } from "./declarations.ts";
import type {
  ExpandedAction,
  ExpandedAnyOrder,
  ExpandedCondition,
  ExpandedItem,
  ExpandedLine,
  ExpandedProcedure,
  ExpandedStep,
  ExpandedWhen,
  Thing,
} from "./expanded.ts";
import { instanceRange } from "./instances.ts";
import { type Instances, instancesOf, isConstantTarget } from "./instances-of-target.ts";
import type { ModelProblem, Pass } from "./problem.ts";
import type {
  Action,
  Condition,
  Item,
  Line,
  Procedure,
  RepeatBlock,
  Step,
  Target,
  Task,
  WhenBlock,
} from "./procedure.ts";
import { countSteps, isConstantRange, passValues } from "./repeat-passes.ts";
import { objectsOf, secondOf, spokenOf } from "./spoken-of.ts";

export interface Expansion {
  readonly expanded: ExpandedProcedure;
  readonly problems: readonly ModelProblem[];
}

/**
 * Writes out the passes and instances of a procedure.
 * @param limit the most steps; beyond it nothing is written out, and `tooLarge` says where
 */
export function expandProcedure(procedure: Procedure, limit = 100_000): Expansion {
  const writing: Writing = { outside: new Map(), constant: new Map() };
  const begin = procedure.begin.map((condition) => conditionIn(writing, condition, START));
  const finish = procedure.finish.map((condition) => conditionIn(writing, condition, START));
  const { steps, tooLarge: span } = countSteps(procedure.items, limit);
  if (span !== null) {
    const wanted = Number.isSafeInteger(steps) ? steps : null;
    const expanded = { procedure, begin, finish, items: [], steps: 0, tooLarge: { span, limit, wanted } };
    return { expanded, problems: [...writing.outside.values()] };
  }
  const items = itemsIn(writing, procedure.items, START);
  return {
    expanded: { procedure, begin, finish, items, steps, tooLarge: null },
    problems: [...writing.outside.values()],
  };
}

const START: Pass = [];

type NoSuchInstance = Extract<ModelProblem, { readonly kind: "no such instance" }>;

interface Writing {
  /** Targets outside what there is: each is told once, with its first pass and the number of others. */
  readonly outside: Map<Target, { -readonly [Key in keyof NoSuchInstance]: NoSuchInstance[Key] }>;
  /** Targets that are the same in every pass are worked out once. */
  readonly constant: Map<Target, Instances>;
}

/* ---- items and lines ---- */

function itemsIn(writing: Writing, items: readonly Item[], pass: Pass): readonly ExpandedItem[] {
  return items.flatMap((item) => itemIn(writing, item, pass));
}

function itemIn(writing: Writing, item: Item, pass: Pass): readonly ExpandedItem[] {
  switch (item.kind) {
    case "task":
      return [taskIn(writing, item, pass)];
    case "step":
      return [stepIn(writing, item, pass)];
    case "perform":
      return [{ kind: "perform", line: actionIn(writing, item.action, pass), number: item.number, pass }];
    case "repeat":
      return repeated(item, pass, (inner) => itemsIn(writing, item.items, inner));
    case "when":
      return [whenIn(writing, item, pass, (items) => itemsIn(writing, items, pass))];
    case "any order":
      return [
        anyOrderOf(
          item.items.map((child) => itemIn(writing, child, pass)),
          item.span,
        ),
      ];
    default:
      return [plainIn(item, pass)];
  }
}

type ExpandedTask = Extract<ExpandedItem, { readonly kind: "task" }>;

function taskIn(writing: Writing, task: Task, pass: Pass): ExpandedTask {
  const known = pass.length === 0 ? written.get(task) : undefined;
  if (known !== undefined) return known;
  const told = writing.outside.size;
  const made: ExpandedTask = { kind: "task", task, pass, items: itemsIn(writing, task.items, pass) };
  if (pass.length === 0 && writing.outside.size === told) written.set(task, made);
  return made;
}

/** What needs no telling is written out once, as long as the task is the same. */
const written = new WeakMap<Task, ExpandedTask>();

function stepIn(writing: Writing, step: Step, pass: Pass): ExpandedStep {
  const needs = step.needs.map((condition) => conditionIn(writing, condition, pass));
  const gives = step.gives.map((condition) => conditionIn(writing, condition, pass));
  return { kind: "step", step, pass, needs, gives, lines: linesIn(writing, step.lines, pass) };
}

function linesIn(writing: Writing, lines: readonly Line[], pass: Pass): readonly ExpandedLine[] {
  return lines.flatMap((line) => lineIn(writing, line, pass));
}

function lineIn(writing: Writing, line: Line, pass: Pass): readonly ExpandedLine[] {
  switch (line.kind) {
    case "action":
      return actionLines(writing, line, pass);
    case "check":
      return [
        { kind: "check", check: line, pass, fails: line.fails === null ? null : linesIn(writing, line.fails, pass) },
      ];
    case "repeat":
      return repeated(line, pass, (inner) => linesIn(writing, line.items, inner));
    case "when":
      return [whenIn(writing, line, pass, (lines) => linesIn(writing, lines, pass))];
    case "any order":
      return [
        anyOrderOf(
          line.items.map((child) => lineIn(writing, child, pass)),
          line.span,
        ),
      ];
    default:
      return [plainIn(line, pass)];
  }
}

function anyOrderOf<T>(children: readonly (readonly T[])[], span: Span): ExpandedAnyOrder<T> {
  const starts: number[] = [];
  let next = 0;
  for (const child of children) {
    if (child.length > 0) starts.push(next);
    next += child.length;
  }
  return { kind: "any order", items: children.flat(), starts, span };
}

type Plain = Extract<Item & Line, { readonly kind: "return" | "go" | "stop" | "statement" | "note" | "damaged" }>;

function plainIn(
  item: Plain,
  pass: Pass,
): Extract<ExpandedItem & ExpandedLine, { readonly kind: "jump" | "statement" | "note" | "damaged" }> {
  switch (item.kind) {
    case "statement":
      return { kind: "statement", statement: item.statement, pass };
    case "note":
      return { kind: "note", note: item.note, pass };
    case "damaged":
      return { kind: "damaged", damaged: item };
    default:
      return { kind: "jump", jump: item, pass };
  }
}

/** Of a repeat whose bounds are no numbers, which was told when the text was lowered, all it speaks of is in doubt. */
function repeated<T>(
  block: RepeatBlock<Item> | RepeatBlock<Line>,
  pass: Pass,
  inside: (pass: Pass) => readonly T[],
): readonly (T | DamagedEntry)[] {
  if (!isConstantRange(block.range)) {
    return [{ kind: "damaged", damaged: { kind: "damaged", mentions: [...spokenOf(block.items)], span: block.span } }];
  }
  const all: T[] = [];
  for (const value of passValues(block.range)) {
    for (const each of inside([...pass, { variable: block.variable, value }])) all.push(each);
  }
  return all;
}

type DamagedEntry = Extract<ExpandedItem & ExpandedLine, { readonly kind: "damaged" }>;

function whenIn<T, E>(
  writing: Writing,
  block: WhenBlock<T>,
  pass: Pass,
  inside: (items: readonly T[]) => readonly E[],
): ExpandedWhen<E> {
  const arms = block.arms.map((arm) => ({
    condition: conditionIn(writing, arm.condition, pass),
    items: inside(arm.items),
  }));
  const otherwise = block.otherwise === null ? null : inside(block.otherwise);
  return { kind: "when", arms, otherwise, span: block.span, otherwiseSpan: block.otherwiseSpan };
}

/* ---- actions ---- */

/** The action, and what it leaves in doubt: a part of which no such instance is. */
function actionLines(writing: Writing, action: Action, pass: Pass): readonly ExpandedLine[] {
  const doubtful: Declaration[] = [];
  const line = actionIn(writing, action, pass, doubtful);
  if (doubtful.length === 0) return [line];
  return [line, { kind: "damaged", damaged: { kind: "damaged", mentions: doubtful, span: action.place } }];
}

function actionIn(writing: Writing, action: Action, pass: Pass, doubtful: Declaration[] = []): ExpandedAction {
  const second = secondOf(action);
  return {
    kind: "action",
    action,
    pass,
    objects: objectsOf(action).flatMap((target) => thingsIn(writing, target, pass, doubtful)),
    second: second === null ? null : secondThing(thingsIn(writing, second, pass, doubtful)),
    until: action.verb === "wait" && action.until !== null ? conditionIn(writing, action.until, pass) : null,
  };
}

/** Of several places each object has its own by its number, which is what no position says. */
function secondThing(things: readonly Thing[]): Thing | null {
  const [first] = things;
  if (first === undefined) return null;
  return first.kind === "place" && things.length > 1 ? { ...first, position: null } : first;
}

function thingsIn(writing: Writing, target: Target, pass: Pass, doubtful: Declaration[]): readonly Thing[] {
  const { outside, things } = targetIn(writing, target, pass);
  const { thing } = target;
  if (outside !== null && thing !== null) {
    doubtful.push(thing);
    tellOutside(writing, target, thing, outside, pass);
  }
  return things;
}

function targetIn(writing: Writing, target: Target, pass: Pass): Instances {
  const known = writing.constant.get(target);
  if (known !== undefined) return known;
  const found = instancesOf(target, pass);
  if (!isConstantTarget(target)) return found;
  // A constant index was checked when the text was lowered.
  const constant = { ...found, outside: null };
  writing.constant.set(target, constant);
  return constant;
}

function tellOutside(writing: Writing, target: Target, thing: Declaration, index: string, pass: Pass): void {
  const told = writing.outside.get(target);
  if (told !== undefined) {
    told.more++;
    return;
  }
  const { name, span } = target;
  const range = instanceRange(thing) ?? "";
  const { span: declaredAt } = thing;
  writing.outside.set(target, { kind: "no such instance", span, name, index, range, declaredAt, pass, more: 0 });
}

/* ---- conditions ---- */

function conditionIn(writing: Writing, condition: Condition, pass: Pass): ExpandedCondition {
  const { span } = condition;
  switch (condition.form) {
    case "all":
    case "any":
      return {
        form: condition.form,
        operands: condition.operands.map((operand) => conditionIn(writing, operand, pass)),
        span,
      };
    case "not":
      return { form: "not", operand: conditionIn(writing, condition.operand, pass), span };
    case "no temporary parts":
    case "unknown":
      return { form: condition.form, span };
    case "fact":
      return { form: "fact", fact: condition.fact.id, span, source: condition };
    default:
      return subjectConditionIn(writing, condition, pass);
  }
}

type SubjectCondition = Extract<Condition, { readonly subject: Target }>;

function subjectConditionIn(writing: Writing, condition: SubjectCondition, pass: Pass): ExpandedCondition {
  const { negated, span, subject } = condition;
  if (condition.form === "bound" && subject.thing?.kind === "reading") {
    const reading: ExpandedCondition = { form: "reading", reading: subject.thing, span, source: condition };
    return negated ? { form: "not", operand: reading, span } : reading;
  }
  const things = thingsIn(writing, subject, pass, []);
  if (things.length === 0) return { form: "unknown", span };
  switch (condition.form) {
    case "state":
      return { form: "state", things, state: condition.state, negated, span, source: condition };
    case "clock":
      return { form: "clock", things, negated, span, source: condition };
    case "bound":
      return { form: "bound", things, negated, span, source: condition };
  }
}
