// The single place where tests of rules touch the API: checks texts that are all there is of a workspace.
import { expect } from "vitest";
import { formatText } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";
import type { CheckSettings } from "#workspace/checking.ts";
import type { ReportedFinding } from "#workspace/report.ts";
import { openWorkspace } from "#workspace/workspace.ts";
import { type Mark, type MarkedFile, readMarks, writeMarks } from "./marks.ts";

/** Texts by path. */
export type Texts = Readonly<Record<string, string>>;

/**
 * What the text of a whole procedure has to say, and a few lines that show one rule need not: left aside there, unless a mark
 * names it.
 */
const OF_WHOLE_TEXTS = ["trace.no-source", "safety.missing", "safety.idle"];

/**
 * Asserts that exactly the findings come that the marks name, each at its place; shows both texts where not. For a few lines about
 * one rule: what only the text of a whole procedure has to say is left aside.
 */
export function expectFindings(source: string, settings: CheckSettings = {}): void {
  const files = readMarks(source);
  const named = new Set(files.flatMap(({ marks }) => marks.map(({ code }) => code)));
  const aside = OF_WHOLE_TEXTS.filter((code) => !named.has(code));
  expectMarked(files, settings, {}, aside);
}

/** As {@link expectFindings}, with nothing left aside but what is said, and for files of which only some are checked. */
export function expectMarked(
  files: readonly MarkedFile[],
  settings: CheckSettings = {},
  used: Texts = {},
  aside: readonly string[] = [],
): void {
  const texts = { ...used, ...Object.fromEntries(files.map(({ path, text }) => [path, text])) };
  const found = checkTexts(
    texts,
    files.map(({ path }) => path),
    settings,
  );
  const foundText = files.map((file) =>
    writeMarks({
      ...file,
      marks: (found.get(file.path) ?? [])
        .filter(({ code }) => !aside.includes(code))
        .map((finding) => markOf(finding, file)),
    }),
  );
  const wantedText = files.map((file) => writeMarks(file));
  expect(foundText.join("\n\n")).toBe(wantedText.join("\n\n"));
}

/** The findings in one text. */
export function findingsIn(text: string, used: Texts = {}, settings: CheckSettings = {}): readonly ReportedFinding[] {
  return checkTexts({ ...used, "main.sprag": text }, ["main.sprag"], settings).get("main.sprag") ?? [];
}

/** What one finding tells a person, as short text; the first with that code. Lines count without marks. */
export function told(source: string, code: string): string {
  const found = findingsIn(readMarks(source)[0]?.text ?? "").find((finding) => finding.code === code);
  if (found === undefined) return `no ${code}`;
  const { message, why, remedy, witness = [], related = [], fixes = [] } = found;
  return [
    message,
    ...(why === undefined ? [] : why.split("\n").map((line) => `  ${line}`)),
    ...(remedy === undefined ? [] : [`→ ${remedy}`]),
    ...witness.map((remark) => `@${remark.range.start.line + 1} ${remark.message}`),
    ...related.map((remark) => `&${remark.range.start.line + 1} ${remark.message}`),
    ...fixes.map((fix) => `+ ${fix.title}`),
  ].join("\n");
}

/** The text after the fix of that number. */
export function withFix(text: string, { fixes = [] }: ReportedFinding, number = 0): string {
  const lines = text.split("\n");
  const offset = ({ line, character }: { line: number; character: number }): number =>
    lines.slice(0, line).reduce((so, before) => so + before.length + 1, 0) + character;
  // From the end of the text to its beginning; what goes in at one place goes in as listed.
  const edits = [...(fixes[number]?.edits ?? [])]
    .reverse()
    .sort((a, b) => offset(b.range.start) - offset(a.range.start));
  return edits.reduce(
    (so, { range, newText }) => so.slice(0, offset(range.start)) + newText + so.slice(offset(range.end)),
    text,
  );
}

/** The text as the formatter writes it; null where it cannot be read. */
export function formatted(text: string): string | null {
  const made = formatText(parseText(text, "main.sprag"));
  return made.ok ? made.text : null;
}

function checkTexts(
  texts: Texts,
  paths: readonly string[],
  settings: CheckSettings,
): ReadonlyMap<string, readonly ReportedFinding[]> {
  const all = new Map(Object.entries(texts));
  const snapshot = { texts: all, present: new Set<string>(), absent: new Set<string>(), today: "2026-05-04" };
  const report = openWorkspace(snapshot).check(paths, settings);
  return new Map(report.files.map(({ path, findings }) => [path, findings]));
}

/** The finding as a mark, with as much said of it as the mark at its place says. */
function markOf(
  { code, severity, range: { start, end }, allowed }: ReportedFinding,
  { text, marks }: MarkedFile,
): Mark {
  const lineLength = (text.split("\n")[start.line] ?? "").length;
  const length = (start.line === end.line ? end.character : lineLength) - start.character;
  const place = { line: start.line, character: start.character, length, code };
  const wanted = marks.find(
    (mark) => mark.code === code && mark.line === start.line && mark.character === start.character,
  );
  const isSaid = (word: string): boolean => wanted?.remarks.includes(word) ?? false;
  const isSeveritySaid = wanted?.remarks.some((word) => word !== "allowed") ?? false;
  const remarks = [
    ...(isSeveritySaid ? [severity] : []),
    ...(allowed !== undefined || isSaid("allowed") ? (allowed === undefined ? [] : ["allowed"]) : []),
  ];
  return { ...place, remarks };
}
