// A review as Markdown for a pull request. All text of the files is escaped.
import { en, type Words } from "../words.ts";
import { afterTexts, groupsOf, placeText, type Report, type ReportedSide, summaryText, whereText } from "./report.ts";

/** @param words of the reader's language */
export function reviewMarkdown(report: Report, words: Words = en): string {
  const groups = groupsOf(report).map(([group, changes]) => {
    const rows = changes.map((change) => {
      const sides = [change.old, change.new].map((side, at) => sideText(side, at === 0 ? words.old : words.new));
      const places = sides.filter((text) => text !== null).join(" → ");
      const inside = [...afterTexts(change, words).map(escaped), places].filter((line) => line !== "");
      const head = `- **${escaped(whereText(change, words))}**: ${escaped(change.message)}`;
      return [head, ...inside.map((line) => `  - ${line}`)].join("\n");
    });
    return `### ${words.groups[group]} (${changes.length})\n\n${rows.join("\n")}\n\n`;
  });
  return `## ${words.title}\n\n${escaped(summaryText(report, words))}\n\n${groups.join("")}`.trimEnd().concat("\n");
}

function sideText(side: ReportedSide | undefined, name: string): string | null {
  return side === undefined ? null : `${name} ${code(placeText(side))}`;
}

/** A path may hold any character but the one that ends the code. */
function code(text: string): string {
  return `\`${oneLine(text).replaceAll("`", "'")}\``;
}

/** Signs that would make something else of the text stand as themselves; a name with @ calls nobody. */
function escaped(text: string): string {
  return oneLine(text)
    .replace(/[\\`*_[\]<>#|~&]/g, (sign) => `\\${sign}`)
    .replaceAll("@", "@\u200b")
    .replace(/\b(https?|www)(?=[:.])/g, "$1\u200b");
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ");
}
