// Builds the bundles in dist/, or in the folder given: `sprag.js`, the command for Node; `sprag-server.js`, which `sprag serve`
// loads; `sprag-browser.js`, the façade alone for a browser. The last must need nothing of Node: a built-in in it ends the build.
import { chmod } from "node:fs/promises";
import { builtinModules } from "node:module";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const out = resolve(process.argv[2] ?? join(here, "dist"));

const shared = {
  absWorkingDir: here,
  bundle: true,
  format: "esm",
  target: "es2022",
  // Names stay whole, so that a trace in a report from the field can be read.
  minifySyntax: true,
  minifyWhitespace: true,
  minifyIdentifiers: false,
  legalComments: "none",
  charset: "utf8",
  logLevel: "warning",
  logLimit: 20,
};

/** Parts of dependencies that are CommonJS ask for `require`; an ES module has to make one. */
const requireBanner = `import { createRequire as createRequireForBundle } from "node:module";
const require = createRequireForBundle(import.meta.url);`;

/** The command loads the server only when it is asked for. */
const serverApart = {
  name: "server-apart",
  setup(plugin) {
    plugin.onResolve({ filter: /\/server\/node\.ts$/ }, () => ({ path: "./sprag-server.js", external: true }));
  },
};

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
  await Promise.all([
    build({
      ...shared,
      entryPoints: ["cli/main.ts"],
      outfile: join(out, "sprag.js"),
      platform: "node",
      target: "node20",
      banner: { js: `#!/usr/bin/env node\n${requireBanner}` },
      plugins: [serverApart],
    }),
    build({
      ...shared,
      entryPoints: ["server/node.ts"],
      outfile: join(out, "sprag-server.js"),
      platform: "node",
      target: "node20",
      banner: { js: requireBanner },
    }),
    build({
      ...shared,
      entryPoints: ["workspace/index.ts"],
      outfile: join(out, "sprag-browser.js"),
      platform: "browser",
      plugins: [noNode],
    }),
  ]);
  await chmod(join(out, "sprag.js"), 0o755);
} catch (error) {
  // esbuild has printed what is wrong; anything else has not been said yet.
  if (!("errors" in error)) process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}
