// Builds the bundles in dist/: the extension and its server, each for Node and for a browser, and the preview's page. What is for a
// browser must need nothing of Node, so a Node built-in in it ends the build.
// Usage: node extension/build.mjs [OUT_FOLDER]   (default: dist/ beside this file)
import { rmSync } from "node:fs";
import { builtinModules } from "node:module";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { escapePatterns } from "../.scripts/ascii.mjs";
import { browserBuilds } from "../.scripts/browser-builds.mjs";
import { copyFonts } from "../.scripts/fonts.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const out = resolve(process.argv[2] ?? join(here, "dist"));
const server = (name) => join(here, "..", "language", "server", name);

const shared = {
  absWorkingDir: here,
  bundle: true,
  // Names stay whole, so that a trace in a report from the field can be read.
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: "none",
  charset: "ascii",
  alias: browserBuilds,
  define: { "process.env.NODE_ENV": '"production"' },
  logLevel: "warning",
  logLimit: 20,
};
const forNode = { ...shared, platform: "node", format: "cjs", target: "node20" };
const forBrowser = {
  ...shared,
  platform: "browser",
  target: "es2022",
  plugins: [
    {
      name: "no-node-built-ins",
      setup(plugin) {
        const names = builtinModules.filter((name) => !name.startsWith("_")).join("|");
        plugin.onResolve({ filter: new RegExp(`^(?:node:.*|(?:${names})(?:/.*)?)$`) }, ({ path, importer, kind }) =>
          kind === "entry-point"
            ? undefined
            : { errors: [{ text: `A browser has no ${path}, wanted by ${importer}` }] },
        );
      },
    },
  ],
};

const client = (name) => join(here, "client", name);
const bundles = [
  { ...forNode, entryPoints: [client("extension-node.ts")], outfile: "extension.js", external: ["vscode"] },
  { ...forNode, entryPoints: [server("node-main.ts")], outfile: "server.js" },
  {
    ...forBrowser,
    format: "cjs",
    entryPoints: [client("extension-web.ts")],
    outfile: "extension-web.js",
    external: ["vscode"],
  },
  { ...forBrowser, format: "iife", entryPoints: [server("browser.ts")], outfile: "server-worker.js" },
  { ...forBrowser, format: "iife", entryPoints: [join(here, "webview", "preview.ts")], outfile: "preview-page.js" },
];

try {
  rmSync(out, { recursive: true, force: true });
  await Promise.all(bundles.map((bundle) => build({ ...bundle, outfile: join(out, bundle.outfile) })));
  await escapePatterns(bundles.map((bundle) => join(out, bundle.outfile)));
  await copyFonts(out);
} catch (error) {
  // esbuild has printed what is wrong; anything else has not been said yet.
  if (!("errors" in error)) process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}
