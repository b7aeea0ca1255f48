// Times each stage of a check by itself, inside one process, on generated procedures.
import { createDecisions } from "#analysis/decision.ts";
import { followProcedure } from "#analysis/follow.ts";
import { factsOf } from "#analysis/report.ts";
import { createSummaries } from "#analysis/summaries.ts";
import { expandProcedure } from "#model/expand.ts";
import { lowerFiles } from "#model/lower.ts";
import { findingsOf } from "#rules/run.ts";
import { parseText } from "#syntax/parse.ts";
import { linkFiles } from "#syntax/scope.ts";

export const stages = ["parse", "lower", "expand", "follow", "look through", "say"] as const;
export type StageTimes = Readonly<Record<(typeof stages)[number], number>>;

/** Milliseconds for each stage of checking `text`, which must be free of findings. */
export function stageTimes(text: string): StageTimes {
  const times: number[] = [];
  const stage = <T>(work: () => T): T => {
    const start = performance.now();
    const made = work();
    times.push(performance.now() - start);
    return made;
  };
  const parsed = new Map([["bench.sprag", stage(() => parseText(text, "bench.sprag"))]]);
  const models = stage(() => {
    linkFiles(parsed);
    return lowerFiles(parsed, () => false);
  });
  const procedures = [...models.values()].flatMap((model) => model.procedures);
  const expanded = stage(() => procedures.map((procedure) => expandProcedure(procedure).expanded));
  const context = { decisions: createDecisions(), expandedOf: () => null, chosen: {}, summaries: createSummaries() };
  const runs = stage(() => expanded.map((one) => followProcedure(one, context)));
  const facts = stage(() => runs.flatMap(factsOf));
  const findings = stage(() => findingsOf(facts));
  if (findings.length > 0) throw new Error(`The generated procedure has findings: ${findings[0]?.message}`);
  return Object.fromEntries(stages.map((name, at) => [name, times[at] ?? Number.NaN])) as unknown as StageTimes;
}

/** All stages together. */
export function total(times: StageTimes): number {
  return stages.reduce((sum, stage) => sum + times[stage], 0);
}
