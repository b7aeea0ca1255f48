// What an empty folder begins with: a small library and a first procedure, which the server has. Writes over nothing.
import { l10n, Uri, window, workspace } from "vscode";
import { ask } from "../asking.ts";
import type { Session } from "../session.ts";
import { showBeside } from "./show-beside.ts";

export async function newShop({ run }: Session): Promise<void> {
  const [folder] = workspace.workspaceFolders ?? [];
  if (folder === undefined) {
    void window.showWarningMessage(l10n.t("No folder is open. Open an empty one first; the shop is written into it."));
    return;
  }
  const { files } = await ask(run, "sprag/starter", {});
  const placed = files.map(({ name, text }) => ({ uri: Uri.joinPath(folder.uri, name), name, text }));
  const there = await Promise.all(placed.map(async ({ uri, name }) => ((await isThere(uri)) ? [name] : [])));
  const [known] = there.flat();
  if (known !== undefined) {
    void window.showWarningMessage(l10n.t("{0} is there already, so nothing was written.", known));
    return;
  }
  try {
    for (const { uri, text } of placed) await workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    void window.showErrorMessage(
      l10n.t("The files could not be written: {0} Choose a folder that you may write in.", words),
    );
    return;
  }
  const last = placed.at(-1);
  if (last !== undefined) await showBeside(last.uri);
}

async function isThere(uri: Uri): Promise<boolean> {
  return workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}
