// `sprag outline`: the steps of one file as plain lines, so that git can show what changed in them (textconv).
import { resolve } from "node:path";
import type { Command } from "commander";
import { printable } from "#outputs/printable.ts";
import { outlineOf } from "#workspace/outline.ts";
import type { Perform } from "./call.ts";
import { readText } from "./read-text.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Surroundings } from "./surroundings.ts";

export function defineOutline(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<file>", "the file; nothing else is read, so that it may be a copy that lies elsewhere")
    .addHelpText("after", EXAMPLES)
    .action((file: string) =>
      perform(() => {
        const read = readText(resolve(around.cwd, file));
        if (!read.ok) throw new Refusal(`${file} ${read.message}`);
        around.out.write(printable(outlineOf(read.text)));
        return STATUS.fine;
      }),
    );
}

const EXAMPLES = `
Layout, comments and spellings are left out. A text that cannot be read as a procedure is printed line by line.

Examples:
  sprag outline pump.sprag
  git config diff.sprag.textconv "sprag outline"
  echo "*.sprag diff=sprag" >> .gitattributes`;
