// Where the server gets files from: the client on request, or the disk (disk.ts). Knows addresses and texts, nothing of Sprag.
import type { Connection } from "vscode-languageserver";
import type { AskedOfClient } from "./protocol.ts";

/** All addresses are URIs. Nothing here throws: what cannot be read is not there. */
export interface Files {
  /** Every file that ends in `.sprag` below the folder, and every `.gitignore` there. */
  readonly list: (folder: string) => Promise<readonly string[]>;
  /** Texts in the order asked; null for what is not there. */
  readonly read: (uris: readonly string[]) => Promise<readonly (string | null)[]>;
  /** Pictures and typefaces, in the order asked; null for what is not there. */
  readonly bytes: (uris: readonly string[]) => Promise<readonly (Uint8Array | null)[]>;
  readonly present: (uris: readonly string[]) => Promise<readonly boolean[]>;
}

/** Files as the client sees them: also those of a browser or of a folder that is on no disk. */
export function clientFiles(connection: Connection): Files {
  const ask = <Name extends keyof AskedOfClient>(
    name: Name,
    params: AskedOfClient[Name]["params"],
  ): Promise<AskedOfClient[Name]["result"] | null> =>
    connection.sendRequest<AskedOfClient[Name]["result"]>(name, params).catch(() => null);
  return {
    list: async (folder) => (await ask("sprag/list", { folder }))?.uris ?? [],
    read: async (uris) => (await ask("sprag/read", { uris }))?.texts ?? uris.map(() => null),
    bytes: async (uris) => (await ask("sprag/bytes", { uris }))?.bytes.map(bytesOf) ?? uris.map(() => null),
    present: async (uris) => (await ask("sprag/present", { uris }))?.present ?? uris.map(() => false),
  };
}

function bytesOf(base64: string | null): Uint8Array | null {
  return base64 === null ? null : Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
}
