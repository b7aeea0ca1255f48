// Gives the façade the texts of the files asked for, and of what it still wants from the disk after that. Knows no
// findings and no output.
import { statSync } from "node:fs";
import { join } from "node:path";
import { openWorkspace, type Snapshot, type Workspace } from "#workspace/index.ts";
import { insideRoot } from "./find-files.ts";
import type { Progress } from "./progress.ts";
import { readText } from "./read-text.ts";
import type { Trouble } from "./refusal.ts";
import { codeOf } from "./system-error.ts";

export interface Opened {
  /** Absolute. */
  readonly root: string;
  readonly workspace: Workspace;
  /** The files asked for that could be read. */
  readonly paths: readonly string[];
  /** Of files asked for and of files these use. */
  readonly troubles: readonly Trouble[];
}

/** @param paths from the root */
export function openFiles(paths: readonly string[], root: string, today: string, progress: Progress): Opened {
  const texts = new Map<string, string>();
  const present = new Set<string>();
  const absent = new Set<string>();
  const troubles: Trouble[] = [];
  const readable = paths.filter((path, at) => {
    progress.show(`reading ${at + 1} of ${paths.length} files`);
    const read = readText(join(root, path));
    if (read.ok) texts.set(path, read.text);
    else troubles.push({ path, message: read.message });
    return read.ok;
  });
  progress.show(`checking ${readable.length} files`);
  let workspace = openWorkspace(snapshotOf(texts, present, absent, today));
  while (workspace.wanted.length > 0) {
    for (const { path, need } of workspace.wanted) {
      const place = join(root, path);
      if (!isInside(place, root)) absent.add(path);
      else if (need === "presence") present.add(path);
      else {
        const read = readText(place);
        if (read.ok) texts.set(path, read.text);
        else {
          absent.add(path);
          troubles.push({ path, message: read.message });
        }
      }
    }
    workspace = openWorkspace(snapshotOf(texts, present, absent, today), workspace);
  }
  return { root, workspace, paths: readable, troubles: distinct(troubles) };
}

/** A snapshot never changes, so each has its own copy. */
function snapshotOf(texts: Map<string, string>, present: Set<string>, absent: Set<string>, today: string): Snapshot {
  return { texts: new Map(texts), present: new Set(present), absent: new Set(absent), today };
}

/** Whether it is there at all, as a file, and no link leads it out of the root. */
function isInside(path: string, root: string): boolean {
  try {
    return insideRoot(path, root) !== null && !statSync(path).isDirectory();
  } catch (error) {
    // What is there and may not be seen is no missing file; reading it says why.
    return codeOf(error) === "EACCES";
  }
}

/** A file asked for by name and used by another is told of once. */
function distinct(troubles: readonly Trouble[]): readonly Trouble[] {
  return [...new Map(troubles.map((trouble) => [trouble.path, trouble])).values()];
}
