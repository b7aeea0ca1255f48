// The review of two workspaces: gathers what it needs of each side, and hands the changes on as plain data. Knows no history and
// no file system.

import { thresholdsPassed } from "#analysis/hazards/hazards.ts";
import { DEFAULTS } from "#analysis/hazards/thresholds.ts";
import { marginsIn } from "#analysis/limits/limits.ts";
import { createTiming, longestBetween } from "#analysis/longest.ts";
import type { ExpandedAction } from "#model/expanded.ts";
import type { Action, FileModel, Procedure } from "#model/procedure.ts";
import { consumableRows, partRows, toolRows } from "#outputs/lists.ts";
import { acrossPasses } from "#outputs/passes.ts";
import { actionSentence } from "#outputs/sentences.ts";
import { en } from "#outputs/words/en.ts";
import { workOf } from "#outputs/work.ts";
import { writerOf } from "#outputs/writer.ts";
import { show } from "#quantity/display.ts";
import { cmp, toNumber, ZERO } from "#quantity/rational.ts";
import { type Change, GROUPS, type Group, type Side } from "#review/change.ts";
import { reviewHtml } from "#review/forms/html.ts";
import { reviewMarkdown } from "#review/forms/md.ts";
import type { Report, ReportedSide } from "#review/forms/report.ts";
import { reviewSarif } from "#review/forms/sarif.ts";
import { reviewText } from "#review/forms/text.ts";
import { review } from "#review/review.ts";
import type { Kit, Margin, ReviewSide } from "#review/side.ts";
import { timeText } from "#rules/wording.ts";
import { filesBehind } from "./concerned.ts";
import { type RangeOf, rangesIn } from "./ranges.ts";
import { type ReportedFinding, reportedFinding } from "./report.ts";
import type { Workspace } from "./workspace.ts";

/** The JSON of `sprag review --format json`. */
export type ReviewReport = Report<ReportedFinding>;

/** One side: a workspace, and which of its files are compared. */
export interface SideOfReview {
  readonly workspace: Workspace;
  readonly paths: readonly string[];
}

/** What became of the old side; total, the same for the same two snapshots. */
export function reviewOf(old: SideOfReview, now: SideOfReview): ReviewReport {
  const { changes } = review(sideOf(old), sideOf(now));
  const [rangeOfOld, rangeOfNew] = [old, now].map(({ workspace }) => rangesIn(workspace.snapshot.texts));
  return {
    version: 1,
    changes: changes.map((change) => reported(change, rangeOfOld as RangeOf, rangeOfNew as RangeOf)),
    summary: summaryOf(changes),
  };
}

/** What the core of a review is given of a workspace. */
export function sideOf({ workspace, paths }: SideOfReview): ReviewSide {
  const { loaded, snapshot } = workspace;
  const compared = new Set(paths);
  const behind = new Set(paths.flatMap((path) => filesBehind(loaded, path)));
  const modelsOf = (all: Iterable<string>): readonly FileModel[] =>
    [...all].flatMap((path) => loaded.models.get(path) ?? []);
  const textOf = (path: string): string => loaded.parsed.get(path)?.text ?? snapshot.texts.get(path) ?? "";
  const used = modelsOf([...behind].filter((path) => !compared.has(path)));
  const files = modelsOf(paths);
  const findings = workspace.findings([...behind]);
  // While what was followed to find them is still there: the other side's run of the same procedure takes its place.
  const worked = new Map(
    files
      .flatMap(({ procedures }) => procedures)
      .map((one) => [one, { margins: marginsOf(workspace, one), kit: kitOf(workspace, one) }] as const),
  );
  return {
    files,
    used,
    findings,
    textOf,
    textAt: ({ path, start, end }) => textOf(path).slice(start, end),
    say: sentencesIn(workspace),
    passes: (procedure, threshold) => passes(workspace, procedure, threshold),
    margins: (procedure) => worked.get(procedure)?.margins ?? [],
    kit: (procedure) => worked.get(procedure)?.kit ?? { items: new Map(), time: null },
  };
}

/** All passes of an action in one sentence, where one says them; else the first. */
function sentencesIn(workspace: Workspace): (action: Action) => string {
  const byAction = new Map<Action, ExpandedAction[]>();
  const writers = new Map<Action, ReturnType<typeof writerOf>>();
  for (const { procedures } of workspace.loaded.models.values())
    for (const procedure of procedures) {
      const writer = writerOf(en, "both", procedure.declarations);
      for (const line of workOf(workspace.expanded(procedure), {}, () => null).actions) {
        const known = byAction.get(line.action);
        if (known === undefined) byAction.set(line.action, [line]);
        else known.push(line);
        writers.set(line.action, writer);
      }
    }
  return (action) => {
    const [lines, writer] = [byAction.get(action), writers.get(action)];
    if (lines === undefined || writer === undefined) return "";
    const performed = action.verb === "perform" ? workspace.expandedOf(action.procedure?.id ?? "") : null;
    const texts = lines.map((line) => actionSentence(line, writer, performed?.procedure.title ?? null).text);
    return (
      acrossPasses(
        texts,
        lines.map(({ pass }) => pass),
      ) ??
      texts[0] ??
      ""
    );
  };
}

