// The extension in a browser: the server runs in a worker, from the bundle that came with the extension.
import { type ExtensionContext, Uri, workspace } from "vscode";
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { startSession } from "./session.ts";

/** Of the browser, which the project's own types do not know. */
declare const Worker: new (url: string, options: { readonly name: string }) => ServerWorker;

interface ServerWorker {
  onerror: (() => void) | null;
  terminate(): void;
}

/** Called by the editor. */
export async function activate(context: ExtensionContext): Promise<void> {
  let running: ServerWorker | undefined;
  context.subscriptions.push({ dispose: () => running?.terminate() });
  await startSession(context, (options, died) => {
    // The client takes a worker as well, but does not know the one that the editor hands out as `Worker`.
    const start = async (): Promise<MessageTransports> => {
      running?.terminate();
      const worker = new Worker(await serverAddress(context), { name: "sprag" });
      running = worker;
      worker.onerror = died;
      return {
        reader: new BrowserMessageReader(worker as never),
        writer: new BrowserMessageWriter(worker as never),
      };
    };
    return new LanguageClient("sprag", "Sprag", start, options);
  });
}

/** Read and handed over as a blob, since a worker cannot be made from the address of an extension on another machine. */
async function serverAddress({ extensionUri }: ExtensionContext): Promise<string> {
  const program = await workspace.fs.readFile(Uri.joinPath(extensionUri, "dist", "server-worker.js"));
  return URL.createObjectURL(new Blob([program as Uint8Array<ArrayBuffer>], { type: "text/javascript" }));
}
