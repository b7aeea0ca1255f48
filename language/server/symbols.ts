// The outline as a client shows it: nested, or flat for clients that know no other.
import {
  type DocumentSymbol,
  type DocumentSymbolParams,
  type SymbolInformation,
  SymbolKind,
} from "vscode-languageserver";
import type { Feature } from "./feature.ts";
import { detailOf, labelOf, type OutlineEntry, outlineOf, SYMBOL_KINDS } from "./outline.ts";
import { type FileView, locationOf, rangeOf } from "./view.ts";

export const symbols: Feature = {
  capabilities: () => ({ documentSymbolProvider: { label: "Sprag" } }),
  start: (session) => {
    const isNested = session.client.textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true;
    session.connection.onDocumentSymbol(({ textDocument }: DocumentSymbolParams, token) =>
      session.ask<DocumentSymbol[] | SymbolInformation[] | null>(
        textDocument.uri,
        token,
        (view) => (isNested ? symbolsIn(view) : flatSymbolsIn(view)),
        null,
      ),
    );
  },
};

export function symbolsIn(view: FileView): DocumentSymbol[] {
  const symbolOf = (entry: OutlineEntry): DocumentSymbol => {
    const detail = detailOf(entry);
    return {
      name: labelOf(entry),
      ...(detail === "" ? {} : { detail }),
      kind: SYMBOL_KINDS[entry.what] ?? SymbolKind.Object,
      range: rangeOf(view, entry.extent),
      selectionRange: rangeOf(view, entry.head),
      ...(entry.children.length === 0 ? {} : { children: entry.children.map(symbolOf) }),
    };
  };
  return outlineOf(view).map(symbolOf);
}

export function flatSymbolsIn(view: FileView): SymbolInformation[] {
  const flat = (entries: readonly OutlineEntry[], containerName?: string): SymbolInformation[] =>
    entries.flatMap((entry) => {
      const name = labelOf(entry);
      const symbol: SymbolInformation = {
        name,
        kind: SYMBOL_KINDS[entry.what] ?? SymbolKind.Object,
        location: locationOf(view, entry.extent),
        ...(containerName === undefined ? {} : { containerName }),
      };
      return [symbol, ...flat(entry.children, name)];
    });
  return flat(outlineOf(view));
}
