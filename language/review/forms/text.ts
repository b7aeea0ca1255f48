// A review as plain text for a terminal: a heading for each group, and the changes with their places. Knows no colours.
import { en, type Words } from "../words.ts";
import { afterTexts, groupsOf, placeText, type Report, summaryText, whereText } from "./report.ts";

/** @param words of the reader's language */
export function reviewText(report: Report, words: Words = en): string {
  const groups = groupsOf(report).map(([group, changes]) => {
    const heading = `${words.groups[group]} (${changes.length})`;
    const told = changes.map((change) => {
      const places = [
        ...(change.old === undefined ? [] : [`${words.old} ${placeText(change.old)}`]),
        ...(change.new === undefined ? [] : [`${words.new} ${placeText(change.new)}`]),
      ];
      const lines = [change.message, ...afterTexts(change, words), places.join(", ")].filter((line) => line !== "");
      return [`  ${whereText(change, words)}`, ...lines.map((line) => `    ${line}`)].join("\n");
    });
    return `${heading}\n\n${told.join("\n\n")}\n\n`;
  });
  return `${groups.join("")}${summaryText(report, words)}\n`;
}
