// Reads quantities from text for the tests of the folder, so that a test shows what a writer writes.
import { type Evaluated, evaluate, type Wanted } from "#quantity/expression.ts";
import type { Quantity } from "#quantity/quantity.ts";
import { readQuantityText, type TextSpan } from "#quantity/quantity-text.ts";

/** Evaluates a text in a place that wants a kind. Throws where the text is no quantity at all: the test is wrong then. */
export function evaluateText(text: string, wanted: Wanted): Evaluated<TextSpan> {
  const reading = readQuantityText(text);
  if (!reading.ok) throw new Error(`no quantity: ${text}`);
  return evaluate(reading.written, wanted);
}

/** The quantity of a text that has no problem but its spelling. */
export function quantity(text: string, wanted: Wanted): Quantity {
  const { quantity: found, problems } = evaluateText(text, wanted);
  if (found === null) throw new Error(`${text}: ${problems.map((problem) => problem.kind).join(", ")}`);
  return found;
}
