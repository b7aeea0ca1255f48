// The process round the command: hands in arguments and streams, and takes the exit status. The one file that touches
// `process`.
import { readFile } from "node:fs/promises";
import { definitionsFor } from "./commands.ts";
import { run, tellFault } from "./program.ts";
import { STATUS, type Stream, type Surroundings } from "./surroundings.ts";

/** A reader that has seen enough (`| head`) is no fault; a full disk is one. */
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") return;
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
process.exitCode = await definitionsFor(args).then(
  (definitions) => run(args, around, definitions),
  (error: unknown) => tellFault(error, around),
);

function streamOf(stream: NodeJS.WriteStream): Stream {
  return {
    write: (content) => void stream.write(content),
    isTerminal: stream.isTTY === true,
    columns: stream.isTTY === true ? stream.columns : null,
  };
}
