// Builds the bundles in dist/, or in the folder given: `sprag.js`, the command for Node; `sprag-server.js`, the server alone;
// `sprag-browser.js`, the façade alone for a browser. Each loads from `parts/` what it needs now and then. The last must need nothing of
// Node: a built-in in it ends the build.
import { chmod, readdir, rm } from "node:fs/promises";
import { builtinModules } from "node:module";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { escapePatterns } from "../.scripts/ascii.mjs";
import { browserBuilds } from "../.scripts/browser-builds.mjs";
import { copyFonts } from "../.scripts/fonts.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const out = resolve(process.argv[2] ?? join(here, "dist"));

const shared = {
  absWorkingDir: here,
  bundle: true,
  format: "esm",
  // What only some calls need is in files of its own, loaded when it is: the server, and the writers of PDF and the like.
  splitting: true,
  chunkNames: "parts/[name]-[hash]",
  metafile: true,
  alias: browserBuilds,
  target: "es2022",
  // Names stay whole, so that a trace in a report from the field can be read.
  minifySyntax: true,
  minifyWhitespace: true,
  minifyIdentifiers: false,
  legalComments: "none",
  charset: "ascii",
  logLevel: "warning",
  logLimit: 20,
};

/** Parts of dependencies that are CommonJS ask for `require`; an ES module has to make one. */
const requireBanner = `import { createRequire as createRequireForBundle } from "node:module";
const require = createRequireForBundle(import.meta.url);`;

const noNode = {
  name: "no-node-built-ins",
  setup(plugin) {
    const builtIn = new RegExp(
      `^(?:node:.*|(?:${builtinModules.filter((name) => !name.startsWith("_")).join("|")})(?:/.*)?)$`,
    );
    plugin.onResolve({ filter: builtIn }, ({ path, importer, kind }) =>
      kind === "entry-point"
        ? undefined
        : { errors: [{ text: `The façade must not need Node: ${importer} imports ${path}` }] },
    );
  },
};

try {
  const built = await Promise.all([
    build({
      ...shared,
      entryPoints: { sprag: "cli/main.ts", "sprag-server": "server/node.ts" },
      outdir: out,
      platform: "node",
      target: "node20",
      banner: { js: `#!/usr/bin/env node\n${requireBanner}` },
    }),
    build({
      ...shared,
      entryPoints: { "sprag-browser": "workspace/index.ts" },
      outdir: out,
      platform: "browser",
      plugins: [noNode],
    }),
  ]);
  const made = built.flatMap(({ metafile }) => Object.keys(metafile.outputs)).map((path) => resolve(here, path));
  await escapePatterns(made);
  await removeOld(made);
  await chmod(join(out, "sprag.js"), 0o755);
  await copyFonts(out);
} catch (error) {
  // esbuild has printed what is wrong; anything else has not been said yet.
  if (!("errors" in error)) process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}

/** Parts of an older build. */
async function removeOld(made) {
  const known = new Set(made);
  const parts = join(out, "parts");
  for (const name of await readdir(parts)) if (!known.has(join(parts, name))) await rm(join(parts, name));
}
