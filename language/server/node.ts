// The server in a process of its own: on standard input and output, or on the channel that VS Code gives its child.
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { diskFiles } from "./disk.ts";
import { startServer } from "./server.ts";

/**
 * Serves on two streams. Ends the process when the client says so, when the input ends, or when the client's process is gone.
 * Standard output belongs to the client alone then.
 * @param assets the address of the folder with fonts
 */
export function serveOn(input: NodeJS.ReadableStream, output: NodeJS.WritableStream, assets: string): void {
  startServer(createConnection(ProposedFeatures.all, input, output), { disk: diskFiles, today, assets });
}

/** Serves on the channel that the command line names (`--node-ipc`, `--stdio`, `--socket=N`). */
export function serveAsChild(): void {
  startServer(createConnection(ProposedFeatures.all), { disk: diskFiles, today });
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}
