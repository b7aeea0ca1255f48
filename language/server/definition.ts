// From a name to where it is declared, and from the path of a `use` to the file.
import type { DefinitionParams, Location, LocationLink } from "vscode-languageserver";
import * as ast from "#grammar/generated/ast.ts";
import { resolveUse } from "#syntax/scope.ts";
import type { Feature } from "./feature.ts";
import { meaningOf } from "./name-meaning.ts";
import { siteAt, sitesIn } from "./name-sites.ts";
import { declarationOf, extentOf, placeOf } from "./references.ts";
import { type FileView, offsetOf, rangeOf } from "./view.ts";

export const definition: Feature = {
  capabilities: () => ({ definitionProvider: true }),
  start: (session) => {
    const withLinks = session.client.textDocument?.definition?.linkSupport === true;
    session.connection.onDefinition(({ textDocument, position }: DefinitionParams, token) =>
      session.ask<LocationLink[] | Location | null>(
        textDocument.uri,
        token,
        (view) => {
          const found = definitionAt(view, offsetOf(view, position));
          if (found === null) return null;
          return withLinks ? [found] : { uri: found.targetUri, range: found.targetSelectionRange };
        },
        null,
      ),
    );
  },
};

export function definitionAt(view: FileView, offset: number): LocationLink | null {
  const site = siteAt(view.parsed, offset);
  if (site === undefined) return usedFileAt(view, offset);
  const declared = meaningOf(site);
  const found = declared === undefined ? undefined : declarationOf(view, declared);
  if (declared === undefined || found === undefined) return null;
  const { uri, range } = placeOf(view, found);
  return {
    originSelectionRange: view.lines.range(site.start, site.end),
    targetUri: uri,
    targetRange: extentOf(view, found.parsed, declared),
    targetSelectionRange: range,
  };
}

function usedFileAt(view: FileView, offset: number): LocationLink | null {
  const use = sitesIn(view.parsed).paths.find(({ start, end }) => start <= offset && offset <= end);
  if (use === undefined || !ast.isUse(use.node)) return null;
  const path = resolveUse(view.path, use.path);
  if (path === null || !view.workspace.loaded.parsed.has(path)) return null;
  const start = rangeOf(view, { path, start: 0, end: 0 });
  return {
    originSelectionRange: view.lines.range(use.start, use.end),
    targetUri: view.folder.uriOf(path),
    targetRange: start,
    targetSelectionRange: start,
  };
}
