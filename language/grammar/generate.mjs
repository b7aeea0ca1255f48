// Runs the Langium generator on the grammar. langium-cli 4.4 on Node 20 needs Object.groupBy given first.
// Usage: node generate.mjs [OUT_FOLDER]   (default: generated/ beside this file)
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const out = resolve(process.argv[2] ?? join(here, "generated"));
const work = mkdtempSync(join(tmpdir(), "sprag-generate-"));
try {
  const polyfill = join(work, "group-by.mjs");
  writeFileSync(
    polyfill,
    `Object.groupBy ??= (items, key) => {
      const groups = Object.create(null);
      let at = 0;
      for (const item of items) (groups[key(item, at++)] ??= []).push(item);
      return groups;
    };`,
  );
  const config = JSON.parse(readFileSync(join(here, "langium-config.json"), "utf8"));
  config.out = out;
  config.languages[0].grammar = join(here, config.languages[0].grammar);
  const configPath = join(work, "langium-config.json");
  writeFileSync(configPath, JSON.stringify(config));
  const cli = join(here, "..", "..", "node_modules", "langium-cli", "bin", "langium.js");
  const run = spawnSync(
    process.execPath,
    ["--import", pathToFileURL(polyfill).href, cli, "generate", "-f", configPath],
    {
      stdio: ["ignore", "pipe", "pipe"],
      encoding: "utf8",
    },
  );
  if (run.status !== 0 || /error/i.test(run.stderr)) {
    process.stderr.write(run.stdout + run.stderr);
    process.exit(1);
  }
  const grammarFile = join(out, "grammar.ts");
  // Langium's own loader makes all services of a language first.
  const grammar = readFileSync(grammarFile, "utf8").replace(
    "import { loadGrammarFromJson } from 'langium';",
    "import { loadGrammarFromJson } from '../load-grammar.ts';",
  );
  writeFileSync(grammarFile, grammar);
  process.stdout.write(`${run.stdout.trim()}\n`);
} finally {
  rmSync(work, { recursive: true, force: true });
}
