// How a model is read for comparing: with names of the old side, loop variables by their depth, and quantities exactly, so
// that two texts are equal exactly where they mean the same. Knows no tree of nodes.
import type { Citation, Declaration, Value } from "#model/declarations.ts";
import type { Thing } from "#model/expanded.ts";
import { instancesOf } from "#model/instances-of-target.ts";
import { indexValue } from "#model/lower-target.ts";
import type { Pass } from "#model/problem.ts";
import type { Action, Condition, IndexExpression, IndexItem, StepRef, Target } from "#model/procedure.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import type { Span } from "#syntax/span.ts";

export interface Reading {
  readonly textAt: (span: Span) => string;
  /** An action as a sentence for the bench. */
  readonly say: (action: Action) => string;
  /** The name that a thing has on the old side. */
  readonly nameOf: (thing: Declaration) => string;
  readonly stepName: (name: string) => string;
  /** Repeats to be written out, by their places. */
  readonly writtenOut: ReadonlySet<string>;
  /** Loop variables of repeats that are written out. */
  readonly pass: Pass;
  /** Loop variables that stay, outermost first. */
  readonly loops: readonly string[];
}

/** A condition without its values, and these apart. */
export interface ConditionText {
  readonly text: string;
  readonly values: readonly Value[];
}

export function placeKey({ path, start }: Span): string {
  return `${path} ${start}`;
}

export function quantityText({ kind, form, qualifier, low, nominal, high }: Quantity): string {
  const end = (one: Magnitude | null): string => (one === null ? "-" : `${one.base.n}/${one.base.d}`);
  return [kind, form, qualifier ?? "", end(low), end(nominal), end(high)].join(" ");
}

/** Of a value made of named ones how it is made; the named value itself says what it comes to. */
export function valueText(value: Value, reading: Reading): string {
  const { quantity, workedOut, share, named = [], span } = value;
  if (workedOut !== undefined) return `worked out: ${squeezed(workedOut.text)}`;
  if (named.length === 0 && share === undefined) return quantityText(quantity);
  const text = share === undefined ? reading.textAt(span) : `${share.text} of ${share.of}`;
  const names = new Map(named.map((one) => [one.name, reading.nameOf(one)]));
  return squeezed(text).replace(/[\p{L}_][\p{L}\p{N}\p{M}_]*/gu, (word) => names.get(word) ?? word);
}

export function citationText({ source, section }: Citation, reading: Reading): string {
  return `${source === null ? "?" : reading.nameOf(source)} ${JSON.stringify(section)}`;
}

/** @param isSet whether the order in which its instances are worked through says nothing, as in a condition */
export function targetText(target: Target, reading: Reading, isSet = false): string {
  const { thing, name, index } = target;
  const known = thing === null ? name : reading.nameOf(thing);
  if (index === null) return known;
  if (index.every((item) => isFixed(item, reading))) {
    const { things, outside } = instancesOf(target, reading.pass);
    const texts = things.map((one) => thingText(one, reading));
    // What holds of all of them holds in any order.
    if (outside === null && texts.length > 0) return (isSet ? [...texts].sort() : texts).join(", ");
  }
  return `${known}[${index.map((item) => indexText(item, reading)).join(", ")}]`;
}

export function targetsText(targets: readonly Target[], reading: Reading): string {
  return targets.map((target) => targetText(target, reading)).join(", ");
}

export function conditionText(condition: Condition, reading: Reading): ConditionText {
  switch (condition.form) {
    case "all":
    case "any": {
      const operands = condition.operands.map((operand) => conditionText(operand, reading));
      const sorted = [...operands].sort((a, b) => (a.text < b.text ? -1 : a.text > b.text ? 1 : 0));
      const text = `(${sorted.map((one) => one.text).join(condition.form === "all" ? " and " : " or ")})`;
      return { text, values: sorted.flatMap(({ values }) => values) };
    }
    case "not": {
      const { text, values } = conditionText(condition.operand, reading);
      return { text: `not ${text}`, values };
    }
    case "no temporary parts":
      return { text: "no temporary parts", values: [] };
    case "state": {
      const other = otherChoice(condition);
      const asked = other === null ? condition : { ...condition, state: other, negated: false };
      return { text: subjectText(asked, `is ${asked.state}`, reading), values: [] };
    }
    case "fact":
      return { text: reading.nameOf(condition.fact), values: [] };
    case "bound":
      return {
        text: subjectText(condition, `is ${condition.bound.quantity.form}`, reading),
        values: [condition.bound],
      };
    case "clock":
      return { text: subjectText(condition, "is at", reading), values: [condition.clock] };
    case "unknown":
      return { text: `? ${squeezed(reading.textAt(condition.span))}`, values: [] };
  }
}

export function stepRefText({ name }: StepRef, reading: Reading): string {
  return reading.stepName(name);
}

/** As written, with each stretch of white space as one space. */
export function squeezed(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

function subjectText(
  { subject, negated }: { readonly subject: Target; readonly negated: boolean },
  rest: string,
  reading: Reading,
): string {
  const text = `${targetText(subject, reading, true)} ${rest}`;
  return negated ? `not ${text}` : text;
}

/** The choice that is left where an option has two and one is ruled out; null anywhere else. */
export function otherChoice(condition: Condition): string | null {
  if (condition.form !== "state" || !condition.negated || condition.subject.thing?.kind !== "option") return null;
  const { choices } = condition.subject.thing;
  const [left] = choices.filter(({ name }) => name !== condition.state);
  return choices.length === 2 && choices.some(({ name }) => name === condition.state) ? (left?.name ?? null) : null;
}

function thingText(thing: Thing, reading: Reading): string {
  if (thing.kind === "part") return withIndex(reading.nameOf(thing.part), thing.index);
  return thing.kind === "place" ? withIndex(reading.nameOf(thing.places), thing.position) : reading.nameOf(thing.thing);
}

export function withIndex(name: string, index: number | string | null): string {
  return index === null ? name : `${name}[${index}]`;
}

/** Whether no loop variable that stays is in it. */
function isFixed(item: IndexItem, reading: Reading): boolean {
  if (item.form === "all" || item.form === "same") return true;
  const ends = item.form === "one" ? [item.value] : [item.first, item.last];
  return ends.every((end) => namesIn(end).every((name) => !reading.loops.includes(name)));
}

function namesIn(expression: IndexExpression): readonly string[] {
  if (expression.form === "number") return [];
  return expression.form === "name" ? [expression.name] : [...namesIn(expression.left), ...namesIn(expression.right)];
}

function indexText(item: IndexItem, reading: Reading): string {
  if (item.form === "all" || item.form === "same") return item.form;
  if (item.form === "one") return expressionText(item.value, reading);
  return `${expressionText(item.first, reading)}..${expressionText(item.last, reading)}`;
}

/** A loop variable is called by its depth, so that its name says nothing. */
function expressionText(expression: IndexExpression, reading: Reading): string {
  const known = indexValue(expression, (name) => reading.pass.find((one) => one.variable === name)?.value ?? null);
  if (known !== null) return String(known);
  if (expression.form === "name") {
    const depth = reading.loops.lastIndexOf(expression.name);
    return depth < 0 ? expression.name : loopName(depth);
  }
  if (expression.form === "number") return String(expression.value);
  const [left, right] = [expression.left, expression.right].map((side) => expressionText(side, reading));
  return `(${left} ${expression.operator} ${right})`;
}

function loopName(depth: number): string {
  return `#${depth + 1}`;
}
