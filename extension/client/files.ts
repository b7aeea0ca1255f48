// Answers the server's questions about files through the editor, so that folders on a disk, on another machine and in a
// browser are all the same. Leaves out hidden files, as the command does. Knows no language.
import { FileType, Uri, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { AskedOfClient } from "../../language/server/protocol.ts";

/** As the command: far above any procedure. */
const MOST_BYTES = 24_000_000;
/** Enough to keep a slow file system busy, few enough for a fast one. */
const AT_ONCE = 32;

export function answerFiles(client: BaseLanguageClient): void {
  answer(client, "sprag/list", async ({ folder }) => ({ uris: (await walk(Uri.parse(folder))).map(String) }));
  answer(client, "sprag/read", async ({ uris }) => ({ texts: await each(uris, (uri) => read(Uri.parse(uri))) }));
  answer(client, "sprag/bytes", async ({ uris }) => ({
    bytes: await each(uris, async (uri) => {
      const bytes = await bytesOf(Uri.parse(uri));
      return bytes === null ? null : base64(bytes);
    }),
  }));
  answer(client, "sprag/present", async ({ uris }) => ({ present: await each(uris, (uri) => isFile(Uri.parse(uri))) }));
}

function answer<Name extends keyof AskedOfClient>(
  client: BaseLanguageClient,
  name: Name,
  reply: (params: AskedOfClient[Name]["params"]) => Promise<AskedOfClient[Name]["result"]>,
): void {
  client.onRequest(name, reply);
}

/** Walked, not searched: not every place offers a search, and so all are the same. */
async function walk(folder: Uri): Promise<Uri[]> {
  const entries = await workspace.fs.readDirectory(folder);
  const found = await each(entries, async ([name, type]) => {
    const uri = Uri.joinPath(folder, name);
    // What it leaves out, the server leaves out.
    if (name === ".gitignore") return [uri];
    if (name.startsWith(".") || name === "node_modules") return [];
    // A link to a folder may lead back up.
    if (type === FileType.Directory) return walk(uri);
    return (type & FileType.File) !== 0 && name.endsWith(".sprag") ? [uri] : [];
  });
  return found.flat();
}

async function read(uri: Uri): Promise<string | null> {
  const bytes = await bytesOf(uri);
  if (bytes === null || bytes.includes(0)) return null;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Null where it cannot be read, or is larger than any file that counts. */
export async function bytesOf(uri: Uri): Promise<Uint8Array | null> {
  try {
    const bytes = await workspace.fs.readFile(uri);
    return bytes.byteLength > MOST_BYTES ? null : bytes;
  } catch {
    return null;
  }
}

export function base64(bytes: Uint8Array): string {
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
}

async function isFile(uri: Uri): Promise<boolean> {
  try {
    return ((await workspace.fs.stat(uri)).type & FileType.File) !== 0;
  } catch {
    return false;
  }
}

async function each<Item, Result>(items: readonly Item[], work: (item: Item) => Promise<Result>): Promise<Result[]> {
  const results: Result[] = [];
  for (let at = 0; at < items.length; at += AT_ONCE) {
    results.push(...(await Promise.all(items.slice(at, at + AT_ONCE).map(work))));
  }
  return results;
}
