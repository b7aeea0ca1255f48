// Words that the rules share: lists, verbs, where a state came from, when a finding holds. Knows no single rule.
import type { Assignment, Origin } from "#analysis/fact.ts";
import type { Pass } from "#model/problem.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Remark } from "./finding.ts";

/** `a`, `a or b`, `a, b or c`. */
export function listed(words: readonly string[], link: "or" | "and" = "or"): string {
  const last = words[words.length - 1] ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} ${link} ${last}`;
}

/** A word of the text that is no plain name, set off from the sentence round it. */
export function quoted(text: string): string {
  return `“${text}”`;
}

/** `an angle`, `a torque`. */
export function aKind(kind: Kind): string {
  return `${/^[aeio]/.test(kind) ? "an" : "a"} ${kind}`;
}

/** The first letter large, as at the beginning of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What was wanted and what was found, each on a line of its own. */
export function wantedFound(wanted: string, found: string): string {
  return `Wanted: ${wanted}\nFound: ${found}`;
}

/** `tightened`, of a verb of the language. */
export function done(verb: string): string {
  return verb.endsWith("e") ? `${verb}d` : `${verb}ed`;
}

/** `since step 4.2`, `from the start`. */
export function since({ step }: Origin): string {
  return step === null ? "from the start" : `since step ${step}`;
}

/** How a state came about; nothing to add where it is as at any start. */
export function cameFrom({ step, span }: Origin, state: string): readonly Remark[] {
  return [{ message: step === null ? `At the start: ${state}.` : `Step ${step}: ${state}.`, span }];
}

/** In which passes and for which options it is so, as a sentence; null where it always does. */
export function circumstances(
  pass: Pass | null,
  more: number,
  options: readonly Assignment[] | undefined,
): string | null {
  const parts = [passWords(pass ?? [], more), optionWords(options ?? [])].filter((part) => part !== "");
  return parts.length === 0 ? null : `This happens ${parts.join(", ")}.`;
}

function passWords(pass: Pass, more: number): string {
  if (pass.length === 0) return "";
  const first = listed(
    pass.map(({ variable, value }) => `${variable} = ${value}`),
    "and",
  );
  return `for ${first}${more > 0 ? `, and ${more} more` : ""}`;
}

/** More than this many are only counted. */
const MOST_ASSIGNMENTS = 3;

function optionWords(options: readonly Assignment[]): string {
  const shown = options.slice(0, MOST_ASSIGNMENTS).map((assignment) =>
    listed(
      Object.entries(assignment).map(([option, choice]) => `${option} is ${choice}`),
      "and",
    ),
  );
  if (shown.length === 0) return "";
  const rest = options.length - shown.length;
  return `when ${rest > 0 ? `${shown.join(", or ")}, or in ${rest} more ways` : shown.join(", or ")}`;
}
