// Where steps and tasks stand: the number and link that a jump or a time limit refers to. Knows no format.
import type { ExpandedItem, ExpandedProcedure } from "#model/expanded.ts";
import type { StepRef } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import { ruledOut } from "./conditions.ts";
import type { Making } from "./making.ts";

export interface Numbering {
  /** How a step is referred to: `step 1.2 (SlideHome)`. */
  readonly reference: (ref: StepRef) => string;
  /** The id of its row; null where there is no such step, or a row for each pass. */
  readonly link: (ref: StepRef) => string | null;
  /** Whether the options chosen leave the step out. */
  readonly isLeftOut: (ref: StepRef) => boolean;
}

/** @param prefix what stands before each number, where the procedure is performed inside another */
export function numberingOf(
  expanded: ExpandedProcedure,
  { prefix, compact, choices, writer }: Pick<Making, "prefix" | "compact" | "choices" | "writer">,
): Numbering {
  const { flow } = writer.words;
  const places = new Map<string, { readonly number: string; readonly rows: number; readonly isLeftOut: boolean }>();
  const enter = (item: ExpandedItem, isLeftOut: boolean): void => {
    const within = (items: readonly ExpandedItem[], out = isLeftOut): void => {
      for (const inner of items) enter(inner, out);
    };
    if (item.kind === "step" || item.kind === "task") {
      const { span, number } = item.kind === "step" ? item.step : item.task;
      const known = places.get(keyOf(span));
      const isOut = isLeftOut && known?.isLeftOut !== false;
      places.set(keyOf(span), { number: prefix + number, rows: (known?.rows ?? 0) + 1, isLeftOut: isOut });
    }
    if (item.kind === "task" || item.kind === "any order") within(item.items);
    if (item.kind === "when") {
      const out = ruledOut(item.arms, choices);
      item.arms.forEach((arm, at) => {
        within(arm.items, isLeftOut || out.arms[at] === true);
      });
      within(item.otherwise ?? [], isLeftOut || out.otherwise);
    }
  };
  for (const item of expanded.items) enter(item, false);
  const find = (ref: StepRef) => (ref.target === null ? undefined : places.get(keyOf(ref.target)));
  return {
    reference: (ref) => {
      const place = find(ref);
      return place === undefined ? flow.stepUnknown(ref.name) : flow.step(place.number, ref.name);
    },
    link: (ref) => {
      const place = find(ref);
      return place === undefined || (place.rows > 1 && !compact) ? null : rowId(place.number, null);
    },
    isLeftOut: (ref) => find(ref)?.isLeftOut === true,
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
