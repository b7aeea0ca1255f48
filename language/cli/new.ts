// `sprag new`: a folder to start from, with a shop library and a first procedure.
import { mkdirSync, readdirSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import type { Command } from "commander";
import { starterFiles } from "#workspace/starter.ts";
import type { Perform } from "./call.ts";
import { printableName } from "./printable.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";
import { codeOf, systemWords } from "./system-error.ts";
import { writeWhole } from "./write-file.ts";

export function defineNew(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<folder>", "a folder that is not there yet, or is empty")
    .addHelpText("after", "\nExample:\n  sprag new my-shop")
    .action((folder: string) => perform(() => begin(folder, around)));
}

function begin(given: string, { cwd, out }: Surroundings): Status {
  if (given.trim() === "") throw new Refusal("the name of the folder is empty. Give one, such as my-shop.");
  const folder = resolve(cwd, given);
  requireEmpty(folder, given);
  const files = starterFiles();
  for (const [path, text] of files) writeWhole(join(folder, path), join(given, path), text);
  const shown = printableName(relative(cwd, folder) || ".");
  const procedure = [...files.keys()].find((path) => path !== "shop.sprag") ?? "";
  out.write(`${shown} is there, with:
${[...files.keys()].map((path) => `  ${join(shown, path)}`).join("\n")}

What to do next:
  see that it is free of findings   sprag check ${shown}
  write its checklist               sprag export ${join(shown, procedure)} --as checklist --format html --out checklist.html
  change a line and check again     the text in ${join(shown, procedure)} says how it is meant
`);
  return STATUS.fine;
}

/** Node's own way to make a folder with those above it never comes back where the system refuses one, as below `/proc`. */
function makeFolder(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
  const above = dirname(folder);
  if (above !== folder) makeFolder(above);
  mkdirSync(folder);
}

/** Makes the folder if it is not there. */
function requireEmpty(folder: string, given: string): void {
  try {
    makeFolder(folder);
    const [first] = readdirSync(folder);
    if (first === undefined) return;
    throw new Refusal(`${given} holds files already (${first}). Give a folder that is empty or not there yet.`);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${given} ${codeOf(error) === "EEXIST" ? "is a file, not a folder." : systemWords(error)}`);
  }
}
