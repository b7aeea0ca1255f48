// `sprag check`: the findings in files and folders.
import type { Command } from "commander";
import { type CheckReport, reportText } from "#workspace/report.ts";
import { reportJunit } from "#workspace/report-junit.ts";
import { reportSarif } from "#workspace/report-sarif.ts";
import { TRACE_FORMATS, traceMatrix } from "#workspace/trace.ts";
import { type Perform, printFindings, printTroubles } from "./call.ts";
import { addChoice, type Choices, calendarDay, oneOf, requireKnown } from "./choices.ts";
import { CRIB_OPTION, cribFile, requireCrib } from "./crib.ts";
import { findFiles, rootFolder } from "./find-files.ts";
import { summaryText } from "./findings-text.ts";
import { openFiles } from "./open-files.ts";
import { progressOn } from "./progress.ts";
import { dateOf, STATUS, type Status, type Surroundings } from "./surroundings.ts";

const FORMATS = ["text", "json", "sarif", "junit"] as const;
const REPORTS = ["findings", "trace"] as const;
const LEVELS = ["error", "warning", "information"] as const;
type Level = (typeof LEVELS)[number];

interface Options {
  readonly format?: string;
  readonly report: (typeof REPORTS)[number];
  readonly failOn: Level;
  readonly set?: Choices;
  readonly root?: string;
  readonly on?: string;
  readonly crib?: string;
}

export function defineCheck(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<path...>", "files, and folders with .sprag files in them")
    .option(
      "--format <format>",
      "text for people; json, sarif or junit for programs (default: text); of a trace: md, csv (default: md)",
    )
    .option(
      "--report <report>",
      "findings; trace: every value and step with the source it cites",
      oneOf("--report", REPORTS),
      "findings",
    )
    .option(
      "--fail-on <severity>",
      "error, warning or information: the least that gives status 1",
      oneOf("--fail-on", LEVELS),
      "error",
    )
    .option("--set <Option=Value>", "a choice made before the work starts; may be given again", addChoice)
    .option(
      "--root <folder>",
      "the workspace; paths in findings begin there (default: this folder, or the one that holds the paths)",
    )
    .option(...CRIB_OPTION)
    .option("--on <date>", "the day of the work, as 2026-05-04 (default: today)", calendarDay)
    .addHelpText("after", EXAMPLES)
    .action((paths: readonly string[], options: Options) => {
      perform(() => check(paths, options, around));
    });
}

const EXAMPLES = `
A trace says for every value and every step of the files what source it cites, whichever choices are made.
A folder means every .sprag file in it, but for hidden folders, node_modules and what .gitignore leaves out.

Examples:
  sprag check .
  sprag check pump.sprag shop --fail-on warning
  sprag check overhaul.sprag --set Extent=Full --format json
  sprag check shop --format sarif > findings.sarif
  sprag check overhaul.sprag shop --report trace --format csv
  sprag check overhaul.sprag --crib shop/crib.sprag --on 2026-05-04`;

function check(given: readonly string[], options: Options, around: Surroundings): Status {
  const { crib: cribGiven, set, report: wanted } = options;
  const formats = wanted === "trace" ? TRACE_FORMATS : FORMATS;
  const format = oneOf("--format", formats)(options.format ?? formats[0] ?? "");
  const root = rootFolder(options.root, around.cwd, cribGiven === undefined ? given : [...given, cribGiven]);
  const progress = progressOn(around.err, around.now);
  const found = findFiles(given, root, around.cwd);
  const crib = cribGiven === undefined ? null : cribFile(cribGiven, root, around.cwd);
  const all = crib === null ? found.paths : [...new Set([...found.paths, crib])];
  const opened = openFiles(all, root, dateOf(options.on, around), progress);
  // The crib is looked at as a file of its own only where it was asked for.
  const paths = opened.paths.filter((path) => found.paths.includes(path));
  try {
    if (cribGiven !== undefined && crib !== null) requireCrib(cribGiven, crib, opened.workspace);
    requireKnown(set, opened.workspace, paths);
    const settings = { ...(set === undefined ? {} : { set }), ...(crib === null ? {} : { crib }) };
    const report = wanted === "trace" ? null : opened.workspace.check(paths, settings);
    progress.wipe();
    const troubles = [...found.troubles, ...opened.troubles];
    printTroubles(troubles, around);
    if (report === null) around.out.write(traceMatrix(opened.workspace, paths, format) ?? "");
    else if (paths.length > 0) print(report, opened.workspace.snapshot.texts, { ...options, format }, around);
    if (troubles.length > 0) return STATUS.unusable;
    return report !== null && isAtLeast(report, options.failOn) ? STATUS.findings : STATUS.fine;
  } finally {
    progress.wipe();
  }
}

function print(
  report: CheckReport,
  texts: ReadonlyMap<string, string>,
  { failOn, format }: Pick<Options, "failOn" | "format">,
  around: Surroundings,
): void {
  if (format === "json") around.out.write(reportText(report));
  else if (format === "sarif") around.out.write(reportSarif(report));
  else if (format === "junit") around.out.write(reportJunit(report, new Set(atLeast(failOn))));
  else {
    printFindings(report.files, texts, around.out, around);
    around.out.write(`${summaryText(report.summary)}\n`);
  }
}

/** The severities that give status 1. */
function atLeast(level: Level): readonly Level[] {
  return LEVELS.slice(0, LEVELS.indexOf(level) + 1);
}

function isAtLeast({ summary }: CheckReport, level: Level): boolean {
  const counts = { error: summary.errors, warning: summary.warnings, information: summary.information };
  return atLeast(level).some((one) => counts[one] > 0);
}
