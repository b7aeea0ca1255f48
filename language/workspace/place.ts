// Which procedure and step a finding stands in, told from its place.
import type { FileModel, Procedure, Step } from "#model/procedure.ts";
import { stepsOf } from "#model/written-steps.ts";
import type { Finding } from "#rules/finding.ts";

/** Adds procedure and step to each finding that stands in one. */
export function withSteps(findings: readonly Finding[], models: readonly FileModel[]): readonly Finding[] {
  const procedures = new Map(
    models.map((model) => [model.path, [...model.procedures].sort((a, b) => a.extent.start - b.extent.start)]),
  );
  const steps = new Map<Procedure, readonly Step[]>();
  return findings.map((finding) => {
    const procedure = holding(procedures.get(finding.span.path) ?? [], finding.span.start, (one) => one.extent);
    if (procedure === undefined) return finding;
    const own = steps.get(procedure) ?? [...stepsOf(procedure.items)].sort((a, b) => a.span.start - b.span.start);
    steps.set(procedure, own);
    const step = holding(own, finding.span.start, (one) => one.span);
    const placed = { ...finding, procedure: procedure.name };
    if (step === undefined) return placed;
    return { ...placed, step: step.name === null ? { number: step.number } : { name: step.name, number: step.number } };
  });
}

/** The last that begins at or before `at`, if it reaches so far. `list` is in the order of the text, none inside another. */
function holding<T extends Procedure | Step>(
  list: readonly T[],
  at: number,
  extent: (one: T) => { start: number; end: number },
): T | undefined {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const one = list[middle];
    if (one !== undefined && extent(one).start <= at) low = middle + 1;
    else high = middle;
  }
  const found = list[low - 1];
  return found !== undefined && at < extent(found).end ? found : undefined;
}
