// Quantities from text, and computed ends as numbers in a unit, for the tests of this folder.
import { fail } from "node:assert";
import type { Given } from "#engineering/ends.ts";
import type { Computed, Explanation, Outcome, Refusal } from "#engineering/explanation.ts";
import { readThread, type Thread } from "#engineering/thread.ts";
import { evaluate } from "#quantity/expression.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { readQuantityText } from "#quantity/quantity-text.ts";
import { type Rational, toNumber } from "#quantity/rational.ts";
import { fromBase, unitNamed } from "#quantity/unit.ts";

/** What a writer writes, as a computation is given it. */
export function given(text: string, kind: Kind, source?: string): Given {
  const reading = readQuantityText(text);
  const value = reading.ok ? evaluate(reading.written, kind, true).quantity : null;
  if (value === null) fail(`no ${kind}: ${text}`);
  return { value, ...(source === undefined ? {} : { source }) };
}

/** The value of an answer. */
export function answer<T>(outcome: Outcome<T>): T {
  return outcome.ok
    ? outcome.value
    : fail(JSON.stringify(outcome.refusal, (_, x) => (typeof x === "bigint" ? `${x}` : x)));
}

export function explanation(computed: Computed): Explanation {
  return computed.ok ? computed.explanation : fail(computed.refusal.why);
}

export function refusal(outcome: Computed | Outcome<unknown>): Refusal {
  return outcome.ok ? fail("an answer, where none was expected") : outcome.refusal;
}

/** The nominal value in a unit; of a band without one, fails. */
export function inUnit(computed: Computed, unit: string): number {
  return numberIn(answer(computed), answer(computed).nominal?.base ?? null, unit);
}

/** Low and high end in a unit. */
export function endsIn(computed: Computed, unit: string): readonly [number, number] {
  const value = answer(computed);
  const [low, high] = value.form === "nominal" ? [value.nominal, value.nominal] : [value.low, value.high];
  return [numberIn(value, low?.base ?? null, unit), numberIn(value, high?.base ?? null, unit)];
}

export function thread(text: string): Thread {
  return answer(readThread(text));
}

function numberIn({ kind }: Quantity, base: Rational | null, unit: string): number {
  return base === null ? fail("no such end") : toNumber(fromBase(base, unitNamed(unit), kind));
}
