// Which procedure of the old side is which of the new, and what became of each. Knows no shared things and no findings.
import type { FileModel, Procedure } from "#model/procedure.ts";
import { widened } from "./allows.ts";
import { type Compared, compareTrees } from "./compare.ts";
import { describe, type Entry } from "./describe.ts";
import { matchTrees, nodesUnder, type Pairs, pairsBy } from "./match.ts";
import { procedureNode } from "./of-procedure.ts";
import { placeKey, type Reading } from "./reading.ts";
import type { Node } from "./record.ts";
import type { ReviewSide } from "./side.ts";
import { ended, type Words } from "./words.ts";

export interface ProcedurePair {
  readonly old: Procedure | null;
  readonly new: Procedure | null;
}

export interface Told {
  readonly pair: ProcedurePair;
  /** By which its changes are told. */
  readonly name: string;
  readonly compared: Compared | null;
  readonly entries: readonly Entry[];
  readonly steps: { readonly old: ReadonlyMap<string, Node>; readonly new: ReadonlyMap<string, Node> };
}

/** By path and name, by name, by document, by title; and where one is left in one file each, these. */
export function pairedProcedures(old: ReviewSide, now: ReviewSide): readonly ProcedurePair[] {
  const [all, alsoAll] = [old, now].map(({ files }) => files.flatMap((file: FileModel) => file.procedures));
  let [before, after] = [all ?? [], alsoAll ?? []];
  const pairs = new Map<Procedure, Procedure>();
  const isOneEach = old.files.length === 1 && now.files.length === 1;
  const keys: readonly ((procedure: Procedure) => string | null)[] = [
    ({ path, name }) => `${path} ${name}`,
    ({ name }) => name,
    ({ document }) => document?.number ?? null,
    ({ title }) => title,
    () => (isOneEach && before.length === 1 && after.length === 1 ? "" : null),
  ];
  for (const key of keys) {
    const some = pairsBy(before, after, key);
    for (const [one, other] of some) pairs.set(other, one);
    const [ones, others] = [new Set(some.map(([one]) => one)), new Set(some.map(([, other]) => other))];
    before = before.filter((one) => !ones.has(one));
    after = after.filter((one) => !others.has(one));
  }
  return [
    ...(alsoAll ?? []).map((one) => ({ old: pairs.get(one) ?? null, new: one })),
    ...before.map((one) => ({ old: one, new: null })),
  ];
}

/** Compares the two sides of a procedure. @param key by which its nodes are told from those of others */
export function toldOf(
  pair: ProcedurePair,
  reading: { readonly old: Reading; readonly new: Reading },
  key: string,
  words: Words,
): Told {
  const { old, new: now } = pair;
  const name = (now ?? old)?.name ?? "";
  if (old === null || now === null) {
    const entries = [wholeEntry(pair, name, words)];
    return { pair, name, compared: null, entries, steps: { old: new Map(), new: new Map() } };
  }
  const { trees, pairs } = matchedProcedures(old, now, reading);
  const compared = compareTrees(trees.old, trees.new, pairs, key);
  const entries = widened(
    compared.changes.flatMap((bare) => describe(bare, compared, name, words)),
    compared,
    words,
  );
  return { pair, name, compared, entries, steps: { old: stepsOf(trees.old), new: stepsOf(trees.new) } };
}

function wholeEntry({ old, new: now }: ProcedurePair, procedure: string, words: Words): Entry {
  const one = (now ?? old) as Procedure;
  const side = { span: one.span, text: one.title };
  const message = ended((now === null ? words.nodeDropped : words.nodeAdded)(words.sorts.procedure, one.title));
  const kind = now === null ? "procedure-removed" : "procedure-added";
  const change = {
    group: "order",
    kind,
    message,
    procedure,
    ...(now === null ? { old: side } : { new: side }),
    edits: [],
  } as const;
  return { change, steps: [], node: { old: null, new: null }, label: null };
}

function stepsOf(root: Node): ReadonlyMap<string, Node> {
  const steps = new Map<string, Node>();
  for (const node of nodesUnder(root))
    if (node.number !== null && !steps.has(node.number)) steps.set(node.number, node);
  return steps;
}

/**
 * Reads both again where that shows more of them to be the same: a repeat that the other side has not is compared pass by pass,
 * and a step that has another name is referred to by the one it had.
 */
function matchedProcedures(old: Procedure, now: Procedure, reading: { readonly old: Reading; readonly new: Reading }) {
  const match = (one: Reading, other: Reading) => {
    const trees = { old: procedureNode(old, one), new: procedureNode(now, other) };
    return { trees, pairs: matchTrees(trees.old, trees.new) };
  };
  const first = match(reading.old, reading.new);
  const names = renamed(first.pairs);
  const stepName = (name: string): string => names.get(name) ?? name;
  const plain = names.size === 0 ? first : match(reading.old, { ...reading.new, stepName });
  const writtenOut = new Set([
    ...lonelyRepeats(plain.trees.old, plain.pairs),
    ...lonelyRepeats(plain.trees.new, plain.pairs),
  ]);
  if (writtenOut.size === 0) return plain;
  const out = match({ ...reading.old, writtenOut }, { ...reading.new, stepName, writtenOut });
  return lonely(out) < lonely(plain) ? out : plain;
}

function renamed({ toNew }: Pairs): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const [old, now] of toNew)
    if (
      old.sort !== "procedure" &&
      old.sort !== "arm" &&
      old.name !== null &&
      now.name !== null &&
      old.name !== now.name
    )
      names.set(now.name, old.name);
  return names;
}

function lonelyRepeats(root: Node, { toNew, toOld }: Pairs): readonly string[] {
  const isLonely = (node: Node): boolean => node.sort === "repeat" && !toNew.has(node) && !toOld.has(node);
  return nodesUnder(root)
    .filter(isLonely)
    .map(({ span }) => placeKey(span));
}

function lonely({
  trees,
  pairs,
}: {
  readonly trees: { readonly old: Node; readonly new: Node };
  readonly pairs: Pairs;
}) {
  const all = nodesUnder(trees.old).length + nodesUnder(trees.new).length;
  return all - pairs.toNew.size - pairs.toOld.size;
}
