// Quantities in a step's own words beside the values that the step declares. Knows which lines of a step hold values.
import type { Value } from "#model/declarations.ts";
import type { Action, Condition, Line, Step } from "#model/procedure.ts";
import { evaluate, type Written } from "#quantity/expression.ts";
import type { Kind } from "#quantity/kind.ts";
import { band, type Quantity } from "#quantity/quantity.ts";
import { add, cmp, mul, rational, sub, tenTo } from "#quantity/rational.ts";
import { scaleOf } from "#quantity/unit.ts";
import type { Word } from "./words.ts";

/** A quantity in own words that no value of its kind in the step admits. */
export interface Drift {
  readonly word: Word;
  readonly quantity: Quantity;
  /** What the step declares of that kind. */
  readonly declared: readonly Value[];
}

/** A value that a step states. */
export interface Stated {
  readonly value: Value;
  /** Whether it is the time that the step takes: a limit for that may be longer. */
  readonly isTaken: boolean;
}

/** The quantities among these words that disagree with the step's values. */
export function driftIn(text: string, words: readonly Word[], values: readonly Stated[]): readonly Drift[] {
  if (values.length === 0) return [];
  return words.flatMap((word, at) => {
    const written = writtenAt(text, words, at);
    if (written === null) return [];
    const beside = values.flatMap(({ isTaken, value }) => {
      const { kind } = value.quantity;
      const said = fitsKind(words, at, kind) ? quantityOf(written, kind) : null;
      return said === null ? [] : [{ said, value, isTaken }];
    });
    const [first] = beside;
    if (first === undefined || beside.some(({ said, value }) => admits(value.quantity, said))) return [];
    if (isLimit(words, at) && beside.every(({ isTaken, said, value }) => isTaken && isBelow(value.quantity, said)))
      return [];
    return [{ word, quantity: first.said, declared: beside.map(({ value }) => value) }];
  });
}

/** A number with its unit; one without has that of the end of its range: `105 to 115 °C`. */
function writtenAt(text: string, words: readonly Word[], at: number): Written<null> | null {
  const { number, start } = words[at] as Word;
  if (number === undefined) return null;
  const unit = number.unit ?? unitOfRange(words, at);
  if (unit === null || isTolerance(text, start)) return null;
  const literal = { op: "literal", number: number.text, unit, at: null, unitAt: null } as const;
  const value = isNegative(text, start) ? ({ op: "negate", of: literal, at: null } as const) : literal;
  return { form: "nominal", value, at: null };
}

/** What is written as a quantity of that kind; null where its unit is none of it, or only by good will. */
function quantityOf(written: Written<null>, kind: Kind): Quantity | null {
  const { quantity, problems } = evaluate(written, kind);
  return problems.every((problem) => problem.kind === "style") ? quantity : null;
}

/** Whether the words round a number let it be of that kind. */
function fitsKind(words: readonly Word[], at: number, kind: Kind): boolean {
  const isStep = words[at - 1]?.lower === "by" || /K$/.test(words[at]?.text ?? "");
  if (kind === "temperature") return !isStep;
  return kind !== "length" || !(isSizeOfThing(words[at + 1]) || isPlace(words, at));
}

function unitOfRange(words: readonly Word[], at: number): string | null {
  const [link, other] = [words[at + 1], words[at + 2]];
  if (link?.number !== undefined && /^(?:\.\.|–|—|-|±)$/.test(link.before)) return link.number.unit;
  return link?.lower === "to" || link?.lower === "and" ? (other?.number?.unit ?? null) : null;
}

function isTolerance(text: string, start: number): boolean {
  return /(?:±|\+\/[-−])\s*$/.test(text.slice(0, start));
}

