// An editor for tests of the server: a client and the server in one process, talking the real protocol over two streams.
// Texts carry marks: `<|>` is the cursor, `<[` and `]>` hold a selection. The only place where tests start the server.
import { readFileSync } from "node:fs";
import { PassThrough } from "node:stream";
import { createConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver/node";
import {
  type ClientCapabilities,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type Range,
  type RegistrationParams,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver-protocol/node";
import type { StartOptions, Status } from "#server/protocol.ts";
import { startServer } from "#server/server.ts";
import { linesOf } from "#syntax/lines.ts";
import { assetFile } from "./fonts.ts";

export interface Editor {
  readonly initialized: InitializeResult;
  /** Requests and notifications as any client sends them. */
  readonly connection: ProtocolConnection;
  readonly uri: (path: string) => string;
  /** Opens a file that is there, or one with this text, which may carry marks. */
  readonly open: (path: string, marked?: string) => Promise<Opened>;
  /** Replaces the whole text of an open file. */
  readonly change: (path: string, text: string) => Promise<void>;
  readonly close: (path: string) => Promise<void>;
  /** The text of an open file, or of one on the "disk". */
  readonly text: (path: string) => string;
  /** What was last told of a file, once the server has come to rest. */
  readonly diagnostics: (path: string) => Promise<readonly Diagnostic[]>;
  /** Resolves when the server has nothing left to check. */
  readonly atRest: () => Promise<void>;
  readonly statuses: readonly Status[];
  /** What the server wants to hear of beside what it said at the start: method and documents. */
  readonly registered: readonly (readonly [string, unknown])[];
  /** Writes a file on the "disk" (or removes it) and tells the server. */
  readonly write: (path: string, text: string | null) => Promise<void>;
  /** Applies an edit to open files and the "disk", as a client would. */
  readonly apply: (edit: WorkspaceEdit) => Promise<void>;
  readonly stop: () => Promise<void>;
}

export interface Opened {
  readonly uri: string;
  readonly text: string;
  /** Of `<|>`, else of the end of the text. */
  readonly cursor: Position;
  /** Each `<|>` in the order of the text. */
  readonly cursors: readonly Position[];
  /** Of `<[` and `]>`; the whole text where there are none. */
  readonly selection: Range;
}

export interface EditorSetting {
  /** Path to text, below the one folder of the workspace. */
  readonly files?: Readonly<Record<string, string>>;
  readonly capabilities?: ClientCapabilities;
  readonly options?: Partial<StartOptions>;
  readonly settings?: unknown;
  /** What the client waits for before it tells its settings. */
  readonly beforeSettings?: Promise<void>;
  /** Whether the folder is opened as one; else files are opened alone. */
  readonly folder?: boolean;
  /** ISO date. */
  readonly today?: string;
  /** The language that the client shows itself in. */
  readonly locale?: string;
}

const ROOT = "file:///shop";

/** Everything that current VS Code can do, as far as the server asks about it. */
const CAPABLE: ClientCapabilities = {
  workspace: {
    applyEdit: true,
    configuration: true,
    workspaceFolders: true,
    didChangeWatchedFiles: { dynamicRegistration: false },
    workspaceEdit: { documentChanges: true, snippetEditSupport: true },
  },
  textDocument: {
    publishDiagnostics: {
      relatedInformation: true,
      versionSupport: true,
      codeDescriptionSupport: true,
      dataSupport: true,
    },
    completion: {
      completionItem: {
        snippetSupport: true,
        documentationFormat: ["markdown", "plaintext"],
        labelDetailsSupport: true,
      },
    },
    hover: { contentFormat: ["markdown", "plaintext"] },
    codeAction: { dataSupport: true, codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix"] } } },
    rename: { prepareSupport: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    definition: { linkSupport: true },
  },
  window: { workDoneProgress: false },
};

/** Starts a server for one test; `stop` it, or let {@link withEditor} do so. */
async function startEditor(setting: EditorSetting = {}): Promise<Editor> {
  const disk = new Map(Object.entries(setting.files ?? {}));
  const [up, down] = [new PassThrough(), new PassThrough()];
  const serverSide = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  startServer(serverSide, { today: () => setting.today ?? "2026-05-04" });
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const told = new Map<string, Diagnostic[]>();
  const statuses: Status[] = [];
  const texts = new Map<string, { text: string; version: number }>();
  const uri = (path: string): string => `${ROOT}/${path.split("/").map(encodeURIComponent).join("/")}`;
  const pathOf = (address: string): string => decodeURIComponent(address.slice(ROOT.length + 1));
  /** Of a file on the "disk", else of a typeface. */
  const bytesAt = (address: string): Buffer | null => {
    if (!address.startsWith(`${ROOT}/`)) return readFileSync(assetFile(address.slice(address.lastIndexOf("/") + 1)));
    const text = disk.get(pathOf(address));
    return text === undefined ? null : Buffer.from(text);
  };

  connection.onNotification(
    "textDocument/publishDiagnostics",
    ({ uri: of, diagnostics }) => void told.set(of, diagnostics),
  );
  connection.onNotification("sprag/status", (status: Status) => void statuses.push(status));
  connection.onRequest("workspace/configuration", async ({ items }) => {
    await setting.beforeSettings;
    return items.map(() => setting.settings ?? null);
  });
  const registered: (readonly [string, unknown])[] = [];
  connection.onRequest("client/registerCapability", ({ registrations }: RegistrationParams) => {
    for (const { method, registerOptions } of registrations)
      registered.push([method, registerOptions?.documentSelector]);
    return null;
  });
  connection.onRequest("window/workDoneProgress/create", () => null);
  connection.onRequest("sprag/list", () => ({
    uris: [...disk.keys()].filter((path) => /\.(?:sprag|gitignore)$/.test(path)).map(uri),
  }));
  connection.onRequest("sprag/read", ({ uris }) => ({
    texts: uris.map((one: string) => disk.get(pathOf(one)) ?? null),
  }));
  // What lies beside the server, such as typefaces.
  connection.onRequest("sprag/bytes", ({ uris }) => ({
    bytes: uris.map((one: string) => bytesAt(one)?.toString("base64") ?? null),
  }));
  connection.onRequest("sprag/present", ({ uris }) => ({ present: uris.map((one: string) => disk.has(pathOf(one))) }));
  connection.listen();

  const options: StartOptions = {
    files: "client",
    status: true,
    commands: ["sprag.export", "sprag.showPlaces", "sprag.showRule", "sprag.showProblems"],
    ...setting.options,
  };
  const initialized = await connection.sendRequest<InitializeResult>("initialize", {
    processId: null,
    rootUri: null,
    workspaceFolders: setting.folder === false ? null : [{ uri: ROOT, name: "shop" }],
    capabilities: setting.capabilities ?? CAPABLE,
    initializationOptions: options,
    ...(setting.locale === undefined ? {} : { locale: setting.locale }),
  });
  await connection.sendNotification("initialized", {});

  const atRest = async (): Promise<void> => void (await connection.sendRequest("sprag/atRest"));
  const change = async (path: string, text: string): Promise<void> => {
    const version = (texts.get(path)?.version ?? 0) + 1;
    texts.set(path, { text, version });
    await connection.sendNotification("textDocument/didChange", {
      textDocument: { uri: uri(path), version },
      contentChanges: [{ text }],
    });
  };
  const write = async (path: string, text: string | null): Promise<void> => {
    const type = text === null ? 3 : disk.has(path) ? 2 : 1;
    if (text === null) disk.delete(path);
    else disk.set(path, text);
    await connection.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri: uri(path), type }] });
  };
  return {
    initialized,
    connection,
    uri,
    open: async (path, marked) => {
      const opened = unmarked(marked ?? disk.get(path) ?? "");
      texts.set(path, { text: opened.text, version: 1 });
      await connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri: uri(path), languageId: "sprag", version: 1, text: opened.text },
      });
      return { uri: uri(path), ...opened };
    },
    change,
    close: async (path) => {
      texts.delete(path);
      await connection.sendNotification("textDocument/didClose", { textDocument: { uri: uri(path) } });
    },
    text: (path) => texts.get(path)?.text ?? disk.get(path) ?? "",
    diagnostics: async (path) => {
      await atRest();
      return told.get(uri(path)) ?? [];
    },
    atRest,
    statuses,
    registered,
    write,
    apply: async (edit) => {
      for (const [address, edits] of editsOf(edit)) {
        const path = pathOf(address);
        const open = texts.get(path);
        const text = edited(open?.text ?? disk.get(path) ?? "", edits);
        if (open === undefined) await write(path, text);
        else await change(path, text);
      }
    },
    stop: async () => {
      await atRest();
      await connection.sendRequest("shutdown");
      connection.dispose();
      serverSide.dispose();
    },
  };
}

