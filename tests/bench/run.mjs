// `npm run bench`: bundles the bench with the sources it measures, as the command itself is bundled, and runs it.
// Node 20 reads no TypeScript, and measuring through a test runner's loader would measure that loader.
import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { browserBuilds } from "../../.scripts/browser-builds.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const root = dirname(dirname(here));
const cache = join(root, ".cache");
const outfile = join(cache, "bench.mjs");

mkdirSync(cache, { recursive: true });
await build({
  entryPoints: [join(here, "bench.ts")],
  outfile,
  bundle: true,
  alias: browserBuilds,
  platform: "node",
  format: "esm",
  target: "node20",
  // Parts of dependencies that are CommonJS ask for `require`; an ES module has to make one.
  banner: {
    js: 'import { createRequire as createRequireForBundle } from "node:module";\nconst require = createRequireForBundle(import.meta.url);',
  },
  logLevel: "warning",
});
const { status } = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { cwd: root, stdio: "inherit" });
process.exitCode = status ?? 1;
