// Passes of a repeat put together: which expanded items come from one line of the text, and one sentence for all passes.
// Knows no format.
import type { ExpandedItem, ExpandedLine } from "#model/expanded.ts";
import type { Pass } from "#model/problem.ts";
import type { Item, Line, RepeatBlock } from "#model/procedure.ts";
import type { Span } from "#syntax/span.ts";

/** What stands together: all passes of one line of the text, or a repeat with what is in it. */
export type Bundle<Expanded, Source> =
  | { readonly kind: "one"; readonly items: readonly [Expanded, ...Expanded[]]; readonly source: Source | null }
  | { readonly kind: "repeat"; readonly repeat: RepeatBlock<Source>; readonly items: readonly Expanded[] };

/**
 * Sorts expanded items by the line they come from, in the order of the text.
 *
 * @param source what they were written out from; null keeps every item by itself, in working order
 */
export function bundlesOf<Expanded extends ExpandedItem | ExpandedLine, Source extends Item | Line>(
  items: readonly Expanded[],
  source: readonly Source[] | null,
): readonly Bundle<Expanded, Source>[] {
  if (source === null) return items.map((item) => ({ kind: "one", items: [item], source: null }));
  const origins = originsOf(source);
  const bySource = new Map<Source, Expanded[]>();
  for (const item of items) {
    const from = origins.get(keyOf(item.kind, placeOf(item)));
    if (from === undefined) continue;
    const known = bySource.get(from);
    if (known === undefined) bySource.set(from, [item]);
    else known.push(item);
  }
  return source.flatMap((from): Bundle<Expanded, Source>[] => {
    const [first, ...rest] = bySource.get(from) ?? [];
    if (first === undefined) return [];
    if (from.kind === "repeat")
      return [{ kind: "repeat", repeat: from as RepeatBlock<Source>, items: [first, ...rest] }];
    return [{ kind: "one", items: [first, ...rest], source: from }];
  });
}

/** The place of an expanded item in the text it was written out from. */
export function placeOf(item: ExpandedItem | ExpandedLine): Span {
  switch (item.kind) {
    case "task":
      return item.task.span;
    case "step":
      return item.step.span;
    case "action":
      return item.action.span;
    case "check":
      return item.check.span;
    case "perform":
      return item.line.action.span;
    case "jump":
      return item.jump.span;
    case "statement":
      return item.statement.span;
    case "note":
      return item.note.span;
    case "damaged":
      return item.damaged.span;
    case "when":
    case "any order":
      return item.span;
  }
}

/** The pass an item stands in, outermost variable first; empty outside repeats. */
export function passOf(item: ExpandedItem | ExpandedLine): Pass {
  switch (item.kind) {
    case "when":
      return firstPass([
        ...item.arms.flatMap((arm): readonly (ExpandedItem | ExpandedLine)[] => arm.items),
        ...(item.otherwise ?? []),
      ]);
    case "any order":
      return firstPass(item.items);
    case "damaged":
      return [];
    default:
      return item.pass;
  }
}

/**
 * One text for several passes, with the loop's variable in place of the number that follows it. Null where the texts
 * differ in another way: then each has to be written out.
 */
export function acrossPasses(texts: readonly string[], passes: readonly Pass[]): string | null {
  const [first, ...rest] = texts;
  if (first === undefined || rest.every((text) => text === first)) return first ?? null;
  const tokens = texts.map((text) => text.split(NUMBERS));
  const [model] = tokens;
  if (model === undefined || tokens.some((one) => one.length !== model.length)) return null;
  const merged = model.map((token, at) => {
    if (tokens.every((one) => one[at] === token)) return token;
    const follows = (variable: string): boolean =>
      tokens.every((one, pass) => one[at] === String(passes[pass]?.find((loop) => loop.variable === variable)?.value));
    return [...(passes[0] ?? [])].reverse().find((loop) => follows(loop.variable))?.variable ?? null;
  });
  return merged.includes(null) ? null : merged.join("");
}

/** Whole numbers, not the digits of a decimal. */
const NUMBERS = /((?<![\d.])\d+(?![\d]|\.\d))/;

function firstPass(items: readonly (ExpandedItem | ExpandedLine)[]): Pass {
  const [first] = items;
  return first === undefined ? [] : passOf(first);
}

/** Every line that expansion writes out, with the line or the whole repeat that it belongs to. */
function originsOf<Source extends Item | Line>(source: readonly Source[]): ReadonlyMap<string, Source> {
  const origins = new Map<string, Source>();
  const enter = (items: readonly (Item | Line)[], owner: Source | null): void => {
    for (const item of items) {
      const from = owner ?? (item as Source);
      if (item.kind === "repeat") enter(item.items, from);
      else origins.set(keyOf(JUMPS.has(item.kind) ? "jump" : item.kind, item.span), from);
    }
  };
  enter(source, null);
  return origins;
}

const JUMPS: ReadonlySet<string> = new Set(["return", "go", "stop"]);

function keyOf(kind: string, span: Span): string {
  return `${kind} ${span.start}`;
}
