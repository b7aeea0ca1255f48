// Relations between parts as declared, read both ways: what a part names, and what names it. Knows no state.
import type { Part, PartInstance, Relation } from "#model/declarations.ts";
import { hasInstance, partInstances } from "#model/instances.ts";
import type { Index } from "./world.ts";

/** Relations by which one part stands in the way of work on another, or goes along with it. */
export type RelationName = "needs" | "encloses" | "retains" | "secures" | "locks";
export const RELATIONS: readonly RelationName[] = ["needs", "encloses", "retains", "secures", "locks"];

export interface Related extends PartInstance {
  readonly relation: Relation;
}

export interface Relations {
  /** Instances that stand in a relation to this one: `who encloses Bearing`. */
  readonly related: (relation: RelationName, part: Part, index: Index) => readonly Related[];
  /** Instances that this one says it `needs`, `secures` …. */
  readonly targets: (relation: RelationName | "backsUp", part: Part, index: Index) => readonly Related[];
  /** Whether two parts may share a position. */
  readonly stack: (a: Part, b: Part) => boolean;
}

export function relationsAmong(parts: readonly Part[]): Relations {
  const sources = relationSources(parts);
  const stacks = stackGroups(parts);
  return {
    related: (relation, part, index) => {
      const owners = sources.get(relation)?.get(part.id);
      if (owners === undefined) return NONE;
      const found: Related[] = [];
      for (const { part: owner, relation: written } of owners) {
        for (const from of written.which === "same" ? sameIn(owner, index) : partInstances(owner))
          if (reaches(written, from.index, index)) found.push({ part: owner, index: from.index, relation: written });
      }
      return found;
    },
    targets: (relation, part, index) => {
      const targets = part[relation];
      if (targets.length === 0) return NONE;
      const found: Related[] = [];
      for (const written of targets)
        for (const to of written.which === "same" ? sameIn(written.part, index) : partInstances(written.part))
          if (reaches(written, index, to.index)) found.push({ part: to.part, index: to.index, relation: written });
      return found;
    },
    stack: (a, b) => a === b || (stacks.get(a.id) ?? a.id) === (stacks.get(b.id) ?? b.id),
  };
}

/** Most parts stand in few relations. */
const NONE: readonly Related[] = [];

/** Whether the relation, said of the owner's instance `from`, means the target's instance `to`. */
function reaches(relation: Relation, from: Index, to: Index): boolean {
  if (relation.which === "all") return true;
  if (relation.which === "same") return from === to;
  return to !== null && relation.which.includes(to);
}

/** The like-numbered partner, without looking through all. */
function sameIn(part: Part, index: Index): readonly PartInstance[] {
  return hasInstance(part, index) ? [{ part, index }] : [];
}

function relationSources(parts: readonly Part[]): Map<RelationName, Map<string, { part: Part; relation: Relation }[]>> {
  const sources = new Map<RelationName, Map<string, { part: Part; relation: Relation }[]>>();
  for (const name of RELATIONS) {
    const byTarget = new Map<string, { part: Part; relation: Relation }[]>();
    sources.set(name, byTarget);
    for (const part of parts)
      for (const relation of part[name]) {
        const list = byTarget.get(relation.part.id) ?? [];
        byTarget.set(relation.part.id, list);
        list.push({ part, relation });
      }
  }
  return sources;
}

/** Parts that name like-numbered partners stack in one position: each gets the name of its group. */
function stackGroups(parts: readonly Part[]): Map<string, string> {
  const group = new Map<string, string>();
  const find = (id: string): string => {
    const above = group.get(id) ?? id;
    return above === id ? id : find(above);
  };
  for (const part of parts)
    for (const name of RELATIONS)
      for (const relation of part[name])
        if (relation.which === "same") group.set(find(part.id), find(relation.part.id));
  return new Map(parts.map((part) => [part.id, find(part.id)]));
}
