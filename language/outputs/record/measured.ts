// Which lines ask for a value to be written down, and within which limits. Knows no format.
import type { ExpandedItem, ExpandedLine } from "#model/expanded.ts";
import { limitsOf, unitChoices } from "./amounts.ts";
import type { ReadingEntry } from "./plan.ts";

/** What is read at a line; null where nothing is. */
export function measuredIn(line: ExpandedItem | ExpandedLine): ReadingEntry | null {
  const asked = askedIn(line);
  if (asked === null) return null;
  const { expect } = asked;
  return {
    kind: "reading",
    reading: "reading" in asked ? (asked.reading?.id ?? null) : null,
    limits: expect === null ? null : limitsOf(expect),
    units: expect === null ? [] : unitChoices(expect.quantity),
    fails: line.kind === "check" && line.fails !== null,
  };
}

/** The check or measurement of a line whose value is to be written down: it has limits, is recorded, or has a name by which others use it. */
export function askedIn(line: ExpandedItem | ExpandedLine) {
  const asked =
    line.kind === "check" ? line.check : line.kind === "action" && line.action.verb === "measure" ? line.action : null;
  if (asked === null) return null;
  const isNamed = "reading" in asked && asked.reading !== null;
  return asked.expect === null && !asked.record && !isNamed ? null : asked;
}
