// Rows of steps kept from one document to the next, while a writer is at the text: a step that says what it said, in surroundings that do,
// keeps its row. Records are compared as they are, so that nothing is known here of what a step can say.
import type { Joining } from "#analysis/limits/joining.ts";
import { performsIn } from "#model/cycles.ts";
import type { Declaration } from "#model/declarations.ts";
import type { ExpandedStep } from "#model/expanded.ts";
import { isSpan } from "#model/moving.ts";
import type { Pass } from "#model/problem.ts";
import type { Statement, Step, StepRef } from "#model/procedure.ts";
import type { Choices } from "./conditions.ts";
import type { StepRow } from "./document.ts";
import type { Numbering } from "./numbering.ts";
import type { ToolStocks } from "./stock.ts";
import type { Words } from "./words/en.ts";
import type { Units } from "./writer.ts";

/** All that a row hangs on beside its source. */
export interface Surroundings {
  readonly words: Words;
  readonly units: Units;
  readonly compact: boolean;
  readonly whys: boolean;
  readonly choices: Choices;
  /** The crib that tools are taken from. */
  readonly stock: ToolStocks | null;
  /** Those that the procedure and the ones that it performs can name. */
  readonly declarations: readonly Declaration[];
  /** Of the steps that others refer to. */
  readonly numbering: Numbering;
}

/** What a row is made from. */
export interface RowSource {
  /** All passes of one step. */
  readonly steps: readonly [ExpandedStep, ...ExpandedStep[]];
  readonly reminders: readonly Statement[];
  readonly joinings: readonly Joining[];
}

/** The row of a step: the one that it had, or what `make` makes. */
export type RowOf = (source: RowSource, make: () => StepRow) => StepRow;

/** Keeps nothing. */
export const afresh: RowOf = (_, make) => make();

/** The rows of the last document, for the next one. */
export interface RowMemory {
  /** Begins a document. */
  readonly begin: (surroundings: Surroundings) => RowOf;
}

interface Kept extends RowSource {
  readonly row: StepRow;
  /** Whether it speaks of another step, whose number may change while its own record stays. */
  readonly refers: boolean;
}

export function createRowMemory(): RowMemory {
  let last: { readonly surroundings: Surroundings; readonly rows: ReadonlyMap<string, Kept> } | null = null;
  return {
    begin: (surroundings) => {
      const isSame = last === null ? null : comparison(last.surroundings, surroundings);
      const before = isSame === null ? null : last;
      const rows = new Map<string, Kept>();
      last = { surroundings, rows };
      return (source, make) => {
        const [{ step }] = source.steps;
        const key = keyOf(source);
        const known = before?.rows.get(key);
        if (known !== undefined && isSame?.(known, source)) {
          const row = placedAt(known.row, step.span);
          rows.set(key, { ...source, row, refers: known.refers });
          return row;
        }
        const row = make();
        if (mayBeKept(step, row)) rows.set(key, { ...source, row, refers: refersIn(step) });
        return row;
      };
    },
  };
}

/** The row as it was made: the same one for rows that differ in nothing but their place in the text. */
export function rowAsMade(row: StepRow): StepRow {
  return made.get(row) ?? row;
}

const made = new WeakMap<StepRow, StepRow>();

function placedAt(row: StepRow, at: StepRow["at"]): StepRow {
  if (row.at.path === at.path && row.at.start === at.start && row.at.end === at.end) return row;
  const placed = { ...row, at };
  made.set(placed, rowAsMade(row));
  return placed;
}

/** The bytes of pictures, and what other procedures say, are in no record of the step. */
function mayBeKept(step: Step, { pictures }: StepRow): boolean {
  return pictures.length === 0 && performsIn([step]).length === 0;
}

function keyOf({ steps: [{ pass, step }] }: RowSource): string {
  return `${step.number} ${pass.map(({ value }) => value).join(" ")}`;
}

/** Compares what stood in the one surroundings with what stands in the others; null where these do not say the same. */
function comparison(before: Surroundings, now: Surroundings): ((known: Kept, source: RowSource) => boolean) | null {
  const { declarations: declared, numbering: numberingBefore, words: wordsBefore, ...restBefore } = before;
  const { declarations, numbering, words, ...rest } = now;
  if (wordsBefore !== words || declared.length !== declarations.length) return null;
  // A declaration is the one that stands in its place; that the two say the same is then to be shown of each pair.
  const pairs = new Map<object, object>();
  for (const [at, one] of declared.entries()) if (one !== declarations[at]) pairs.set(one, declarations[at] as object);
  const isPair = (one: object, other: object): boolean => one === other || pairs.get(one) === other;
  const isSame = comparing({ isPair, refersAlike: null });
  const isSameReferring = comparing({
    isPair,
    refersAlike: (one, other) =>
      numberingBefore.reference(one) === numbering.reference(other) &&
      numberingBefore.link(one) === numbering.link(other) &&
      numberingBefore.isLeftOut(one) === numbering.isLeftOut(other),
  });
  if (!isSame(restBefore, rest) || ![...pairs].every((pair) => holdSame(...pair, isSame))) return null;
  return (known, { joinings, reminders, steps }) =>
    // What is written out follows from the step and its passes.
    (known.refers ? isSameReferring : isSame)(known.steps[0].step, steps[0].step) &&
    isSame(known.steps.map(passOf), steps.map(passOf)) &&
    isSame(known.reminders, reminders) &&
    isSame(known.joinings, joinings);
}

function passOf({ pass }: ExpandedStep): Pass {
  return pass;
}

/** Whether two values say the same, wherever in the text they stand. */
type IsSame = (one: unknown, other: unknown) => boolean;

interface Comparing {
  readonly isPair: (one: object, other: object) => boolean;
  /** Of two that name a step; null where none is named, so that the same record says the same. */
  readonly refersAlike: ((one: StepRef, other: StepRef) => boolean) | null;
}

function comparing({ isPair, refersAlike }: Comparing): IsSame {
  const isSame: IsSame = (one, other) => {
    if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return one === other;
    if (one === other && refersAlike === null) return true;
    if (Array.isArray(one)) return Array.isArray(other) && areSame(one, other, isSame);
    if (isSpan(one)) return isSpan(other);
    if (isDeclared(one)) return isPair(one, other);
    if (isReference(one) && !(isReference(other) && refersAlike?.(one, other))) return false;
    return isPlain(one) && isPlain(other) && holdSame(one, other, isSame);
  };
  return isSame;
}

function areSame(ones: readonly unknown[], others: readonly unknown[], isSame: IsSame): boolean {
  return ones.length === others.length && ones.every((one, at) => isSame(one, others[at]));
}

function holdSame(one: object, other: object, isSame: IsSame): boolean {
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length) return false;
  for (const key of keys) if (!isSame(one[key as keyof object], other[key as keyof object])) return false;
  return true;
}

/** Anything else than lists and plain records is only itself. */
function isPlain(record: object): boolean {
  return Object.getPrototypeOf(record) === Object.prototype;
}

function refersIn(value: unknown): boolean {
  if (typeof value !== "object" || value === null || isDeclared(value)) return false;
  return isReference(value) || Object.values(value).some(refersIn);
}

function isReference(value: object): value is StepRef {
  return "target" in value;
}

/** A declaration or a procedure. */
function isDeclared(value: object): boolean {
  return "id" in value && "extent" in value;
}
