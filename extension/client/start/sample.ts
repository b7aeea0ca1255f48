// A sample to try things with: a text that belongs to no file, so that it works in every folder and in none. One command spoils it, one
// puts it right. Knows of the sample only which line that is.
import { commands, l10n, Range, type TextDocument, Uri, WorkspaceEdit, window, workspace } from "vscode";
import type { Session } from "../session.ts";
import { showBeside } from "./show-beside.ts";

/** Its first line, which is what the tab shows too. */
const FIRST = "// A sample";
/** The line that is left out, and the one behind it. */
const LINE = '    step install Gasket per Manual "6.2"\n';
const NEXT = "    step lift Cover with Hoist\n";

export async function openSample({ context }: Session): Promise<void> {
  const open = openedSample();
  if (open !== undefined) {
    await showBeside(open.uri);
    return;
  }
  const bytes = await workspace.fs.readFile(Uri.joinPath(context.extensionUri, "media", "sample.sprag"));
  const content = new TextDecoder().decode(bytes);
  const document = await workspace.openTextDocument({ language: "sprag", content });
  await showBeside(document.uri);
}

/** Leaves out the gasket, which has an error for its consequence. */
export async function spoilSample(): Promise<void> {
  const document = openedSample();
  const at = document?.getText().indexOf(LINE) ?? -1;
  if (document === undefined || at < 0) return tellNothing();
  await replace(document, at, at + LINE.length, "");
}

/** Puts the gasket in again, ahead of the cover. */
export async function mendSample(): Promise<void> {
  const document = openedSample();
  const text = document?.getText() ?? "";
  const at = text.indexOf(NEXT);
  if (document === undefined || at < 0 || text.includes(LINE)) return tellNothing();
  await replace(document, at, at, LINE);
}

async function replace(document: TextDocument, from: number, to: number, text: string): Promise<void> {
  const edit = new WorkspaceEdit();
  edit.replace(document.uri, new Range(document.positionAt(from), document.positionAt(to)), text);
  await workspace.applyEdit(edit);
  await showBeside(document.uri, document.positionAt(from));
}

async function tellNothing(): Promise<void> {
  const open = l10n.t("Open the Sample");
  const choice = await window.showInformationMessage(
    l10n.t("There is nothing to do: the sample is not open, or stands so already."),
    open,
  );
  if (choice === open) await commands.executeCommand("sprag.openSample");
}

function openedSample(): TextDocument | undefined {
  return workspace.textDocuments.find(
    (document) => document.isUntitled && document.languageId === "sprag" && document.getText().startsWith(`${FIRST}\n`),
  );
}
