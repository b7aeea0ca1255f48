// Checks files: all of a call, or a part of them in another thread or on another machine, with the same findings. Takes and gives plain data.
// Knows no option, no output and no thread.
import type { CheckSettings } from "#workspace/checking.ts";
import { type CheckReport, summaryOf } from "#workspace/report.ts";
import { mergedReport } from "#workspace/report-merge.ts";
import type { Workspace } from "#workspace/workspace.ts";
import { areKnown, type Choices, requireKnown } from "./choices.ts";
import { requireCrib } from "./crib.ts";
import { diskSource, type Opened, openFiles, openFrom, type TextSource } from "./open-files.ts";
import { type Progress, SILENT } from "./progress.ts";
import type { Trouble } from "./refusal.ts";
import { usersOf } from "./users.ts";

/** All paths are from the root, but `given`. */
export interface CheckJob {
  /** Absolute. */
  readonly root: string;
  /** The day of the work. */
  readonly day: string;
  readonly set?: Choices;
  /** The crib, and how it was written in the call. */
  readonly crib?: { readonly path: string; readonly given: string };
  /** The files to be checked. */
  readonly paths: readonly string[];
  /** All files of the call, these among them. */
  readonly all: readonly string[];
}

export interface Checked {
  readonly report: CheckReport;
  /** Of the files to be checked and of files these use. */
  readonly troubles: readonly Trouble[];
  /** Of the files with findings, by path. */
  readonly texts: ReadonlyMap<string, string>;
}

/** For a check that is made again and again. */
export interface Again {
  readonly source: TextSource;
  readonly before: Workspace | null;
  /** Is handed the workspace, to be the next one's `before`. */
  readonly keep: (workspace: Workspace) => void;
}

export function checkFiles(job: CheckJob, progress: Progress, again?: Again): Checked {
  const { paths, troubles, workspace } = openJob(job, progress, again);
  const { crib, set } = job;
  const settings = { ...(set === undefined ? {} : { set }), ...(crib === undefined ? {} : { crib: crib.path }) };
  const alone = again === undefined ? workspace.check(paths, settings) : oneByOne(workspace, paths, settings);
  const report = job.paths.length === job.all.length ? alone : asUsed(alone, job, workspace, settings);
  const told = report.files.filter(({ findings }) => findings.length > 0);
  return { report, troubles, texts: new Map(told.map(({ path }) => [path, workspace.snapshot.texts.get(path) ?? ""])) };
}

/** Where one changes, the others need not be followed again in a later workspace. */
function oneByOne(workspace: Workspace, paths: readonly string[], settings: CheckSettings): CheckReport {
  return mergedReport(paths.map((path) => workspace.check([path], settings)));
}

/**
 * The files with all that they use, and the crib.
 * @returns as paths those to be checked that could be read
 * @throws Refusal where the crib cannot be relied on, or a choice is none of the files of the call
 */
export function openJob(job: CheckJob, progress: Progress, again?: Again): Opened {
  const { crib, day, root } = job;
  const source = again?.source ?? diskSource(root);
  const opened = openFrom(source, withCrib(job.paths, job), root, day, progress, again?.before);
  again?.keep(opened.workspace);
  if (crib !== undefined) requireCrib(crib.given, crib.path, opened.workspace);
  // The crib is looked at as a file of its own only where it was asked for.
  const asked = new Set(job.paths);
  const paths = opened.paths.filter((path) => asked.has(path));
  requireChoices(job, opened.workspace, paths, progress);
  return { ...opened, paths };
}

function withCrib(paths: readonly string[], { crib }: CheckJob): readonly string[] {
  return crib === undefined ? paths : [...new Set([...paths, crib.path])];
}

function requireChoices(job: CheckJob, workspace: Workspace, paths: readonly string[], progress: Progress): void {
  const { all, day, root, set } = job;
  if (set === undefined) return;
  const own = workspace.options(paths);
  const isEnough = job.paths.length === all.length || areKnown(set, own);
  // What no file of this part asks about, one of another may.
  const whole = isEnough ? null : openFiles(all, root, day, progress);
  requireKnown(set, whole === null ? own : whole.workspace.options(whole.paths));
}

/**
 * The report of a part as it is among all files of the call. One thing in it hangs on files that it does not use: what a file declares and
 * does not use is left alone where another file uses that file. So files of which that is told are checked again beside those that use them.
 */
function asUsed(report: CheckReport, job: CheckJob, known: Workspace, settings: CheckSettings): CheckReport {
  const doubtful = report.files.filter(({ findings }) => findings.some(({ code }) => code === "names.unused"));
  const users = usersOf(new Set(doubtful.map(({ path }) => path)), job, known);
  if (users.size === 0) return report;
  const opened = openFiles(withCrib([...users.keys(), ...users.values()], job), job.root, job.day, SILENT);
  const again = opened.workspace.check([...users.keys()], settings);
  const better = new Map(again.files.map((file) => [file.path, file]));
  const files = report.files.map((file) => better.get(file.path) ?? file);
  return { ...report, files, summary: summaryOf(files, report.summary) };
}
