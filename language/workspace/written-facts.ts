// What is found in what is written, without following it: procedure by procedure, so that one that was taken over is not looked through
// again. Knows no fact in particular.
import { balanceFacts } from "#analysis/limits/balance.ts";
import { secondCheckFacts } from "#analysis/second-check.ts";
import { carrySilence } from "#analysis/silent-tasks.ts";
import { statementFactsOf } from "#analysis/statements.ts";
import { traceFactsOf } from "#analysis/trace/trace-facts.ts";
import { areEnglish, type WordCount } from "#analysis/wording/grammar-words.ts";
import type { WordingFact } from "#analysis/wording/wording-fact.ts";
import { type Apart, takeApart, wordingFactsIn } from "#analysis/wording/wording-facts.ts";
import type { Declaration } from "#model/declarations.ts";
import type { Wording } from "#model/own-words.ts";
import type { FileModel } from "#model/procedure.ts";
import type { Moves } from "#model/taken-over.ts";
import type { AnyFact } from "#rules/rule.ts";
import { isWithin } from "#syntax/span.ts";

/** @param moves how the file's procedures moved since its last model */
export function writtenFactsOf(model: FileModel, moves: Moves | null): readonly AnyFact[] {
  for (const [now, before] of moves?.taskBefore ?? []) carrySilence(before, now);
  return [
    ...model.problems,
    ...balanceFacts(model.declarations),
    ...partsOf(model).flatMap((part) => factsOnce(part, moves)),
    ...wordingFactsOf(model, moves),
  ];
}

/** A procedure, or all that stands outside, as a model of its own. */
interface Part {
  readonly wording: Wording;
  readonly model: FileModel;
}

function partsOf(model: FileModel): readonly Part[] {
  const inside = new Map<Wording, Declaration[]>();
  const outside: Declaration[] = [];
  const procedures = model.wording.filter((wording) => wording.procedure !== null);
  for (const declared of model.declarations) {
    const holder = procedures.find(
      ({ procedure }) => procedure !== null && isWithin(declared.extent, procedure.extent),
    );
    if (holder === undefined) outside.push(declared);
    else inside.set(holder, [...(inside.get(holder) ?? []), declared]);
  }
  return model.wording.map((wording) => {
    const { procedure } = wording;
    const own =
      procedure === null
        ? { procedures: [], declarations: outside }
        : { procedures: [procedure], declarations: inside.get(wording) ?? [] };
    return { wording, model: { ...model, ...own, wording: [wording] } };
  });
}

/** What was found in a part, and what it declared. */
interface Found {
  readonly declarations: readonly Declaration[];
  readonly facts: readonly AnyFact[];
}

/** A procedure that is taken over has its own words still, or they were moved with it. */
const known = new WeakMap<Wording, Found>();

function factsOnce({ model, wording }: Part, moves: Moves | null): readonly AnyFact[] {
  const { declarations } = model;
  const before = known.get(wording);
  // Among what stands outside is what a procedure declares whose head could not be read.
  const isSame = before !== undefined && (wording.procedure !== null || isSameList(before.declarations, declarations));
  const facts = isSame ? before.facts : (movedFacts(wording, moves) ?? factsIn(model));
  known.set(wording, { declarations, facts });
  return facts;
}

function isSameList<T>(one: readonly T[], other: readonly T[]): boolean {
  return one.length === other.length && one.every((each, at) => each === other[at]);
}

function movedFacts(wording: Wording, moves: Moves | null): readonly AnyFact[] | null {
  const before = moves?.wordingBefore.get(wording);
  const found = before === undefined ? undefined : known.get(before);
  return found === undefined || moves === null ? null : moves.moved(found.facts);
}

function factsIn(model: FileModel): readonly AnyFact[] {
  return [...statementFactsOf(model), ...model.procedures.flatMap(secondCheckFacts), ...traceFactsOf(model)];
}

/* ---- own words ---- */

/** What was found in some own words, taken as English or not, and their number. */
interface Looked {
  readonly count: WordCount;
  readonly isEnglish: boolean;
  readonly facts: readonly WordingFact[];
}

const looked = new WeakMap<Wording, Looked>();

function wordingFactsOf({ wording }: FileModel, moves: Moves | null): readonly WordingFact[] {
  const before = wording.map((one) => looked.get(one) ?? movedLook(one, moves));
  const apart = wording.map((one, at) => (before[at] == null ? takeApart(one) : null));
  // Whether the words are English is told from all of them together.
  const isEnglish = areEnglish(wording.flatMap((_, at) => before[at]?.count ?? apart[at]?.count ?? []));
  return wording.flatMap((one, at) => {
    const known = before[at];
    const now = known?.isEnglish === isEnglish ? known : look(apart[at] ?? takeApart(one), isEnglish);
    looked.set(one, now);
    return now.facts;
  });
}

function look(apart: Apart, isEnglish: boolean): Looked {
  return { count: apart.count, isEnglish, facts: wordingFactsIn(apart, isEnglish) };
}

function movedLook(wording: Wording, moves: Moves | null): Looked | null {
  const before = moves?.wordingBefore.get(wording);
  const known = before === undefined ? undefined : looked.get(before);
  const facts = known === undefined || moves === null ? null : moves.moved(known.facts);
  return known === undefined || facts === null ? null : { ...known, facts };
}
