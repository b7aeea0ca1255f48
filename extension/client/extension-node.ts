// The extension where there is Node: the desktop editor and remote hosts. The server runs in a process of its own, from
// the bundle that came with the extension.
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { startSession } from "./session.ts";

/** Called by the editor. */
export async function activate(context: ExtensionContext): Promise<void> {
  const module = Uri.joinPath(context.extensionUri, "dist", "server.mjs").fsPath;
  const server = { module, transport: TransportKind.ipc };
  await startSession(context, (options) => new LanguageClient("sprag", "Sprag", server, options));
}
