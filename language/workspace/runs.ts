// Procedures written out and followed, each once as long as nothing that it is made of changes. Knows no findings.
import { createDecisions } from "#analysis/decision.ts";
import { type FollowContext, followProcedure, optionVariable, type Run } from "#analysis/follow.ts";
import { createSummaries } from "#analysis/summaries.ts";
import { type Expansion, expandProcedure } from "#model/expand.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";
import type { Procedure } from "#model/procedure.ts";
import { filesBehind, idsPerformed } from "./concerned.ts";
import type { Loaded } from "./load.ts";

/** A procedure by its id, written out; null where there is none. */
export type ExpandedOf = (id: string) => ExpandedProcedure | null;

export function expandedIn(loaded: Loaded): ExpandedOf {
  let procedures: ReadonlyMap<string, Procedure> | null = null;
  return (id) => {
    procedures ??= proceduresIn(loaded);
    const procedure = procedures.get(id);
    return procedure === undefined ? null : expand(procedure).expanded;
  };
}

function proceduresIn({ models }: Loaded): ReadonlyMap<string, Procedure> {
  const procedures = new Map<string, Procedure>();
  // Of two with one name the first is performed.
  for (const procedure of [...models.values()].flatMap((model) => model.procedures))
    if (!procedures.has(procedure.id)) procedures.set(procedure.id, procedure);
  return procedures;
}

/** Worked out once for each record of a procedure. */
export function expand(procedure: Procedure): Expansion {
  const known = expansions.get(procedure) ?? expandProcedure(procedure);
  expansions.set(procedure, known);
  return known;
}

const expansions = new WeakMap<Procedure, Expansion>();

/**
 * What the procedures of these files are followed with. Options have the order of files and lines, so that several are told in the same
 * one whatever was followed before.
 * @param chosen option name to choice, made before the work starts
 */
export function followContext(
  loaded: Loaded,
  paths: readonly string[],
  expandedOf: ExpandedOf,
  chosen: Readonly<Record<string, string>>,
): FollowContext {
  const decisions = createDecisions();
  const behind = new Set(paths.flatMap((path) => filesBehind(loaded, path)));
  for (const path of [...behind].sort())
    for (const declared of loaded.models.get(path)?.declarations ?? [])
      if (declared.kind === "option") optionVariable(decisions, declared);
  return { decisions, expandedOf, chosen, summaries: createSummaries() };
}

/** A run is large, so that few are kept, of a procedure the last: an editor asks for the state in what it has just checked. */
const MOST_RUNS = 8;
const recent = new Map<string, { readonly madeOf: readonly (ExpandedProcedure | null)[]; readonly run: Run }>();

/** Null where it is too large to be followed. */
export function followed(procedure: Procedure, context: FollowContext): Run | null {
  const { expanded } = expand(procedure);
  if (expanded.tooLarge !== null) return null;
  if (Object.keys(context.chosen).length > 0) return followProcedure(expanded, context);
  const { id } = procedure;
  const known = recent.get(id);
  const performed = idsPerformed(procedure, (one) => context.expandedOf(one)?.procedure);
  const madeOf = [expanded, ...[...performed].map(context.expandedOf)];
  // What it was before the change is let go before the new one is made.
  recent.delete(id);
  const isSame = known?.madeOf.length === madeOf.length && madeOf.every((one, at) => known.madeOf[at] === one);
  const run = isSame ? known.run : followProcedure(expanded, context);
  recent.set(id, { madeOf, run });
  for (const oldest of recent.keys()) {
    if (recent.size <= MOST_RUNS) break;
    recent.delete(oldest);
  }
  return run;
}
