// All that one client has open: its folders, its files, its settings; and the one way in which a feature is asked. Knows no
// feature.
import { URI, UriUtils } from "langium";
import {
  type CancellationToken,
  type ClientCapabilities,
  type Connection,
  LSPErrorCodes,
  ResponseError,
} from "vscode-languageserver";
import type { Fonts } from "#outputs/index.ts";
import { mustBeAddress } from "./address.ts";
import type { Files } from "./files.ts";
import { type Folder, folderAt } from "./folder.ts";
import type { ClientCommand, Settings } from "./protocol.ts";
import { type FileView, viewOf } from "./view.ts";

export interface Session {
  readonly connection: Connection;
  readonly client: ClientCapabilities;
  readonly commands: ReadonlySet<ClientCommand>;
  readonly tellsStatus: boolean;
  /** Typefaces for outputs that embed them. Rejects where they cannot be read. */
  readonly fonts: () => Promise<Fonts>;
  /** Folders that the client opened, and the places of files that were opened alone. */
  readonly folders: () => readonly Folder[];
  readonly isListed: (folder: Folder) => boolean;
  /**
   * The folder a file belongs to: the deepest that holds it, made for it where there is none.
   * @throws ResponseError where it is no URI
   */
  readonly folderOf: (uri: string) => Folder;
  /** Whether a file of a folder belongs to it, and not to a folder inside it that the client opened too. */
  readonly owns: (folder: Folder, path: string) => boolean;
  /** Every folder that can see a file: the one it belongs to first, then those around that. */
  readonly foldersAround: (uri: string) => readonly Folder[];
  readonly addFolder: (uri: string) => Folder;
  /** Gives what was there; what is open in it belongs elsewhere from now on. */
  readonly removeFolder: (uri: string) => Folder | undefined;
  /** Forgets the place of files opened alone where none is open any more. */
  readonly tidy: (folder: Folder) => void;
  readonly settings: () => Settings;
  readonly setSettings: (settings: unknown) => void;
  /** Resolves when the client was asked for its settings at the start. */
  readonly settingsKnown: () => Promise<void>;
  readonly whenSettingsKnown: (promise: Promise<void>) => void;
  /**
   * Answers a request about one file: waits a turn, so that a cancellation or a newer text can come first, reads what the file
   * uses, and gives `none` where the file is not known.
   * @throws ResponseError where the client no longer wants it
   */
  readonly ask: <Result>(
    uri: string,
    token: CancellationToken,
    answer: (view: FileView) => Result | Promise<Result>,
    none: Result,
  ) => Promise<Result>;
  /** Resolves when every listed folder has been read. */
  readonly foldersRead: () => Promise<void>;
  readonly whenFoldersRead: (promise: Promise<void>) => void;
}

const DEFAULT_SETTINGS: Settings = {
  inlayHints: { stepNumbers: true, otherUnits: true, repeats: true, settings: true },
  units: "both",
  checkFolder: true,
  crib: "",
};

export interface SessionStart {
  readonly connection: Connection;
  readonly client: ClientCapabilities;
  readonly commands: readonly ClientCommand[];
  readonly tellsStatus: boolean;
  readonly files: Files;
  /** URI of the folder that holds the typefaces. */
  readonly assets: string;
  readonly settings: unknown;
  /** ISO date. */
  readonly today: () => string;
}

