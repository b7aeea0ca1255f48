// Where the mutation test keeps its things, all in `.cache/mutation/`, and how they are read and written.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
export const root = dirname(dirname(here));
export const work = join(root, ".cache", "mutation");
/** The copy of the tree that the mutants are in. */
export const copy = join(work, "tree");
export const bundle = join(work, "tests.mjs");
/** The same, for the dry run. */
export const dryBundle = join(work, "dry-tests.mjs");
/** What is put into the bundle: see the files. */
export const active = join(here, "active.mjs");
export const standIn = join(here, "stand-in.mjs");
export const once = join(here, "once.mjs");
export const worker = join(here, "worker.mjs");
/** One line for each mutant that was tried. */
export const results = join(work, "results.jsonl");

export function readJson(name) {
  return JSON.parse(readFileSync(join(work, name), "utf8"));
}

export function writeJson(name, value) {
  writeFileSync(join(work, name), JSON.stringify(value));
}

/** What was found so far, in the order in which it was. */
export function readTrials() {
  if (!existsSync(results)) return [];
  const lines = readFileSync(results, "utf8").split("\n").filter(Boolean);
  return lines.map((line) => JSON.parse(line));
}

/** Of a mutant tried twice the last. */
export function readResults() {
  return new Map(readTrials().map((result) => [result.id, result]));
}
