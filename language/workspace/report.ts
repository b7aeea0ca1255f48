// What a check comes to, as plain data: the JSON of `sprag check --format json`, the same for every caller.
import type { Assignment } from "#analysis/fact.ts";
import type { Finding, Severity } from "#rules/finding.ts";
import type { Range } from "#syntax/lines.ts";
import type { Span } from "#syntax/span.ts";
import { type RangeOf, rangesIn } from "./ranges.ts";

export interface CheckReport {
  readonly version: 1;
  /** All checked files, sorted by path, also those without findings. */
  readonly files: readonly FileReport[];
  readonly summary: Summary;
}

export interface FileReport {
  readonly path: string;
  readonly findings: readonly ReportedFinding[];
}

export interface ReportedFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly why?: string;
  readonly remedy?: string;
  readonly range: Range;
  readonly options?: readonly Assignment[];
  readonly moreOptions?: number;
  readonly procedure?: string;
  readonly step?: { readonly name?: string; readonly number: string };
  readonly witness?: readonly ReportedRemark[];
  readonly related?: readonly ReportedRemark[];
  readonly fixes?: readonly { readonly title: string; readonly edits: readonly ReportedEdit[] }[];
  readonly allowed?: { readonly reason: string; readonly by?: string };
}
export interface ReportedRemark {
  readonly message: string;
  readonly path: string;
  readonly range: Range;
}
export interface ReportedEdit {
  readonly path: string;
  readonly range: Range;
  readonly newText: string;
}

export interface Summary {
  readonly errors: number;
  readonly warnings: number;
  readonly information: number;
  readonly hints: number;
  readonly allowed: number;
  readonly files: number;
  readonly procedures: number;
  /** Steps with repeats written out. */
  readonly steps: number;
}

/** @param counts procedures and steps of the checked files */
export function reportOf(
  paths: readonly string[],
  findings: readonly Finding[],
  texts: ReadonlyMap<string, string>,
  counts: { readonly procedures: number; readonly steps: number },
): CheckReport {
  const rangeOf = rangesIn(texts);
  const byPath = new Map<string, Finding[]>(paths.map((path) => [path, []]));
  for (const finding of findings) byPath.get(finding.span.path)?.push(finding);
  const files = [...byPath]
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([path, own]) => ({ path, findings: own.map((finding) => reportedFinding(finding, rangeOf)) }));
  return { version: 1, files, summary: summaryOf(files, counts) };
}

/** The JSON text of a report: the same bytes whoever asks. */
export function reportText(report: CheckReport): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** A finding as the JSON has it. */
export function reportedFinding(finding: Finding, rangeOf: RangeOf): ReportedFinding {
  const { span, witness, related, fixes, ...rest } = finding;
  const remark = (one: { message: string; span: Span }): ReportedRemark => ({
    message: one.message,
    path: one.span.path,
    range: rangeOf(one.span),
  });
  const { code, severity, message, why, remedy, options, moreOptions, procedure, step, allowed } = rest;
  return {
    code,
    severity,
    message,
    ...(why === undefined ? {} : { why }),
    ...(remedy === undefined ? {} : { remedy }),
    range: rangeOf(span),
    ...(options === undefined ? {} : { options }),
    ...(moreOptions === undefined ? {} : { moreOptions }),
    ...(procedure === undefined ? {} : { procedure }),
    ...(step === undefined ? {} : { step }),
    ...(witness === undefined || witness.length === 0 ? {} : { witness: witness.map(remark) }),
    ...(related === undefined || related.length === 0 ? {} : { related: related.map(remark) }),
    ...(fixes === undefined || fixes.length === 0
      ? {}
      : {
          fixes: fixes.map((fix) => ({
            title: fix.title,
            edits: fix.edits.map((edit) => ({
              path: edit.span.path,
              range: rangeOf(edit.span),
              newText: edit.newText,
            })),
          })),
        }),
    ...(allowed === undefined ? {} : { allowed }),
  };
}

/** @param counts procedures and steps of these files */
export function summaryOf(
  files: readonly FileReport[],
  { procedures, steps }: { readonly procedures: number; readonly steps: number },
): Summary {
  const all = files.flatMap((file) => file.findings);
  const open = all.filter((finding) => finding.allowed === undefined);
  const count = (severity: Severity): number => open.filter((finding) => finding.severity === severity).length;
  return {
    errors: count("error"),
    warnings: count("warning"),
    information: count("information"),
    hints: count("hint"),
    allowed: all.length - open.length,
    files: files.length,
    procedures,
    steps,
  };
}
