// Evaluates what is written in a value place, each spelling once: `38 ± 2 N·m` is the same quantity wherever it stands. Only what
// has no problem is kept, for a problem has a place.
import { type Evaluated, evaluate, evaluateStages, type Wanted, type Written } from "#quantity/expression.ts";
import type { Quantity } from "#quantity/quantity.ts";
import type { Expression } from "#quantity/tree.ts";

/** As {@link evaluate}. */
export function evaluateOnce<At>(written: Written<At>, wanted: Wanted, signed = false): Evaluated<At> {
  const key = `${signed ? "signed" : ""} ${wanted} ${writtenKey(written)}`;
  const known = values.get(key);
  if (known !== undefined) return { quantity: known, problems: [] };
  const evaluated = evaluate(written, wanted, signed);
  if (evaluated.problems.length === 0) keep(values, key, evaluated.quantity);
  return evaluated;
}

/** As {@link evaluateStages}. */
export function evaluateStagesOnce<At>(list: readonly Written<At>[], wanted: Wanted): readonly Evaluated<At>[] {
  const key = `${wanted} ${list.map(writtenKey).join()}`;
  const known = lists.get(key);
  if (known !== undefined) return known.map((quantity) => ({ quantity, problems: [] }));
  const evaluated = evaluateStages(list, wanted);
  if (evaluated.every(({ problems }) => problems.length === 0)) {
    const quantities = evaluated.map(({ quantity }) => quantity);
    keep(lists, key, quantities);
  }
  return evaluated;
}

const values = new Map<string, Quantity | null>();
const lists = new Map<string, readonly (Quantity | null)[]>();
/** A process that lives long meets ever new spellings. */
const MOST_KEPT = 10_000;

function keep<T>(kept: Map<string, T>, key: string, value: T): void {
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, value);
}

/** The form and all that was written, without its places. */
function writtenKey<At>(written: Written<At>): string {
  switch (written.form) {
    case "range":
      return `${expressionKey(written.low)}..${expressionKey(written.high)}`;
    case "tolerance":
      return `${expressionKey(written.value)}±${expressionKey(written.tolerance)}`;
    case "nominal in range":
      return `${expressionKey(written.value)}(${expressionKey(written.low)}..${expressionKey(written.high)})`;
    default:
      return `${written.form} ${expressionKey(written.value)}`;
  }
}

/** Sums lean to the left and may be long: their left side is followed in a loop. */
function expressionKey<At>(expression: Expression<At>): string {
  let first = expression;
  let rights = "";
  while (first.op === "+" || first.op === "-" || first.op === "*" || first.op === "/") {
    rights = `${first.op}[${expressionKey(first.right)}]${rights}`;
    first = first.left;
  }
  return `${operandKey(first)}${rights}`;
}

function operandKey<At>(operand: Expression<At>): string {
  switch (operand.op) {
    case "literal":
      return `${operand.number}|${operand.unit ?? "-"}|`;
    case "negate":
      return `neg[${expressionKey(operand.of)}]`;
    case "percent of":
      return `[${expressionKey(operand.share)}]of[${expressionKey(operand.of)}]`;
    case "name":
      return `#${operand.value === null ? "?" : numberOf(operand.value)}`;
    default:
      return expressionKey(operand);
  }
}

/** Named values are told apart as the things they are. */
function numberOf(quantity: Quantity): number {
  const known = numbers.get(quantity);
  if (known !== undefined) return known;
  numbers.set(quantity, ++last);
  return last;
}

const numbers = new WeakMap<Quantity, number>();
let last = 0;
