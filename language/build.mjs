// Builds the bundles in dist/, or in the folder given: `sprag.js`, the command for Node; `sprag-server.js`, the server alone;
// `sprag-browser.js`, the façade alone for a browser. Each loads from `parts/` what it needs now and then.
import { chmod, readdir, rm } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { forBrowser, forNode, inParts, makeBundles, REQUIRE } from "../.scripts/bundling.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const out = resolve(process.argv[2] ?? join(here, "dist"));

const made = await makeBundles(here, out, [
  {
    ...inParts,
    ...forNode,
    entryPoints: { sprag: "cli/main.ts", "sprag-server": "server/node.ts" },
    banner: { js: `#!/usr/bin/env node\n${REQUIRE}` },
  },
  { ...inParts, ...forBrowser, entryPoints: { "sprag-browser": "workspace/index.ts" } },
]);
if (made.length > 0) {
  await removeOld(made);
  await chmod(join(out, "sprag.js"), 0o755);
}

/** Parts of an older build. */
async function removeOld(made) {
  const known = new Set(made);
  const parts = join(out, "parts");
  for (const name of await readdir(parts)) if (!known.has(join(parts, name))) await rm(join(parts, name));
}
