// From a written-out procedure to the plan of its record: what is marked, and in which order, under the options chosen. Knows no
// format.

import { spanKey } from "#analysis/entries.ts";
import type { Value } from "#model/declarations.ts";
import type {
  ExpandedAction,
  ExpandedCondition,
  ExpandedItem,
  ExpandedLine,
  ExpandedProcedure,
  ExpandedStep,
} from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Check, Jump, Step, StepRef, Task } from "#model/procedure.ts";
import { type Choices, decidedBy, optionsIn } from "../conditions.ts";
import { passOf } from "../passes.ts";
import { type Pattern, tighteningOrder } from "../tightening.ts";
import type { Work } from "../work.ts";
import { limitsOf, unitChoices } from "./amounts.ts";
import { conditionId, type Ids, idsOf, optionId, roundId, timerId } from "./ids.ts";
import { measuredIn } from "./measured.ts";
import type { Deadline, Entry, Op, Plan, PlanRole, Test, Timer } from "./plan.ts";

export interface PlanInput {
  readonly expanded: ExpandedProcedure;
  readonly work: Work;
  readonly hash: string;
  /** Number and revision. */
  readonly document: string;
  readonly options: Choices;
  readonly expandedOf: (id: string) => ExpandedProcedure | null;
}

/** Total; the same for the same input, however the checklist is laid out. */
export function planOf({ expanded, work, hash, document, options, expandedOf }: PlanInput): Plan {
  const building: Building = { choices: options, expandedOf, entries: [], program: [], timers: [], deadlines: [] };
  for (const option of work.options.filter(({ name }) => !Object.hasOwn(options, name)))
    mark(building, {
      id: optionId(option.name),
      step: "",
      kind: "option",
      option: option.name,
      choices: option.choices.map(({ name }) => name),
    });
  conditions(building, "start", expanded.begin.length);
  enterProcedure(building, expanded, "", []);
  conditions(building, "end", expanded.finish.length);
  return {
    hash,
    procedure: expanded.procedure.name,
    title: expanded.procedure.title,
    document,
    options,
    roles: rolesOf(work),
    entries: building.entries,
    program: building.program,
    timers: building.timers,
    deadlines: building.deadlines,
  };
}

interface Building {
  readonly choices: Choices;
  readonly expandedOf: PlanInput["expandedOf"];
  readonly entries: Entry[];
  readonly program: Op[];
  readonly timers: Timer[];
  readonly deadlines: Deadline[];
}

/** The procedure that is being entered. */
interface Entering {
  readonly ids: Ids;
  readonly prefix: string;
  /** Procedures being performed, so that a circle ends. */
  readonly within: readonly string[];
  /** Steps and tasks in the program, by their place in the text. */
  readonly places: Map<string, Place[]>;
  /** Jumps, to be filled in when all beginnings are known. */
  readonly jumps: { readonly at: number; readonly step: StepRef; readonly pass: Pass; readonly back: boolean }[];
  /** Steps with a `within`, and the entries of their work. */
  readonly timed: { readonly step: Step; readonly pass: Pass; readonly entries: readonly string[] }[];
}

/** One pass of a step or task. */
interface Place {
  readonly number: string;
  readonly pass: Pass;
  /** Where it begins in the program. */
  readonly at: number;
  /** What is marked in it. */
  readonly entries: readonly string[];
}

/** Who signs anything, and who is named as doing a step, once each. */
function rolesOf({ steps }: Work): readonly PlanRole[] {
  const roles = new Map<string, PlanRole>();
  const holding = new Set(steps.flatMap(({ step }) => step.hold?.name ?? []));
  for (const { step } of steps)
    for (const role of [...step.signs, step.by, step.hold])
      if (role !== null) roles.set(role.name, { role: role.name, title: role.title, inspects: holding.has(role.name) });
  const named = [...roles.values()];
  // Whoever inspects has to be another than somebody: who does the work is then named too, in no role of its own.
  return named.length > 0 && named.every(({ inspects }) => inspects) ? [...named, SOMEBODY] : named;
}

const SOMEBODY: PlanRole = { role: "", title: "", inspects: false };

function conditions(building: Building, where: "start" | "end", count: number): void {
  anyOrder(
    building,
    Array.from(
      { length: count },
      (_, at) => () => mark(building, { id: conditionId(where, at), step: "", kind: "tick" }),
    ),
  );
}

function enterProcedure(
  building: Building,
  { procedure, items }: ExpandedProcedure,
  prefix: string,
  within: readonly string[],
): void {
  const entering: Entering = {
    ids: idsOf(procedure, prefix),
    prefix,
    within: [...within, procedure.id],
    places: new Map(),
    jumps: [],
    timed: [],
  };
  enterAll(building, items, entering, "");
  for (const { at, step, pass, back } of entering.jumps) {
    const to = targetOf(step, pass, entering)?.at ?? null;
    // A step that is not known, or does not lie that way, leads on to what follows; the findings say so.
    building.program[at] =
      to === null || to <= at !== back ? { op: "go", to: at + 1 } : { op: back ? "back" : "go", to };
  }
  for (const { step, pass, entries } of entering.timed) {
    const after = step.within === null ? null : targetOf(step.within.step, pass, entering);
    const most = step.within === null ? null : (limitsOf(step.within.value)?.high ?? null);
    if (after === null || most === null) continue;
    const from = { after: after.number, afterEntries: after.entries };
    building.deadlines.push({ step: prefix + step.number, entries, ...from, most });
  }
}