function isNegative(text: string, start: number): boolean {
  return /(?:^|[\s(])[-−]$/.test(text.slice(0, start));
}

/** “the 8 mm key”: a length before a noun says which thing is meant. */
function isSizeOfThing(next: Word | undefined): boolean {
  return next !== undefined && next.before === "" && next.number === undefined && !BEHIND_LENGTH.test(next.lower);
}

/** “at 150 mm from the center”: where it is measured, not what. */
function isPlace(words: readonly Word[], at: number): boolean {
  const next = words[at + 1];
  return words[at - 1]?.lower === "at" && next?.before === "" && FROM.test(next.lower);
}

const FROM = /^(?:from|off|above|below|over|under|behind|before|past|beyond|outside|inside)$/;
const BEHIND_LENGTH =
  /^(?:or|and|to|from|at|in|on|of|for|with|by|before|after|above|below|over|under|deep|long|wide|thick|high|apart|away|past|beyond|between|behind|into|off|down|up|out|all|gap|clearance|play|float|run-out|maximum|minimum|max|min|is|are|when|if|until|while|then)$/;

/** Whether the value takes the number in, within half of the number's last digit. */
function admits(declared: Quantity, { nominal }: Quantity): boolean {
  if (nominal === null) return true;
  const { low, high } = band(declared);
  const half = mul(mul(tenTo(nominal.digit), rational(1, 2)), scaleOf(nominal.unit));
  return (
    (low === null || cmp(add(nominal.base, half), low) >= 0) &&
    (high === null || cmp(sub(nominal.base, half), high) <= 0)
  );
}

/** “within 5 minutes”, “in at most 5 minutes”, “in less than 5 minutes”. */
function isLimit(words: readonly Word[], at: number): boolean {
  const [before, first] = [words[at - 1]?.lower ?? "", words[at - 2]?.lower];
  return before === "within" || (before === "most" && first === "at") || (before === "than" && first !== "more");
}

function isBelow({ high }: Quantity, { nominal }: Quantity): boolean {
  return high !== null && nominal !== null && cmp(high.base, nominal.base) <= 0;
}

/** Every value that the lines of a step state. */
export function valuesOf(step: Step): readonly Stated[] {
  const { takes } = step;
  const own = [
    step.within?.value ?? null,
    ...step.records.map(({ expect }) => expect),
    ...step.needs.flatMap(valuesInCondition),
    ...step.gives.flatMap(valuesInCondition),
    ...step.lines.flatMap(valuesInLine),
  ];
  const others = own.flatMap((value) => (value === null ? [] : [{ value, isTaken: false }]));
  return takes === null ? others : [{ value: upTo(takes), isTaken: true }, ...others];
}

/** The work may be told of in parts that are shorter than the whole. */
function upTo(takes: Value): Value {
  const { quantity } = takes;
  const high = quantity.high ?? quantity.nominal;
  return { ...takes, quantity: { ...quantity, form: "at most", low: null, nominal: null, high } };
}

function valuesInLine(line: Line): readonly (Value | null)[] {
  switch (line.kind) {
    case "action":
      return valuesInAction(line);
    case "check":
      return [line.expect, ...(line.fails ?? []).flatMap(valuesInLine)];
    case "repeat":
    case "any order":
      return line.items.flatMap(valuesInLine);
    case "when":
      return [
        ...line.arms.flatMap(({ condition, items }) => [
          ...valuesInCondition(condition),
          ...items.flatMap(valuesInLine),
        ]),
        ...(line.otherwise ?? []).flatMap(valuesInLine),
      ];
    default:
      return [];
  }
}

function valuesInAction(action: Action): readonly (Value | null)[] {
  switch (action.verb) {
    case "install":
    case "turn":
      return [action.clock];
    case "tighten":
      return [...action.stages, action.angle];
    case "loosen":
      return [action.back];
    case "heat":
    case "cool":
      return [action.to, action.by];
    case "wait":
      return [action.time, ...(action.until === null ? [] : valuesInCondition(action.until))];
    case "apply":
      return [action.dose.amount, action.cure];
    case "fill":
      return [action.dose.amount];
    case "measure":
      return [action.expect];
    case "choose":
      return [
        action.leaving,
        ...action.rows.flatMap(({ range, result }) => [range, result !== null && "quantity" in result ? result : null]),
      ];
    default:
      return [];
  }
}

function valuesInCondition(condition: Condition): readonly (Value | null)[] {
  switch (condition.form) {
    case "all":
    case "any":
      return condition.operands.flatMap(valuesInCondition);
    case "not":
      return valuesInCondition(condition.operand);
    case "bound":
      return [condition.bound];
    case "clock":
      return [condition.clock];
    default:
      return [];
  }
}
