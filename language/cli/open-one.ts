// The workspace round the one file that a call names, and the file that it writes. Knows no command.
import { join, resolve } from "node:path";
import { printTroubles } from "./call.ts";
import { cribFile, requireCrib } from "./crib.ts";
import { findFiles, isFolder, rootFolder } from "./find-files.ts";
import { type Opened, openFiles } from "./open-files.ts";
import { progressOn } from "./progress.ts";
import { Refusal, troubleLine } from "./refusal.ts";
import { dateOf, type Surroundings } from "./surroundings.ts";
import { writeOut } from "./write-out.ts";

export interface OpenOptions {
  readonly root?: string;
  readonly on?: string;
  readonly crib?: string;
}

/** The workspace round one file. @throws Refusal where it, or a file it uses, could not be read: no part may be missing */
export function openOne(
  given: string,
  options: OpenOptions,
  around: Surroundings,
): Opened & { readonly crib: string | null } {
  const { crib: cribGiven } = options;
  const root = rootFolder(options.root, around.cwd, cribGiven === undefined ? [given] : [given, cribGiven]);
  if (isFolder(resolve(around.cwd, given))) throw new Refusal(`${given} is a folder. Give one file of it.`);
  const found = findFiles([given], root, around.cwd);
  const progress = progressOn(around.err, around.now);
  const crib = cribGiven === undefined ? null : cribFile(cribGiven, root, around.cwd);
  const all = crib === null ? found.paths : [...new Set([...found.paths, crib])];
  const opened = openFiles(all, root, dateOf(options.on, around), progress);
  progress.wipe();
  const [first, ...more] = [...found.troubles, ...opened.troubles];
  if (first === undefined) {
    if (cribGiven !== undefined && crib !== null) requireCrib(cribGiven, crib, opened.workspace);
    return { ...opened, paths: found.paths, crib };
  }
  printTroubles(more, around);
  throw new Refusal(troubleLine(first));
}

/**
 * Writes what was made where `--out` says, else to standard output.
 * @param what is made from the files that were opened: `the document`
 * @throws Refusal where the target is one of these, or bytes would fill a terminal
 */
export function handOver(
  content: string | Uint8Array,
  out: string | undefined,
  what: string,
  { root, workspace }: Opened,
  around: Surroundings,
): void {
  const from = [...workspace.snapshot.texts.keys(), ...workspace.snapshot.present].map((path) => join(root, path));
  writeOut(content, out, what, from, around);
}
