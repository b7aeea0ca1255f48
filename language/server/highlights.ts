// The other places of the name under the cursor in its file: where it is declared, and where it is used.
import { type DocumentHighlight, DocumentHighlightKind, type DocumentHighlightParams } from "vscode-languageserver";
import type { Feature } from "./feature.ts";
import { meaningOf } from "./name-meaning.ts";
import { siteAt, sitesIn } from "./name-sites.ts";
import { type FileView, offsetOf } from "./view.ts";

export const highlights: Feature = {
  capabilities: () => ({ documentHighlightProvider: true }),
  start: (session) => {
    session.connection.onDocumentHighlight(({ textDocument, position }: DocumentHighlightParams, token) =>
      session.ask<DocumentHighlight[] | null>(
        textDocument.uri,
        token,
        (view) => highlightsAt(view, offsetOf(view, position)),
        null,
      ),
    );
  },
};

export function highlightsAt(view: FileView, offset: number): DocumentHighlight[] {
  const at = siteAt(view.parsed, offset);
  const declared = at === undefined ? undefined : meaningOf(at);
  if (at === undefined || declared === undefined) return [];
  return (sitesIn(view.parsed).byName.get(at.name) ?? [])
    .filter((site) => meaningOf(site) === declared)
    .map(({ start, end, use }) => ({
      range: view.lines.range(start, end),
      kind: use === "declares" ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
}
