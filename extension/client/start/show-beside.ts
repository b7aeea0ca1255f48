// Where what the walkthrough opens goes: beside it, among the texts that are there already, and to stay. Knows no text.
import { type Position, Range, type Uri, ViewColumn, window } from "vscode";

/** @param at a line to be seen */
export async function showBeside(uri: Uri, at?: Position): Promise<void> {
  const open = window.visibleTextEditors;
  const own = open.find(({ document }) => document.uri.toString() === uri.toString());
  const other = open.find(({ document }) => document.languageId === "sprag");
  const viewColumn = (own ?? other)?.viewColumn ?? ViewColumn.Beside;
  const selection = at === undefined ? {} : { selection: new Range(at, at) };
  await window.showTextDocument(uri, { viewColumn, preview: false, ...selection });
}
