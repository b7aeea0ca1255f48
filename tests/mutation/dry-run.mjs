// Which test comes by which mutants, how often and how long it takes, found by running the tests with nothing changed. What is
// known of a test file that did not change is kept.
import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { copy, dryBundle, readJson, work, writeJson } from "./places.mjs";
import { runDry } from "./pool.mjs";

/**
 * Returns the tests in the order of the bundle: `{ file, name, text, failure, hits, steps, ms, since }`, the last being the generation of
 * tests in which it came; the generation of today; and the mutants that are come by without any test.
 */
export async function dryRun() {
  const before = existsSync(join(work, "dry-run.json")) ? readJson("dry-run.json") : { generation: 0, tests: [] };
  const known = new Map(before.tests.map((test) => [keyOf(test), test]));
  let named = [];
  const { atLoad, tests: found } = await runDry(dryBundle, (tests) => {
    const texts = new Map([...new Set(tests.map(({ file }) => file))].map((file) => [file, textHash(file)]));
    named = tests.map((test) => ({ ...test, text: texts.get(test.file) }));
    return named.map((test) => known.has(keyOf(test)));
  });
  const generation = before.generation + (found.length > 0 ? 1 : 0);
  const tests = named.map((test) => known.get(keyOf(test)) ?? { ...test, ...found.shift(), since: generation });
  for (const { file, name, failure } of tests)
    if (failure !== null) console.log(`left out, since it fails with nothing changed: ${file}: ${name}: ${failure}`);
  writeJson("dry-run.json", { generation, atLoad, tests });
  return { generation, atLoad, tests };
}

function keyOf({ file, name, text }) {
  return `${file} ${text} ${name}`;
}

function textHash(file) {
  return createHash("sha256")
    .update(readFileSync(join(copy, file)))
    .digest("hex")
    .slice(0, 12);
}
