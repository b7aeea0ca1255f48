// What is to be measured where parts go together hot or cold. Knows no format.
import { stepKey } from "#analysis/hazards/reminders.ts";
import type { Joining } from "#analysis/limits/joining.ts";
import { instanceKey } from "#analysis/world.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Making } from "./making.ts";
import { thingsPhrase } from "./things.ts";

/** @param number of a step of the procedure that is written out */
export function joiningsAt(number: string, { joinings, within }: Making): readonly Joining[] {
  return joinings.get(stepKey({ id: within.at(-1) ?? "" }, number)) ?? [];
}

/**
 * How hot the outer part must be and how warm its mate may be, for each pair; like pairs say it once.
 * @param number that of the step the line stands in, with the prefix
 */
export function joiningDetails({ action, objects }: ExpandedAction, number: string, making: Making): readonly string[] {
  if (action.verb !== "install") return [];
  const { prefix, writer } = making;
  const installed = new Set(objects.flatMap((one) => (one.kind === "part" ? [instanceKey(one.part, one.index)] : [])));
  const own = joiningsAt(number.slice(prefix.length), making).filter((joining) => installed.has(joining.installed));
  const texts = (isNumbered: boolean): readonly string[] => {
    const name = ({ part, index }: Joining["outer"]): string =>
      thingsPhrase([{ kind: "part", part, index: isNumbered ? index : null, span: action.place }], writer);
    const all = own.map(({ outer, inner, outerAtLeast, innerAtMost }) =>
      writer.words.joining(
        name(outer),
        writer.value(outerAtLeast, "must be met"),
        name(inner),
        writer.value(innerAtMost, "must be met"),
      ),
    );
    return [...new Set(all)];
  };
  const alike = texts(false);
  return alike.length > 1 ? texts(true) : alike;
}
