// The files the guards look at: what people wrote in this repository, read once. Knows nothing of any guard.
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

/** One file: its path from the root with `/`, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** The root folder of the repository. */
export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Made by a tool or left behind by a run; none of it is in git. */
const notWritten = new Set(["node_modules", "dist", ".git", ".cache", "coverage", "out"]);

/** All text files, sorted by path. */
export const allFiles: readonly SourceFile[] = walk(root)
  .map((path) => ({ path: relative(root, path).split(sep).join("/"), text: readFileSync(path, "utf8") }))
  .filter((file) => !file.text.includes("\0"))
  .sort((a, b) => (a.path < b.path ? -1 : 1));

/** Program text that a person wrote: TypeScript and plain JavaScript modules, without generated ones. */
export const programFiles: readonly SourceFile[] = allFiles.filter(
  ({ path }) => /\.(?:ts|mjs|js)$/.test(path) && !path.includes("/generated/"),
);

/** The layer a file of `language/` belongs to, or `extension`; undefined for everything else. */
export function layerOf(path: string): string | undefined {
  if (path.startsWith("extension/")) return "extension";
  return /^language\/([^/]+)\/.+\.ts$/.exec(path)?.[1];
}

function walk(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (notWritten.has(entry.name)) return [];
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return walk(path);
    return entry.isFile() ? [path] : [];
  });
}
