// The command as it is shipped, in a folder of its own: the one that was built last if no source is newer, else a new one.
import { execFileSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll } from "vitest";

const language = join(import.meta.dirname, "..", "..", "language");
const dist = join(language, "dist");

/**
 * To be said once in a file of tests, outside them: the command is there before the first of them and gone after the last.
 * @returns the path of its script, in a folder that everyone may read, also one who may not read the repository
 */
export function shipped(): string {
  // Made here, so that what is removed in the end is this folder whatever became of the command.
  const folder = mkdtempSync(join(tmpdir(), "sprag-shipped-"));
  beforeAll(() => {
    chmodSync(folder, 0o755);
    if (isCurrent()) cpSync(dist, folder, { recursive: true });
    else execFileSync(process.execPath, [join(language, "build.mjs"), folder]);
    writeFileSync(join(folder, "package.json"), '{"type":"module"}');
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
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
