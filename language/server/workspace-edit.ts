// Changes of texts as the client takes them: with the versions they are meant for where it can tell versions apart.
import type { ClientCapabilities, SnippetTextEdit, TextEdit, WorkspaceEdit } from "vscode-languageserver";
import type { Range } from "#syntax/lines.ts";
import type { Folder } from "./folder.ts";

export interface TextChange {
  /** From the folder's root. */
  readonly path: string;
  readonly range: Range;
  readonly newText: string;
  /** Whether the new text is a snippet with places to fill in. */
  readonly isSnippet?: boolean;
}

/** Whether edits may be snippets; they need versions too. */
export function canTakeSnippets({ workspace }: ClientCapabilities): boolean {
  return workspace?.workspaceEdit?.documentChanges === true && workspace.workspaceEdit.snippetEditSupport === true;
}

export function workspaceEdit(
  folder: Folder,
  changes: readonly TextChange[],
  { workspace }: ClientCapabilities,
): WorkspaceEdit {
  const byPath = new Map<string, TextChange[]>();
  for (const change of changes) byPath.set(change.path, [...(byPath.get(change.path) ?? []), change]);
  if (workspace?.workspaceEdit?.documentChanges !== true)
    return {
      changes: Object.fromEntries([...byPath].map(([path, own]) => [folder.uriOf(path), own.map(plain)])),
    };
  return {
    documentChanges: [...byPath].map(([path, own]) => ({
      textDocument: { uri: folder.uriOf(path), version: folder.open.get(path)?.version ?? null },
      edits: own.map((change) => (change.isSnippet === true ? snippet(change) : plain(change))),
    })),
  };
}

function plain({ range, newText }: TextChange): TextEdit {
  return { range, newText };
}

function snippet({ range, newText }: TextChange): SnippetTextEdit {
  return { range, snippet: { kind: "snippet", value: newText } };
}
