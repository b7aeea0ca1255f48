// Are the checked-in generated files what the grammar gives today? Names each that is not; status 1 if there is one.
// Usage: node .scripts/generated.mjs [FOLDER]   (default: language/grammar/generated)
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "./install.mjs";

const kept = process.argv[2] ?? join(root, "language", "grammar", "generated");
const fresh = mkdtempSync(join(tmpdir(), "sprag-generated-"));
try {
  const generator = join(root, "language", "grammar", "generate.mjs");
  const generated = spawnSync(process.execPath, [generator, fresh], { encoding: "utf8" });
  if (generated.status !== 0) throw new Error(`The grammar could not be generated.\n${generated.stderr}`);
  const names = [...new Set([...readdirSync(kept), ...readdirSync(fresh)])].sort();
  const stale = names.filter((name) => contents(kept, name) !== contents(fresh, name));
  for (const name of stale) process.stdout.write(`${name} is not current; npm run generate makes it so.\n`);
  process.exitCode = stale.length === 0 ? 0 : 1;
} finally {
  rmSync(fresh, { recursive: true, force: true });
}

function contents(folder, name) {
  const path = join(folder, name);
  return existsSync(path) ? readFileSync(path, "utf8") : undefined;
}
