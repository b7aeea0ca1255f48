// `--fail-on`: which severities give status 1. Knows no finding.
import type { Severity } from "#rules/finding.ts";
import type { Summary } from "#workspace/report.ts";
import { oneOf } from "./choices.ts";

const LEVELS = ["error", "warning", "information"] as const;
export type Level = (typeof LEVELS)[number];

/** For commander, of each command that takes it. */
export const FAIL_ON_OPTION = [
  "--fail-on <severity>",
  "error, warning or information: the least that gives status 1",
  oneOf("--fail-on", LEVELS),
  "error",
] as const;

/** The severities that give status 1. */
export function failing(level: Level): ReadonlySet<Severity> {
  return new Set(LEVELS.slice(0, LEVELS.indexOf(level) + 1));
}

export function isFailed({ errors, warnings, information }: Summary, level: Level): boolean {
  const counts = { error: errors, warning: warnings, information, hint: 0 };
  return [...failing(level)].some((one) => counts[one] > 0);
}