export function createSession(start: SessionStart): Session {
  const { connection, client, commands, tellsStatus, files, assets, settings: first, today } = start;
  const listed = new Map<string, Folder>();
  const alone = new Map<string, Folder>();
  let settings = settingsFrom(first);
  const crib = (): string => settings.crib;
  let reading: Promise<void> = Promise.resolve();
  let asking: Promise<void> = Promise.resolve();
  const folders = (): readonly Folder[] => [...listed.values(), ...alone.values()];
  const folderOf = (uri: string): Folder => {
    mustBeAddress(uri);
    const holding = [...listed.values()].filter((folder) => folder.pathOf(uri) !== null);
    const deepest = holding.sort((a, b) => b.uri.length - a.uri.length)[0];
    if (deepest !== undefined) return deepest;
    const parsed = URI.parse(uri);
    const place = parsed.path.includes("/") ? UriUtils.dirname(parsed).toString() : `${parsed.scheme}:`;
    const known = alone.get(place) ?? folderAt(place, files, today, crib);
    alone.set(place, known);
    return known;
  };
  const owns = (folder: Folder, path: string): boolean => {
    const inner = [...listed.values()].filter(({ uri }) => uri.startsWith(`${folder.uri}/`));
    return inner.length === 0 || inner.every((one) => one.pathOf(folder.uriOf(path)) === null);
  };
  return {
    connection,
    client,
    commands: new Set(commands),
    tellsStatus,
    fonts: async () => {
      const [regular, bold] = await files.bytes(
        ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"].map((name) => `${assets}/${name}`),
      );
      if (regular == null || bold == null) throw new Error(`no typefaces in ${assets}`);
      return { regular, bold };
    },
    folders,
    isListed: (folder) => listed.get(folder.uri) === folder,
    folderOf,
    owns,
    foldersAround: (uri) => {
      const own = folderOf(uri);
      return [own, ...[...listed.values()].filter((folder) => folder !== own && folder.pathOf(uri) !== null)];
    },
    addFolder: (uri) => {
      const folder = folderAt(uri, files, today, crib);
      listed.set(folder.uri, folder);
      // What was opened alone before belongs to it now.
      for (const [place, other] of alone) {
        for (const { uri: opened, text, version } of other.open.values())
          if (folder.pathOf(opened) !== null) {
            folder.show(opened, text, version);
            alone.delete(place);
          }
      }
      return folder;
    },
    removeFolder: (uri) => {
      const key = folderAt(uri, files, today).uri;
      const gone = listed.get(key);
      listed.delete(key);
      for (const { uri: opened, text, version } of gone?.open.values() ?? [])
        folderOf(opened).show(opened, text, version);
      return gone;
    },
    tidy: (folder) => {
      if (folder.open.size === 0 && alone.get(folder.uri) === folder) alone.delete(folder.uri);
    },
    settings: () => settings,
    setSettings: (given) => {
      settings = settingsFrom(given);
    },
    ask: async (uri, token, answer, none) => {
      await turn();
      stopIfCancelled(token);
      const folder = folderOf(uri);
      const path = folder.pathOf(uri);
      if (path === null) return none;
      const workspace = await folder.settled();
      stopIfCancelled(token);
      const view = viewOf(folder, workspace, path);
      return view === null ? none : answer(view);
    },
    settingsKnown: () => asking,
    whenSettingsKnown: (promise) => {
      asking = promise;
    },
    foldersRead: () => reading,
    whenFoldersRead: (promise) => {
      reading = promise;
    },
  };
}

/** Lets everything that has come in meanwhile be heard first. */
export function turn(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}

export function stopIfCancelled(token: CancellationToken): void {
  if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, "no longer wanted");
}

/** Settings as a client gives them, whatever it gives: what is not understood is as by default. */
function settingsFrom(given: unknown): Settings {
  const { inlayHints, units, checkFolder, crib } = recordOf(given);
  const hints = recordOf(inlayHints);
  const flag = (value: unknown, otherwise: boolean): boolean => (typeof value === "boolean" ? value : otherwise);
  const by = DEFAULT_SETTINGS;
  return {
    inlayHints: {
      stepNumbers: flag(hints.stepNumbers, by.inlayHints.stepNumbers),
      otherUnits: flag(hints.otherUnits, by.inlayHints.otherUnits),
      repeats: flag(hints.repeats, by.inlayHints.repeats),
      settings: flag(hints.settings, by.inlayHints.settings),
    },
    units: units === "si" || units === "us" ? units : by.units,
    checkFolder: flag(checkFolder, by.checkFolder),
    // As a writer types it: `./shop/crib.sprag`, or with the slashes of another system.
    crib:
      typeof crib === "string"
        ? crib
            .trim()
            .replaceAll("\\", "/")
            .replace(/^(\.?\/)+/, "")
            .normalize("NFC")
        : by.crib,
  };
}

type Given<Name extends string> = { readonly [name in Name]?: unknown };

function recordOf(
  value: unknown,
): Given<"inlayHints" | "units" | "checkFolder" | "crib" | keyof Settings["inlayHints"]> {
  return typeof value === "object" && value !== null ? value : {};
}
