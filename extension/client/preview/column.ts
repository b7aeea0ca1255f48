// Where a preview goes: beside its text, and below it where that would be a column too many. Knows no preview.
import { commands, type TextEditor, ViewColumn, window } from "vscode";

/** A column of its own or one that is there; makes room below the text that is the last of several columns. */
export async function columnFor(editor: TextEditor | undefined): Promise<ViewColumn> {
  const column = editor?.viewColumn;
  if (editor === undefined || column === undefined) return ViewColumn.Beside;
  // Beside the walkthrough, say: three columns are too narrow to read any of them.
  if (column > ViewColumn.One && column === window.tabGroups.all.length) {
    await window.showTextDocument(editor.document, column);
    await commands.executeCommand("workbench.action.newGroupBelow");
    await commands.executeCommand("workbench.action.focusPreviousGroup");
  }
  return column + 1;
}
