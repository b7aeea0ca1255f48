// Puts the copy's tests, and through them the instrumented analysis, into one file that a process can load. Knows which
// tests are taken and what stands in place of what; runs none.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { active, bundle, copy, dryBundle, once, root, standIn } from "./places.mjs";

/** Folders whose tests reach the analysis. The others do not. */
const FOLDERS = [
  ...["analysis", "acceptance", "rules", "samples", "workspace", "oracles"],
  ...["outputs", "review", "server", "cli", "wording"],
];
/**
 * Not taken: comparisons that have nothing to do with it (of random procedures `brute-force.ts` has as many as a mutant can go through),
 * what starts programs or writes large files, and what wants trees that are read anew, since all texts are read once here.
 */
const WITHOUT = [
  ...[/^oracles\/(units|markdown)-/, /differential/, /^samples\/(?!findings)/],
  ...[/^outputs\/formats/, /^cli\/(process|.*git)/, /^server\/(serve|rename|definition)/],
];

/** What is done once for all mutants: the file, its function, and who makes it so. */
const ONCE = [
  ["language/syntax/parse.ts", "parseText", "parsedOnce"],
  ["language/model/lower.ts", "lowerAgain", "loweredOnce"],
  ["language/model/expand.ts", "expandProcedure", "expandedOnce"],
];

/** Writes a bundle, with or without coverage: `load()` names all tests in `tests`; `switches` is `active.mjs`. */
export async function bundleTests(isCovering) {
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(join(copy, "tests", folder), { recursive: true }).map(
      (name) => `${folder}/${name.split(sep).join("/")}`,
    ),
  )
    .filter((path) => path.endsWith(".test.ts") && !WITHOUT.some((pattern) => pattern.test(path)))
    .sort();
  const paths = [...files, "mutation/brute-force.ts"];
  const loads = paths.map((path) => `beginFile("tests/${path}"); await import("./tests/${path}");`);
  const contents = `import { beginFile, tests } from "vitest";
import * as switches from ${JSON.stringify(active)};
import "#harness/seed.ts";
export async function load() { ${loads.join("\n")} }
export { switches, tests };`;
  await build({
    stdin: { contents, resolveDir: copy, loader: "ts" },
    outfile: isCovering ? dryBundle : bundle,
    ...{ bundle: true, platform: "node", format: "esm", target: "node20", logLevel: "warning" },
    plugins: [{ name: "mutation", setup: (build) => setUp(build, isCovering) }],
  });
}

const language = join(root, "language");
const AS_IS = Symbol("resolved as without this plugin");

function setUp(build, isCovering) {
  build.onResolve({ filter: /^[^./#]/ }, async ({ path, importer, kind, pluginData }) => {
    if (kind === "entry-point" || pluginData === AS_IS || existsSync(path)) return undefined;
    if (path === "vitest" && importer !== standIn) return { path: standIn };
    const found = await build.resolve(path, { kind, resolveDir: language, pluginData: AS_IS });
    // What the package has in a version of its own could not be found from where the bundle lies.
    return found.path.startsWith(join(language, "node_modules")) ? found : { path, external: true };
  });
  build.onLoad({ filter: /\.ts$/ }, ({ path }) => {
    const text = readFileSync(path, "utf8")
      .replaceAll("import.meta.dirname", JSON.stringify(dirname(path)))
      .replaceAll("import.meta.url", JSON.stringify(pathToFileURL(path).href));
    const here = relative(copy, path).split(sep).join("/");
    const contents = doneOnce(here, forgetting(here, switched(text, isCovering)));
    return { contents, loader: "ts", resolveDir: dirname(path) };
  });
}

/** The instrumenter's calls as a plain comparison, and as a step or, for the dry run, as coverage. */
function switched(text, isCovering) {
  if (!text.includes("stryMutAct_9fa48(")) return text;
  const names = "active as stryActive, cover as stryCover, step as stryStep";
  const step = isCovering ? (_, mutants) => `stryCover(${mutants.replaceAll('"', "")})` : "stryStep()";
  return `import { ${names} } from ${JSON.stringify(active)};\n${text}`
    .replace(/stryMutAct_9fa48\("(\d+)"\)/g, "(stryActive === $1)")
    .replace(/stryCov_9fa48\(([\d", ]+)\)/g, step);
}

/** What is worked out after lowering, and kept by records that are the same for all mutants. */
const KEEPING = /^language\/(analysis|rules|outputs|review|workspace)\//;

function forgetting(path, text) {
  if (!KEEPING.test(path) || !KEPT.test(text)) return text;
  return `import { forgetful } from ${JSON.stringify(active)};\n${text.replace(new RegExp(KEPT, "gm"), "$1forgetful($2);")}`;
}

/** A map at the head of a module that is empty at first. */
const KEPT = /^(const \w+(?:: [^=]+?)? = )new ((?:Weak)?Map)(?:<[^()]*>)?\(\);/m;

function doneOnce(path, text) {
  const [, name, maker] = ONCE.find(([file]) => file === path) ?? [];
  if (name === undefined) return text;
  const head = `export function ${name}(`;
  if (!text.includes(head)) throw new Error(`${path} has no function ${name}: mend ONCE in tests/mutation/bundle.mjs`);
  return `import { ${maker} } from ${JSON.stringify(once)};
${text.replace(head, `function ${name}Anew(`)}
export const ${name} = ${maker}(${name}Anew);`;
}
