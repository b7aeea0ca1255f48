// Runs tests in processes of their own, and ends those that give no sign of life. Knows neither mutants nor files.
import { fork } from "node:child_process";
import { readFileSync } from "node:fs";
import { bundle, worker } from "./places.mjs";

/** Seconds of work without a sign of life: of a process that has worked before, and of a new one. */
const SILENT = 20;
const COLD = 60;
/** How much longer than in the dry run a test may take. */
const FACTOR = 10;

/**
 * Tries each job with the tests of `orderOf` and tells `{ status, by }` of it, in the order in which they end. A process that gives
 * no sign of life for too long has "no end", one that dies "no memory".
 */
export function tryAll(jobs, { processes, orderOf, told }) {
  const queue = [...jobs].reverse();
  const one = () =>
    new Promise((ended) => {
      const child = start(bundle);
      let job = null;
      let limit = Number.POSITIVE_INFINITY;
      let isCold = true;
      const watch = (ms) => {
        limit = secondsOf(child) + (isCold ? COLD : SILENT) + (FACTOR * ms) / 1000;
      };
      const timer = setInterval(() => secondsOf(child) > limit && finish({ status: "no end", by: null }), 500);
      const finish = (result) => {
        const finished = job;
        job = null;
        if (result.status.startsWith("no ")) child.kill("SIGKILL");
        if (finished !== null) told(finished, result);
      };
      const next = () => {
        job = queue.pop() ?? null;
        if (job === null) return child.kill();
        watch(0);
        return child.send({ mutant: Number(job.mutant.id), order: orderOf(job) });
      };
      child.on("message", ({ going, done }) => {
        if (child.killed) return;
        if (going !== undefined) return watch(going);
        if (done !== undefined) {
          isCold = false;
          finish(done);
        }
        next();
      });
      child.on("exit", () => {
        clearInterval(timer);
        finish({ status: "no memory", by: null });
        ended();
      });
    });
  const line = async () => {
    while (queue.length > 0) await one();
  };
  return Promise.all(Array.from({ length: processes }, line));
}

/** All tests once, with nothing changed, but those of which `knownOf` knows what comes out. */
export function runDry(bundle, knownOf) {
  return new Promise((resolve, reject) => {
    const child = start(bundle);
    child.on("message", ({ ready, done }) => {
      if (ready !== undefined) return child.send({ known: knownOf(ready) });
      child.kill();
      return resolve(done);
    });
    child.on("exit", () => reject(new Error("the dry run came to no end")));
  });
}

function start(bundle) {
  // Short-lived objects are most of it: a larger nursery saves half the time.
  const execArgv = ["--max-old-space-size=2500", "--max-semi-space-size=64"];
  const child = fork(worker, [bundle], { execArgv, serialization: "advanced" });
  children.add(child);
  child.on("exit", () => children.delete(child));
  return child;
}

const children = new Set();
// One that goes round for ever would not hear that nobody waits for it any more.
process.on("exit", () => {
  for (const child of children) child.kill("SIGKILL");
});
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => process.exit(1));

/** Seconds that the process has worked, so that a busy machine makes no endless loop; where that cannot be told, that have passed. */
function secondsOf({ pid }) {
  try {
    const [, fields] = readFileSync(`/proc/${pid}/stat`, "latin1").split(") ");
    const [user, system] = fields.split(" ").slice(11, 13);
    return (Number(user) + Number(system)) / 100;
  } catch {
    return performance.now() / 1000;
  }
}
