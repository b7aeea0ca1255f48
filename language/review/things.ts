// What is declared, on both sides: compared once, and told to each procedure that it reaches. Knows no findings.
import type { Declaration, Term } from "#model/declarations.ts";
import { type Compared, compareTrees } from "./compare.ts";
import { describe, type Entry, MOST_STEPS, stepName } from "./describe.ts";
import { matchTrees } from "./match.ts";
import { declarationNode } from "./of-declaration.ts";
import type { Told } from "./procedures.ts";
import { type Reach, reachOf } from "./reach.ts";
import type { Reading } from "./reading.ts";
import { createNode, type Node } from "./record.ts";
import type { ReviewSide } from "./side.ts";
import type { Words } from "./words.ts";

export interface Things {
  readonly compared: Compared;
  readonly of: ReadonlyMap<Node, Declaration | Term>;
  /** On the new side: the name that it had before. */
  readonly nameOf: (thing: Declaration) => string;
  readonly oldName: (name: string) => string;
}

/** Declarations are matched by their names first; then they are read again with the names that they had. */
export function compareThings(
  old: ReviewSide,
  now: ReviewSide,
  reading: { readonly old: Reading; readonly new: Reading },
): Things {
  const before = treeOfThings(old, reading.old);
  const first = treeOfThings(now, reading.new);
  const names = new Map<Declaration | Term, string>();
  const found = matchTrees(before.root, first.root);
  for (const [one, other] of found.toNew) {
    const [was, is] = [before.of.get(one), first.of.get(other)];
    if (was !== undefined && is !== undefined && "name" in was) names.set(is, was.name);
  }
  const nameOf = (thing: Declaration): string => names.get(thing) ?? thing.name;
  const isRenamed = [...names].some(([thing, name]) => "name" in thing && thing.name !== name);
  const after = isRenamed ? treeOfThings(now, { ...reading.new, nameOf }) : first;
  const pairs = isRenamed ? matchTrees(before.root, after.root) : found;
  const renamed = new Map(
    [...names].flatMap(([thing, name]) => ("name" in thing ? [[thing.name, name] as const] : [])),
  );
  return {
    compared: compareTrees(before.root, after.root, pairs, "shared"),
    of: new Map([...before.of, ...after.of]),
    nameOf,
    oldName: (name) => renamed.get(name) ?? name,
  };
}

function treeOfThings(side: ReviewSide, reading: Reading) {
  const all = [...side.files, ...side.used].flatMap(({ declarations, terms }) => [...declarations, ...terms]);
  const of = new Map(all.map((thing) => [declarationNode(thing, reading), thing] as const));
  const span = { path: "", start: 0, end: 0 };
  // Their order means nothing.
  const root = createNode({ sort: "any order", says: [], holds: [...of.keys()], span, title: () => "" });
  return { root, of };
}

/* ---- whom they reach ---- */

type Reachers = (
  thing: Declaration | Term,
  side: "old" | "new",
) => readonly { readonly told: Told; readonly reach: Reach }[];

/** The procedures that a thing of a side reaches. */
export function reachersOf(told: readonly Told[], old: ReviewSide, now: ReviewSide): Reachers {
  const known: Partial<Record<"old" | "new", ReturnType<typeof reachesOn>>> = {};
  // Where nothing shared changed, nobody asks.
  const reaches = (side: "old" | "new") => {
    const made = known[side] ?? reachesOn(side, told, side === "old" ? old : now);
    known[side] = made;
    return made;
  };
  const isPassed = ({ pair }: Told, threshold: string): boolean =>
    (pair.old !== null && old.passes(pair.old, threshold)) || (pair.new !== null && now.passes(pair.new, threshold));
  return (thing, side) =>
    reaches(side).filter(({ told: one, reach }) => {
      if (thing.kind === "term") return one.pair[side]?.terms.includes(thing) ?? false;
      return reach.all.has(thing) && (thing.kind !== "threshold" || isPassed(one, thing.name));
    });
}

function reachesOn(side: "old" | "new", told: readonly Told[], { files, used }: ReviewSide) {
  const all = new Map([...files, ...used].flatMap((file) => file.procedures.map((one) => [one.id, one] as const)));
  return told.flatMap((one) => {
    const procedure = one.pair[side];
    return procedure === null ? [] : [{ told: one, reach: reachOf(procedure, (id) => all.get(id)) }];
  });
}

/** A change of a shared thing is told to each procedure that it reaches; the edits are carried out once. */
export function thingEntries({ compared, of }: Things, reaching: Reachers, words: Words): readonly Entry[] {
  return compared.changes.flatMap((bare) =>
    describe(bare, compared, "", words).flatMap((entry): readonly Entry[] => {
      const side = entry.node.new === null ? "old" : "new";
      const thing = of.get(entry.node[side] as Node);
      const reached = thing === undefined ? [] : reaching(thing, side);
      if (thing === undefined || reached.length === 0) return [entry];
      return reached.map(({ told, reach }, at) => {
        const steps = thing.kind === "term" ? [] : reach.stepsWith(thing);
        const nodes = steps.flatMap(({ number }) => told.steps[side].get(number) ?? []);
        const names = nodes.flatMap((node) => stepName(node) ?? []);
        const shown = words.usedIn(names.slice(0, MOST_STEPS), Math.max(0, names.length - MOST_STEPS));
        const usedIn = names.length === 0 || entry.change.group === "words" ? "" : ` ${shown}.`;
        const { edits, message } = entry.change;
        return {
          ...entry,
          change: { ...entry.change, procedure: told.name, message: message + usedIn, edits: at === 0 ? edits : [] },
          steps: nodes.map((node) => bothSides(node, side, told)),
        };
      });
    }),
  );
}

function bothSides(node: Node, side: "old" | "new", { compared }: Told): Entry["steps"][number] {
  const partner = (side === "old" ? compared?.pairs.toNew : compared?.pairs.toOld)?.get(node) ?? null;
  return side === "old" ? { old: node, new: partner } : { old: partner, new: node };
}
