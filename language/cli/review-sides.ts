// The two sides of a review as workspaces: files and folders on the disk, revisions and what is staged in git. Knows no change.
import { existsSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { isSkipped } from "#server/ignore-rules.ts";
import { findFiles, isFolder, rootFolder } from "./find-files.ts";
import { type GitFiles, openRepository, type Repository } from "./git.ts";
import { type Opened, openFiles, openFrom, type TextSource } from "./open-files.ts";
import type { Progress } from "./progress.ts";
import { textIn } from "./read-text.ts";
import { Refusal, troubleLine } from "./refusal.ts";

export interface Sides {
  readonly old: Opened;
  readonly new: Opened;
}

/** Where and when; `root` as given. */
export interface Place {
  readonly root: string | undefined;
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly today: string;
  readonly progress: Progress;
}

/** Two files, or two folders. @throws Refusal where one is a file and the other a folder, or one cannot be read */
export function sidesOnDisk(old: string, now: string, place: Place): Sides {
  const [a, b] = [old, now].map((path) => isFolder(resolve(place.cwd, path)));
  if (a !== b) throw new Refusal(`${old} and ${now} cannot be compared: one is a file, the other a folder.`);
  return { old: onDisk(old, a === true, place), new: onDisk(now, b === true, place) };
}

/** A folder is the root of its side, so that the paths in both are alike. */
function onDisk(given: string, isWhole: boolean, { root, cwd, today, progress }: Place): Opened {
  const from = rootFolder(root ?? (isWhole ? given : undefined), cwd, [given]);
  return all(openFiles(foundIn(given, from, cwd), from, today, progress));
}

function foundIn(given: string, root: string, cwd: string): readonly string[] {
  const found = findFiles([given], root, cwd);
  const [trouble] = found.troubles;
  if (trouble !== undefined) throw new Refusal(troubleLine(trouble));
  return found.paths;
}

/** A review of half a side would be trusted as a whole. */
function all(opened: Opened): Opened {
  const [trouble] = opened.troubles;
  if (trouble !== undefined) throw new Refusal(troubleLine(trouble));
  return opened;
}

/**
 * A file or folder against git.
 * @param against the revision of the old side
 * @param staged whether the new side is what is staged, not what is on the disk
 */
export function sidesInGit(given: string, against: string, staged: boolean, place: Place): Sides {
  const { cwd, today, progress } = place;
  const target = resolve(cwd, given);
  const isWhole = isFolder(target);
  const root = rootFolder(place.root, cwd, [given]);
  const repository = openRepository(isWhole ? target : existing(dirname(target)), place.env);
  const inGit = (files: GitFiles): Tracked => trackedFrom(files, repository, root);
  const old = inGit(repository.revision(against));
  const inside = toPath(root, target);
  if (inside === null)
    throw new Refusal(`${given} lies outside the root ${root}. Name a folder that holds it with --root.`);
  const stage = staged ? inGit(repository.staged()) : null;
  const now = stage === null ? nowOnDisk(given, root, place) : openTracked(stage, inside, isWhole, place, root);
  if (now.paths.length === 0 && !isWhole) throw new Refusal(`${given} is not staged.`);
  const isThere = (path: string): boolean => stage?.source.isThere(path) ?? existsSync(join(root, path));
  const paths = isWhole
    ? under(old, inside)
    : now.paths.flatMap((path) => beforeRenaming(path, old, now, isThere) ?? []);
  return { old: all(openFrom(old.source, paths, root, today, progress)), new: now };
}

function nowOnDisk(given: string, root: string, { cwd, today, progress }: Place): Opened {
  return all(openFiles(foundIn(given, root, cwd), root, today, progress));
}

function openTracked(
  tracked: Tracked,
  inside: string,
  isWhole: boolean,
  { today, progress }: Place,
  root: string,
): Opened {
  const paths = isWhole ? under(tracked, inside) : tracked.paths.filter((path) => path === inside);
  return all(openFrom(tracked.source, paths, root, today, progress));
}

/** The nearest folder that is there: a file may have been removed together with its folder. */
function existing(folder: string): string {
  let at = folder;
  while (!isFolder(at) && dirname(at) !== at) at = dirname(at);
  return at;
}

/** Files of git as files of the workspace. */
interface Tracked {
  /** Procedures, from the root; others are there for those who ask. */
  readonly paths: readonly string[];
  readonly source: TextSource;
  readonly textOf: (path: string) => string | null;
}

function trackedFrom(files: GitFiles, { top }: Repository, root: string): Tracked {
  const inGit = new Map(
    files.paths.flatMap((path) => {
      const own = toPath(root, join(top, path));
      return own === null ? [] : [[own, path] as const];
    }),
  );
  const paths = [...inGit.keys()].filter((path) => path.endsWith(".sprag") && !path.split("/").some(isSkipped)).sort();
  const bytesOf = (path: string): Buffer | null => files.bytes(inGit.get(path) ?? "");
  const source: TextSource = {
    isThere: (path) => inGit.has(path),
    text: (path) => {
      const bytes = bytesOf(path);
      return bytes === null ? { ok: false, message: "is not there." } : textIn(bytes);
    },
  };
  const textOf = (path: string): string | null => bytesOf(path)?.toString("utf8") ?? null;
  return { paths, source, textOf };
}

function under({ paths }: Tracked, folder: string): readonly string[] {
  return folder === "" ? paths : paths.filter((path) => path.startsWith(`${folder}/`));
}

function toPath(root: string, path: string): string | null {
  const inside = relative(root, path);
  if (inside === ".." || inside.startsWith(`..${sep}`) || isAbsolute(inside)) return null;
  return inside.split(sep).join("/");
}

/** Of a file that was not there under its name: the one that is no longer there and has most lines in common; null for none. */
function beforeRenaming(path: string, old: Tracked, now: Opened, isThere: (path: string) => boolean): string | null {
  if (old.source.isThere(path)) return path;
  const lines = linesIn(now.workspace.snapshot.texts.get(path) ?? "");
  let best: string | null = null;
  let most = lines.size * LEAST_IN_COMMON;
  for (const other of old.paths) {
    if (isThere(other)) continue;
    const common = [...linesIn(old.textOf(other) ?? "")].filter((line) => lines.has(line)).length;
    if (common <= most) continue;
    most = common;
    best = other;
  }
  return best;
}

const LEAST_IN_COMMON = 0.4;

function linesIn(text: string): ReadonlySet<string> {
  return new Set(
    text
      .split("\n")
      .map((line) => line.trim())
      .filter((line) => line.length > 1),
  );
}
