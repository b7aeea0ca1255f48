// Which files a check has looked at, and how they were then, to tell what has changed since. Knows no content and no finding.
import { realpathSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { isFolder } from "./find-files.ts";
import type { TextSource } from "./open-files.ts";

/** How each file was, by its absolute path; also of those that were not there. */
export type Seen = Map<string, string>;

/** A file is taken down before it is read, so that no change is missed; one that is there already stays as it was. */
export function takeDown(seen: Seen, path: string): void {
  if (!seen.has(path)) seen.set(path, markOf(path));
}

/** The same source, which takes down each file that it is asked for. @param root absolute */
export function takingDown(source: TextSource, root: string, seen: Seen): TextSource {
  const noted = (path: string): string => {
    takeDown(seen, join(root, path));
    return path;
  };
  return { text: (path) => source.text(noted(path)), isThere: (path) => source.isThere(noted(path)) };
}

/** The files that are not as they were. */
export function changedSince(seen: Seen): readonly string[] {
  return [...seen].filter(([path, mark]) => markOf(path) !== mark).map(([path]) => path);
}

/** Where something happens when one of them changes, comes or goes. */
export function foldersOf(seen: Seen): ReadonlySet<string> {
  const folders = new Set([...seen.keys()].flatMap((path) => [dirname(path), dirname(realOf(path))]));
  return new Set([...folders].map(nearest));
}

/** Of a folder only that it is one: what comes and goes in it is told by the list of files. */
function markOf(path: string): string {
  try {
    const stats = statSync(path);
    return stats.isDirectory() ? "folder" : [stats.dev, stats.ino, stats.size, stats.mtimeMs, stats.ctimeMs].join(" ");
  } catch {
    return "none";
  }
}

function realOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

/** The folder itself, or where it is not there the deepest above it that is. */
function nearest(folder: string): string {
  return isFolder(folder) || dirname(folder) === folder ? folder : nearest(dirname(folder));
}
