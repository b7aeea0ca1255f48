// The command that checks all files again. How far it is, and the button that stops it, come by themselves.
import { commands, l10n, window, workspace } from "vscode";
import { ask } from "./asking.ts";
import type { Session } from "./session.ts";

export async function checkFolder({ run }: Session): Promise<void> {
  if (workspace.workspaceFolders === undefined) {
    void window.showWarningMessage(l10n.t("No folder is open. Open the folder that holds the procedures."));
    return;
  }
  // A server that dies meanwhile is told of elsewhere.
  const status = await ask(run, "sprag/checkFolders", {}).catch(() => null);
  if (status?.state === "stopped") {
    void window.showWarningMessage(l10n.t("Checked {0} of {1} files. {2}", status.done, status.of, status.why));
  }
  if (status?.state !== "checked") return;
  const { files, errors, warnings } = status;
  const show = l10n.t("Show Problems");
  const message = l10n.t("Files checked: {0}. Errors: {1}, warnings: {2}.", files, errors, warnings);
  const choice = await window.showInformationMessage(message, show);
  if (choice === show) await commands.executeCommand("sprag.showProblems");
}
