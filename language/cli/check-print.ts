// What `sprag check` tells of a check: its report in one of the formats, what could not be used, and the exit status.
import { type CheckReport, reportText } from "#workspace/report.ts";
import { reportJunit } from "#workspace/report-junit.ts";
import { reportSarif } from "#workspace/report-sarif.ts";
import { SHARD_FORMATS, type Shard, shardText } from "#workspace/report-shard.ts";
import { printFindings, printTroubles } from "./call.ts";
import { type Called, shardOf } from "./check-call.ts";
import type { Checked } from "./check-files.ts";
import { failing, isFailed, type Level } from "./fail-on.ts";
import { summaryText } from "./findings-text.ts";
import type { ShardWanted } from "./shard.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

export const FORMATS = ["text", "json", "sarif", "junit"] as const;
export type Format = (typeof FORMATS)[number];

interface Told {
  readonly failOn: Level;
  readonly format: Format;
  readonly shard?: ShardWanted;
}

/** Prints it, with what could not be used. */
export function tellOf(
  { job, troubles: ofCall }: Called,
  { report, texts, troubles: ofFiles }: Checked,
  { failOn, format, shard: wanted }: Told,
  around: Surroundings,
): Status {
  const troubles = [...ofCall, ...ofFiles];
  printTroubles(troubles, around);
  const shard = wanted === undefined ? null : shardOf(wanted, job, troubles);
  // A shard may be empty; its report is wanted all the same.
  if (report.files.length > 0 || shard !== null) printReport(report, texts, { failOn, format, shard }, around);
  if (troubles.length > 0) return STATUS.unusable;
  return isFailed(report.summary, failOn) ? STATUS.findings : STATUS.fine;
}

/** @param texts of the files with findings, by path */
function printReport(
  report: CheckReport,
  texts: ReadonlyMap<string, string>,
  { failOn, format, shard }: { readonly failOn: Level; readonly format: Format; readonly shard: Shard | null },
  around: Surroundings,
): void {
  const { out } = around;
  const forMerge = SHARD_FORMATS.find((one) => one === format);
  if (shard !== null && forMerge !== undefined) out.write(shardText(report, shard, forMerge));
  else if (format === "json") out.write(reportText(report));
  else if (format === "sarif") out.write(reportSarif(report));
  else if (format === "junit") out.write(reportJunit(report, failing(failOn)));
  else {
    printFindings(report.files, texts, out, around);
    const which = shard === null ? "" : `Shard ${shard.number} of ${shard.of}: `;
    out.write(`${which}${summaryText(report.summary)}\n`);
  }
}
