// Copies the tree and puts all mutants of Stryker into the copy of `language/analysis`, each behind a switch, as `stryker run`
// does with the same settings. Runs nothing.
import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { copy, root, work, writeJson } from "./places.mjs";

const FOLDER = "language/analysis";

/** Makes the copy anew and writes `mutants.json`: the state of the tree, and of each file its text and its mutants. */
export async function instrumentTree() {
  rmSync(work, { recursive: true, force: true });
  mkdirSync(copy, { recursive: true });
  for (const name of ["package.json", "tsconfig.json", "language", "samples"]) copyIn(name);
  const paths = pathsToMutate();
  const texts = new Map(paths.map((path) => [path, readFileSync(join(root, path), "utf8")]));
  const { files, mutants } = await instrumented(texts);
  for (const { name, content } of files) writeFileSync(join(copy, name), content);
  writeJson("mutants.json", { ...stateOfTree(), files: Object.fromEntries(texts), mutants: mutants.map(plain) });
}

/** Takes the tests of today into the copy; what is mutated stays as it was. */
export function copyTests() {
  rmSync(join(copy, "tests"), { recursive: true, force: true });
  copyIn("tests");
}

function copyIn(name) {
  cpSync(join(root, name), join(copy, name), {
    recursive: true,
    filter: (path) => !/[/\\](node_modules|dist|out|e2e)$/.test(path),
  });
}

/** All files of the folder, with the exceptions that the settings of Stryker name. */
function pathsToMutate() {
  const { mutate } = JSON.parse(readFileSync(join(root, ".stryker.config.json"), "utf8"));
  return readdirSync(join(root, FOLDER), { recursive: true })
    .map((name) => `${FOLDER}/${name.split(sep).join("/")}`)
    .filter((path) => path.endsWith(".ts") && !mutate.includes(`!${path}`))
    .sort();
}

async function instrumented(texts) {
  // No package of this tree by itself, but of Stryker.
  const ofStryker = createRequire(createRequire(import.meta.url).resolve("@stryker-mutator/core"));
  const { Instrumenter } = await import(pathToFileURL(ofStryker.resolve("@stryker-mutator/instrumenter")).href);
  const silent = () => false;
  const log = { isDebugEnabled: silent, isTraceEnabled: silent, info: silent, debug: silent, trace: silent };
  const files = [...texts].map(([name, content]) => ({ name, content, mutate: true }));
  const mutator = { plugins: null, excludedMutations: [] };
  return new Instrumenter({ ...log, warn: console.warn, error: console.error }).instrument(files, {
    ...{ plugins: null, ignorers: [], excludedMutations: [], noHeader: true, mutator },
  });
}

/** Without what Stryker keeps for itself; lines and columns from 0. */
function plain({ id, fileName, mutatorName, replacement, location, status, statusReason }) {
  return { id, file: fileName, mutatorName, replacement, location, status, statusReason };
}

/** The commit, and whether what is mutated differs from it. */
function stateOfTree() {
  const git = (...args) => execFileSync("git", args, { cwd: root, encoding: "utf8" }).trim();
  const stryker = createRequire(import.meta.url).resolve("@stryker-mutator/core/package.json");
  return {
    commit: git("rev-parse", "--short", "HEAD"),
    isChanged: git("status", "--porcelain", FOLDER) !== "",
    stryker: JSON.parse(readFileSync(join(dirname(stryker), "package.json"), "utf8")).version,
  };
}
