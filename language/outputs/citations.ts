// Source documents as they are cited at the bench. Knows no format.
import { ownValues, stepValues } from "#analysis/trace/values.ts";
import type { Citation, CitedText, Value } from "#model/declarations.ts";
import type { Line, Step } from "#model/procedure.ts";
import { linesOf } from "#model/written-steps.ts";

/** `P-220 maintenance manual, 6.4.2`, once each. */
export function citationTexts(citations: readonly Citation[]): readonly string[] {
  const texts = citations.flatMap(({ source, section }) =>
    source === null ? [] : [section === "" ? source.title : `${source.title}, ${section}`],
  );
  return [...new Set(texts)];
}

/** What a step cites, then what its values do: themselves, what they are made of, and the fastener that a torque is for. */
export function citationsIn(step: Step): readonly Citation[] {
  const lines = [...linesOf(step.lines)];
  const values = [...stepValues(step), ...lines.flatMap((line) => ownValues(line))];
  const own = [...step.cites, ...values.flatMap(({ value }) => citedBy(value))];
  // A torque that is only said again: where it is said first.
  return own.length > 0 ? own : lines.flatMap(fastenerCitations);
}

function citedBy(value: Value | CitedText): readonly Citation[] {
  if (value.per !== null) return [value.per];
  const named = "named" in value ? (value.named ?? []) : [];
  return named.flatMap(({ per, value: made }) => (per !== null ? [per] : made === null ? [] : citedBy(made)));
}

function fastenerCitations(line: Line): readonly Citation[] {
  if (line.kind !== "action" || line.verb !== "tighten" || line.stages.length === 0) return [];
  return line.objects.flatMap(({ thing }) =>
    thing?.kind === "part"
      ? thing.torques.flatMap(({ value }) => [value.per ?? thing.per].filter((one) => one !== null))
      : [],
  );
}
