// Blocks that hold nothing to do: tasks, repeats, branches and `in any order` without a step, and inside a step without a
// line. Read off the records; the outermost is told, and knows no graph.
import type { Item, Line, Step } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";
import { ALWAYS } from "./decision.ts";
import type { BareFact } from "./fact.ts";
import type { Run } from "./follow.ts";
import type { Raw } from "./raw-fact.ts";

type What = Extract<BareFact, { readonly kind: "empty" }>["what"];

export function emptyFacts(run: Run): readonly Raw[] {
  return run.expanded.procedure.items.flatMap(emptyIn).map(({ what, span }) => ({
    fact: { kind: "empty", span, what },
    where: ALWAYS,
    pass: [],
    subject: "",
  }));
}

interface Empty {
  readonly what: What;
  /** Its head. */
  readonly span: Span;
}

/** A block of items or lines. */
interface Block extends Empty {
  readonly items: readonly (Item | Line)[];
}

/** Between steps: what holds no step is empty, whatever else is said in it. */
function emptyIn(item: Item): readonly Empty[] {
  if (item.kind === "step") return emptyInStep(item);
  return blocksOf(item).flatMap((block) => {
    const items = block.items as readonly Item[];
    return items.some(holdsWork) ? items.flatMap(emptyIn) : [block];
  });
}

function holdsWork(item: Item): boolean {
  switch (item.kind) {
    case "statement":
    case "note":
      return false;
    case "damaged":
      return item.noWork !== true;
    case "task":
    case "repeat":
    case "when":
    case "any order":
      return blocksOf(item).some((block) => (block.items as readonly Item[]).some(holdsWork));
    default:
      return true;
  }
}

/** In a step: what holds no line at all. Lines that speak of the whole step are not kept where they stood. */
function emptyInStep(step: Step): readonly Empty[] {
  const found = emptyBlocks(step.lines, step.span.end);
  const said = found.length === 0 ? null : placesSaid(step);
  if (said === null) return [];
  return found
    .filter(({ block, end }) => !said.some((start) => start >= block.span.start && start < end))
    .map(({ block }) => block);
}

/** Each with where it ends at the latest. */
function emptyBlocks(lines: readonly Line[], end: number): readonly { readonly block: Block; readonly end: number }[] {
  return lines.flatMap((line, at) => {
    const until = lines[at + 1]?.span.start ?? end;
    // What is done if a check fails may be nothing: the work goes on.
    if (line.kind === "check") return emptyBlocks(line.fails ?? [], until);
    const blocks = blocksOf(line);
    return blocks.flatMap((block, which) => {
      const last = blocks[which + 1]?.span.start ?? until;
      const items = block.items as readonly Line[];
      return items.length > 0 ? emptyBlocks(items, last) : [{ block, end: last }];
    });
  });
}

/** Where the lines begin that are kept with the step, not with the block they stand in; null where that is not known of one. */
function placesSaid(step: Step): readonly number[] | null {
  if (step.signs.length > 0 || step.hold !== null || step.by !== null || step.critical || step.whys.length > 0)
    return null;
  return [
    ...[step.records, step.after, step.before, step.raises, step.cites, step.figures, step.allows].flat(),
    ...[step.takes, step.within].filter((line) => line !== null),
  ].map(({ span }) => span.start);
}

function blocksOf(item: Item | Line): readonly Block[] {
  switch (item.kind) {
    case "task":
      return [{ what: "task", span: item.headSpan, items: item.items }];
    case "repeat":
      return [{ what: "repeat", span: item.span, items: item.items }];
    case "any order":
      return [{ what: "in any order", span: { ...item.span, end: item.span.start + HEAD.length }, items: item.items }];
    case "when": {
      const arms = item.arms.map(
        ({ condition, items }, at): Block => ({ what: "when", span: at === 0 ? item.span : condition.span, items }),
      );
      if (item.otherwise === null) return arms;
      return [...arms, { what: "otherwise", span: item.otherwiseSpan ?? item.span, items: item.otherwise }];
    }
    default:
      return [];
  }
}

const HEAD = "in any order";
