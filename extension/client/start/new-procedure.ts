// A new procedure: a text that has no name yet, with what it can begin with offered at once. Knows no text.
import { commands, window, workspace } from "vscode";
import type { Session } from "../session.ts";

export async function newProcedure({ run }: Session): Promise<void> {
  await window.showTextDocument(await workspace.openTextDocument({ language: "sprag" }));
  // Who has nothing to offer yet is asked in vain.
  await run.client();
  await commands.executeCommand("editor.action.triggerSuggest");
}
