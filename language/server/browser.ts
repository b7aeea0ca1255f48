// What a web worker runs: the server over the worker's own messages. Files come from the client alone.
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from "vscode-languageserver/browser";
import { startServer } from "./server.ts";

// The project's types are those of Node; the worker's own scope is all that is needed of the browser's.
const worker = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];
const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(worker),
  new BrowserMessageWriter(worker),
);
startServer(connection, { today: () => new Date().toISOString().slice(0, 10) });
