// Names of all files by a few of their letters: procedures, tasks, named steps and declarations, with the step's number and
// where it belongs beside it.
import type { CancellationToken, SymbolInformation, WorkspaceSymbolParams } from "vscode-languageserver";
import type { Feature } from "./feature.ts";
import { type OutlineEntry, outlineOf, SYMBOL_KINDS } from "./outline.ts";
import { wholeFolder } from "./references.ts";
import { type Session, stopIfCancelled, turn } from "./session.ts";
import { type FileView, locationOf, viewOf } from "./view.ts";

export const workspaceSymbols: Feature = {
  capabilities: () => ({ workspaceSymbolProvider: true }),
  start: (session) => {
    session.connection.onWorkspaceSymbol(({ query }: WorkspaceSymbolParams, token) =>
      allSymbols(session, query, token),
    );
  },
};

/** More nobody reads: the client asks again when more is typed. */
const MOST = 1000;

async function allSymbols(session: Session, query: string, token: CancellationToken): Promise<SymbolInformation[]> {
  const found: SymbolInformation[] = [];
  for (const folder of session.folders()) {
    await wholeFolder(session, folder, token);
    const workspace = await folder.settled();
    for (const path of workspace.loaded.models.keys()) {
      const view = session.owns(folder, path) ? viewOf(folder, workspace, path) : null;
      if (view !== null) found.push(...symbolsMatching(view, query));
    }
    await turn();
    stopIfCancelled(token);
  }
  // The closest first: a name that the letters cover most of.
  return found.sort((a, b) => a.name.length - b.name.length || (a.name < b.name ? -1 : 1)).slice(0, MOST);
}

export function symbolsMatching(view: FileView, query: string): readonly SymbolInformation[] {
  const found: SymbolInformation[] = [];
  const collect = (entries: readonly OutlineEntry[], within: string): void => {
    for (const entry of entries) {
      const { number, name, words, what } = entry;
      const shown = name ?? (what === "task" ? words : "");
      if (shown !== "" && (matches(shown, query) || matches(words, query)))
        found.push({
          name: shown,
          kind: SYMBOL_KINDS[what],
          location: locationOf(view, entry.head),
          containerName: containerOf(entry, within === "" ? view.path : within),
        });
      collect(entry.children, number === "" && what === "procedure" ? (name ?? "") : within);
    }
  };
  collect(outlineOf(view), "");
  return found;
}

/** Whether the letters stand in the text in this order, whatever lies between them. */
function matches(text: string, letters: string): boolean {
  const wanted = [...letters.normalize("NFC").toLowerCase()].filter((letter) => letter.trim() !== "");
  let at = 0;
  for (const letter of text.normalize("NFC").toLowerCase()) if (letter === wanted[at]) at++;
  return at === wanted.length;
}

/** “step 2.3 of CloseHousing: Heat the bearing”. */
function containerOf({ what, number, name, words }: OutlineEntry, within: string): string {
  const place = number === "" ? `${what} in ${within}` : `${what} ${number} of ${within}`;
  return words === "" || words === name || name === null ? place : `${place}: ${words}`;
}
