// A review as SARIF 2.1.0, so that a code host shows each change at its line. Knows no other form.
import type { Group } from "../change.ts";
import { en, type Words } from "../words.ts";
import { afterTexts, type Report, type ReportedChange, whereText } from "./report.ts";
import { COLUMN_KIND, locationOf, SARIF_HEAD } from "./sarif-place.ts";

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
    ...SARIF_HEAD,
    runs: [
      {
        tool: { driver: { name: "sprag review", rules: kinds.map((id) => ({ id })) } },
        columnKind: COLUMN_KIND,
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
    locations: place === undefined ? [] : [locationOf(place.path, place.range)],
    ...(now === undefined || old === undefined
      ? {}
      : { relatedLocations: [{ id: 1, message: { text: words.old }, ...locationOf(old.path, old.range) }] }),
  };
}
