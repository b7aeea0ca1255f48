// Which standing cautions belong on an output: those for everything, and those for the kinds of work in it. Knows no format.
import type { Unchecked } from "#analysis/limits/unchecked.ts";
import type { Words } from "./words/en.ts";
import type { Work } from "./work.ts";

/**
 * @param unchecked what could not be checked for want of data: printed, so that silence is not read as a pass
 * @param listed whether settings stand beside the items of a crib
 */
export function cautionsFor(
  work: Work,
  words: Words,
  unchecked: readonly Unchecked[] = [],
  listed = false,
): readonly string[] {
  const verbs = new Set<string>(work.actions.map(({ action }) => action.verb));
  const any = (...wanted: readonly string[]): boolean => wanted.some((verb) => verbs.has(verb));
  const adapter = work.actions.some(
    ({ action }) => action.verb === "tighten" && action.tools.some(({ tool }) => tool.capability.offset !== null),
  );
  const inspected = work.steps.some(({ step }) => step.hold !== null);
  const { cautions } = words;
  return [
    ...cautions.everywhere,
    cautions.notChecked,
    ...(unchecked.length === 0 ? [] : [uncheckedText(unchecked, words)]),
    ...(adapter ? [listed ? cautions.adapterListed : cautions.adapter] : []),
    ...(any("heat") ? [cautions.heating] : []),
    ...(any("cool") ? [cautions.cooling] : []),
    ...(any("isolate", "release", "prove") ? [cautions.isolation] : []),
    ...(any("lift", "support") ? [cautions.lifting] : []),
    ...(work.actions.some(setsFree) ? [cautions.gases] : []),
    ...(work.statements.length > 0 ? [cautions.hazards] : []),
    ...(inspected ? [cautions.twoPeople] : []),
  ];
}

function setsFree({ action }: Work["actions"][number]): boolean {
  return "dose" in action && action.dose.consumable?.expands != null;
}

function uncheckedText(unchecked: readonly Unchecked[], { cautions }: Words): string {
  return cautions.unchecked(
    unchecked.map(({ matter, of, lacks, when, in: holder }) => cautions.uncheckedItem(matter, of, lacks, when, holder)),
  );
}
