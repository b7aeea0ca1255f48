// The language server: takes the client's word for what it can do, keeps its folders and texts, and starts every feature.
import {
  CodeLensRefreshRequest,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ErrorCodes,
  FileChangeType,
  type FileEvent,
  type InitializeParams,
  ResponseError,
  type ServerCapabilities,
  TextDocumentSyncKind,
  WatchKind,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import about from "../package.json" with { type: "json" };
import { isAddress } from "./address.ts";
import { type Checking, createChecking } from "./checking.ts";
import { FEATURES } from "./features.ts";
import { clientFiles, type Files } from "./files.ts";
import type { Folder } from "./folder.ts";
import { answerOwn } from "./own-requests.ts";
import type { StartOptions } from "./protocol.ts";
import { createSession, type Session } from "./session.ts";
import { wordsFor } from "./words.ts";

export interface Around {
  /** Files for clients that leave reading to the server; absent where there is no disk. */
  readonly disk?: Files;
  /** URI of the folder with the typefaces, for a client that names none. */
  readonly assets?: string;
  /** ISO date. */
  readonly today: () => string;
}

/** Serves one client until its connection ends. */
export function startServer(connection: Connection, around: Around): void {
  let session: Session | undefined;
  let checking: Checking | undefined;
  const documents = new Map<string, TextDocument>();
  /** What notifications have set off. */
  const underWay = new Set<Promise<void>>();

  connection.onInitialize((params) => {
    const options = (params.initializationOptions ?? {}) as StartOptions;
    const files = options.files === "client" || around.disk === undefined ? clientFiles(connection) : around.disk;
    session = createSession({
      connection,
      client: params.capabilities,
      commands: Array.isArray(options.commands) ? options.commands : [],
      tellsStatus: options.status === true,
      files,
      assets: options.assets ?? around.assets ?? "",
      settings: options.settings,
      today: around.today,
    });
    const say = wordsFor(params.locale);
    checking = createChecking(session, say);
    for (const uri of foldersOf(params)) session.addFolder(uri);
    for (const feature of FEATURES) feature.start(session, say);
    return {
      serverInfo: { name: "Sprag", version: about.version },
      capabilities: capabilitiesFor(params),
    };
  });

  connection.onInitialized(() => {
    if (session === undefined || checking === undefined) return;
    if (session.client.workspace?.workspaceFolders === true)
      connection.workspace.onDidChangeWorkspaceFolders((event) => meanwhile(() => foldersChanged(event)));
    beginFolders(connection, session, checking);
  });

  /** Lets nobody wait, and answers for what goes wrong. */
  const meanwhile = (work: () => Promise<void>): void => {
    const done = work()
      .catch((error: unknown) => connection.console.error(`Sprag: ${error}`))
      .finally(() => underWay.delete(done));
    underWay.add(done);
  };
  const configurationChanged = async (settings: unknown): Promise<void> => {
    if (session === undefined || checking === undefined) return;
    const before = session.settings();
    await readSettings(connection, session, settings);
    refreshHints(connection, session);
    if (!session.settings().checkFolder) checking.settled();
    else if (!before.checkFolder) void checking.all(session.folders().filter(session.isListed));
    if (session.settings().crib === before.crib) return;
    for (const folder of session.folders()) {
      await folder.settled();
      checking.changed(folder, [...new Set([...folder.paths(), ...folder.open.keys()])]);
    }
  };
  connection.onDidChangeConfiguration(({ settings }) => meanwhile(() => configurationChanged(settings)));

  connection.onDidOpenTextDocument(({ textDocument: { uri, text, version, languageId } }) => {
    documents.set(uri, TextDocument.create(uri, languageId, version, text));
    meanwhile(async () => textChanged(uri));
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    const document = documents.get(uri);
    if (document === undefined) return;
    TextDocument.update(document, contentChanges, version);
    meanwhile(async () => textChanged(uri));
  });
  const closed = async (uri: string): Promise<void> => {
    documents.delete(uri);
    for (const folder of session?.foldersAround(uri) ?? []) await closedIn(folder, uri);
  };
  const closedIn = async (folder: Folder, uri: string): Promise<void> => {
    const path = folder.pathOf(uri);
    if (session === undefined || path === null) return;
    await folder.hide(uri);
    if (folder.open.has(path)) return;
    if (!session.isListed(folder) || !folder.workspace().loaded.parsed.has(path)) checking?.forget(folder, path);
    checking?.changed(folder, [path]);
    session.tidy(folder);
  };
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => meanwhile(() => closed(uri)));
  const changedOnDisk = async (events: readonly FileEvent[]): Promise<void> => {
    const uris = events.map(({ uri }) => uri);
    const came = events.filter(({ type }) => type === FileChangeType.Created).map(({ uri }) => uri);
    for (const folder of session?.folders() ?? []) {
      const changed = await folder.refresh(uris, came);
      for (const path of changed) if (!folder.workspace().loaded.parsed.has(path)) checking?.forget(folder, path);
      if (changed.length > 0) checking?.changed(folder, changed);
    }
  };
  connection.onDidChangeWatchedFiles(({ changes }) =>
    meanwhile(() => changedOnDisk(changes.filter(({ uri }) => isAddress(uri)))),
  );
  answerOwn(connection, "sprag/atRest", async () => {
    do {
      await session?.foldersRead();
      await Promise.all(underWay);
      await checking?.idle();
    } while (underWay.size > 0);
    return null;
  });
  answerOwn(connection, "sprag/checkFolders", async () => {
    if (session === undefined || checking === undefined) throw NOT_STARTED;
    // The check that follows the first reading begins before this one, or it would end it.
    await session.foldersRead();
    const folders = session.folders().filter(session.isListed);
    return (await checking.read(folders)) ?? (await checking.all(folders));
  });

  const textChanged = (uri: string): void => {
    const document = documents.get(uri);
    if (document === undefined) return;
    for (const folder of session?.foldersAround(uri) ?? []) {
      const path = folder.pathOf(uri);
      if (path === null) continue;
      folder.show(uri, document.getText(), document.version);
      checking?.changed(folder, [path]);
    }
  };

  const foldersChanged = async ({ added, removed }: FolderChange): Promise<void> => {
    if (session === undefined || checking === undefined) return;
    const gone = removed.flatMap(({ uri }) => session?.removeFolder(uri) ?? []);
    for (const folder of gone) for (const path of folder.paths()) checking.forget(folder, path);
    const folders = added.map(({ uri }) => (session as Session).addFolder(uri));
    // What is in a folder inside another one is told of by the inner one, as long as that is there.
    for (const folder of session.folders())
      if ([...gone, ...folders].some(({ uri }) => uri.startsWith(`${folder.uri}/`)))
        checking.changed(folder, folder.paths());
    for (const uri of [...documents.keys()].filter(isAddress)) textChanged(uri);
    if (folders.length === 0) return;
    const read = checking.read(folders);
    session.whenFoldersRead(Promise.all([session.foldersRead(), read]).then(() => {}));
    const stopped = await read;
    refreshLenses(connection, session);
    if (stopped === null && session.settings().checkFolder) void checking.all(folders);
  };
  connection.listen();
}

