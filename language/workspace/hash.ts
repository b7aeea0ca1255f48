// The content hash of what an output is made from: the same for the same texts, whatever else lies in the folder.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { filesBehind, tablesBehind } from "./concerned.ts";
import type { Loaded } from "./load.ts";

/** SHA-256 over the path and text of the file, of the crib if there is one and of all they use, then of their tables, in the order of their paths, as hexadecimal. */
export function contentHash(loaded: Loaded, path: string, crib?: string): string {
  const hash = sha256.create();
  const files = [
    ...new Set([path, ...(crib === undefined ? [] : [crib])].flatMap((one) => filesBehind(loaded, one))),
  ].sort();
  for (const one of [...files, ...tablesBehind(loaded, files)]) {
    const text = loaded.parsed.get(one)?.text ?? loaded.tableText(one) ?? "";
    // Lengths come first, so that no two sets of files run together to the same bytes.
    const bytes = utf8ToBytes(text);
    hash.update(utf8ToBytes(`${utf8ToBytes(one).length} ${bytes.length}\n${one}\n`));
    hash.update(bytes);
  }
  return bytesToHex(hash.digest());
}
