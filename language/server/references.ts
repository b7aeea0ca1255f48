// Where a name is used, over all files of the folder: the same sites that rename changes and the call hierarchy follows.
import { type AstNode, AstUtils } from "langium";
import type { CancellationToken, Location, ReferenceParams } from "vscode-languageserver";
import type { Range } from "#syntax/lines.ts";
import type { ParsedFile } from "#syntax/parse.ts";
import type { Feature } from "./feature.ts";
import type { Folder } from "./folder.ts";
import { type Declaring, meaningOf } from "./name-meaning.ts";
import { type NameSite, siteAt, sitesIn } from "./name-sites.ts";
import type { Session } from "./session.ts";
import { type FileView, locationOf, offsetOf, rangeOf } from "./view.ts";

export const references: Feature = {
  capabilities: () => ({ referencesProvider: true }),
  start: (session) => {
    session.connection.onReferences(async ({ textDocument, position, context }: ReferenceParams, token) => {
      await wholeFolder(session, session.folderOf(textDocument.uri), token);
      return session.ask<readonly Location[] | null>(
        textDocument.uri,
        token,
        (view) => referencesAt(view, offsetOf(view, position), context.includeDeclaration),
        null,
      ) as Promise<Location[] | null>;
    });
  },
};

export function referencesAt(view: FileView, offset: number, withDeclaration: boolean): readonly Location[] {
  const site = siteAt(view.parsed, offset);
  const declared = site === undefined ? undefined : meaningOf(site);
  if (declared === undefined) return [];
  return usesOf(view, declared)
    .filter((use) => withDeclaration || use.site.use !== "declares")
    .map((use) => placeOf(view, use));
}

/** A site and the file it stands in. */
export interface Use {
  readonly parsed: ParsedFile;
  readonly site: NameSite;
}

/** All sites that mean this, that of the declaration too; by file, each in the order of its text. */
export function usesOf(view: FileView, declared: Declaring): readonly Use[] {
  const name = nameOf(declared);
  const files = isLocal(declared) ? [fileOf(view, declared)] : [...view.workspace.loaded.parsed.values()];
  return files.flatMap((parsed) =>
    parsed === undefined
      ? []
      : (sitesIn(parsed).byName.get(name) ?? [])
          .filter((site) => meaningOf(site) === declared)
          .map((site) => ({ parsed, site })),
  );
}

/** In NFC. */
function nameOf(declared: Declaring): string {
  return ((declared as { name?: string }).name ?? "").normalize("NFC");
}

export function placeOf(view: FileView, { parsed, site }: Use): { readonly uri: string; readonly range: Range } {
  return locationOf(view, { path: parsed.path, start: site.start, end: site.end });
}

/** The file of the folder that a node stands in. */
export function fileOf(view: FileView, node: AstNode): ParsedFile | undefined {
  const path = AstUtils.findRootNode(node).$document?.uri.path.slice(1) ?? "";
  const parsed = view.workspace.loaded.parsed.get(path);
  return parsed?.file === AstUtils.findRootNode(node) ? parsed : undefined;
}

/** Where the name stands in its declaration. */
export function declarationOf(view: FileView, declared: Declaring): Use | undefined {
  const parsed = fileOf(view, declared);
  if (parsed === undefined) return undefined;
  const site = (sitesIn(parsed).byName.get(nameOf(declared)) ?? []).find(
    ({ node, use }) => node === declared && use === "declares",
  );
  return site === undefined ? undefined : { parsed, site };
}

/** The range of a node in its file. */
export function extentOf(view: FileView, parsed: ParsedFile, node: AstNode): Range {
  const { offset: start = 0, end = 0 } = node.$cstNode ?? {};
  return rangeOf(view, { path: parsed.path, start, end });
}

/** Resolves when all files of the folder are read, also where the client does not want them checked, or stopped that. */
export async function wholeFolder(session: Session, folder: Folder, token: CancellationToken): Promise<void> {
  if (session.isListed(folder) && !folder.isWhole()) await folder.readAll(async () => !token.isCancellationRequested);
}

/** Steps, readings, loop variables and the like are never used outside their file. */
function isLocal(declared: Declaring): boolean {
  return LOCAL.has(declared.$type);
}

const LOCAL: ReadonlySet<string> = new Set(["Step", "Task", "Measure", "LoopVariable"]);
