// What the editor was told of each file: its findings, and how many they are. Knows not when a file is checked.
import type { ReportedFinding } from "#workspace/report.ts";
import { diagnosticOf } from "./diagnostics.ts";
import type { Folder } from "./folder.ts";
import type { Status } from "./protocol.ts";
import type { Session } from "./session.ts";

/** A file of a folder. */
export interface FolderFile {
  readonly folder: Folder;
  readonly path: string;
}

export function keyOf({ folder, path }: FolderFile): string {
  return `${folder.uri}\n${path}`;
}

export interface Published {
  /** @param version of the text on the screen; undefined for a file that is not open */
  readonly show: (file: FolderFile, findings: readonly ReportedFinding[], version: number | undefined) => void;
  readonly remove: (file: FolderFile) => void;
  /** All that is known, taken together. */
  readonly status: () => Status;
}

export function createPublished(session: Session): Published {
  const shown = new Map<string, string>();
  const counts = new Map<string, { readonly errors: number; readonly warnings: number }>();
  const publish = (file: FolderFile, findings: readonly ReportedFinding[], version: number | undefined): void => {
    const { folder, path } = file;
    const form = {
      related: session.client.textDocument?.publishDiagnostics?.relatedInformation === true,
      pages: session.commands.has("sprag.showRule"),
    };
    const diagnostics = findings.map((finding) => diagnosticOf(folder, finding, form, version));
    const same = JSON.stringify(diagnostics);
    // Files that are not open are many: only what is new for them is sent.
    if (version === undefined && (shown.get(keyOf(file)) ?? "[]") === same) return;
    shown.set(keyOf(file), same);
    const sent = { uri: folder.uriOf(path), diagnostics, ...(version === undefined ? {} : { version }) };
    // The client may be gone.
    session.connection.sendDiagnostics(sent).catch(() => {});
  };
  return {
    show: (file, findings, version) => {
      const counted = findings.filter(({ allowed }) => allowed === undefined);
      const countOf = (wanted: ReportedFinding["severity"]): number =>
        counted.filter(({ severity }) => severity === wanted).length;
      counts.set(keyOf(file), { errors: countOf("error"), warnings: countOf("warning") });
      publish(file, findings, version);
    },
    remove: (file) => {
      counts.delete(keyOf(file));
      publish(file, [], undefined);
      shown.delete(keyOf(file));
    },
    status: () => {
      const all = [...counts.values()];
      return {
        state: "checked",
        files: all.length,
        errors: all.reduce((so, { errors }) => so + errors, 0),
        warnings: all.reduce((so, { warnings }) => so + warnings, 0),
      };
    },
  };
}
