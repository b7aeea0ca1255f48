// Files to name in a text that has been begun: those of the folder, written from where the file stands.
import { CompletionItemKind } from "vscode-languageserver";
import type { FileView } from "../view.ts";
import { type Candidate, GROUP } from "./candidate.ts";
import type { Place } from "./place.ts";

export function fileCandidates(view: FileView, place: Place): readonly Candidate[] {
  const before = place.tokens[place.tokens.length - 1]?.type;
  const wanted = before === undefined ? undefined : ENDINGS[before];
  if (wanted === undefined || (before === "from" && place.block !== "arrangement")) return [];
  const { texts, present } = view.workspace.snapshot;
  const used = new Set(before === "use" ? view.model.uses.map(({ path }) => path) : []);
  const known = [...new Set([...texts.keys(), ...present, ...view.folder.paths()])];
  return known
    .filter((path) => wanted.test(path) && path !== view.path)
    .map((path) => {
      const label = relativeTo(view.path, path);
      const quoted = place.text === null ? `"${label}"` : label;
      return {
        label,
        kind: CompletionItemKind.File,
        insert: quoted,
        group: used.has(path) ? GROUP.doubtful : GROUP.best,
        rank: label.split("/").length,
        from: place.text === null ? place.start : place.start + 1,
      };
    });
}

const ENDINGS: Readonly<Record<string, RegExp>> = {
  use: /\.sprag$/i,
  figure: /\.(?:svg|png|jpe?g)$/i,
  from: /\.csv$/i,
};

/** `../shop/tools.sprag`, from the folder of the first to the second. */
export function relativeTo(from: string, to: string): string {
  const folders = from.split("/").slice(0, -1);
  const parts = to.split("/");
  let same = 0;
  while (same < folders.length && same < parts.length - 1 && folders[same] === parts[same]) same++;
  return [...folders.slice(same).map(() => ".."), ...parts.slice(same)].join("/");
}
