// The process round the command: hands in arguments and streams, and takes the exit status. The one file that touches
// `process`.
import { readFile } from "node:fs/promises";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { definitionsFor } from "./commands.ts";
import { run, tellFault } from "./program.ts";
import { STATUS, type Stream, type Surroundings } from "./surroundings.ts";

/** A reader that has seen enough (`| head`) is no fault, and ends what would go on for ever; a full disk is one. */
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") return void process.emit("SIGINT");
    process.exitCode = STATUS.unusable;
    if (stream === process.stdout) process.stderr.write(`sprag: the output could not be written (${error.code}).\n`);
  });
}

const args = process.argv.slice(2);
/** Fonts beside the script. */
const assets = new URL("assets", import.meta.url).href;
const around: Surroundings = {
  cwd: process.cwd(),
  env: process.env,
  out: streamOf(process.stdout),
  err: streamOf(process.stderr),
  now: () => new Date(),
  asset: (name) => readFile(new URL(`${assets}/${name}`)),
  thread,
  onStop: (tell) => void process.once("SIGINT", tell).once("SIGTERM", tell),
  serve: () => {
    // A bundle of its own, so that no other command has to load it.
    import("../server/node.ts")
      .then(({ serveOn }) => serveOn(process.stdin, process.stdout, assets))
      .catch((error: unknown) => {
        process.stderr.write(`sprag: the language server could not be started (${error}).\n`);
        process.exitCode = STATUS.unusable;
      });
  },
};
if (isMainThread)
  process.exitCode = await definitionsFor(args).then(
    (definitions) => run(args, around, definitions),
    (error: unknown) => tellFault(error, around),
  );
else parentPort?.postMessage((await import("./on-files.ts")).checkInThread(workerData));

/** Another thread of this program; see above. */
function thread(work: unknown): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: work });
    worker.once("message", resolve).once("error", reject);
    worker.once("exit", () => reject(new Error("A thread ended without a result.")));
  });
}

function streamOf(stream: NodeJS.WriteStream): Stream {
  return {
    write: (content) => void stream.write(content),
    isTerminal: stream.isTTY === true,
    columns: stream.isTTY === true ? stream.columns : null,
  };
}
