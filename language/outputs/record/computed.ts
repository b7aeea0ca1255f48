// What an instruction gets from readings: values worked out from them, and what `choose` selects by one. Knows no format.
import type { Value } from "#model/declarations.ts";
import type { ExpandedItem, ExpandedLine } from "#model/expanded.ts";
import type { Computed } from "../document.ts";
import { choiceResult } from "../sentences.ts";
import type { Writer } from "../writer.ts";
import { formulaAmount, limitsOf, unitChoices } from "./amounts.ts";

export function computedIn(line: ExpandedItem | ExpandedLine, writer: Writer): readonly Computed[] {
  if (line.kind === "check") return valuesIn(line.check);
  if (line.kind !== "action") return [];
  const { action } = line;
  if (action.verb !== "choose") return valuesIn(action);
  const { reading, rows } = action;
  if (reading === null) return [];
  return [
    {
      kind: "choice",
      reading: reading.id,
      rows: rows.map(({ range, result }) => ({
        limits: range === null ? null : limitsOf(range),
        text: choiceResult(result, writer),
      })),
    },
  ];
}

/** The values of a line that are worked out, in the order in which it holds them. */
function valuesIn(line: object): readonly Computed[] {
  const found: Computed[] = [];
  // Of each line there is, and few have one: plain loops.
  for (const held of Object.values(line))
    for (const one of Array.isArray(held) ? held : [held]) {
      const ends = isValue(one) ? (one.workedOut?.ends ?? null) : null;
      if (ends === null) continue;
      const [low, nominal, high] = [ends.low, ends.nominal, ends.high].map((end) => end && formulaAmount(end));
      const units = unitChoices((one as Value).quantity);
      found.push({ kind: "value", low: low ?? null, nominal: nominal ?? null, high: high ?? null, units });
    }
  return found;
}

function isValue(one: unknown): one is Value {
  return typeof one === "object" && one !== null && "workedOut" in one;
}
