// What a form is made from: the changes with their places as lines and characters. Knows no form.
import type { Range } from "#syntax/lines.ts";
import type { Group } from "../change.ts";
import { GROUPS } from "../change.ts";
import type { Words } from "../words.ts";

export interface Report {
  readonly changes: readonly TellableChange[];
  readonly summary: Readonly<Record<Group | "restated", number>>;
}

export interface TellableChange {
  readonly group: Group;
  readonly kind: string;
  readonly message: string;
  readonly step?: { readonly name?: string; readonly number: string };
  readonly procedure: string;
  readonly old?: TellableSide;
  readonly new?: TellableSide;
  readonly findings?: { readonly came: readonly TellableFinding[]; readonly went: readonly TellableFinding[] };
  readonly signAgain?: readonly string[];
}

export interface TellableSide {
  readonly path: string;
  readonly range: Range;
  readonly text?: string;
}

interface TellableFinding {
  readonly code: string;
  readonly severity: string;
  readonly message: string;
}

/** The groups that have changes, most grave first. */
export function groupsOf({ changes }: Report): readonly (readonly [Group, readonly TellableChange[]])[] {
  return GROUPS.flatMap((group) => {
    const own = changes.filter((change) => change.group === group);
    return own.length === 0 ? [] : [[group, own] as const];
  });
}

/** `FitBearing, step 2.4 (Seated)`. */
export function whereText({ procedure, step }: TellableChange, words: Words): string {
  const name = procedure === "" ? words.noProcedure : procedure;
  return step === undefined ? name : `${name}, ${words.step(step.number, step.name ?? null)}`;
}

/** `pump.sprag:12`, as a person counts. */
export function placeText({ path, range }: TellableSide): string {
  return `${path}:${range.start.line + 1}`;
}

/** What came and went with it, and who signs again: a line each. */
export function afterTexts({ findings, signAgain }: TellableChange, words: Words): readonly string[] {
  return [
    ...(findings?.came ?? []).map(({ severity, code, message }) => words.came(severity, code, message)),
    ...(findings?.went ?? []).map(({ severity, code, message }) => words.went(severity, code, message)),
    ...(signAgain === undefined ? [] : [words.signAgain(signAgain)]),
  ];
}

export function summaryText({ summary: { restated, ...counts } }: Report, words: Words): string {
  return words.counts(counts, restated);
}
