// The values that are worked out in the step or declaration at a line, with how each came about, as data and as JSON. Knows no
// wording.
import { type ComputedValue, computedIn, computedOf } from "#analysis/limits/limits.ts";
import type { Term } from "#engineering/explanation.ts";
import { show } from "#quantity/display.ts";
import type { Magnitude, Quantity } from "#quantity/quantity.ts";
import { toNumber } from "#quantity/rational.ts";
import { type Lines, linesOf } from "#syntax/lines.ts";
import type { Span } from "#syntax/span.ts";
import type { CheckSettings } from "./checking.ts";
import type { Workspace } from "./workspace.ts";

export type LineExplained =
  | { readonly kind: "values"; readonly values: readonly ComputedValue[] }
  | { readonly kind: "no file" }
  /** `lines`: how many there are. */
  | { readonly kind: "no line"; readonly lines: number }
  /** Nothing is worked out there; `elsewhere`: lines of the file where something is, from 1. */
  | { readonly kind: "nothing"; readonly elsewhere: readonly number[] };

/** @param line from 1, as a person counts */
export function explainLine(
  workspace: Workspace,
  path: string,
  line: number,
  settings: CheckSettings = {},
): LineExplained {
  const text = workspace.snapshot.texts.get(path);
  if (text === undefined || !workspace.loaded.parsed.has(path)) return { kind: "no file" };
  const count = text.replace(/\n$/, "").split("\n").length;
  if (line < 1 || line > count) return { kind: "no line", lines: count };
  const lines = linesOf(text);
  const all = computedValues(workspace, path, settings);
  const values = all.filter(({ around }) => holds(lines, around, line));
  if (values.length > 0) return { kind: "values", values };
  const elsewhere = all.map((value) => lines.range(value.line.start, value.line.end).start.line + 1);
  return { kind: "nothing", elsewhere: [...new Set(elsewhere)] };
}

/** All that is worked out in the declarations and procedures of a file, in the order of the text. */
export function computedValues(
  workspace: Workspace,
  path: string,
  settings: CheckSettings = {},
): readonly ComputedValue[] {
  const { declarations, procedures } = workspace.loaded.models.get(path) ?? NOTHING;
  const followed = procedures.flatMap((procedure) => {
    const run = workspace.run(procedure, settings);
    return run === null ? [] : computedIn(run);
  });
  return [...computedOf(declarations), ...followed]
    .filter(({ line }) => line.path === path)
    .sort((a, b) => a.line.start - b.line.start);
}

const NOTHING = { declarations: [], procedures: [] };

/** What `sprag explain FILE:LINE --format json` prints; its schema is `schema/explain.schema.json`. */
export function explainedText(path: string, line: number, found: LineExplained, { snapshot }: Workspace): string {
  const lines = linesOf(snapshot.texts.get(path) ?? "");
  const values = found.kind === "values" ? found.values : [];
  const told = values.map(({ of, span, step, explanation: { result, formula, inputs, source, caution } }) => ({
    of,
    range: lines.range(span.start, span.end),
    ...(step === null ? {} : { step: { number: step } }),
    ...{ result: termData(result), formula, inputs: inputs.map(termData), source, caution },
  }));
  const elsewhere = found.kind === "nothing" ? { elsewhere: found.elsewhere } : {};
  return `${JSON.stringify({ version: 1, path, line, values: told, ...elsewhere }, null, 2)}\n`;
}

function termData({ name, symbol, value, source }: Term) {
  return { name, symbol, value: quantityData(value), ...(source === undefined ? {} : { source }) };
}

/** The text as it is shown, and its ends as numbers. */
function quantityData(quantity: Quantity) {
  const { kind, low, nominal, high } = quantity;
  const ends = Object.entries({ low, nominal, high }).flatMap(([name, end]) =>
    end === null ? [] : [[name, endData(end)]],
  );
  return { text: show(quantity), kind, ...Object.fromEntries(ends) };
}

function endData({ written, unit }: Magnitude) {
  return { number: toNumber(written), unit: unit.text };
}

function holds(lines: Lines, { start, end }: Span, line: number): boolean {
  const range = lines.range(start, end);
  return line - 1 >= range.start.line && line - 1 <= range.end.line;
}
