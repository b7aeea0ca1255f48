// The kit list for stores: parts with what has to be new, tools as requirements, consumables with their sums. Knows no format.
import { type BuildInput, documentOf } from "../build.ts";
import type { Document } from "../document.ts";
import type { Words } from "../words/en.ts";
import { workOf } from "../work.ts";
import { writerOf } from "../writer.ts";
import { amountRows } from "./amounts.ts";

/** The checklist's lists, without its work. */
export function buildKit(input: BuildInput, words: Words): Document {
  const { expanded, options, units, expandedOf } = input;
  const document = documentOf(input, words, { use: "kit" });
  const work = workOf(expanded, options, expandedOf);
  const isOpen = work.options.some((option) => !Object.hasOwn(options, option.name));
  return {
    ...document,
    title: words.kit.title(document.title),
    cautions: [...document.cautions, words.kit.once, ...(isOpen ? [words.kit.open] : [])],
    consumables: amountRows(work, writerOf(words, units, expanded.procedure.declarations)),
    signals: [],
    start: [],
    arrangements: [],
    blocks: [],
    end: [],
  };
}
