// What an expanded procedure speaks of: its parts and its conditions.
import type { Declaration, Energy, Option, Part } from "#model/declarations.ts";
import type {
  ExpandedAction,
  ExpandedCondition,
  ExpandedItem,
  ExpandedLine,
  ExpandedProcedure,
  Thing,
} from "#model/expanded.ts";
import { spanKey } from "./entries.ts";

/** Every condition, also those inside others. */
export function gatherConditions(expanded: ExpandedProcedure): readonly ExpandedCondition[] {
  const known = conditions.get(expanded);
  if (known !== undefined) return known;
  const found: ExpandedCondition[] = [];
  const add = (condition: ExpandedCondition): void => addNested(condition, found);
  expanded.begin.forEach(add);
  expanded.finish.forEach(add);
  eachIn(expanded.items, (item) => {
    if (item.kind === "step") {
      item.needs.forEach(add);
      item.gives.forEach(add);
    }
    if (item.kind === "when") for (const arm of item.arms) add(arm.condition);
    const action = item.kind === "action" ? item : item.kind === "perform" ? item.line : null;
    if (action?.until != null) add(action.until);
  });
  conditions.set(expanded, found);
  return found;
}

/** Asked for again and again of one procedure, so gathered once. */
const conditions = new WeakMap<ExpandedProcedure, readonly ExpandedCondition[]>();
const actions = new WeakMap<readonly Any[], readonly ExpandedAction[]>();

/** Every action, also those inside others; of a procedure, or of the lines of a step. */
export function gatherActions(
  of: Pick<ExpandedProcedure, "items"> | { readonly lines: readonly ExpandedLine[] },
): readonly ExpandedAction[] {
  const list = "items" in of ? of.items : of.lines;
  const known = actions.get(list);
  if (known !== undefined) return known;
  const found: ExpandedAction[] = [];
  eachIn(list, (item) => {
    if (item.kind === "action") found.push(item);
    if (item.kind === "perform") found.push(item.line);
  });
  actions.set(list, found);
  return found;
}

/** Every part that is acted on or asked about, and what secures or locks such a part, each once, in the order of the text. */
export function gatherParts(expanded: ExpandedProcedure): ReadonlySet<Part> {
  const spoken = spokenParts(expanded);
  const parts = new Set(spoken);
  // A part taken as secured brings its fasteners in, and one that is locked wants its lock, wherever they are spoken of.
  const named = new Set(
    expanded.procedure.declarations.filter((declared: Declaration): declared is Part => declared.kind === "part"),
  );
  for (const part of named)
    if ([...part.secures, ...part.locks].some((relation) => spoken.has(relation.part))) parts.add(part);
  return parts;
}

/** Every part that is acted on or asked about, each once, in the order of the text. */
export function spokenParts(expanded: ExpandedProcedure): ReadonlySet<Part> {
  const parts = new Set<Part>();
  const add = (things: readonly (Thing | null)[]): void => {
    for (const thing of things) if (thing?.kind === "part") parts.add(thing.part);
  };
  for (const condition of gatherConditions(expanded)) if ("things" in condition) add(condition.things);
  for (const action of gatherActions(expanded)) add([...action.objects, action.second]);
  return parts;
}

/** The places of steps after whose end something must come within a time. */
export function timedSteps(expanded: ExpandedProcedure): ReadonlySet<string> {
  const timed = new Set<string>();
  eachIn(expanded.items, (item) => {
    const target = item.kind === "step" ? (item.step.within?.step.target ?? null) : null;
    if (target !== null) timed.add(spanKey(target));
  });
  return timed;
}

/** Every energy that is switched or asked about, each once. */
export function gatherEnergies(expanded: ExpandedProcedure): ReadonlySet<Energy> {
  const energies = new Set<Energy>();
  const add = (things: readonly Thing[]): void => {
    for (const thing of things) if (thing.kind === "other" && thing.thing.kind === "energy") energies.add(thing.thing);
  };
  for (const condition of gatherConditions(expanded)) if ("things" in condition) add(condition.things);
  for (const action of gatherActions(expanded)) add(action.objects);
  return energies;
}

/** Every option that a condition asks about, each once. */
export function optionsAsked(expanded: ExpandedProcedure): ReadonlySet<Option> {
  const options = new Set<Option>();
  for (const condition of gatherConditions(expanded)) {
    if (condition.form !== "state") continue;
    for (const thing of condition.things)
      if (thing.kind === "other" && thing.thing.kind === "option") options.add(thing.thing);
  }
  return options;
}

type Any = ExpandedItem | ExpandedLine;

/** All that stands in the list, also inside other things, in the order of the text. */
function eachIn(list: readonly Any[], look: (item: Any) => void): void {
  for (const item of list) {
    look(item);
    for (const inner of childrenOf(item)) eachIn(inner, look);
  }
}

function childrenOf(item: Any): readonly (readonly Any[])[] {
  switch (item.kind) {
    case "task":
    case "any order":
      return [item.items];
    case "step":
      return [item.lines];
    case "check":
      return item.fails === null ? [] : [item.fails];
    case "when":
      return [...item.arms.map((arm) => arm.items), ...(item.otherwise === null ? [] : [item.otherwise])];
    default:
      return [];
  }
}

function addNested(condition: ExpandedCondition, found: ExpandedCondition[]): void {
  found.push(condition);
  if (condition.form === "all" || condition.form === "any")
    for (const operand of condition.operands) addNested(operand, found);
  if (condition.form === "not") addNested(condition.operand, found);
}
