// `npm run mutate`: changes `language/analysis` here and there, one change at a time, and looks whether a test notices. The
// changes and the score are Stryker's; the tests run in one process instead of through vitest: an hour, not a day.
import { appendFileSync, existsSync } from "node:fs";
import { join } from "node:path";
import { bundleTests } from "./bundle.mjs";
import { dryRun } from "./dry-run.mjs";
import { copyTests, instrumentTree } from "./instrument.mjs";
import { readJson, readResults, results, root, work } from "./places.mjs";
import { tryAll } from "./pool.mjs";
import { outcomes, scoreTable, writeReport, writeSurvivors } from "./report.mjs";
import { ROUNDS, USUAL } from "./rounds.mjs";

/*
 *   npm run mutate                      all, anew, on a copy of the tree as it is
 *   npm run mutate -- --resume          goes on with that copy; of today's tests, new ones are tried on what was not noticed
 *   npm run mutate -- decision ways     only mutants of files with such a word in their path, also in the list
 *   npm run mutate -- --slow            what survives goes through the long and the random tests, too
 *   npm run mutate -- --resume --with times   tries only tests with that word in their path, on what is left
 *   npm run mutate -- --resume --write  and writes `survivors.md`
 */

/** So many times the usual steps of a test are an endless loop; Stryker takes as many hits of the mutant itself. */
const FACTOR = 100;
const FEW = 100_000;

/** How a process can end, in Stryker's words. */
const ENDS = { "no end": "Timeout", "no memory": "RuntimeError" };

const given = process.argv.slice(2);
const [, only] = given.includes("--with") ? given.splice(given.indexOf("--with"), 2) : [];
const words = given.filter((word) => !word.startsWith("--"));
const rounds = process.argv.includes("--slow") ? ROUNDS : ROUNDS.slice(0, USUAL);

if (!process.argv.includes("--resume") || !existsSync(join(work, "mutants.json"))) await instrumentTree();
copyTests();
await bundleTests(true);
await bundleTests(false);
const { generation, atLoad, tests } = await dryRun();
const { mutants } = readJson("mutants.json");
const reach = reachOf();
if (only !== undefined)
  await runRound(ROUNDS.length, { name: only, isOf: ({ file }) => file.includes(only), most: 60_000 });
else for (const [round, of] of rounds.entries()) await runRound(round, of);
const all = outcomes({ tests, atLoad }).filter(({ file }) => isMeant(file));
writeReport(all);
if (process.argv.includes("--write")) writeSurvivors(join(root, "tests", "mutation", "survivors.md"), all);
console.log(scoreTable(all));

function isMeant(file) {
  return words.length === 0 || words.some((word) => file.includes(word));
}

/** Mutant to the tests that come by it, shortest first, each with the steps that are too many. */
function reachOf() {
  const by = new Map();
  const ordered = [...tests.entries()].filter(([, { failure }]) => failure === null);
  ordered.sort(([, a], [, b]) => a.ms - b.ms);
  for (const [at, { hits, steps, ms }] of ordered)
    for (const id of hits) {
      const list = by.get(id) ?? [];
      by.set(id, list);
      list.push([at, FACTOR * steps + FEW, ms]);
    }
  return by;
}

async function runRound(round, { name, isOf, most }) {
  const isIn = tests.map(isOf);
  const found = readResults();
  const jobs = mutants.flatMap((mutant) => {
    const { status = "Survived", ...before } = found.get(mutant.id) ?? { round: -1, generation: 0 };
    if (status !== "Survived" || !isMeant(mutant.file)) return [];
    const isOpen = ([test]) => isIn[test] && (before.round < round || tests[test].since > before.generation);
    const order = (reach.get(mutant.id) ?? []).filter(isOpen);
    return order.length === 0 ? [] : [{ mutant, order, reached: Math.max(round, before.round) }];
  });
  console.log(`${name}: ${jobs.length} mutants to try`);
  const near = nearby();
  let count = 0;
  const told = ({ mutant, reached }, { status, by }) => {
    count++;
    if (count % 500 === 0) console.log(`${count} of ${jobs.length}`);
    if (by !== null) near.add(mutant, by);
    // With some tests alone nothing is said of the others.
    if (status === "Survived" && only !== undefined) return;
    const test = by === null ? null : `${tests[by].file}: ${tests[by].name}`;
    appendFileSync(results, `${JSON.stringify({ id: mutant.id, status, test, round: reached, generation })}\n`);
  };
  const orderOf = (job) => within(near.first(job), most);
  const ending = (job, { status, by }) => told(job, { status: ENDS[status] ?? status, by });
  // One that ran out of memory may only have had a share in it: once more, in a new process.
  const again = [];
  await tryAll(mixed(jobs), {
    ...{ processes: 2, orderOf },
    told: (job, result) => (result.status === "no memory" ? again.push(job) : ending(job, result)),
  });
  await tryAll(again, { processes: 1, orderOf, told: ending });
}

/** In an order in which any part is a fair sample, and always the same. */
function mixed(jobs) {
  const place = ({ mutant }) => (Number(mutant.id) * 7919) % 10007;
  return [...jobs].sort((a, b) => place(a) - place(b));
}

/** The first of them, that together take no longer. */
function within(order, most) {
  let so = 0;
  return order.filter(([, , ms]) => {
    so += ms;
    return so <= most;
  });
}

/** Tests that noticed other mutants near by go first. */
function nearby() {
  const noticed = new Map();
  return {
    add({ file, location }, test) {
      noticed.set(file, [...(noticed.get(file) ?? []).slice(-300), [location.start.line, test]]);
    },
    first({ mutant: { file, location }, order }) {
      const far = ([line]) => Math.abs(line - location.start.line);
      const best = [...(noticed.get(file) ?? [])].sort((a, b) => far(a) - far(b)).slice(0, 12);
      const likely = new Set(best.map(([, test]) => test));
      return [...order.filter(([test]) => likely.has(test)), ...order.filter(([test]) => !likely.has(test))];
    },
  };
}
