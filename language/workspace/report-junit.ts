// A check as test results in the XML that build servers read: a suite for each file, a case for each finding. What is at or above the gravity
// that fails the check is a failure, what is allowed is skipped with its reason. Says what the JSON says.
import { type Markup, markup, nothing } from "#outputs/checklist/html-markup.ts";
import { printable } from "#outputs/printable.ts";
import { legalXml } from "#outputs/xml.ts";
import type { Severity } from "#rules/finding.ts";
import type { CheckReport, FileReport, ReportedFinding } from "./report.ts";

/** Same report, same text. @param failing the severities that make the check fail */
export function reportJunit({ files }: CheckReport, failing: ReadonlySet<Severity>): string {
  const fails = ({ allowed, severity }: ReportedFinding): boolean => allowed === undefined && failing.has(severity);
  const all = files.flatMap(({ findings }) => findings);
  const suites = markup`<testsuites name="sprag check" tests="${casesOf(files)}" failures="${all.filter(fails).length}" errors="0">
${files.map((file) => suiteOf(file, fails))}</testsuites>
`;
  return legalXml(`<?xml version="1.0" encoding="UTF-8"?>\n${suites}`);
}

/** A file without findings is a case that passed. */
function casesOf(files: readonly FileReport[]): number {
  return files.reduce((so, { findings }) => so + Math.max(1, findings.length), 0);
}

function suiteOf(file: FileReport, fails: (finding: ReportedFinding) => boolean): Markup {
  const { findings, path } = file;
  const skipped = findings.filter(({ allowed }) => allowed !== undefined).length;
  const cases = findings.map((finding) => caseOf(path, finding, fails(finding)));
  const none = markup`<testcase classname="${printable(path)}" name="no findings"/>
`;
  return markup`<testsuite name="${printable(path)}" tests="${casesOf([file])}" failures="${findings.filter(fails).length}" errors="0" skipped="${skipped}">
${cases.length === 0 ? none : cases}</testsuite>
`;
}

function caseOf(path: string, finding: ReportedFinding, hasFailed: boolean): Markup {
  const { allowed, code, message, range, remedy, severity, why } = finding;
  const place = `${path}:${range.start.line + 1}:${range.start.character + 1}`;
  const text = printable(
    [`${place}: ${severity}`, message, why, remedy].filter((part) => part !== undefined).join("\n"),
  );
  const skipped = allowed === undefined ? nothing : markup`<skipped message="${printable(allowed.reason)}"/>`;
  const outcome = hasFailed
    ? markup`<failure type="${code}" message="${printable(message)}">${text}</failure>`
    : markup`${skipped}<system-out>${text}</system-out>`;
  return markup`<testcase classname="${printable(path)}" name="${printable(`${code} ${place}`)}" file="${printable(path)}" line="${range.start.line + 1}">${outcome}</testcase>
`;
}
