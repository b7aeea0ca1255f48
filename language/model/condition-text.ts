// Conditions and things in the words of the language, for messages.

import { show } from "#quantity/display.ts";
import type { ExpandedCondition, Thing } from "./expanded.ts";
import { partInstances } from "./instances.ts";

/** As a writer would write it: `Cover is secured`, `Segment[1..4] are installed`. */
export function conditionText(condition: ExpandedCondition): string {
  switch (condition.form) {
    case "all":
      return condition.operands.map(inConjunction).join(" and ");
    case "any":
      return condition.operands.map(conditionText).join(" or ");
    case "not":
      return `not (${conditionText(condition.operand)})`;
    case "no temporary parts":
      return "no temporary parts";
    case "fact":
      return condition.source.form === "fact" ? condition.source.fact.name : condition.fact;
    case "state":
      return `${thingsText(condition.things)} ${verb(condition.things, condition.negated)} ${condition.state}`;
    case "bound":
      return `${thingsText(condition.things)} ${verb(condition.things, condition.negated)} ${show(condition.source.bound.quantity)}`;
    case "clock":
      return `${thingsText(condition.things)} ${verb(condition.things, condition.negated)} at ${show(condition.source.clock.quantity)}`;
    case "reading":
      return `${condition.reading.name} is ${show(condition.source.bound.quantity)}`;
    case "unknown":
      return "a condition that could not be read";
  }
}

/** `or` binds looser than `and`. */
function inConjunction(operand: ExpandedCondition): string {
  return operand.form === "any" ? `(${conditionText(operand)})` : conditionText(operand);
}

/** `Cover`, `Segment[3]`, `Seat[2]`, `MotorSupply`. */
export function thingName(thing: Thing): string {
  if (thing.kind === "part") return thing.index === null ? thing.part.name : `${thing.part.name}[${thing.index}]`;
  if (thing.kind === "place")
    return thing.position === null ? thing.places.name : `${thing.places.name}[${thing.position}]`;
  return thing.thing.name;
}

/** Several things in one: `Segment[all]`, where all are meant; `Segment[1..4]`; else one after the other. */
export function thingsText(things: readonly Thing[]): string {
  const [first] = things;
  if (first === undefined) return "";
  if (things.length === 1) return thingName(first);
  if (first.kind === "part" && things.every((thing) => thing.kind === "part" && thing.part === first.part)) {
    const indices = things.map((thing) => (thing.kind === "part" ? thing.index : null));
    if (indices.length === partInstances(first.part).length) return `${first.part.name}[all]`;
    const numbers = indices.filter((index): index is number => typeof index === "number");
    const [low] = numbers;
    const rising =
      low !== undefined && numbers.length === indices.length && numbers.every((number, at) => number === low + at);
    return rising ? `${first.part.name}[${low}..${numbers.at(-1)}]` : `${first.part.name}[${indices.join(", ")}]`;
  }
  return things.map(thingName).join(", ");
}

function verb(things: readonly Thing[], negated: boolean): string {
  return `${things.length > 1 ? "are" : "is"}${negated ? " not" : ""}`;
}
