// What server and client say to each other beyond the standard protocol. Types only: the extension takes nothing else of
// the language, and any other editor can do without all of it.

/** `initializationOptions` of the client. */
export interface StartOptions {
  /** Who reads files: the client, on request (virtual folders, a browser), or the server, from the disk. The disk if absent. */
  readonly files?: "client" | "disk";
  /** Commands that the client offers for code lenses and fixes; a lens without its command is not sent. */
  readonly commands?: readonly ClientCommand[];
  /** Whether the client wants to hear `sprag/status`. */
  readonly status?: boolean;
  /** Settings to begin with, until the client is asked for its section `sprag`. */
  readonly settings?: Partial<Settings>;
}

/**
 * A command of the client that the server may name. `sprag.export` takes `ExportArguments`, `sprag.showPlaces` takes
 * `PlacesArguments`; the others as they say.
 */
export type ClientCommand = "sprag.export" | "sprag.showPlaces" | "sprag.showRule" | "sprag.showProblems";

/** The first argument of `sprag.export`. */
export interface ExportArguments {
  readonly uri: string;
  readonly procedure?: string;
}

/** The first argument of `sprag.showPlaces`: places to be looked at from this one, as the client shows references. */
export interface PlacesArguments {
  readonly uri: string;
  readonly at: Place["range"]["start"];
  readonly places: readonly Place[];
}

/** As the protocol counts: lines and UTF-16 units from 0. */
interface Place {
  readonly uri: string;
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
}

/** The section `sprag` of the client's settings. */
export interface Settings {
  readonly inlayHints: {
    readonly stepNumbers: boolean;
    readonly otherUnits: boolean;
    readonly repeats: boolean;
  };
  /** Unit systems that hovers and exports give. */
  readonly units: "si" | "us" | "both";
  /** Whether files that are not open are checked too. */
  readonly checkFolder: boolean;
  /** The file with the shop's crib, from the folder; empty where there is none. */
  readonly crib: string;
}

/** Requests of the server to the client: name to what goes and what comes back. */
export interface AskedOfClient {
  /** All files that end in `.sprag` below a folder, and all `.gitignore` there: what they leave out, the server leaves out. */
  "sprag/list": { readonly params: { readonly folder: string }; readonly result: { readonly uris: readonly string[] } };
  /** Texts, in the order asked; null for what is not there or cannot be read. */
  "sprag/read": {
    readonly params: { readonly uris: readonly string[] };
    readonly result: { readonly texts: readonly (string | null)[] };
  };
  /** Which of these files are there, in the order asked. */
  "sprag/present": {
    readonly params: { readonly uris: readonly string[] };
    readonly result: { readonly present: readonly boolean[] };
  };
}

/** Requests of the client to the server. */
export interface AskedOfServer {
  /** The procedures of a file and what can be made of each. */
  "sprag/outputs": { readonly params: { readonly uri: string }; readonly result: OutputsAnswer };
  "sprag/export": { readonly params: ExportParams; readonly result: ExportAnswer };
  /** A rule's page as Markdown; null where there is no such code. */
  "sprag/rule": {
    readonly params: { readonly code: string };
    readonly result: { readonly code: string; readonly title: string; readonly markdown: string } | null;
  };
  /** Answered once all that has come in so far is checked. */
  "sprag/atRest": { readonly params: Record<string, never>; readonly result: null };
  /** Checks all files of all folders again; ends when that is done or was cancelled. */
  "sprag/checkFolders": { readonly params: Record<string, never>; readonly result: Status };
}

export interface OutputsAnswer {
  readonly procedures: readonly { readonly name: string; readonly title: string }[];
  readonly outputs: readonly { readonly as: string; readonly formats: readonly string[] }[];
  /** Options that the procedures of the file ask about, with their choices. */
  readonly options: readonly { readonly name: string; readonly title: string; readonly choices: readonly string[] }[];
}

export interface ExportParams {
  readonly uri: string;
  readonly procedure?: string;
  readonly as: string;
  readonly format: string;
  readonly units: Settings["units"];
  readonly repeats: "compact" | "full";
  readonly draft: boolean;
  readonly set?: Readonly<Record<string, string>>;
}

export type ExportAnswer =
  /** `fileName` is a proposal: no folder, no character that a file system refuses. */
  | { readonly kind: "done"; readonly text: string; readonly draft: boolean; readonly fileName: string }
  /** The procedure has errors and no draft was asked for. */
  | { readonly kind: "errors"; readonly errors: number; readonly message: string; readonly remedy: string }
  | { readonly kind: "refused"; readonly message: string; readonly remedy: string };

/** The notification `sprag/status`: what the checking of folders and open files is doing. */
export type Status =
  | { readonly state: "reading"; readonly done: number; readonly of: number }
  | { readonly state: "checking"; readonly done: number; readonly of: number }
  | { readonly state: "checked"; readonly files: number; readonly errors: number; readonly warnings: number }
  /** Cancelled, or a folder could not be read: `why` is a sentence for the writer. */
  | { readonly state: "stopped"; readonly done: number; readonly of: number; readonly why: string };
