// What was found by following the procedures of a file, kept for its next state: a procedure that says what it said, as does all that it
// performs, is not followed again. Knows no fact in particular.
import { type Comparison, createComparison, moveBetween } from "#model/alike.ts";
import type { FileModel, Procedure } from "#model/procedure.ts";
import type { Moves } from "#model/taken-over.ts";
import type { AnyFact } from "#rules/rule.ts";
import { filesBehind, idsPerformed } from "./concerned.ts";
import type { Loaded } from "./load.ts";

/** All that the facts of a file's procedures hang on, beside those procedures. */
export interface Surroundings {
  /** Of the file, of those behind it, and of the crib. */
  readonly texts: ReadonlyMap<string, string>;
  /** Those that could be performed, by their ids. */
  readonly procedures: ReadonlyMap<string, Procedure>;
  /** The file of the crib; null where there is none. */
  readonly stock: FileModel | null;
  readonly day: string;
}

export interface KeptFacts extends Surroundings {
  readonly facts: ReadonlyMap<Procedure, readonly AnyFact[]>;
}

/** @param stock the file of the crib */
export function surroundingsOf(loaded: Loaded, path: string, stock: FileModel | null, day: string): Surroundings {
  const behind = filesBehind(loaded, path);
  const procedures = behind.flatMap((one) => loaded.models.get(one)?.procedures ?? []);
  const read = stock === null ? behind : [...behind, stock.path];
  return {
    texts: new Map(read.map((one) => [one, loaded.parsed.get(one)?.text ?? ""])),
    // Of two with one name the first is performed.
    procedures: new Map(procedures.toReversed().map((procedure) => [procedure.id, procedure])),
    stock,
    day,
  };
}

/**
 * Asks what is still true: the facts of a procedure of now, or null where it is to be followed.
 * @param moves how the procedures of the file moved since its last model
 */
export function stillTrue(
  before: KeptFacts,
  now: Surroundings,
  moves: Moves | null,
): (procedure: Procedure) => readonly AnyFact[] | null {
  if (before.stock !== now.stock || (now.stock !== null && before.day !== now.day)) return () => null;
  const isTakenOver = (one?: Procedure, other?: Procedure): boolean =>
    one === other || (one !== undefined && other !== undefined && moves?.before.get(other) === one);
  let comparison: Comparison | null = null;
  const compared = (): Comparison => {
    comparison ??= comparisonOf(before, now);
    return comparison;
  };
  return (procedure) => {
    const old = before.procedures.get(procedure.id);
    const facts = old === undefined ? undefined : before.facts.get(old);
    if (old === undefined || facts === undefined) return null;
    const pairs = [...idsPerformed(old, (id) => before.procedures.get(id))].map(
      (id) => [before.procedures.get(id), now.procedures.get(id)] as const,
    );
    pairs.push([old, procedure]);
    if (pairs.every(([one, other]) => one === other)) return facts;
    if (moves !== null && pairs.every(([one, other]) => isTakenOver(one, other))) return moves.moved(facts);
    // Where the words are others, the records need no comparison, which could not be used again.
    if (!pairs.every(([one, other]) => wordsOf(one, before) === wordsOf(other, now))) return null;
    const { carried, isAlike } = compared();
    if (!pairs.every(([one, other]) => one === other || (one && other && isAlike(one, other)))) return null;
    return carried(facts);
  };
}

function comparisonOf(before: Surroundings, now: Surroundings): Comparison {
  const places = new Map(
    [...before.texts].flatMap(([path, text]) => {
      const next = now.texts.get(path);
      return next === undefined ? [] : [[path, moveBetween(text, next)] as const];
    }),
  );
  return createComparison((path) => places.get(path) ?? null);
}

function wordsOf(procedure: Procedure | undefined, { texts }: Surroundings): string | undefined {
  return procedure && texts.get(procedure.path)?.slice(procedure.extent.start, procedure.extent.end);
}
