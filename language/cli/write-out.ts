// What a command made, to where `--out` says. Knows no command and no content.
import { realpathSync } from "node:fs";
import { resolve } from "node:path";
import { Refusal } from "./refusal.ts";
import type { Surroundings } from "./surroundings.ts";
import { writeWhole } from "./write-file.ts";

/**
 * To a file, whole or not at all, else to standard output.
 * @param what it is: `the document`
 * @param from the files that it is made from, absolute
 * @throws Refusal where the target is one of these, or bytes would fill a terminal
 */
export function writeOut(
  content: string | Uint8Array,
  out: string | undefined,
  what: string,
  from: readonly string[],
  around: Surroundings,
): void {
  if (out === undefined) {
    if (typeof content !== "string" && around.out.isTerminal)
      throw new Refusal(`${what} is no text for a terminal. Say with --out where to write it.`);
    around.out.write(content);
    return;
  }
  const target = resolve(around.cwd, out);
  const real = realOf(target);
  if (from.some((path) => realOf(path) === real))
    throw new Refusal(`${out} is what ${what} is made from. Give --out another name.`);
  writeWhole(target, out, content);
  around.err.write(`${out} is written.\n`);
}

function realOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}
