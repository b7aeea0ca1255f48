// All that a procedure does under the options chosen, performed procedures included, in the order of the text: what
// lists and cautions are made from. Knows no format and no words.
import type { Citation, Option } from "#model/declarations.ts";
import type {
  ExpandedAction,
  ExpandedCondition,
  ExpandedItem,
  ExpandedLine,
  ExpandedProcedure,
  ExpandedStep,
} from "#model/expanded.ts";
import type { Allow, Check, Procedure, Statement } from "#model/procedure.ts";
import { citationsIn } from "./citations.ts";
import { type Choices, optionsIn, ruledOut } from "./conditions.ts";

export interface Work {
  readonly steps: readonly ExpandedStep[];
  readonly actions: readonly ExpandedAction[];
  readonly checks: readonly Check[];
  readonly statements: readonly Statement[];
  readonly hasNotes: boolean;
  /** Of procedures, tasks, steps and the values in them. */
  readonly citations: readonly Citation[];
  /** Options asked about anywhere, once each. */
  readonly options: readonly Option[];
  readonly allows: readonly AllowUse[];
  /** The procedure itself first, then those it performs. */
  readonly procedures: readonly Procedure[];
}

/** An `allow`, and where: `number` of its task or step, null for all of `procedure`. */
export interface AllowUse {
  readonly allow: Allow;
  readonly number: string | null;
  readonly procedure: Procedure;
}

/** @param expandedOf another procedure by its id, for those performed; null where it is not known */
export function workOf(
  expanded: ExpandedProcedure,
  choices: Choices,
  expandedOf: (id: string) => ExpandedProcedure | null,
): Work {
  const gathering: Gathering = {
    choices,
    expandedOf,
    steps: [],
    actions: [],
    checks: [],
    statements: new Set(),
    options: new Map(),
    allows: new Map(),
    procedures: new Map(),
    hasNotes: false,
    citations: [],
    current: expanded.procedure,
  };
  gatherProcedure(gathering, expanded);
  return {
    steps: gathering.steps,
    actions: gathering.actions,
    checks: gathering.checks,
    hasNotes: gathering.hasNotes,
    citations: gathering.citations,
    statements: [...gathering.statements],
    options: [...gathering.options.values()],
    allows: [...gathering.allows.values()],
    procedures: [...gathering.procedures.values()],
  };
}

interface Gathering {
  readonly choices: Choices;
  readonly expandedOf: (id: string) => ExpandedProcedure | null;
  readonly steps: ExpandedStep[];
  readonly actions: ExpandedAction[];
  readonly checks: Check[];
  readonly citations: Citation[];
  readonly statements: Set<Statement>;
  readonly options: Map<string, Option>;
  /** By the `allow` itself: a repeat writes it out more than once. */
  readonly allows: Map<Allow, AllowUse>;
  readonly procedures: Map<string, Procedure>;
  hasNotes: boolean;
  current: Procedure;
}

function gatherProcedure(into: Gathering, { procedure, items }: ExpandedProcedure): void {
  if (into.procedures.has(procedure.id)) return;
  into.procedures.set(procedure.id, procedure);
  const around = into.current;
  into.current = procedure;
  into.citations.push(...procedure.cites);
  gatherAllows(into, procedure.allows, null);
  for (const item of items) gatherItem(into, item);
  into.current = around;
}

function gatherItem(into: Gathering, item: ExpandedItem | ExpandedLine): void {
  switch (item.kind) {
    case "task":
      into.citations.push(...item.task.cites);
      gatherAllows(into, item.task.allows, item.task.number);
      for (const inner of item.items) gatherItem(into, inner);
      return;
    case "step":
      into.steps.push(item);
      into.citations.push(...citationsIn(item.step));
      gatherAllows(into, item.step.allows, item.step.number);
      for (const line of item.lines) gatherItem(into, line);
      return;
    case "any order":
      for (const inner of item.items) gatherItem(into, inner);
      return;
    case "when":
      gatherArms(into, item.arms, item.otherwise);
      return;
    case "perform":
      gatherItem(into, item.line);
      return;
    case "action":
      gatherAction(into, item);
      return;
    case "check":
      into.checks.push(item.check);
      for (const line of item.fails ?? []) gatherItem(into, line);
      return;
    case "statement":
      into.statements.add(item.statement);
      return;
    case "note":
      into.hasNotes = true;
      return;
    case "jump":
    case "damaged":
      return;
  }
}

function gatherAction(into: Gathering, line: ExpandedAction): void {
  into.actions.push(line);
  if (line.action.verb !== "perform" || line.action.procedure === null) return;
  const performed = into.expandedOf(line.action.procedure.id);
  if (performed !== null) gatherProcedure(into, performed);
}

function gatherArms(
  into: Gathering,
  arms: readonly { readonly condition: ExpandedCondition; readonly items: readonly (ExpandedItem | ExpandedLine)[] }[],
  otherwise: readonly (ExpandedItem | ExpandedLine)[] | null,
): void {
  for (const arm of arms) for (const option of optionsIn(arm.condition)) into.options.set(option.id, option);
  const out = ruledOut(arms, into.choices);
  arms.forEach(({ items }, at) => {
    if (out.arms[at] !== true) for (const item of items) gatherItem(into, item);
  });
  if (!out.otherwise) for (const item of otherwise ?? []) gatherItem(into, item);
}

function gatherAllows(into: Gathering, allows: readonly Allow[], number: string | null): void {
  for (const allow of allows) into.allows.set(allow, { allow, number, procedure: into.current });
}
