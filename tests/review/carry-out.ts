// Carries the edits of a report out on plain records, knowing nothing of how they were found; and a record in the one form in
// which two that mean the same are equal.
import type { Change } from "#review/change.ts";
import type { Edit, Plain } from "#review/edit.ts";

interface Loose {
  readonly id: string;
  readonly sort: string;
  readonly says: Map<string, string>;
  holds: Loose[];
}

/** The old records with all edits carried out: what comes and moves, in the order of the new side, then what goes, then what is said. */
export function carriedOut(old: readonly Plain[], changes: readonly Change[]): readonly Plain[] {
  const roots = old.map(loosened);
  const byId = new Map<string, Loose>();
  const holders = new Map<string, Loose>();
  const enter = (node: Loose): void => {
    byId.set(node.id, node);
    for (const inner of node.holds) {
      holders.set(inner.id, node);
      enter(inner);
    }
  };
  roots.forEach(enter);
  const takeOut = (id: string): void => {
    const holder = holders.get(id);
    if (holder === undefined) return;
    holder.holds = holder.holds.filter((one) => one.id !== id);
    holders.delete(id);
  };
  const edits = changes.flatMap((change) => change.edits);
  const places = edits.filter((edit) => edit.do === "put" || edit.do === "move").sort((a, b) => a.turn - b.turn);
  // What moves is taken out first, so that nothing goes behind a thing that will not stay there.
  for (const edit of places) if (edit.do === "move") takeOut(edit.id);
  for (const edit of places) {
    const node = edit.do === "put" ? loosened({ ...edit.node, holds: [] }) : found(byId, edit.id, edit);
    const into = found(byId, edit.into, edit);
    const at = edit.behind === null ? 0 : into.holds.findIndex((one) => one.id === edit.behind) + 1;
    into.holds.splice(at, 0, node);
    byId.set(node.id, node);
    holders.set(node.id, into);
  }
  for (const edit of edits) if (edit.do === "drop") takeOut(edit.id);
  for (const edit of edits) {
    if (edit.do !== "set") continue;
    const { says } = found(byId, edit.id, edit);
    if (edit.to === null) says.delete(edit.key);
    else says.set(edit.key, edit.to);
  }
  return roots.map(plain);
}

function found(byId: ReadonlyMap<string, Loose>, id: string, edit: Edit): Loose {
  const node = byId.get(id);
  if (node === undefined) throw new Error(`nothing is called ${id}, for ${JSON.stringify(edit)}`);
  return node;
}

function loosened({ id, sort, says, holds }: Plain): Loose {
  return { id, sort, says: new Map(Object.entries(says)), holds: holds.map(loosened) };
}

function plain({ id, sort, says, holds }: Loose): Plain {
  return { id, sort, says: Object.fromEntries([...says].sort(byKey)), holds: holds.map(plain) };
}

/**
 * With properties by name, what may come in any order by its content, and several statements or notes at one place likewise.
 */
export function canonical(records: readonly Plain[]): readonly Plain[] {
  return records.map((record) => {
    const says = Object.fromEntries(Object.entries(record.says).sort(byKey));
    const holds = canonical(record.holds);
    if (record.sort === "any order") return { ...record, says, holds: [...holds].sort(byText) };
    const runs: Plain[][] = [];
    for (const one of holds) {
      const run = runs.at(-1);
      if (isHead(one) && run?.every(isHead)) run.push(one);
      else runs.push([one]);
    }
    return { ...record, says, holds: runs.flatMap((run) => [...run].sort(byText)) };
  });
}

function isHead({ sort }: Plain): boolean {
  return sort === "statement" || sort === "note";
}

function byKey([a]: readonly [string, string], [b]: readonly [string, string]): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function byText(a: Plain, b: Plain): number {
  const [x, y] = [JSON.stringify(a), JSON.stringify(b)];
  return x < y ? -1 : x > y ? 1 : 0;
}
