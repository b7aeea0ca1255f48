// `sprag format`: the canonical layout and spelling of files. What does not parse stays as it is.
import { join } from "node:path";
import type { Command } from "commander";
import { formatText } from "#syntax/format.ts";
import { parseText } from "#syntax/parse.ts";
import { openWorkspace } from "#workspace/workspace.ts";
import { type Perform, printFindings, printTroubles } from "./call.ts";
import { findFiles, rootFolder } from "./find-files.ts";
import { counted } from "./findings-text.ts";
import { printableName } from "./printable.ts";
import { readText } from "./read-text.ts";
import { Refusal, refusalText } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";
import { writeWhole } from "./write-file.ts";

interface Options {
  readonly check?: boolean;
  readonly root?: string;
}

export function defineFormat(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<path...>", "files, and folders with .sprag files in them")
    .option("--check", "change nothing; list what would be changed, with status 1")
    .option("--root <folder>", "the workspace (default: this folder, or the one that holds the file)")
    .addHelpText("after", EXAMPLES)
    .action((paths: readonly string[], options: Options) => perform(() => format(paths, options, around)));
}

const EXAMPLES = `
A file that cannot be read as a procedure stays as it is; what is in the way is shown, with status 2.

Examples:
  sprag format pump.sprag
  sprag format . --check`;

/** What became of one file. */
type Outcome = "as it was" | "changed" | "not used";

function format(given: readonly string[], options: Options, around: Surroundings): Status {
  const root = rootFolder(options.root, around.cwd, given);
  const { paths, troubles } = findFiles(given, root, around.cwd);
  printTroubles(troubles, around);
  const outcomes = paths.map((path) => formatOne(path, root, options.check === true, around));
  const count = (outcome: Outcome): number => outcomes.filter((one) => one === outcome).length;
  const changed = count("changed");
  const done = options.check === true ? "would be changed" : "changed";
  if (paths.length > 0) {
    around.err.write(
      `${counted(paths.length, "file")}: ${changed} ${done}, ${count("as it was")} as they should be.\n`,
    );
  }
  if (troubles.length > 0 || count("not used") > 0) return STATUS.unusable;
  return options.check === true && changed > 0 ? STATUS.findings : STATUS.fine;
}

function formatOne(path: string, root: string, onlyCheck: boolean, around: Surroundings): Outcome {
  const place = join(root, path);
  const read = readText(place);
  if (!read.ok) {
    printTroubles([{ path, message: read.message }], around);
    return "not used";
  }
  const formatted = formatText(parseText(read.text, path));
  if (!formatted.ok) {
    tellWhatIsInTheWay(path, read.text, around);
    return "not used";
  }
  if (formatted.text === read.text && !read.marked) return "as it was";
  try {
    if (!onlyCheck) writeWhole(place, path, formatted.text);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    around.err.write(refusalText(error.message));
    return "not used";
  }
  around.out.write(`${printableName(path)}\n`);
  return "changed";
}

function tellWhatIsInTheWay(path: string, text: string, around: Surroundings): void {
  const texts = new Map([[path, text]]);
  const workspace = openWorkspace({ texts, present: new Set(), absent: new Set(), today: "" });
  const files = workspace.check([path]).files.map(({ findings }) => ({
    path,
    findings: findings.filter((finding) => finding.code.startsWith("syntax.")),
  }));
  const isRead = files.every(({ findings }) => findings.length === 0);
  const message = isRead
    ? "stays as it is: its layout could not be changed without changing its words."
    : "stays as it is: not all of it can be read.";
  printTroubles([{ path, message }], around);
  printFindings(files, texts, around.err, around);
}