function passes(workspace: Workspace, procedure: Procedure, threshold: string): boolean {
  const run = workspace.run(procedure);
  return run === null || !Object.hasOwn(DEFAULTS, threshold) || thresholdsPassed(run).has(threshold);
}

function marginsOf(workspace: Workspace, procedure: Procedure): readonly Margin[] {
  const run = workspace.run(procedure);
  if (run === null) return [];
  return marginsIn(run).map(({ kind, part, limitOf, step, value }) => {
    const end = value.nominal ?? value.high ?? value.low;
    const over = end !== null && (kind === "heat" ? cmp(end.base, ZERO) < 0 : toNumber(end.base) > 1);
    return { of: kind, part, limitOf, step, text: show(value).replace(/^-/, ""), over };
  });
}

function kitOf(workspace: Workspace, procedure: Procedure): Kit {
  const work = workOf(workspace.expanded(procedure), {}, workspace.expandedOf);
  const writer = writerOf(en, "both", procedure.declarations);
  const once = [...toolRows(work, writer), ...consumableRows(work, writer)].map((row) => ({ ...row, count: 1 }));
  const rows = [...partRows(work, writer), ...once];
  return {
    items: new Map(rows.map(({ name, title, count }) => [nameAlone(name), { title, count }])),
    time: longestTime(workspace, procedure),
  };
}

/** `CoverScrew[1..8]` is the part CoverScrew. */
function nameAlone(name: string): string {
  return name.replace(/\[.*$/, "");
}

function longestTime(workspace: Workspace, procedure: Procedure): string | null {
  const run = workspace.run(procedure);
  if (run === null) return null;
  const ends = new Set([run.graph.end]);
  const { worst } = longestBetween(createTiming(), run, new Set([0]), ends, Number.NEGATIVE_INFINITY);
  const time = worst[0]?.time ?? 0;
  return time === 0 ? null : timeText(time);
}

/** The forms that a report is written in. */
export const REVIEW_FORMATS = ["text", "md", "html", "json", "sarif"] as const;

/** The report as text: the same bytes for the same report. */
export function reviewAs(report: ReviewReport, format: (typeof REVIEW_FORMATS)[number]): string {
  switch (format) {
    case "text":
      return reviewText(report);
    case "md":
      return reviewMarkdown(report);
    case "html":
      return reviewHtml(report);
    case "sarif":
      return reviewSarif(report);
    case "json":
      return `${JSON.stringify(report, null, 2)}\n`;
  }
}

/** Files of a side of which a part could not be read, and so could not be compared. */
export function unreadIn({ workspace, paths }: SideOfReview): readonly string[] {
  const { loaded } = workspace;
  const behind = new Set(paths.flatMap((path) => filesBehind(loaded, path)));
  return [...behind].filter((path) => (loaded.parsed.get(path)?.problems.length ?? 0) > 0);
}

function reported(
  { edits, ...change }: Change,
  rangeOfOld: RangeOf,
  rangeOfNew: RangeOf,
): ReviewReport["changes"][number] {
  const { group, kind, message, step, procedure, findings, signAgain } = change;
  const side = (one: Side, rangeOf: RangeOf): ReportedSide => ({
    path: one.span.path,
    range: rangeOf(one.span),
    ...(one.text === undefined ? {} : { text: one.text }),
  });
  return {
    group,
    kind,
    message,
    ...(step === undefined ? {} : { step }),
    procedure,
    ...(change.old === undefined ? {} : { old: side(change.old, rangeOfOld) }),
    ...(change.new === undefined ? {} : { new: side(change.new, rangeOfNew) }),
    ...(findings === undefined
      ? {}
      : {
          findings: {
            came: findings.came.map((finding) => reportedFinding(finding, rangeOfNew)),
            went: findings.went.map((finding) => reportedFinding(finding, rangeOfOld)),
          },
        }),
    ...(signAgain === undefined ? {} : { signAgain }),
  };
}

function summaryOf(changes: readonly Change[]): ReviewReport["summary"] {
  const counts = new Map<Group, number>(GROUPS.map((group) => [group, 0]));
  for (const { group } of changes) counts.set(group, (counts.get(group) ?? 0) + 1);
  const restated = changes.filter(({ kind }) => kind === "restated").length;
  return { ...(Object.fromEntries(counts) as Record<Group, number>), restated };
}
