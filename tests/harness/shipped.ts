// The command as it is shipped, in a folder of its own: the one that was built last if no source is newer, else a new one.
import { execFileSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdtempSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const language = join(import.meta.dirname, "..", "..", "language");
const dist = join(language, "dist");

/** @returns the path of its script, in a folder that everyone may read, also one who may not read the repository; to be removed by the caller */
export function shipped(): string {
  const folder = mkdtempSync(join(tmpdir(), "sprag-shipped-"));
  chmodSync(folder, 0o755);
  if (isCurrent()) cpSync(dist, folder, { recursive: true });
  else execFileSync(process.execPath, [join(language, "build.mjs"), folder]);
  writeFileSync(join(folder, "package.json"), '{"type":"module"}');
  return join(folder, "sprag.js");
}

function isCurrent(): boolean {
  const script = join(dist, "sprag.js");
  if (!existsSync(script)) return false;
  const built = statSync(script).mtimeMs;
  const isNewer = (path: string): boolean => statSync(path).mtimeMs > built;
  return !readdirSync(language, { withFileTypes: true })
    .filter(({ name }) => name !== "dist" && name !== "node_modules")
    .some(({ name }) => {
      const path = join(language, name);
      const inside = statSync(path).isDirectory() ? readdirSync(path, { recursive: true, encoding: "utf8" }) : [];
      return isNewer(path) || inside.some((file) => isNewer(join(path, file)));
    });
}
