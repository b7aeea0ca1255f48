// Paths in a text as links: of `use`, of figures, of the table an arrangement takes its masses from. None where no file is.
import type { DocumentLink, DocumentLinkParams } from "vscode-languageserver";
import { resolveUse } from "#syntax/scope.ts";
import type { Feature } from "./feature.ts";
import { type PathSite, sitesIn } from "./name-sites.ts";
import type { FileView } from "./view.ts";
import type { Say, Text } from "./words.ts";

export const links: Feature = {
  capabilities: () => ({ documentLinkProvider: {} }),
  start: (session, say) => {
    session.connection.onDocumentLinks(({ textDocument }: DocumentLinkParams, token) =>
      session.ask<DocumentLink[] | null>(textDocument.uri, token, (view) => linksIn(view, say), null),
    );
  },
};

export function linksIn(view: FileView, say: Say): DocumentLink[] {
  const { texts, present } = view.workspace.snapshot;
  return sitesIn(view.parsed).paths.flatMap((site): readonly DocumentLink[] => {
    const path = resolveUse(view.path, site.path);
    if (path === null || !(texts.has(path) || present.has(path))) return [];
    const { start, end } = insideQuotes(view.text, site);
    const tooltip = say(OPENS[site.node.$type] ?? "Open the file that is used: {0}", path);
    return [{ range: view.lines.range(start, end), target: view.folder.uriOf(path), tooltip }];
  });
}

const OPENS: Readonly<Record<string, Text>> = {
  FigureLine: "Open the figure: {0}",
  TextProperty: "Open the table: {0}",
};

function insideQuotes(text: string, { start, end }: PathSite): { readonly start: number; readonly end: number } {
  const quotes = text.startsWith('"""', start) ? 3 : text[start] === '"' ? 1 : 0;
  const isClosed = end - start >= 2 * quotes && text.endsWith('"'.repeat(quotes), end);
  return { start: start + quotes, end: isClosed ? end - quotes : end };
}
