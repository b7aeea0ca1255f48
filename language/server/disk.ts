// Files from the disk, for editors that leave reading to the server. Follows no link to a folder, leaves out hidden folders
// and node_modules, reads nothing that is no file. What `.gitignore` says is read elsewhere.
import { isUtf8 } from "node:buffer";
import { readdir, readFile, stat } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Files } from "./files.ts";
import { isSkipped } from "./ignore-rules.ts";
import { isRulesFile } from "./listing.ts";

/** In bytes, as for the command. Longer files are taken as not there: no procedure is. */
const LONGEST = 24_000_000;

export const diskFiles: Files = {
  list: async (folder) => {
    const path = pathOf(folder);
    return path === null ? [] : (await spragFilesIn(path)).map((file) => pathToFileURL(file).href);
  },
  read: (uris) => Promise.all(uris.map(textOf)),
  bytes: (uris) => Promise.all(uris.map(contentOf)),
  present: (uris) => Promise.all(uris.map(async (uri) => (await sizeOf(uri)) !== null)),
};

async function spragFilesIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const found: string[] = [];
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = join(folder, entry.name);
    if (isRulesFile(entry.name)) found.push(path);
    else if (isSkipped(entry.name)) continue;
    else if (entry.isDirectory()) found.push(...(await spragFilesIn(path)));
    else if (entry.name.endsWith(".sprag")) found.push(path);
  }
  return found;
}

/** What is no UTF-8 text is not there, as for the command and for a client that reads. */
async function textOf(uri: string): Promise<string | null> {
  const content = await contentOf(uri);
  if (content === null || content.includes(0) || !isUtf8(content)) return null;
  return content.toString("utf8").replace(/^\uFEFF/, "");
}

async function contentOf(uri: string): Promise<Buffer | null> {
  const path = pathOf(uri);
  const size = await sizeOf(uri);
  if (path === null || size === null || size > LONGEST) return null;
  return readFile(path).catch(() => null);
}

/** In bytes; null where it is no file. */
async function sizeOf(uri: string): Promise<number | null> {
  const path = pathOf(uri);
  const found = path === null ? null : await stat(path).catch(() => null);
  return found?.isFile() === true ? found.size : null;
}

function pathOf(uri: string): string | null {
  try {
    return fileURLToPath(uri);
  } catch {
    return null;
  }
}
