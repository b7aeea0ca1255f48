// `sprag serve` as it is shipped: a process of its own that an editor speaks to over standard input and output.
import { type ChildProcessWithoutNullStreams, spawn } from "node:child_process";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import {
  createProtocolConnection,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver-protocol/node";
import { folderWith } from "#harness/command.ts";
import { shipped } from "#harness/shipped.ts";

const command = shipped();

const LIBRARY = 'part Cover "inspection cover"\n';
const FAULTY = 'use "library.sprag"\n\nprocedure Work "Work" {\n  step install Covr\n}\n';

interface Served {
  readonly process: ChildProcessWithoutNullStreams;
  readonly connection: ProtocolConnection;
  /** What it wrote on standard error. */
  readonly errors: () => string;
  /** Resolves with the status, or the signal that ended it. */
  readonly ended: Promise<number | string | null>;
  readonly initialize: (folder: string, processId?: number) => Promise<unknown>;
  /** The next findings told of a file. */
  readonly told: (uri: string) => Promise<PublishDiagnosticsParams>;
  readonly open: (uri: string, text: string) => Promise<void>;
}

function serve(...args: readonly string[]): Served {
  const child = spawn(process.execPath, [command, "serve", ...args]);
  onTestFinished(() => void child.kill("SIGKILL"));
  let errors = "";
  child.stderr.on("data", (data) => {
    errors += String(data);
  });
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const waiting = new Map<string, (told: PublishDiagnosticsParams) => void>();
  connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) =>
    waiting.get(params.uri)?.(params),
  );
  connection.listen();
  return {
    process: child,
    connection,
    errors: () => errors,
    ended: new Promise((done) => child.on("exit", (status, signal) => done(status ?? signal))),
    initialize: async (folder, processId) => {
      const result = await connection.sendRequest("initialize", {
        processId: processId ?? null,
        rootUri: null,
        workspaceFolders: [{ uri: pathToFileURL(folder).href, name: "shop" }],
        capabilities: {},
      });
      await connection.sendNotification("initialized", {});
      return result;
    },
    told: (uri) => new Promise((done) => waiting.set(uri, done)),
    open: (uri, text) =>
      connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "sprag", version: 1, text },
      }),
  };
}

test.each([[[]], [["--stdio"]], [["--stdio", `--clientProcessId=${process.pid}`]]])(
  "started with %j: finds, answers, and ends well",
  async (args) => {
    const folder = folderWith({ "library.sprag": LIBRARY, "work.sprag": FAULTY });
    const uri = pathToFileURL(join(folder.path, "work.sprag")).href;
    const { connection, ended, errors, initialize, open, told } = serve(...args);
    expect(await initialize(folder.path)).toMatchObject({ serverInfo: { name: "Sprag" } });
    const first = told(uri);
    await open(uri, FAULTY);
    expect((await first).diagnostics).toMatchObject([{ code: "names.unknown" }]);
    const hints = await connection.sendRequest<readonly { label: string }[]>("textDocument/inlayHint", {
      textDocument: { uri },
      range: { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } },
    });
    expect(hints.map(({ label }) => label)).toEqual(["1"]);
    expect(await connection.sendRequest("shutdown")).toBeNull();
    await connection.sendNotification("exit");
    expect(await ended).toBe(0);
    expect(errors()).toBe("");
  },
);

test("an editor that goes away without a word ends it, with another status", async () => {
  const folder = folderWith({ "work.sprag": FAULTY });
  const { ended, initialize, process: child } = serve();
  await initialize(folder.path);
  child.stdin.end();
  expect(await ended).toBe(1);
});

test("it ends when the process that started the editor's side is gone", async () => {
  const parent = spawn(process.execPath, ["-e", "setTimeout(() => {}, 60_000)"]);
  const folder = folderWith({ "work.sprag": FAULTY });
  const { ended, initialize } = serve();
  await initialize(folder.path, parent.pid);
  parent.kill("SIGKILL");
  expect(await ended).toBe(1);
}, 20_000);

test("what is no message is no reason to write anything but the protocol", async () => {
  const { ended, process: child } = serve();
  let out = "";
  child.stdout.on("data", (data) => {
    out += String(data);
  });
  child.stdin.end("Content-Length: 7\r\n\r\nnot {it");
  await ended;
  for (const message of out.split(/Content-Length: \d+\r\n\r\n/).filter((one) => one !== ""))
    expect(JSON.parse(message)).toMatchObject({ jsonrpc: "2.0" });
});

test("killed in the middle of its work, and started again with what was open: everything is told again", async () => {
  const folder = folderWith({ "library.sprag": LIBRARY, "work.sprag": "" });
  const uri = pathToFileURL(join(folder.path, "work.sprag")).href;
  const first = serve();
  await first.initialize(folder.path);
  const before = first.told(uri);
  await first.open(uri, FAULTY);
  const { diagnostics } = await before;
  expect(diagnostics).not.toEqual([]);
  // Not waited for: it is killed while it works on this.
  void first.connection
    .sendRequest("textDocument/semanticTokens/full", { textDocument: { uri } })
    .catch(() => undefined);
  first.process.kill("SIGKILL");
  expect(await first.ended).toBe("SIGKILL");
  const second = serve();
  await second.initialize(folder.path);
  const again = second.told(uri);
  await second.open(uri, FAULTY);
  expect((await again).diagnostics).toEqual(diagnostics);
});
