// `--crib FILE`: the shop's stock, found beside the files of a call and refused where it cannot be used. Knows no command.
import { resolve } from "node:path";
import type { Workspace } from "#workspace/workspace.ts";
import { findFiles, isFolder } from "./find-files.ts";
import { counted } from "./findings-text.ts";
import { Refusal, troubleLine } from "./refusal.ts";

/** For commander, of each command that takes it. */
export const CRIB_OPTION = [
  "--crib <file>",
  "the shop's tool crib, to hold the tools of the procedure against",
] as const;

/** The file from the root. @throws Refusal where there is none */
export function cribFile(given: string, root: string, cwd: string): string {
  if (isFolder(resolve(cwd, given))) throw new Refusal(`--crib: ${given} is a folder. Give the file with the crib.`);
  const { paths, troubles } = findFiles([given], root, cwd);
  const [trouble] = troubles;
  if (trouble !== undefined) throw new Refusal(`--crib: ${troubleLine(trouble)}`);
  return paths[0] ?? given;
}

/** @throws Refusal where the file holds no crib, or one that cannot be relied on */
export function requireCrib(given: string, path: string, workspace: Workspace): void {
  if (!workspace.snapshot.texts.has(path)) throw new Refusal(`--crib: ${given} could not be read.`);
  if (workspace.stock(path) === null)
    throw new Refusal(`--crib: ${given} holds no crib. Give the file with “crib NAME { item … }”.`);
  const { errors } = workspace.check([path]).summary;
  if (errors > 0)
    throw new Refusal(`--crib: ${given} has ${counted(errors, "error")}. See sprag check ${given}, and mend it first.`);
}
