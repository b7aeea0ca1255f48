// Hazards after a signal word: first what is raised behind the place and nothing warns of yet. Knows no other names.
import { CompletionItemKind } from "vscode-languageserver";
import { HAZARDS } from "#analysis/hazards/catalogue.ts";
import { wantedAt } from "#analysis/hazards/hazards.ts";
import type { Item, Procedure } from "#model/procedure.ts";
import { blocksOf } from "#model/written-steps.ts";
import type { Span } from "#syntax/span.ts";
import { type Candidate, GROUP } from "./candidate.ts";
import type { Around } from "./names.ts";

export function hazardCandidates(around: Around): readonly Candidate[] {
  const { reach, place } = around;
  const isCaution = place.tokens.some(({ type }) => type === "caution");
  const isStatement = isCaution || place.tokens.some(({ type }) => type === "danger" || type === "warning");
  const wanted = isStatement ? wantedHere(around) : [];
  const kind = CompletionItemKind.EnumMember;
  const built = [...HAZARDS].map(([label, { harms }], rank) => ({
    label,
    kind,
    group: (harms === "equipment") === isCaution ? GROUP.best : GROUP.fitting,
    rank: rank + wanted.length,
  }));
  const own = reach.things
    .filter(({ kind: sort }) => sort === "hazard")
    .map(({ name, title }) => ({ label: name, kind, detail: title, group: GROUP.best, rank: wanted.length }));
  return [...built, ...own].map((candidate) => {
    const rank = wanted.indexOf(candidate.label);
    return rank < 0 ? candidate : { ...candidate, detail: RAISED, group: GROUP.best, rank };
  });
}

const RAISED = "raised here, and nothing warns of it";

function wantedHere({ reach, place, state }: Around): readonly string[] {
  const run = state()?.run;
  if (run === undefined || reach.procedure === null) return [];
  return wantedAt(run, blockAt(reach.procedure, place.start), place.start);
}

/** The step or task around the place, else the procedure. */
function blockAt({ extent, items }: Procedure, offset: number): Span {
  const inside = (list: readonly Item[]): Span | null => {
    for (const item of list) {
      if (item.kind === "step" || item.kind === "task") {
        if (item.span.start > offset || offset > item.span.end) continue;
        return (item.kind === "task" ? inside(item.items) : null) ?? item.span;
      }
      for (const block of blocksOf(item)) {
        const found = inside(block);
        if (found !== null) return found;
      }
    }
    return null;
  };
  return inside(items) ?? extent;
}
