// Paths in a text as links: of `use`, of figures, of the table an arrangement takes its masses from. None where no file is.
import type { DocumentLink, DocumentLinkParams } from "vscode-languageserver";
import * as ast from "#grammar/generated/ast.ts";
import { resolveUse } from "#syntax/scope.ts";
import type { Feature } from "./feature.ts";
import { type PathSite, sitesIn } from "./name-sites.ts";
import type { FileView } from "./view.ts";

export const links: Feature = {
  capabilities: () => ({ documentLinkProvider: {} }),
  start: (session) => {
    session.connection.onDocumentLinks(({ textDocument }: DocumentLinkParams, token) =>
      session.ask<DocumentLink[] | null>(textDocument.uri, token, linksIn, null),
    );
  },
};

export function linksIn(view: FileView): DocumentLink[] {
  const { loaded, snapshot } = view.workspace;
  return sitesIn(view.parsed).paths.flatMap((site): readonly DocumentLink[] => {
    const path = resolveUse(view.path, site.path);
    if (path === null || !(loaded.parsed.has(path) || snapshot.present.has(path))) return [];
    const { start, end } = insideQuotes(view.text, site);
    const what = ast.isUse(site.node) ? "Open the file that is used" : WHAT_ELSE[site.node.$type];
    return [
      { range: view.lines.range(start, end), target: view.folder.uriOf(path), tooltip: `${what ?? "Open"}: ${path}` },
    ];
  });
}

const WHAT_ELSE: Readonly<Record<string, string>> = { FigureLine: "Open the figure", TextProperty: "Open the table" };

function insideQuotes(text: string, { start, end }: PathSite): { readonly start: number; readonly end: number } {
  const quotes = text.startsWith('"""', start) ? 3 : text[start] === '"' ? 1 : 0;
  const isClosed = end - start >= 2 * quotes && text.endsWith('"'.repeat(quotes), end);
  return { start: start + quotes, end: isClosed ? end - quotes : end };
}
