// Packs a ZIP container anew, so that it holds nothing of the clock: files in the order they came in, all of one date. Knows no format.
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";

/** The earliest that a ZIP can say; in the machine's own time, since that is what a ZIP holds. */
const DATE = new Date(1980, 0, 1);

/** @param edit gives each file's text, where it is one that holds a date or a number of its own */
export function steadyZip(bytes: Uint8Array, edit: (path: string, text: () => string) => string | null): Uint8Array {
  const packed: Zippable = {};
  for (const [path, content] of Object.entries(unzipSync(bytes))) {
    // Folders as entries of their own are nothing to a reader.
    if (path.endsWith("/")) continue;
    const edited = edit(path, () => strFromU8(content));
    packed[path] = [edited === null ? content : strToU8(edited), { mtime: DATE }];
  }
  return zipSync(packed, { level: 6 });
}
