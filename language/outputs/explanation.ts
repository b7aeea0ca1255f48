// How a computed value came about, as lines of text in the writer's units: the same for the command, the hover and outputs. Knows no
// procedure.
import type { Explanation, Term } from "#engineering/explanation.ts";
import { show } from "#quantity/display.ts";

/** Result, formula, what goes in, source and caution: a line each. @param of whose value it is */
export function explanationLines(
  { result, formula, inputs, source, caution }: Explanation,
  of: string,
): readonly string[] {
  return [
    `${of}: ${result.name} ${result.symbol} = ${show(result.value)}`,
    `  formula  ${formula}`,
    ...inputs.map((term, at) => `  ${at === 0 ? "with   " : "       "}  ${termText(term)}`),
    `  source   ${source}`,
    `  caution  ${caution}`,
  ];
}

/**
 * The formula with what its signs mean, for where the values stand beside it: `Ts = T·L/(L + E), T torque, L arm, E adapter offset`.
 * @param term what goes in, in the words of the language
 */
export function formulaText({ formula, inputs }: Explanation, term: (name: string) => string): string {
  // At a right angle neither offset nor angle is left in it.
  const signs = new Set(formula.match(/[\p{L}\p{N}]+/gu));
  return [
    formula,
    ...inputs.filter(({ symbol }) => signs.has(symbol)).map(({ symbol, name }) => `${symbol} ${term(name)}`),
  ].join(", ");
}

function termText({ name, symbol, value, source }: Term): string {
  return `${symbol} = ${show(value)}, ${name}${source === undefined ? "" : ` (${source})`}`;
}
