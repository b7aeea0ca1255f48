// A finding as the editor shows it: code with a link to its page, severity, related places, and the fixes as data, so that
// quick fixes need no second check.
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver";
import type { ReportedFinding } from "#workspace/report.ts";
import type { Folder } from "./folder.ts";

/** What travels with a diagnostic to its quick fixes. */
export interface DiagnosticData {
  readonly fixes: NonNullable<ReportedFinding["fixes"]>;
  /** Of the open text that it was found in: the fixes fit no other. */
  readonly version?: number;
  readonly isAllowed: boolean;
}

export interface DiagnosticForm {
  /** Whether the client shows related places; else they stand in the message. */
  readonly related: boolean;
  /** Whether the client opens addresses of rules' pages. */
  readonly pages: boolean;
}

export function diagnosticOf(
  folder: Folder,
  finding: ReportedFinding,
  form: DiagnosticForm,
  version?: number,
): Diagnostic {
  const remarks = [...(finding.witness ?? []), ...(finding.related ?? [])];
  const related = remarks.map(({ message, path, range }) => ({
    message,
    location: { uri: folder.uriOf(path), range },
  }));
  const data: DiagnosticData = {
    fixes: finding.fixes ?? [],
    ...(version === undefined ? {} : { version }),
    isAllowed: finding.allowed !== undefined,
  };
  return {
    range: finding.range,
    severity: severityOf(finding),
    code: finding.code,
    ...(form.pages ? { codeDescription: { href: `sprag-rule:${finding.code}.md` } } : {}),
    source: "sprag",
    message: messageOf(finding, form.related ? [] : remarks.map((remark) => remark.message)),
    ...(FADED.has(finding.code) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(form.related && related.length > 0 ? { relatedInformation: related } : {}),
    data,
  };
}

/** Codes of lines that could go without anything changing. */
const FADED: ReadonlySet<string> = new Set(["names.unused", "trace.unused-allow", "flow.unreachable"]);

/** What is allowed stays visible, as a hint with its reason. */
function severityOf({ allowed, severity }: ReportedFinding): DiagnosticSeverity {
  if (allowed !== undefined) return DiagnosticSeverity.Hint;
  return {
    error: DiagnosticSeverity.Error,
    warning: DiagnosticSeverity.Warning,
    information: DiagnosticSeverity.Information,
    hint: DiagnosticSeverity.Hint,
  }[severity];
}

function messageOf({ message, why, remedy, allowed }: ReportedFinding, more: readonly string[]): string {
  const lines = [message];
  if (allowed !== undefined)
    lines.push(`Allowed${allowed.by === undefined ? "" : ` by ${allowed.by}`}: ${allowed.reason}`);
  if (why !== undefined) lines.push(why);
  lines.push(...more);
  if (remedy !== undefined) lines.push(remedy);
  return lines.join("\n");
}
