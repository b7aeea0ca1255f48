// Reports of parts of a check put together: the same as of a check of all at once. Knows neither which parts belong together nor who made
// them.
import type { CheckReport, Summary } from "./report.ts";

/** No file may be in two of them. */
export function mergedReport(reports: readonly Pick<CheckReport, "files" | "summary">[]): CheckReport {
  const files = reports.flatMap((report) => report.files);
  return {
    version: 1,
    files: files.sort(({ path: one }, { path: other }) => (one < other ? -1 : one > other ? 1 : 0)),
    summary: sumOf(reports.map(({ summary }) => summary)),
  };
}

function sumOf(summaries: readonly Summary[]): Summary {
  const sum = (name: keyof Summary): number => summaries.reduce((so, summary) => so + summary[name], 0);
  return {
    errors: sum("errors"),
    warnings: sum("warnings"),
    information: sum("information"),
    hints: sum("hints"),
    allowed: sum("allowed"),
    files: sum("files"),
    procedures: sum("procedures"),
    steps: sum("steps"),
  };
}
