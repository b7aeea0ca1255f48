// What a stretch of a procedure speaks of, for saying that it is in doubt. Knows no meaning.
import type { Declaration } from "./declarations.ts";
import type { Action, Condition, Item, Line, Target } from "./procedure.ts";

/** All that the actions and conditions of these items or lines name, each once. */
export function spokenOf(items: readonly (Item | Line)[]): ReadonlySet<Declaration> {
  const found = new Set<Declaration>();
  for (const item of items) gather(found, item);
  return found;
}

function gather(found: Set<Declaration>, item: Item | Line): void {
  switch (item.kind) {
    case "action":
      gatherAction(found, item);
      break;
    case "damaged":
      for (const thing of item.mentions) found.add(thing);
      break;
    case "step":
      for (const condition of [...item.needs, ...item.gives]) gatherCondition(found, condition);
      for (const line of item.lines) gather(found, line);
      break;
    case "check":
      for (const line of item.fails ?? []) gather(found, line);
      break;
    case "task":
    case "repeat":
    case "any order":
      for (const inner of item.items) gather(found, inner);
      break;
    case "when":
      for (const arm of item.arms) {
        gatherCondition(found, arm.condition);
        for (const inner of arm.items) gather(found, inner);
      }
      for (const inner of item.otherwise ?? []) gather(found, inner);
      break;
    default:
  }
}

function gatherAction(found: Set<Declaration>, action: Action): void {
  for (const target of [...objectsOf(action), secondOf(action)]) {
    if (target !== null && target.thing !== null) found.add(target.thing);
  }
  if (action.verb === "wait" && action.until !== null) gatherCondition(found, action.until);
}

/** What an action works on. */
export function objectsOf(action: Action): readonly Target[] {
  if (action.verb === "choose") return [action.subject];
  return "objects" in action ? action.objects : [];
}

/** What an action brings its objects to, or the place it speaks of beside them. */
export function secondOf(action: Action): Target | null {
  switch (action.verb) {
    case "install":
    case "press":
      return action.on;
    case "align":
      return action.other;
    case "turn":
      return action.put;
    default:
      return null;
  }
}

function gatherCondition(found: Set<Declaration>, condition: Condition): void {
  if (condition.form === "all" || condition.form === "any") {
    for (const operand of condition.operands) gatherCondition(found, operand);
  } else if (condition.form === "not") gatherCondition(found, condition.operand);
  else if (condition.form === "fact") found.add(condition.fact);
  else if ("subject" in condition && condition.subject.thing !== null) found.add(condition.subject.thing);
}
