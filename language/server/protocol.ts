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
  /** Where the folder of typefaces is that came with the client; beside the server if absent. A URI. */
  readonly assets?: string;
  /** Settings to begin with, until the client is asked for its section `sprag`. */
  readonly settings?: Partial<Settings>;
}

/**
 * A command of the client that the server may name. `sprag.export` takes `ExportArguments`, `sprag.showPlaces` takes
 * `PlacesArguments`; the others as they say.
 */
export type ClientCommand = "sprag.export" | "sprag.showPlaces" | "sprag.showRule" | "sprag.showProblems";

/** The first argument of `sprag.export`; what is left out is asked of the reader, or as the settings have it. */
export interface ExportArguments extends Partial<Pick<ExportParams, "procedure" | "as" | "units" | "repeats" | "set">> {
  readonly uri: string;
}

/** The first argument of `sprag.showPlaces`: places to be looked at from this one, as the client shows references. */
export interface PlacesArguments {
  readonly uri: string;
  readonly at: Place["range"]["start"];
  readonly places: readonly Place[];
}

/** As the protocol counts: lines and UTF-16 units from 0. */
export interface Place {
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
    /** What a wrench with an adapter is set to. */
    readonly settings: boolean;
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
  /** Contents in base 64, in the order asked; null for what is not there or cannot be read. */
  "sprag/bytes": {
    readonly params: { readonly uris: readonly string[] };
    readonly result: { readonly bytes: readonly (string | null)[] };
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
  /** An output to be looked at beside the text, with the lines that its rows come from. */
  "sprag/preview": { readonly params: PreviewParams; readonly result: PreviewAnswer };
  /** What became of a file since older texts, in order of gravity. */
  "sprag/review": { readonly params: ReviewParams; readonly result: ReviewAnswer };
  /** A rule's page as Markdown; null where there is no such code. */
  "sprag/rule": {
    readonly params: { readonly code: string };
    readonly result: { readonly code: string; readonly title: string; readonly markdown: string } | null;
  };
  /** Files that a new folder begins with, by name; the procedure last. */
  "sprag/starter": {
    readonly params: Record<string, never>;
    readonly result: { readonly files: readonly { readonly name: string; readonly text: string }[] };
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
  /** Of the fixed words; English if absent. */
  readonly language?: string;
  readonly set?: Readonly<Record<string, string>>;
}

export type ExportAnswer =
  /** `fileName` is a proposal: no folder, no character that a file system refuses. */
  | {
      readonly kind: "done";
      /** What goes into the file: as it is, or bytes in base 64. */
      readonly content: string;
      readonly encoding: "text" | "base64";
      readonly draft: boolean;
      readonly fileName: string;
    }
  /** The procedure has errors and no draft was asked for. */
  | { readonly kind: "errors"; readonly errors: number; readonly message: string; readonly remedy: string }
  | { readonly kind: "refused"; readonly message: string; readonly remedy: string };

export interface PreviewParams {
  readonly uri: string;
  /** By name; the file's first if absent, or gone. */
  readonly procedure?: string;
  /** One of those in {@link PreviewAnswer.outputs}; the first of them if there is none of this name. */
  readonly as: string;
  readonly units: Settings["units"];
  readonly repeats: "compact" | "full";
  /** Of the fixed words; English if absent. */
  readonly language?: string;
  readonly set?: Readonly<Record<string, string>>;
  /** Whether the text is checked first; else what was found last is shown, so that the answer comes at once. */
  readonly checked: boolean;
}

export type PreviewAnswer =
  | {
      readonly kind: "done";
      /** What is shown, which may be other than what was asked for. */
      readonly procedure: string;
      readonly as: string;
      readonly set: Readonly<Record<string, string>>;
      readonly content: string;
      readonly form: "html" | "svg";
      readonly figures: readonly PreviewFigure[];
      readonly rows: readonly PreviewRow[];
      /** Whether every line of the file could be read. */
      readonly whole: boolean;
      /** What can be shown instead. */
      readonly outputs: readonly string[];
      readonly procedures: OutputsAnswer["procedures"];
      readonly options: OutputsAnswer["options"];
    }
  | { readonly kind: "refused"; readonly message: string; readonly remedy: string };

/** A picture that the content only names. */
export interface PreviewFigure {
  /** A data URI of the picture's type, as the content has it; what it holds is no picture. */
  readonly src: string;
  readonly uri: string;
}

/** Lines count from 0; the last belongs to it. A row that is around another comes before it. */
export interface PreviewRow {
  /** Of an element of the page, or the `data-step` of a box of the picture. */
  readonly id: string;
  readonly uri: string;
  readonly first: number;
  readonly last: number;
}

export interface ReviewParams {
  readonly uri: string;
  /** Older texts of the file and of what it used: null for what was not there. */
  readonly old: readonly OldText[];
}

export interface OldText {
  readonly uri: string;
  readonly text: string | null;
}

export type ReviewAnswer =
  /** Older texts of these are needed too: the same request is to be sent again with them. */
  | { readonly kind: "wanted"; readonly uris: readonly string[] }
  | {
      readonly kind: "done";
      /** Most grave first. */
      readonly changes: readonly ReviewChange[];
      /** Files that can be read in part only, now or before: what is missing was not compared. */
      readonly unread: readonly string[];
    }
  | { readonly kind: "refused"; readonly message: string; readonly remedy: string };

export interface ReviewChange {
  readonly group: "safety" | "values" | "order" | "items" | "words" | "layout";
  readonly kind: string;
  readonly message: string;
  /** As a writer calls it: its number, and its name where it has one. */
  readonly step?: string;
  readonly procedure: string;
  readonly old?: Place;
  readonly new?: Place;
  /** What the check says of it that it did not say before, and the other way about: a sentence each. */
  readonly came: readonly string[];
  readonly went: readonly string[];
  /** Roles that signed, and have to look again. */
  readonly signAgain: readonly string[];
}

/** The notification `sprag/status`: what the checking of folders and open files is doing. */
export type Status =
  | { readonly state: "reading"; readonly done: number; readonly of: number }
  | { readonly state: "checking"; readonly done: number; readonly of: number }
  | { readonly state: "checked"; readonly files: number; readonly errors: number; readonly warnings: number }
  /** Cancelled, or a folder could not be read: `why` is a sentence for the writer. */
  | { readonly state: "stopped"; readonly done: number; readonly of: number; readonly why: string };
