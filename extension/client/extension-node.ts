// The extension where there is Node: the desktop editor and remote hosts. The server runs in a process of its own, from
// the bundle that came with the extension.
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { startSession } from "./session.ts";

/**
 * What is made at a key in a long procedure outlives the usual 16 MB of new objects, and copying it was a fifth of the time.
 * `npm run bench` measures keys with the same.
 */
const ROOM_FOR_A_KEY = ["--max-semi-space-size=64"] as const;

/** Called by the editor. */
export async function activate(context: ExtensionContext): Promise<void> {
  const module = Uri.joinPath(context.extensionUri, "dist", "server.mjs").fsPath;
  const server = { module, transport: TransportKind.ipc, options: { execArgv: [...ROOM_FOR_A_KEY] } };
  await startSession(context, (options) => new LanguageClient("sprag", "Sprag", server, options));
}
