// A review as SARIF 2.1.0, so that a code host shows each change at its line. Knows no other form.
import type { Range } from "#syntax/lines.ts";
import type { Group } from "../change.ts";
import { en, type Words } from "../words.ts";
import { afterTexts, type Report, type ReportedChange, type ReportedSide, whereText } from "./report.ts";

const LEVELS: Readonly<Record<Group, "error" | "warning" | "note">> = {
  safety: "error",
  values: "warning",
  order: "warning",
  items: "note",
  words: "note",
  layout: "note",
};

/** @param words of the reader's language */
export function reviewSarif({ changes }: Report, words: Words = en): string {
  const kinds = [...new Set(changes.map(ruleOf))].sort();
  const log = {
    $schema: "https://json.schemastore.org/sarif-2.1.0.json",
    version: "2.1.0",
    runs: [
      {
        tool: { driver: { name: "sprag review", rules: kinds.map((id) => ({ id })) } },
        columnKind: "utf16CodeUnits",
        results: changes.map((change) => resultOf(change, kinds, words)),
      },
    ],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

function ruleOf({ group, kind }: ReportedChange): string {
  return `review.${group}.${kind}`;
}

function resultOf(change: ReportedChange, kinds: readonly string[], words: Words) {
  const { group, message, kind, old, new: now } = change;
  const place = now ?? old;
  const text = [`${whereText(change, words)}: ${message}`, ...afterTexts(change, words)].join("\n");
  return {
    ruleId: ruleOf(change),
    ruleIndex: kinds.indexOf(ruleOf(change)),
    level: kind === "restated" ? "note" : LEVELS[group],
    message: { text },
    locations: place === undefined ? [] : [locationOf(place)],
    ...(now === undefined || old === undefined
      ? {}
      : { relatedLocations: [{ id: 1, message: { text: words.old }, ...locationOf(old) }] }),
  };
}

function locationOf({ path, range }: ReportedSide) {
  const uri = path.split("/").map(encodeURIComponent).join("/");
  return { physicalLocation: { artifactLocation: { uri }, region: regionOf(range) } };
}

function regionOf({ start, end }: Range) {
  const [startLine, startColumn] = [start.line + 1, start.character + 1];
  return { startLine, startColumn, endLine: end.line + 1, endColumn: end.character + 1 };
}
