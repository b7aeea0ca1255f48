// A review as it is handed on: the changes with their places as lines and characters. All forms are made from it, and it is what
// the JSON holds. Knows no form.
import type { Range } from "#syntax/lines.ts";
import type { Group } from "../change.ts";
import { GROUPS } from "../change.ts";
import type { FindingWords, Words } from "../words.ts";

/** @typeParam Found a finding, of which a form tells what {@link FindingTold} has */
export interface Report<Found extends FindingTold = FindingTold> {
  readonly version: 1;
  /** Most grave first. */
  readonly changes: readonly ReportedChange<Found>[];
  /** Of each group; restated values are counted among the values too. */
  readonly summary: Readonly<Record<Group | "restated", number>>;
}

export interface ReportedChange<Found extends FindingTold = FindingTold> {
  readonly group: Group;
  readonly kind: string;
  readonly message: string;
  readonly step?: { readonly name?: string; readonly number: string };
  readonly procedure: string;
  readonly old?: ReportedSide;
  readonly new?: ReportedSide;
  readonly findings?: { readonly came: readonly Found[]; readonly went: readonly Found[] };
  readonly signAgain?: readonly string[];
}

export interface ReportedSide {
  readonly path: string;
  readonly range: Range;
  readonly text?: string;
}

export type FindingTold = FindingWords;

/** The groups that have changes, most grave first. */
export function groupsOf({ changes }: Report): readonly (readonly [Group, readonly ReportedChange[]])[] {
  return GROUPS.flatMap((group) => {
    const own = changes.filter((change) => change.group === group);
    return own.length === 0 ? [] : [[group, own] as const];
  });
}

/** `FitBearing, step 2.4 (Seated)`. */
export function whereText({ procedure, step }: ReportedChange, words: Words): string {
  const name = procedure === "" ? words.noProcedure : procedure;
  return step === undefined ? name : `${name}, ${words.step(step.number, step.name ?? null)}`;
}

/** `pump.sprag:12`, as a person counts. */
export function placeText({ path, range }: ReportedSide): string {
  return `${path}:${range.start.line + 1}`;
}

/** What came and went with it, and who signs again: a line each. */
export function afterTexts({ findings, signAgain }: ReportedChange, words: Words): readonly string[] {
  return [
    ...(findings?.came ?? []).map(words.came),
    ...(findings?.went ?? []).map(words.went),
    ...(signAgain === undefined ? [] : [words.signAgain(signAgain)]),
  ];
}

export function summaryText({ summary: { restated, ...counts } }: Report, words: Words): string {
  return words.counts(counts, restated);
}
