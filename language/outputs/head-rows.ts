// What a document says of itself, as labels with texts: for formats that have rows or lines and no head of their own. Knows no format.
import type { AllowRow, Document, FindingRow } from "./document.ts";
import type { Words } from "./words/en.ts";

export interface HeadRow {
  readonly label: string;
  readonly text: string;
}

/** That it is a draft, what it is and comes from, what the check left, and what holds for all of it. */
export function headRows(document: Document, words: Words): readonly HeadRow[] {
  const { draft, title, head, cautions, stockNotes } = document;
  const { labels } = words;
  return [
    ...(draft ? [{ label: labels.draft, text: labels.draftMeaning }] : []),
    { label: labels.title, text: title },
    ...head.facts.map(({ label, values }) => ({ label, text: values.join("; ") })),
    ...foundRows(document, words),
    ...[...cautions, ...stockNotes].map((text) => ({ label: labels.cautions, text })),
  ];
}

/** What the check left, errors first, and what is allowed. */
export function foundRows({ head: { findings, allows } }: Document, { labels }: Words): readonly HeadRow[] {
  return [
    ...findings.map((finding) => ({
      label: finding.error ? labels.errors : labels.findings,
      text: findingText(finding),
    })),
    ...allows.map((allow) => ({ label: labels.allowed, text: allowText(allow) })),
  ];
}

/** Of one finding all that is to be known, in one line. */
export function findingText({ severity, code, place, message, why, remedy }: FindingRow): string {
  return [`${severity}, ${code}, ${place}: ${message}`, why, remedy].filter((text) => text !== null).join(" ");
}

export function allowText({ code, place, reason, by }: AllowRow): string {
  return `${code}, ${place}: ${reason}${by === null ? "" : ` (${by})`}`;
}