/** Of several passes that of the same values, of these the last. */
function targetOf({ target }: StepRef, pass: Pass, { places }: Entering): Place | null {
  const known = target === null ? [] : (places.get(spanKey(target)) ?? []);
  const value = (of: Pass, variable: string) => of.find((loop) => loop.variable === variable)?.value;
  const same = known.filter((one) =>
    one.pass.every((loop) => [undefined, loop.value].includes(value(pass, loop.variable))),
  );
  return same.at(-1) ?? known.at(-1) ?? null;
}

function enterAll(
  building: Building,
  nodes: readonly (ExpandedItem | ExpandedLine)[],
  entering: Entering,
  step: string,
): void {
  for (const node of nodes) enter(building, node, entering, step);
}

function enter(building: Building, node: ExpandedItem | ExpandedLine, entering: Entering, step: string): void {
  switch (node.kind) {
    case "task":
      placed(building, node.task, node.pass, entering, () => enterAll(building, node.items, entering, ""));
      return;
    case "step":
      placed(building, node.step, node.pass, entering, () => enterStep(building, node, entering));
      return;
    case "perform":
      enterLine(building, node.line, entering, entering.prefix + node.number);
      return;
    case "action":
      enterLine(building, node, entering, step);
      return;
    case "check":
      enterCheck(building, node, entering, step);
      return;
    case "when":
      enterWhen(building, node, entering, step);
      return;
    case "any order": {
      const ends = [...node.starts.slice(1), node.items.length];
      const children = node.starts.map((start, at) => node.items.slice(start, ends[at]));
      anyOrder(
        building,
        children.map((child) => () => enterAll(building, child, entering, step)),
      );
      return;
    }
    case "jump":
      enterJump(building, node.jump, node.pass, entering);
      return;
    case "statement":
    case "note":
    case "damaged":
      return;
  }
}

/** Enters a step or task, and notes where it is and what is marked in it. */
function placed(
  building: Building,
  { span, number }: Step | Task,
  pass: Pass,
  { places, prefix }: Entering,
  inner: () => void,
): void {
  const [at, before] = [building.program.length, building.entries.length];
  inner();
  const place = { number: prefix + number, pass, at, entries: markedSince(building, before) };
  places.set(spanKey(span), [...(places.get(spanKey(span)) ?? []), place]);
}

/** What has to be marked, of the entries from a place on; answers are asked for only where nothing else tells. */
function markedSince({ entries }: Building, before: number): readonly string[] {
  const ids: string[] = [];
  for (let at = before; at < entries.length; at++) {
    const entry = entries[at];
    if (entry !== undefined && entry.kind !== "answer") ids.push(entry.id);
  }
  return ids;
}

function enterStep(building: Building, { step, pass, lines }: ExpandedStep, entering: Entering): void {
  const { ids, prefix } = entering;
  const number = prefix + step.number;
  const before = building.entries.length;
  const timers = building.timers.length;
  enterAll(building, lines, entering, number);
  const onlyAnswers = building.entries.slice(before).every(({ kind }) => kind === "answer");
  if (step.words !== null && onlyAnswers) mark(building, { id: ids.words(step, pass), step: number, kind: "tick" });
  if (step.within !== null) entering.timed.push({ step, pass, entries: markedSince(building, before) });
  step.records.forEach((record, at) => {
    const { expect } = record;
    mark(building, {
      id: ids.record(step, at, pass),
      step: number,
      kind: "reading",
      reading: null,
      limits: expect === null ? null : limitsOf(expect),
      units: expect === null ? [] : unitChoices(expect.quantity),
      fails: false,
    });
  });
  const sign = (id: string, role: string, hold: boolean) => () =>
    mark(building, { id, step: number, kind: "sign", role, hold });
  anyOrder(
    building,
    step.signs.map(({ name }, at) => sign(ids.sign(step, at, pass), name, false)),
  );
  if (step.hold !== null) sign(ids.hold(step, pass), step.hold.name, true)();
  // A time that is waited in it runs already.
  if (building.timers.length > timers) return;
  const entries = markedSince(building, before);
  addTimer(building, { id: ids.takes(step, pass), step: number, of: "takes", entries }, step.takes);
}

function addTimer({ timers }: Building, timer: Omit<Timer, "limits">, value: Value | null): void {
  const limits = value === null ? null : limitsOf(value);
  if (limits !== null && timer.entries.length > 0) timers.push({ ...timer, limits });
}

