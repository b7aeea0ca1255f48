// Gives the façade the texts of the files asked for, and of what it still wants after that, from the disk or from elsewhere. Knows
// no findings and no output.
import { statSync } from "node:fs";
import { join } from "node:path";
import { figuresWanted, LARGEST_FIGURE, withFigures } from "#workspace/figures.ts";
import type { Snapshot } from "#workspace/snapshot.ts";
import { openWorkspace, type Workspace } from "#workspace/workspace.ts";
import { insideRoot } from "./find-files.ts";
import type { Progress } from "./progress.ts";
import { readBytes, readText, type TextRead } from "./read-text.ts";
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

/** Where texts come from; paths are from the root. */
export interface TextSource {
  readonly text: (path: string) => TextRead;
  /** Whether it is there, as a file of the root. */
  readonly isThere: (path: string) => boolean;
}

/** @param paths from the root */
export function openFiles(paths: readonly string[], root: string, today: string, progress: Progress): Opened {
  return openFrom(diskSource(root), paths, root, today, progress);
}

export function diskSource(root: string): TextSource {
  return {
    text: (path) => readText(join(root, path)),
    isThere: (path) => isInside(join(root, path), root),
  };
}

/** As {@link openFiles}, from elsewhere. @param before an earlier workspace of the same root, to save work */
export function openFrom(
  source: TextSource,
  paths: readonly string[],
  root: string,
  today: string,
  progress: Progress,
  before: Workspace | null = null,
): Opened {
  const texts = new Map<string, string>();
  const present = new Set<string>();
  const absent = new Set<string>();
  const troubles: Trouble[] = [];
  const readable = paths.filter((path, at) => {
    progress.show(`reading ${at + 1} of ${paths.length} files`);
    const read = source.text(path);
    if (read.ok) texts.set(path, read.text);
    else troubles.push({ path, message: read.message });
    return read.ok;
  });
  progress.show(`checking ${readable.length} files`);
  let workspace = openWorkspace(snapshotOf(texts, present, absent, today), before);
  while (workspace.wanted.length > 0) {
    for (const { path, need } of workspace.wanted) {
      if (!source.isThere(path)) absent.add(path);
      else if (need === "presence") present.add(path);
      else {
        const read = source.text(path);
        if (read.ok) texts.set(path, read.text);
        else {
          absent.add(path);
          troubles.push({ path, message: read.message });
        }
      }
    }
    workspace = openWorkspace(snapshotOf(texts, present, absent, today), before ?? workspace);
  }
  return { root, workspace, paths: readable, troubles: distinct(troubles) };
}

/** The same with the pictures that outputs of a file show; one that cannot be read stays a caption. */
export function openFigures({ root, workspace }: Opened, path: string): Workspace {
  const bytes = figuresWanted(workspace, path).map(
    ({ path: figure }) => [figure, readBytes(join(root, figure), LARGEST_FIGURE)] as const,
  );
  return withFigures(workspace, new Map(bytes));
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
