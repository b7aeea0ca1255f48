// Writes one file in whole or not at all: beside it first, then in its place. Knows no content.
import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { Refusal } from "./refusal.ts";
import { codeOf, systemWords } from "./system-error.ts";

/**
 * Replaces the file, keeping its mode; a link stays a link to the file that is written.
 * @param shown the path as the person wrote it
 * @throws Refusal where that cannot be done; what was there is then as before
 */
export function writeWhole(path: string, shown: string, content: string | Uint8Array): void {
  const target = realPath(path);
  const stats = statsOf(target);
  try {
    // Replacing asks only the folder; what may not be written must stay all the same.
    if (stats !== null) accessSync(target, constants.W_OK);
    // A device or pipe cannot be replaced, and has no half-written state; a folder refuses to be written.
    if (stats === null || stats.isFile()) replace(target, content, stats?.mode ?? null);
    else writeFileSync(target, content);
  } catch (error) {
    const isFolderMissing = stats === null && codeOf(error) === "ENOENT";
    throw new Refusal(
      `${shown} ${isFolderMissing ? "could not be written: its folder is not there." : systemWords(error)}`,
    );
  }
}

function replace(target: string, content: string | Uint8Array, mode: number | null): void {
  const beside = join(dirname(target), `.sprag-${process.pid}-${Date.now().toString(36)}.tmp`);
  const file = openSync(beside, "wx", 0o666);
  try {
    try {
      writeAll(file, typeof content === "string" ? Buffer.from(content, "utf8") : content);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    if (mode !== null) chmodSync(beside, mode & 0o7777);
    renameSync(beside, target);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

function writeAll(file: number, bytes: Uint8Array): void {
  for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
}

function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function statsOf(path: string): Stats | null {
  try {
    return statSync(path);
  } catch {
    return null;
  }
}
