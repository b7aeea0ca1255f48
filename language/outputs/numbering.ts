// Where steps and tasks stand: the number and link that a jump or a time limit refers to. Knows no format.
import type { ExpandedItem, ExpandedProcedure } from "#model/expanded.ts";
import type { StepRef } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import type { Words } from "./words/en.ts";

export interface Numbering {
  /** How a step is referred to: `step 1.2 (SlideHome)`. */
  readonly reference: (ref: StepRef) => string;
  /** The id of its row; null where there is no such step, or a row for each pass. */
  readonly link: (ref: StepRef) => string | null;
}

/** @param prefix what stands before each number, where the procedure is performed inside another */
export function numberingOf(expanded: ExpandedProcedure, prefix: string, compact: boolean, words: Words): Numbering {
  const places = new Map<string, { readonly number: string; rows: number }>();
  const enter = (item: ExpandedItem): void => {
    if (item.kind === "step" || item.kind === "task") {
      const { span, number } = item.kind === "step" ? item.step : item.task;
      const known = places.get(keyOf(span));
      if (known === undefined) places.set(keyOf(span), { number: prefix + number, rows: 1 });
      else known.rows++;
    }
    if (item.kind === "task" || item.kind === "any order") item.items.forEach(enter);
    if (item.kind === "when") [...item.arms.flatMap((arm) => arm.items), ...(item.otherwise ?? [])].forEach(enter);
  };
  expanded.items.forEach(enter);
  const find = (ref: StepRef) => (ref.target === null ? undefined : places.get(keyOf(ref.target)));
  return {
    reference: (ref) => {
      const place = find(ref);
      return place === undefined ? words.flow.stepUnknown(ref.name) : words.flow.step(place.number, ref.name);
    },
    link: (ref) => {
      const place = find(ref);
      return place === undefined || (place.rows > 1 && !compact) ? null : rowId(place.number, null);
    },
  };
}

/** The id of the row of a step or task; `pass` where each pass has its own. */
export function rowId(number: string, pass: string | null): string {
  const text = pass === null ? number : `${number}-${pass}`;
  return `step-${text.replace(/[^\p{L}\p{N}_]+/gu, "-")}`;
}

function keyOf(span: Span): string {
  return `${span.path} ${span.start}`;
}
