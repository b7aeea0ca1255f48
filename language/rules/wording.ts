// Words that the rules share: lists, verbs, where a state came from, when a finding holds. Knows no single rule.
import type { Assignment, Origin } from "#analysis/fact.ts";
import type { LiftFactor } from "#engineering/lifting.ts";
import type { Pass } from "#model/problem.ts";
import { show } from "#quantity/display.ts";
import type { Kind } from "#quantity/kind.ts";
import type { Quantity } from "#quantity/quantity.ts";
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

/** A name as it is told: of one that nobody types its beginning is enough. */
export function shownName(name: string): string {
  return name.length > LONGEST_SHOWN ? `${name.slice(0, LONGEST_SHOWN)}…` : name;
}

const LONGEST_SHOWN = 60;

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

/** What lowers the limit of a lift by hand: `0.625 (reach 40 cm) · 0.955 (height 60 cm)`. */
export function factorsText(factors: readonly LiftFactor[]): string {
  return factors.map(({ factor, name, value }) => `${show(factor)} (${name} ${show(value)})`).join(" · ");
}

/** `tightened`, of a verb of the language. */
export function done(verb: string): string {
  return verb.endsWith("e") ? `${verb}d` : `${verb}ed`;
}

/** A time in the unit a person would use for `like`, never less than it is: `60 s`, `6.5 min`, `2 h`. */
export function timeText(seconds: number, like = seconds): string {
  const [size, unit] =
    like % 3600 === 0 || like >= 7200 ? HOURS : (like % 60 === 0 && like > 60) || like >= 600 ? MINUTES : SECONDS;
  return `${Math.ceil(Number(((seconds / size) * 100).toFixed(6))) / 100} ${unit}`;
}

const SECONDS = [1, "s"] as const;
const MINUTES = [60, "min"] as const;
const HOURS = [3600, "h"] as const;

/** `since step 4.2`, `from the start`. */
export function since({ step }: Origin): string {
  return step === null ? "from the start" : `since step ${step}`;
}

/** How a state came about; nothing to add where it is as at any start. */
export function cameFrom({ step, span }: Origin, state: string): readonly Remark[] {
  return [{ message: step === null ? `At the start: ${state}.` : `Step ${step}: ${state}.`, span }];
}

/** When a finding holds. */
export interface Circumstances {
  readonly pass: Pass;
  /** Further passes. */
  readonly more: number;
  readonly options: readonly Assignment[];
  /** Assignments that are not listed. */
  readonly moreOptions: number;
  readonly inOrder: readonly Origin[];
}

/** In which passes, for which options and in which order it is so, as a sentence; null where it always is. */
export function circumstances({ pass, more, options, moreOptions, inOrder }: Circumstances): string | null {
  const parts = [passWords(pass, more), optionWords(options, moreOptions), orderWords(inOrder)].filter(
    (part) => part !== "",
  );
  return parts.length === 0 ? null : `This happens ${parts.join(", ")}.`;
}

/** Other parts of the same line, by name as long as they are few. */
export function alsoWords(names: readonly string[]): string {
  const shown =
    names.length > MOST_NAMES ? [...names.slice(0, MOST_NAMES - 1), `${names.length - MOST_NAMES + 1} more`] : names;
  return `The same holds for ${listed(shown, "and")}.`;
}

const MOST_NAMES = 4;

function passWords(pass: Pass, more: number): string {
  if (pass.length === 0) return "";
  const first = listed(
    pass.map(({ variable, value }) => `${variable} = ${value}`),
    "and",
  );
  return `for ${first}${more > 0 ? `, and ${more} more` : ""}`;
}

/** `in the order 3, 1, 2`; where they are lines of one step, their places tell. */
function orderWords(inOrder: readonly Origin[]): string {
  const numbers = inOrder.flatMap(({ step }) => (step === null ? [] : [step]));
  const [first] = inOrder;
  if (first === undefined) return "";
  if (inOrder.length === 1)
    return first.step === null ? "when this comes first" : `when step ${first.step} comes first`;
  return numbers.length === inOrder.length ? `in the order ${numbers.join(", ")}` : "in the order shown";
}

/** What is done one after the other, where that is not the order of the text. */
export function orderShown(inOrder: readonly Origin[]): readonly Remark[] {
  return inOrder.map(({ step, span }, at) => {
    const place = at === 0 ? "First" : "Then";
    return { message: step === null ? `${place} this` : `${place} step ${step}`, span };
  });
}

/** More than this many are only counted. */
const MOST_ASSIGNMENTS = 3;

function optionWords(options: readonly Assignment[], more: number): string {
  const [only] = options;
  if (only === undefined) return "";
  const names = new Set(options.flatMap((assignment) => Object.keys(assignment)));
  const [name] = names;
  // Choices of one option are said in one breath.
  if (name !== undefined && names.size === 1 && more === 0)
    return `when ${name} is ${listed(options.map((assignment) => assignment[name] ?? ""))}`;
  const shown = options.slice(0, MOST_ASSIGNMENTS).map((assignment) =>
    listed(
      Object.entries(assignment).map(([option, choice]) => `${option} is ${choice}`),
      "and",
    ),
  );
  const rest = options.length - shown.length + more;
  return `when ${rest > 0 ? `${shown.join(", or ")}, or in ${rest} more ways` : shown.join(", or ")}`;
}

/** What to do about a preload that is too high or too low; `atLimit`: the torque that would just do. */
export function torqueRemedy(atLimit: Quantity | null): string {
  return atLimit === null
    ? "Compare torque, class and nut factor with the manual."
    : `Tighten to ${show(atLimit)}, or compare class and nut factor with the manual.`;
}
