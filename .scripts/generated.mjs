// Are the checked-in generated files what their sources give today? Names each that is not; status 1 if there is one.
// Usage: node .scripts/generated.mjs [SOURCE FOLDER]   (SOURCE: grammar or page; default: both, where they are kept)
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "./install.mjs";

const sources = { grammar: join(root, "language", "grammar"), page: join(root, "language", "outputs", "checklist") };
const [asked, given] = process.argv.slice(2);

let isStale = false;
for (const [name, folder] of Object.entries(sources)) {
  if (asked !== undefined && asked !== name) continue;
  const stale = staleIn(given ?? join(folder, "generated"), join(folder, "generate.mjs"));
  for (const file of stale) process.stdout.write(`${file} is not current; npm run generate makes it so.\n`);
  isStale ||= stale.length > 0;
}
process.exitCode = isStale ? 1 : 0;

/** The files that differ from what the generator makes, are missing or too many. */
function staleIn(kept, generator) {
  const fresh = mkdtempSync(join(tmpdir(), "sprag-generated-"));
  try {
    const generated = spawnSync(process.execPath, [generator, fresh], { encoding: "utf8" });
    if (generated.status !== 0) throw new Error(`${generator} failed.\n${generated.stderr}`);
    const names = [...new Set([...readdirSync(kept), ...readdirSync(fresh)])].sort();
    return names.filter((name) => contents(kept, name) !== contents(fresh, name));
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
}

function contents(folder, name) {
  const path = join(folder, name);
  return existsSync(path) ? readFileSync(path, "utf8") : undefined;
}
