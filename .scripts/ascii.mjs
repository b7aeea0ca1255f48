// Bundles in ASCII alone. V8 keeps a script with one character beyond Latin-1 two bytes a character, which takes longer to load; esbuild's
// `charset: "ascii"` escapes such characters in texts and leaves them in patterns.
import { readFile, writeFile } from "node:fs/promises";

/** Escapes what esbuild left. @param paths of bundles made with `charset: "ascii"` */
export async function escapePatterns(paths) {
  await Promise.all(
    paths.map(async (path) => {
      const script = await readFile(path, "utf8");
      // An escape says the same in a pattern, and something else in a raw text or behind a backslash.
      const wrong = /\bString\.raw`[^`]*[^\0-\x7f][^`]*`|.{0,20}\\[^\0-\x7f]/.exec(script)?.[0];
      if (wrong !== undefined)
        throw new Error(`A pattern has to say this, without a backslash before the sign: ${wrong}`);
      await writeFile(path, script.replace(BEYOND, escaped));
    }),
  );
}

const BEYOND = /[^\0-\x7f]/g;

function escaped(unit) {
  return `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`;
}