function enterLine(building: Building, line: ExpandedAction, entering: Entering, step: string): void {
  const { action, pass } = line;
  const id = entering.ids.line(action.span, pass);
  if (action.verb === "perform" && action.procedure !== null) {
    const { id: performed } = action.procedure;
    const inner = entering.within.includes(performed) ? null : building.expandedOf(performed);
    if (inner !== null) enterProcedure(building, inner, `${step}.`, entering.within);
  }
  const pattern =
    action.verb === "tighten" ? action.pattern : action.verb === "loosen" && action.reverse ? "reverse" : null;
  const measured = measuredIn(line);
  if (measured === null) enterFastening(building, line, pattern, id, step);
  else mark(building, { id, step, ...measured });
  const [of, time] =
    action.verb === "wait"
      ? (["wait", action.time] as const)
      : (["cure", action.verb === "apply" ? (action.cure ?? action.dose.consumable?.cure ?? null) : null] as const);
  addTimer(building, { id: timerId(id, of), step, of, entries: [id] }, time);
}

/** A tick; each round of tightening by itself, and so each screw on its way round. */
function enterFastening(
  building: Building,
  line: ExpandedAction,
  pattern: Pattern | null,
  id: string,
  step: string,
): void {
  const { action, objects } = line;
  const places = tighteningOrder(objects, pattern) ?? [];
  const entry = (own: string): Entry =>
    places.length === 0 ? { id: own, step, kind: "tick" } : { id: own, step, kind: "round", places };
  const rounds = action.verb === "tighten" ? action.stages.length : 1;
  if (rounds < 2) mark(building, entry(id));
  else for (let round = 0; round < rounds; round++) mark(building, entry(roundId(id, round)));
}

type CheckLine = ExpandedLine & { readonly kind: "check"; readonly check: Check };

function enterCheck(building: Building, line: CheckLine, entering: Entering, step: string): void {
  const id = entering.ids.line(line.check.span, line.pass);
  const measured = measuredIn(line);
  const kind = line.fails === null ? "tick" : "judgement";
  mark(building, measured === null ? { id, step, kind } : { id, step, ...measured });
  if (line.fails === null) return;
  const { fails } = line;
  guarded(
    building,
    (to) => ({ op: "unless failed", of: id, to }),
    () => enterAll(building, fails, entering, step),
  );
}

type WhenLine = Extract<ExpandedItem | ExpandedLine, { readonly kind: "when" }>;

function enterWhen(building: Building, when: WhenLine, entering: Entering, step: string): void {
  const { choices, program } = building;
  const ends: number[] = [];
  const pass = passOf(when);
  let settled = false;
  for (const [at, { condition, items }] of when.arms.entries()) {
    const decided = decidedBy(condition, choices);
    if (decided === false) continue;
    settled = decided === true;
    if (settled) {
      enterAll(building, items, entering, step);
      break;
    }
    const ask = entering.ids.arm(when.span, at, pass);
    building.entries.push({ id: ask, step, kind: "answer" });
    guarded(
      building,
      (to) => ({ op: "unless", test: testOf(condition, choices), ask, to }),
      () => {
        enterAll(building, items, entering, step);
        ends.push(program.length);
        program.push({ op: "go", to: 0 });
      },
    );
  }
  if (!settled) enterAll(building, when.otherwise ?? [], entering, step);
  for (const at of ends) program[at] = { op: "go", to: program.length };
}

function enterJump(building: Building, jump: Jump, pass: Pass, { jumps }: Entering): void {
  if (jump.kind !== "stop")
    jumps.push({ at: building.program.length, step: jump.step, pass, back: jump.kind === "return" });
  building.program.push(jump.kind === "stop" ? { op: "stop", text: jump.text } : { op: "go", to: 0 });
}

/** Work that an operation ahead of it may leave out. */
function guarded(building: Building, op: (to: number) => Op, inner: () => void): void {
  const at = building.program.length;
  building.program.push(op(0));
  inner();
  building.program[at] = op(building.program.length);
}

function anyOrder(building: Building, children: readonly (() => void)[]): void {
  const { program } = building;
  const [first] = children;
  if (first === undefined) return;
  if (children.length === 1) {
    first();
    return;
  }
  const at = program.length;
  program.push({ op: "stop", text: "" });
  const parts = children.map((child): readonly [number, number] => {
    const from = program.length;
    child();
    return [from, program.length];
  });
  program[at] = { op: "any", parts, to: program.length };
}

function mark({ entries, program }: Building, entry: Entry): void {
  entries.push(entry);
  program.push({ op: "mark", of: entry.id });
}

/** What a record can tell of a condition; the rest a person has to say. */
function testOf(condition: ExpandedCondition, choices: Choices): Test {
  switch (condition.form) {
    case "all":
    case "any":
      return { form: condition.form, of: condition.operands.map((operand) => testOf(operand, choices)) };
    case "not":
      return { form: "not", of: testOf(condition.operand, choices) };
    case "reading": {
      const limits = limitsOf(condition.source.bound);
      return limits === null ? ASK : { form: "reading", reading: condition.reading.id, limits };
    }
    case "state": {
      const [option] = optionsIn(condition);
      if (option === undefined) return ASK;
      const test: Test = { form: "option", option: option.name, choice: condition.state };
      return condition.negated ? { form: "not", of: test } : test;
    }
    default:
      return ASK;
  }
}

const ASK: Test = { form: "ask" };