/** Runs a test with an editor and stops it whatever happens. */
export async function withEditor<Result>(
  setting: EditorSetting,
  run: (editor: Editor) => Promise<Result>,
): Promise<Result> {
  const editor = await startEditor(setting);
  try {
    return await run(editor);
  } finally {
    await editor.stop();
  }
}

/** A text without its marks, and where they were. */
function unmarked(marked: string): Omit<Opened, "uri"> {
  const offsets: { mark: string; offset: number }[] = [];
  let text = "";
  let from = 0;
  for (const found of marked.matchAll(/<\|>|<\[|\]>/g)) {
    text += marked.slice(from, found.index);
    offsets.push({ mark: found[0], offset: text.length });
    from = found.index + found[0].length;
  }
  text += marked.slice(from);
  const lines = linesOf(text);
  const at = (mark: string): Position[] =>
    offsets.filter((one) => one.mark === mark).map(({ offset }) => lines.position(offset));
  const cursors = at("<|>");
  const [start = lines.position(0)] = at("<[");
  const [end = lines.position(text.length)] = at("]>");
  return { text, cursors, cursor: cursors[0] ?? lines.position(text.length), selection: { start, end } };
}

/** The text after edits that do not overlap, given in any order. */
export function edited(text: string, edits: readonly TextEdit[]): string {
  const lines = linesOf(text);
  const offset = ({ line, character }: Position): number => lines.offset(line) + character;
  const inOrder = edits
    .map((edit, at) => ({ start: offset(edit.range.start), end: offset(edit.range.end), newText: edit.newText, at }))
    .sort((a, b) => a.start - b.start || a.at - b.at);
  let result = "";
  let from = 0;
  for (const { start, end, newText } of inOrder) {
    if (start < from) throw new Error("edits overlap");
    result += text.slice(from, start) + newText;
    from = end;
  }
  return result + text.slice(from);
}

function editsOf({ changes, documentChanges }: WorkspaceEdit): readonly (readonly [string, readonly TextEdit[]])[] {
  if (documentChanges === undefined) return Object.entries(changes ?? {});
  return documentChanges.map((change) => {
    if (!("textDocument" in change)) throw new Error(`the test's editor cannot ${change.kind} a file`);
    return [change.textDocument.uri, change.edits.map(plainEdit)] as const;
  });
}

/** A snippet as its text would stand before anything is typed into it. */
function plainEdit(edit: unknown): TextEdit {
  const { range, newText, snippet } = edit as { range: Range; newText?: string; snippet?: { value: string } };
  const filled = snippet?.value.replace(
    /\$\{\d+:((?:[^}\\]|\\.)*)\}|\$\d+|\\([$}\\])/g,
    (_, text, escaped) => text ?? escaped ?? "",
  );
  return { range, newText: newText ?? filled ?? "" };
}
