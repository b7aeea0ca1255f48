// From a procedure that has been read to the facts that the follower finds in it, and how much work that was. Knows no text.
import { createDecisions, type Decisions } from "#analysis/decision.ts";
import type { AnalysisFact } from "#analysis/fact.ts";
import { type FollowContext, followProcedure, type Run } from "#analysis/follow.ts";
import { factsOf } from "#analysis/report.ts";
import { createSummaries } from "#analysis/summaries.ts";
import type { ExpandedProcedure } from "#model/expanded.ts";

export interface PaperFact {
  /** `order.not-installed` and so on: the kind with its family. */
  readonly code: string;
  /** From 0. */
  readonly line: number;
  readonly fact: AnalysisFact;
}

/** All procedures of one file, by their ids. */
export interface OnPaper {
  readonly expanded: ReadonlyMap<string, ExpandedProcedure>;
  /** The line of a place in the text, from 0. */
  readonly lineOf: (offset: number) => number;
}

/** The facts of all procedures, and how often sets of assignments were combined for them. @param chosen choices fixed from outside */
export function followed(
  { expanded, lineOf }: OnPaper,
  chosen: Readonly<Record<string, string>> = {},
): { facts: readonly PaperFact[]; runs: readonly Run[]; asked: number } {
  const { decisions, asked } = countedDecisions();
  const context: FollowContext = {
    decisions,
    expandedOf: (id) => expanded.get(id) ?? null,
    chosen,
    summaries: createSummaries(),
  };
  const runs = [...expanded.values()].map((one) => followProcedure(one, context));
  const facts = runs
    .flatMap((run) => factsOf(run))
    .map((fact) => ({ code: codeOf(fact), line: lineOf(fact.span.start), fact }));
  return { facts, runs, asked: asked() };
}

function countedDecisions(): { decisions: Decisions; asked: () => number } {
  const plain = createDecisions();
  let count = 0;
  const counted =
    (combine: Decisions["and"]): Decisions["and"] =>
    (a, b) => {
      count++;
      return combine(a, b);
    };
  return { decisions: { ...plain, and: counted(plain.and), or: counted(plain.or) }, asked: () => count };
}

function codeOf(fact: AnalysisFact): string {
  const family = ["unreachable", "impossible condition", "too large", "endless", "bad jump", "empty"].includes(
    fact.kind,
  )
    ? "flow"
    : "order";
  return `${family}.${fact.kind.replaceAll(" ", "-")}`;
}
