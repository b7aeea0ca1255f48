// `sprag serve`: the language server for an editor, on standard input and output. Knows no protocol.
import type { Command } from "commander";
import type { Perform } from "./call.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

export function defineServe(command: Command, perform: Perform, around: Surroundings): void {
  command
    .option("--stdio", "speak over standard input and output (it always does; many editors say so)")
    .option("--clientProcessId <id>", "end when this process is gone")
    .addHelpText("after", EXAMPLES)
    .action(() => perform(() => serve(around)));
}

const EXAMPLES = `
An editor starts it, and it ends with the editor. EDITORS.md has the settings.

Example:
  sprag serve`;

function serve({ err, out, serve: start }: Surroundings): Status {
  if (out.isTerminal)
    err.write(
      "sprag: waiting for an editor on standard input. Ctrl+C ends it; settings for editors are in EDITORS.md.\n",
    );
  start();
  return STATUS.fine;
}
