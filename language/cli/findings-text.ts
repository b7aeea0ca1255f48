// A report as text for a person: each finding with its place in the text, why, what makes it right, and a line that sums
// up. Adds nothing of its own to what the report says.
import pc from "picocolors";
import { type Lines, linesOf, type Range } from "#syntax/lines.ts";
import type { FileReport, ReportedFinding, Summary } from "#workspace/report.ts";
import { codeFrame } from "./frame.ts";
import { printable, printableName, wrapped } from "./printable.ts";

export interface TextStyle {
  readonly colour: boolean;
  /** Columns a line may take. */
  readonly width: number;
}

/** One after the other, with an empty line after each. */
export function findingsText(files: readonly FileReport[], textOf: (path: string) => string, style: TextStyle): string {
  return files.flatMap((file) => fileText(file, textOf(file.path), style).map((text) => `${text}\n`)).join("");
}

/** `3 errors, 1 warning in 2 files; 5 procedures, 112 steps checked.` */
export function summaryText({ files, procedures, steps, ...found }: Summary): string {
  const parts = [
    found.errors > 0 ? counted(found.errors, "error") : "",
    found.warnings > 0 ? counted(found.warnings, "warning") : "",
    found.information > 0 ? `${found.information} for information` : "",
    found.hints > 0 ? counted(found.hints, "hint") : "",
    found.allowed > 0 ? `${found.allowed} allowed` : "",
  ].filter((part) => part !== "");
  const checked = `${counted(procedures, "procedure")}, ${counted(steps, "step")} checked.`;
  return `${parts.length === 0 ? "No findings" : parts.join(", ")} in ${counted(files, "file")}; ${checked}`;
}

/** `1 file`, `2 files`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

function fileText({ path, findings }: FileReport, text: string, style: TextStyle): readonly string[] {
  const lines = linesOf(text);
  return findings.map((finding) => findingText(finding, { path, lines }, style));
}

interface Place {
  readonly path: string;
  readonly lines: Lines;
}

const LABEL = 9;

function findingText(finding: ReportedFinding, { path, lines }: Place, { colour, width }: TextStyle): string {
  const colours = pc.createColors(colour);
  const grave = gravity(finding, colours);
  const word = finding.allowed === undefined ? finding.severity : "allowed";
  const remark = ({ message, path: other, range }: { message: string; path: string; range: Range }): string =>
    `${message.replace(/\.$/, "")} (${other === path ? `line ${range.start.line + 1}` : placeText(other, range)}).`;
  const told = (label: string, words: string | undefined): readonly string[] =>
    words === undefined || words === ""
      ? []
      : wrapped(printable(words), width - 2 - LABEL).map(
          (line, at) => `  ${colours.dim((at === 0 ? label : "").padEnd(LABEL))}${line}`,
        );
  const head = `${colours.bold(placeText(path, finding.range))}  ${grave(word)}  ${colours.dim(finding.code)}`;
  const message = wrapped(printable(finding.message), width - 2).map((line) => `  ${colours.bold(line)}`);
  if (finding.allowed !== undefined) {
    return [head, ...message, ...told("because", allowedText(finding.allowed)), ""].join("\n");
  }
  const frame = codeFrame(lines, finding.range, width, { gutter: colours.dim, mark: grave });
  return [
    head,
    ...message,
    "",
    ...frame,
    "",
    ...told("why", finding.why),
    ...told("remedy", finding.remedy),
    ...told("where", whereText(finding)),
    ...(finding.witness ?? []).flatMap((one, at) => told(at === 0 ? "so far" : "", remark(one))),
    ...(finding.related ?? []).flatMap((one, at) => told(at === 0 ? "see" : "", remark(one))),
    ...fixTexts(finding).flatMap((fix, at) => told(at === 0 ? "fix" : "", fix)),
    "",
  ].join("\n");
}

function gravity({ severity, allowed }: ReportedFinding, colours: ReturnType<typeof pc.createColors>) {
  if (allowed !== undefined) return colours.dim;
  if (severity === "error") return (text: string) => colours.bold(colours.red(text));
  return severity === "warning" ? colours.yellow : colours.cyan;
}

/** `shop/tools.sprag:12:3`, counted from 1, as editors take it. */
function placeText(path: string, { start }: Range): string {
  return `${printableName(path)}:${start.line + 1}:${start.character + 1}`;
}

function whereText({ procedure, step }: ReportedFinding): string | undefined {
  if (procedure === undefined) return undefined;
  if (step === undefined) return `procedure ${procedure}`;
  return `procedure ${procedure}, step ${step.number}${step.name === undefined ? "" : ` (${step.name})`}`;
}

/** What an editor could do at once; not again what the remedy says already. */
function fixTexts({ fixes = [], remedy }: ReportedFinding): readonly string[] {
  return fixes.map((fix) => `${fix.title}.`).filter((text) => text !== remedy);
}

function allowedText({ reason, by }: { reason: string; by?: string }): string {
  return by === undefined ? reason : `${reason} (${by})`;
}
