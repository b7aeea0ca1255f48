// Another name for what a name means, over all files of the folder; refused with a sentence where the text would not mean
// the same afterwards (name-taken.ts).
import {
  type ClientCapabilities,
  LSPErrorCodes,
  type PrepareRenameParams,
  type RenameParams,
  ResponseError,
  type WorkspaceEdit,
} from "vscode-languageserver";
import type { Range } from "#syntax/lines.ts";
import { parseText } from "#syntax/parse.ts";
import type { Feature } from "./feature.ts";
import { meaningOf } from "./name-meaning.ts";
import { type NameSite, siteAt, sitesIn } from "./name-sites.ts";
import { isPlainName, takenBy, unfitFor } from "./name-taken.ts";
import { fileOf, placeOf, type Use, usesOf, wholeFolder } from "./references.ts";
import { type FileView, offsetOf, rangeOf } from "./view.ts";
import { workspaceEdit } from "./workspace-edit.ts";

export const rename: Feature = {
  capabilities: ({ textDocument }) => ({
    renameProvider: textDocument?.rename?.prepareSupport === true ? { prepareProvider: true } : true,
  }),
  start: (session) => {
    session.connection.onPrepareRename(({ textDocument, position }: PrepareRenameParams, token) =>
      session
        .ask<Renameable | Refusal>(
          textDocument.uri,
          token,
          (view) => renameableAt(view, offsetOf(view, position)),
          UNKNOWN_FILE,
        )
        .then(orThrow),
    );
    session.connection.onRenameRequest(async ({ textDocument, position, newName }: RenameParams, token) => {
      await wholeFolder(session, session.folderOf(textDocument.uri), token);
      const answer = await session.ask<Renaming | Refusal>(
        textDocument.uri,
        token,
        (view) => renamingAt(view, offsetOf(view, position), newName, session.client),
        UNKNOWN_FILE,
      );
      return orThrow(answer).edit;
    });
  },
};

/** Why it is not done, in a sentence or two for the writer. */
export interface Refusal {
  readonly refused: string;
}
export interface Renameable {
  readonly range: Range;
  readonly placeholder: string;
}
export interface Renaming {
  readonly edit: WorkspaceEdit;
}

export function renameableAt(view: FileView, offset: number): Renameable | Refusal {
  const site = siteAt(view.parsed, offset);
  if (site === undefined) return { refused: "No name stands here. Put the cursor on the name to be changed." };
  const declared = meaningOf(site);
  if (declared === undefined) return { refused: notDeclared(site) };
  if (fileOf(view, declared) === undefined) return { refused: `“${site.name}” is declared outside this folder.` };
  return { range: view.lines.range(site.start, site.end), placeholder: site.name };
}

export function renamingAt(
  view: FileView,
  offset: number,
  newName: string,
  client: ClientCapabilities,
): Renaming | Refusal {
  const renameable = renameableAt(view, offset);
  if ("refused" in renameable) return renameable;
  const site = siteAt(view.parsed, offset) as NameSite;
  const declared = meaningOf(site);
  const name = newName.trim().normalize("NFC");
  if (declared === undefined || name === site.name) return { edit: {} };
  const unfit = unfitFor(declared, name);
  if (unfit !== null) return { refused: unfit };
  const uses = usesOf(view, declared);
  const taken = takenBy(view, declared, uses, name) ?? misread(view, uses, name);
  if (taken !== null) return { refused: taken };
  const changes = uses.map((use) => ({ path: use.parsed.path, range: placeOf(view, use).range, newText: name }));
  return { edit: workspaceEdit(view.folder, changes, client) };
}

const UNKNOWN_FILE: Refusal = {
  refused: "This file belongs to no open folder. Save it below the folder with the ending .sprag.",
};

function notDeclared({ name, use }: NameSite): string {
  if (use === "hazard" || use === "state") return `“${name}” is a word of the language and keeps its name.`;
  return use === "mention"
    ? `The line of “${name}” cannot be read. Mend the line, then change the name.`
    : `Nothing in reach is called “${name}”. Declare it, or change the name here alone.`;
}

function orThrow<Answer extends object>(answer: Answer | Refusal): Answer {
  if ("refused" in answer) throw new ResponseError(LSPErrorCodes.RequestFailed, answer.refused);
  return answer;
}

/* ---- the edits ---- */

function byFile(uses: readonly Use[]): ReadonlyMap<Use["parsed"], readonly NameSite[]> {
  const files = new Map<Use["parsed"], NameSite[]>();
  for (const { parsed, site } of uses) {
    const known = files.get(parsed);
    if (known === undefined) files.set(parsed, [site]);
    else known.push(site);
  }
  return files;
}

/**
 * A word that is a keyword in one place may be a name, but not in every place: the changed texts are read again, and every
 * name has to stand where it stood.
 */
function misread(view: FileView, uses: readonly Use[], name: string): string | null {
  if (isPlainName(name)) return null;
  for (const [parsed, sites] of byFile(uses)) {
    const changed = parseText(replaced(parsed.text, sites, name), parsed.path);
    const before = sitesIn(parsed).all;
    const after = sitesIn(changed).all;
    const at = before.findIndex(
      (site, nth) => after[nth]?.use !== site.use || after[nth]?.node.$type !== site.node.$type,
    );
    if (at < 0 && before.length === after.length && changed.problems.length === parsed.problems.length) continue;
    const place = sites.find(({ start }) => start >= (before[at]?.start ?? 0)) ?? sites[0];
    const line = place === undefined ? 0 : rangeOf(view, { path: parsed.path, ...place }).start.line;
    return `“${name}” would be read as a keyword in ${parsed.path}, line ${line + 1}. Choose another name.`;
  }
  return null;
}

function replaced(text: string, sites: readonly NameSite[], name: string): string {
  let result = "";
  let from = 0;
  for (const { start, end } of sites) {
    result += text.slice(from, start) + name;
    from = end;
  }
  return result + text.slice(from);
}
