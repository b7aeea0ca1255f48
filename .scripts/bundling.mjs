// How bundles are made: what all of them share, what those for a browser must not need, and what is done with each once it is there.
import { builtinModules } from "node:module";
import { resolve } from "node:path";
import { build } from "esbuild";
import { escapePatterns } from "./ascii.mjs";
import { browserBuilds } from "./browser-builds.mjs";
import { copyFonts } from "./fonts.mjs";
import { writeLicences } from "./licences.mjs";

const common = {
  bundle: true,
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

/** An ES module and its `parts/`: what only some calls need, such as the writers of PDF and the like, is loaded when it is. */
export const inParts = { format: "esm", splitting: true, chunkNames: "parts/[name]-[hash]" };

/** For Node. */
export const forNode = { platform: "node", target: "node20" };

/** Parts of dependencies that are CommonJS ask for `require`; an ES module for Node has to make one. */
export const REQUIRE = `import { createRequire as createRequireForBundle } from "node:module";
const require = createRequireForBundle(import.meta.url);`;

const noNode = {
  name: "no-node-built-ins",
  setup(plugin) {
    const names = builtinModules.filter((name) => !name.startsWith("_")).join("|");
    plugin.onResolve({ filter: new RegExp(`^(?:node:.*|(?:${names})(?:/.*)?)$`) }, ({ path, importer, kind }) =>
      kind === "entry-point" ? undefined : { errors: [{ text: `A browser has no ${path}, wanted by ${importer}` }] },
    );
  },
};

/** For a browser: a built-in of Node in it ends the build. */
export const forBrowser = { platform: "browser", plugins: [noNode] };

/**
 * Makes bundles and puts typefaces and licences beside them. Where that fails, says why, and the process ends with status 1.
 * @param from the folder that paths of sources start at
 * @param bundles each as esbuild takes it, besides what all share
 * @returns the paths of all that was made; none where it failed
 */
export async function makeBundles(from, out, bundles) {
  try {
    const built = await Promise.all(
      bundles.map((bundle) => build({ ...common, absWorkingDir: from, outdir: out, ...bundle })),
    );
    const made = built.flatMap(({ metafile }) => Object.keys(metafile.outputs)).map((path) => resolve(from, path));
    await escapePatterns(made);
    await copyFonts(out);
    const modules = built.flatMap(({ metafile }) => Object.keys(metafile.inputs));
    await writeLicences(
      out,
      modules.map((path) => resolve(from, path)),
    );
    return made;
  } catch (error) {
    // esbuild has printed what is wrong; anything else has not been said yet.
    if (!("errors" in error)) process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
    return [];
  }
}
