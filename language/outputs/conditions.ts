// Conditions as clauses for the bench, and which way they go where the options chosen decide them. Knows no format.
import type { Option } from "#model/declarations.ts";
import type { ExpandedCondition } from "#model/expanded.ts";
import type { Role } from "#quantity/display.ts";
import { arePlural, thingsPhrase } from "./things.ts";
import { inIndexOrder } from "./tightening.ts";
import type { Writer } from "./writer.ts";

/** Option name to the choice made. */
export type Choices = Readonly<Record<string, string>>;

/** A condition as a clause: `the bearing cover is secured`. Its bounds have to be met. */
export function conditionClause(condition: ExpandedCondition, writer: Writer): string {
  return clause(condition, false, { writer, role: "must be met" });
}

/** A condition that the work branches on: its bounds part two ways, so they are rounded alike on both. */
export function branchClause(condition: ExpandedCondition, writer: Writer): string {
  return clause(condition, false, { writer, role: "nominal" });
}

/** Whether the choices make it true or false; null where it depends on something else too. */
export function decidedBy(condition: ExpandedCondition, choices: Choices): boolean | null {
  if (condition.form === "not") {
    const inner = decidedBy(condition.operand, choices);
    return inner === null ? null : !inner;
  }
  if (condition.form === "all" || condition.form === "any") {
    const settling = condition.form === "any";
    const parts = condition.operands.map((operand) => decidedBy(operand, choices));
    if (parts.includes(settling)) return settling;
    return parts.includes(null) ? null : !settling;
  }
  const option = optionOf(condition);
  if (option === null || condition.form !== "state") return null;
  const choice = Object.hasOwn(choices, option.name) ? choices[option.name] : undefined;
  return choice === undefined ? null : (choice === condition.state) !== condition.negated;
}

/** Which arms of a branch the choices rule out, by themselves or since they decide for one above; and whether the rest is ruled out. */
export function ruledOut(
  arms: readonly { readonly condition: ExpandedCondition }[],
  choices: Choices,
): { readonly arms: readonly boolean[]; readonly otherwise: boolean } {
  let settled = false;
  const out = arms.map(({ condition }) => {
    const decided = settled ? false : decidedBy(condition, choices);
    settled ||= decided === true;
    return decided === false;
  });
  return { arms: out, otherwise: settled };
}

/** The choices made of the options that the conditions ask about, as clauses. */
export function choiceClauses(
  conditions: readonly ExpandedCondition[],
  choices: Choices,
  writer: Writer,
): readonly string[] {
  const options = new Set(conditions.flatMap(optionsIn));
  return [...options].flatMap((option) => {
    const choice = Object.hasOwn(choices, option.name) ? choices[option.name] : undefined;
    return choice === undefined ? [] : [optionClause(option, choice, false, writer)];
  });
}

/** A choice as the bench calls it. */
export function choiceTitle(option: Option, name: string, { words }: Writer): string {
  const title = option.choices.find((choice) => choice.name === name)?.title ?? name;
  const fixed = Object.hasOwn(words.choices, name) ? words.choices[name] : undefined;
  return title === name ? (fixed ?? name) : title;
}

/** Every option that the condition asks about. */
export function optionsIn(condition: ExpandedCondition): readonly Option[] {
  if (condition.form === "not") return optionsIn(condition.operand);
  if (condition.form === "all" || condition.form === "any") return condition.operands.flatMap(optionsIn);
  const option = optionOf(condition);
  return option === null ? [] : [option];
}

function optionOf(condition: ExpandedCondition): Option | null {
  if (condition.form !== "state") return null;
  const [thing] = condition.things;
  return thing?.kind === "other" && thing.thing.kind === "option" ? thing.thing : null;
}

interface Saying {
  readonly writer: Writer;
  readonly role: Role;
}

/** @param flipped whether the opposite is to be said */
function clause(condition: ExpandedCondition, flipped: boolean, saying: Saying): string {
  const { writer, role } = saying;
  const { conditions } = writer.words;
  switch (condition.form) {
    case "all":
    case "any": {
      // The opposite of “both” is “one of them not”.
      const join = joinOf(condition, flipped);
      const operands = condition.operands.map((operand) => {
        const text = clause(operand, flipped, saying);
        const inner = joinOf(operand, flipped);
        return inner === null || inner === join ? text : conditions.group(text);
      });
      return join === "and" ? conditions.and(operands) : conditions.or(operands);
    }
    case "not":
      return clause(condition.operand, !flipped, saying);
    case "state":
      return stateClause(condition, condition.negated !== flipped, writer);
    case "bound":
    case "clock": {
      const value = condition.form === "bound" ? condition.source.bound : condition.source.clock;
      const say = condition.form === "bound" ? conditions.value : conditions.clock;
      const things = thingsPhrase(inIndexOrder(condition.things), writer);
      const text = writer.value(value.quantity, role);
      return say(things, arePlural(condition.things), text, condition.negated !== flipped);
    }
    case "reading": {
      const text = writer.value(condition.source.bound.quantity, role);
      return conditions.value(writer.words.subject(condition.reading.title), false, text, flipped);
    }
    case "no temporary parts":
    case "fact":
    case "unknown": {
      const text = plainClause(condition, writer);
      return flipped ? conditions.not(text) : text;
    }
  }
}

function plainClause(
  condition: ExpandedCondition & { readonly form: "no temporary parts" | "fact" | "unknown" },
  writer: Writer,
): string {
  if (condition.form === "no temporary parts") return writer.words.conditions.noTemporaryParts;
  if (condition.form === "unknown") return writer.words.conditions.unknown;
  return condition.source.form === "fact" ? condition.source.fact.title : condition.fact;
}

/** How the parts of a condition, or of its opposite, hang together; null where it has none. */
function joinOf(condition: ExpandedCondition, flipped: boolean): "and" | "or" | null {
  if (condition.form === "not") return joinOf(condition.operand, !flipped);
  if (condition.form !== "all" && condition.form !== "any") return null;
  return (condition.form === "all") === flipped ? "or" : "and";
}

function stateClause(
  condition: ExpandedCondition & { readonly form: "state" },
  negated: boolean,
  writer: Writer,
): string {
  const { words } = writer;
  const option = optionOf(condition);
  if (option !== null) return optionClause(option, condition.state, negated, writer);
  const state = Object.hasOwn(words.states, condition.state) ? words.states[condition.state] : undefined;
  const things = thingsPhrase(inIndexOrder(condition.things), writer);
  return words.conditions.state(things, arePlural(condition.things), state ?? condition.state, negated);
}

function optionClause(option: Option, choice: string, negated: boolean, writer: Writer): string {
  const { conditions } = writer.words;
  if (choice === "yes" || choice === "no") return conditions.holds(option.title, (choice === "no") !== negated);
  return conditions.option(option.title, choiceTitle(option, choice, writer), negated);
}
