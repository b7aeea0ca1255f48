// The content hash of what an output is made from: the same for the same texts and pictures, whatever else lies in the folder.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { filesBehind, tablesBehind } from "./concerned.ts";
import { figuresBehind, figuresWanted } from "./figures.ts";
import type { Workspace } from "./workspace.ts";

/**
 * SHA-256 over the path and text of the file, of the crib if there is one and of all they use, then of their tables, then over the
 * path and bytes of the file's figures, each in the order of their paths, as hexadecimal. Paths are taken from the folder of the file,
 * so that it is the same from whichever folder somebody works. Empty while the bytes of a figure were not handed in.
 */
export function contentHash(workspace: Workspace, path: string, crib?: string): string {
  const key = JSON.stringify([path, crib ?? null]);
  const known = hashes.get(workspace) ?? new Map<string, string>();
  hashes.set(workspace, known);
  const hash = known.get(key) ?? hashed(workspace, path, crib);
  known.set(key, hash);
  return hash;
}

/** A workspace is of one moment, and each of its outputs bears the hash. */
const hashes = new WeakMap<Workspace, Map<string, string>>();

function hashed(workspace: Workspace, path: string, crib?: string): string {
  if (figuresWanted(workspace, path).length > 0) return "";
  const { loaded, snapshot } = workspace;
  const hash = sha256.create();
  // Lengths come first, so that no two sets of files run together to the same bytes.
  const add = (one: string, bytes: Uint8Array | null): void => {
    const name = seenFrom(path, one);
    hash.update(utf8ToBytes(`${utf8ToBytes(name).length} ${bytes?.length ?? "unread"}\n${name}\n`));
    if (bytes !== null) hash.update(bytes);
  };
  const byName = (one: string, other: string): number => (seenFrom(path, one) < seenFrom(path, other) ? -1 : 1);
  const files = [
    ...new Set([path, ...(crib === undefined ? [] : [crib])].flatMap((one) => filesBehind(loaded, one))),
  ].sort(byName);
  for (const one of [...files, ...[...tablesBehind(loaded, files)].sort(byName)])
    add(one, utf8ToBytes(loaded.parsed.get(one)?.text ?? loaded.tableText(one) ?? ""));
  for (const one of [...figuresBehind(workspace, path)].sort(byName)) add(one, snapshot.bytes?.get(one) ?? null);
  return bytesToHex(hash.digest());
}

/** A path as it is from the folder of a file. */
function seenFrom(file: string, path: string): string {
  const [from, to] = [file.split("/").slice(0, -1), path.split("/")];
  const shared = from.findIndex((folder, at) => folder !== to[at]);
  const up = shared < 0 ? 0 : from.length - shared;
  return [...Array<string>(up).fill(".."), ...to.slice(from.length - up)].join("/");
}
