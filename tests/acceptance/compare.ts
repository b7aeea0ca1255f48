// A marked text beside what is found in it, for the families of order and flow and what keeps a text from being read.
// Findings about hazards, limits, sources and wording are left aside: these cases do not speak of them.
import { findingsIn, type Texts } from "#harness/check.ts";
import { type Mark, readMarks, writeMarks } from "#harness/marks.ts";
import type { CheckSettings } from "#workspace/checking.ts";
import type { ReportedFinding } from "#workspace/report.ts";

export interface Compared {
  readonly found: string;
  readonly wanted: string;
}

/** The first text of a marked source with the marks it has, and with those that its findings make. */
export function compare(source: string, settings: CheckSettings = {}): Compared {
  const [file, ...used] = readMarks(source);
  if (file === undefined) throw new Error("the case has no text");
  const texts: Texts = Object.fromEntries(used.map(({ path, text }) => [path, text]));
  const marks = findingsIn(file.text, texts, settings)
    .filter(isOfTheseCases)
    .map((finding) => markOf(finding, file.text));
  return { found: writeMarks({ ...file, marks }), wanted: writeMarks(file) };
}

/** The findings of one code in a text; its marks are left out first. */
export function findingsOf(source: string, code: string, settings: CheckSettings = {}): readonly ReportedFinding[] {
  const [file, ...used] = readMarks(source);
  const texts: Texts = Object.fromEntries(used.map(({ path, text }) => [path, text]));
  return findingsIn(file?.text ?? "", texts, settings).filter((finding) => finding.code === code);
}

function isOfTheseCases({ code }: ReportedFinding): boolean {
  if (code === "names.unused") return false;
  return /^(?:syntax|names|order|flow)\./.test(code) || code === "units.mismatch" || code === "trace.unused-allow";
}

function markOf({ code, severity, allowed, range: { start, end } }: ReportedFinding, text: string): Mark {
  const lineLength = (text.split("\n")[start.line] ?? "").length;
  const length = (start.line === end.line ? end.character : lineLength) - start.character;
  const remarks = [severity, ...(allowed === undefined ? [] : ["allowed"])];
  return { line: start.line, character: start.character, length, code, remarks };
}
