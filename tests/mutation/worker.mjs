// One process that runs tests: each once for the dry run, or those it is told with a mutant in place. Decides nothing about
// their order, nor how long they may take.
import { pathToFileURL } from "node:url";

const { load, switches, tests } = await import(pathToFileURL(process.argv[2]).href);
// What tests print is for people.
for (const name of ["log", "info", "warn"]) console[name] = () => {};
/** What is come by although no test runs: Stryker calls it static. */
const atLoad = {};
switches.countIn(atLoad);
await load();
switches.countIn(null);

process.on("disconnect", () => process.exit());
process.on("message", async ({ mutant, order, known }) => {
  process.send({ done: known === undefined ? await tryMutant(mutant, order) : { atLoad, tests: await dryRun(known) } });
});
process.send({ ready: tests.map(({ file, name }) => ({ file, name })) });

/** Of each test that is not known what it came by, how long it took, and what it failed with although nothing is changed. */
async function dryRun(known) {
  const found = [];
  for (const [at, { run }] of tests.entries()) {
    if (known[at]) continue;
    const hits = {};
    switches.countIn(hits);
    const begun = cpuTime();
    const failure = await failureOf(run);
    found.push({ failure, hits: Object.keys(hits), steps: switches.stepsTaken(), ms: cpuTime() - begun });
    switches.countIn(null);
  }
  return found;
}

/** Milliseconds; other work on the machine does not count. */
function cpuTime() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** The first of these tests that fails, or that never ends, with this mutant in place. */
async function tryMutant(mutant, order) {
  let since = 0;
  for (const [test, mostSteps, ms] of order) {
    since += ms;
    if (since > TELL_AFTER) {
      since = ms;
      process.send({ going: ms });
    }
    switches.activate(mutant, mostSteps);
    const failure = await failureOf(tests[test].run);
    switches.deactivate();
    if (switches.stepsTaken() > mostSteps) return { status: "Timeout", by: test };
    if (failure !== null) return { status: "Killed", by: test };
  }
  return { status: "Survived", by: null };
}

/** Work, in milliseconds of the dry run, after which a sign of life is due. */
const TELL_AFTER = 200;

async function failureOf(run) {
  try {
    await run();
    return null;
  } catch (error) {
    return String(error?.message ?? error);
  }
}