const NOT_STARTED = new ResponseError(ErrorCodes.ServerNotInitialized, "Say “initialize” first.");

interface FolderChange {
  readonly added: readonly { readonly uri: string }[];
  readonly removed: readonly { readonly uri: string }[];
}

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): readonly string[] {
  if (workspaceFolders !== null && workspaceFolders !== undefined) return workspaceFolders.map(({ uri }) => uri);
  return rootUri === null || rootUri === undefined ? [] : [rootUri];
}

function capabilitiesFor({ capabilities: client }: InitializeParams): ServerCapabilities {
  const base: ServerCapabilities = {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
  };
  return Object.assign(base, ...FEATURES.map((feature) => feature.capabilities(client)));
}

async function registerWatches(connection: Connection, { client }: Session): Promise<void> {
  if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration === true)
    await connection.client.register(DidChangeWatchedFilesNotification.type, {
      watchers: [
        { globPattern: "**/{*.sprag,*.csv,*.svg,*.png,*.jpg,*.jpeg,.gitignore}" },
        // Folders: of one that is moved or deleted nothing is told but this.
        { globPattern: "**/*", kind: WatchKind.Create | WatchKind.Delete },
      ],
    });
  // A table is heard of as it stands on the screen; no feature is to be offered in it.
  if (client.textDocument?.synchronization?.dynamicRegistration === true) {
    const documentSelector = [{ pattern: "**/*.csv" }];
    await connection.client.register(DidOpenTextDocumentNotification.type, { documentSelector });
    const syncKind = TextDocumentSyncKind.Incremental;
    await connection.client.register(DidChangeTextDocumentNotification.type, { documentSelector, syncKind });
    await connection.client.register(DidCloseTextDocumentNotification.type, { documentSelector });
  }
  if (client.workspace?.didChangeConfiguration?.dynamicRegistration === true)
    await connection.client.register(DidChangeConfigurationNotification.type, { section: "sprag" });
}

/** Asks the client where it can be asked, else takes what it sent. */
async function readSettings(connection: Connection, session: Session, sent?: unknown): Promise<void> {
  if (session.client.workspace?.configuration === true) {
    const section = await connection.workspace.getConfiguration("sprag").catch(() => null);
    if (section !== null) session.setSettings(section);
  } else if (typeof sent === "object" && sent !== null && "sprag" in sent) session.setSettings(sent.sprag);
}

/** Names are looked up in all files, so folders are read whether or not they are checked. */
function beginFolders(connection: Connection, session: Session, checking: Checking): void {
  const asked = readSettings(connection, session);
  session.whenSettingsKnown(asked);
  const begun = (async () => {
    await registerWatches(connection, session).catch((error: unknown) => connection.console.warn(String(error)));
    await asked;
    // What was looked at before was looked at without the crib.
    if (session.settings().crib !== "")
      for (const folder of session.folders()) checking.changed(folder, [...folder.open.keys()]);
    const folders = session.folders().filter(session.isListed);
    if (folders.length === 0 || (await checking.read(folders)) !== null) return;
    if (session.settings().checkFolder) void checking.all(folders);
  })();
  session.whenFoldersRead(begun);
}

function refreshHints({ languages }: Connection, { client }: Session): void {
  if (client.workspace?.inlayHint?.refreshSupport === true) void languages.inlayHint.refresh().catch(() => {});
}

/** Who performs a procedure is known once the folder has been read. */
function refreshLenses(connection: Connection, { client }: Session): void {
  if (client.workspace?.codeLens?.refreshSupport === true)
    void connection.sendRequest(CodeLensRefreshRequest.type).catch(() => {});
}
