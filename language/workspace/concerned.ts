// What an output is made from, and whose findings it has to answer for: the procedure, those it performs, and all that
// the files behind them declare.
import * as ast from "#grammar/generated/ast.ts";
import { performsIn } from "#model/cycles.ts";
import type { PerformAction, Procedure } from "#model/procedure.ts";
import type { Finding } from "#rules/finding.ts";
import { resolveUse } from "#syntax/scope.ts";
import type { Loaded } from "./load.ts";

/** The file and all it uses, in the order of their paths. */
export function filesBehind(loaded: Loaded, path: string): readonly string[] {
  const found = new Set([path]);
  for (const one of found) {
    for (const item of loaded.parsed.get(one)?.file.items ?? []) {
      const used = ast.isUse(item) ? resolveUse(one, item.path) : null;
      if (used !== null && loaded.parsed.has(used)) found.add(used);
    }
  }
  return [...found].sort();
}

/** The tables that the arrangements of these files are made from, in the order of their paths. */
export function tablesBehind(loaded: Loaded, paths: readonly string[]): readonly string[] {
  const tables = paths.flatMap((path) =>
    (loaded.models.get(path)?.declarations ?? []).flatMap((declared) =>
      declared.kind === "arrangement" && declared.from !== null ? (resolveUse(path, declared.from.path) ?? []) : [],
    ),
  );
  return [...new Set(tables)].filter((path) => loaded.tableText(path) !== null).sort();
}

/** Tells whether a finding is one of this procedure, of one that it performs, or of no procedure at all. */
export function concerns(loaded: Loaded, procedure: Procedure): (finding: Finding) => boolean {
  const byId = new Map([...loaded.models.values()].flatMap((model) => model.procedures.map((one) => [one.id, one])));
  const performed = [...idsPerformed(procedure, (id) => byId.get(id))].flatMap((id) => byId.get(id) ?? []);
  const known = new Set([procedure, ...performed].map(({ name, extent }) => `${extent.path} ${name}`));
  return ({ procedure: name, span }) => name === undefined || known.has(`${span.path} ${name}`);
}

/** Of all procedures that are performed in it, at whatever depth, also of those that are not there. */
export function idsPerformed(procedure: Procedure, withId: (id: string) => Procedure | undefined): ReadonlySet<string> {
  const ids = new Set<string>();
  const waiting = [procedure];
  for (const one of waiting) {
    for (const { procedure: next } of performedBy(one)) {
      if (next === null || ids.has(next.id)) continue;
      ids.add(next.id);
      const target = withId(next.id);
      if (target !== undefined) waiting.push(target);
    }
  }
  return ids;
}

/** Looked for once in each: it is asked for with every output and every finding. */
function performedBy(procedure: Procedure): readonly PerformAction[] {
  const found = performing.get(procedure) ?? performsIn(procedure.items);
  performing.set(procedure, found);
  return found;
}

const performing = new WeakMap<Procedure, readonly PerformAction[]>();
