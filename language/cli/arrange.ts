// `sprag arrange`: the table of an arrangement with the positions that leave the least unbalance.
import type { Command } from "commander";
import { show } from "#quantity/display.ts";
import { type Arrangements, arrangeTable } from "#workspace/arrange.ts";
import type { CheckReport } from "#workspace/report.ts";
import { type Perform, printFindings } from "./call.ts";
import { nearestOf } from "./choices.ts";
import { counted } from "./findings-text.ts";
import { handOver, openOne } from "./open-one.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

interface Options {
  readonly arrangement?: string;
  readonly out?: string;
  readonly root?: string;
}

export function defineArrange(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<file>", "the file that declares the arrangement")
    .option("--arrangement <name>", "which, where the file declares several")
    .option("--out <file>", "where to write the table (default: standard output)")
    .option("--root <folder>", "the workspace (default: this folder, or the one that holds the file)")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: Options) => perform(() => propose(file, options, around)));
}

const EXAMPLES = `
The table has the columns of the one the arrangement is made from, with the positions filled in. Parts marked “fixed” stay.
Up to 11 parts the best of all orders is found. For more, a search says how far from the least possible it may be.
Exit status: 1 where even the proposal is above the limit.

Examples:
  sprag arrange sprocket.sprag
  sprag arrange fan.sprag --arrangement BladeOrder --out arranged.csv`;

function propose(given: string, { arrangement, out, root }: Options, around: Surroundings): Status {
  const opened = openOne(given, root === undefined ? {} : { root }, around);
  const [path = ""] = opened.paths;
  const result = arrangeTable(opened.workspace, path, arrangement);
  switch (result.kind) {
    case "no file":
      throw new Refusal(`${given} could not be read.`);
    case "which arrangement":
      throw new Refusal(whichArrangement(given, arrangement, result.known));
    case "no table":
      throw new Refusal(
        `${result.arrangement} names no table. Add a line such as from "parts.csv", with the serials and masses.`,
      );
    case "not as many":
      throw new Refusal(
        `${result.table} has ${counted(result.parts, "part")}, and ${result.ring} has ${counted(result.count, "position")}. Give one part for each position.`,
      );
    case "fixed twice":
      throw new Refusal(
        `${result.table} fixes two parts in one position, or one where there is none. Correct the column “fixed” or the position.`,
      );
    case "errors":
      return tellErrors(result.report, opened.workspace.snapshot.texts, around);
    case "done":
      handOver(result.csv, out, "the proposal", opened, around);
      around.err.write(toldText(result.told));
      return result.told.limits.every(({ kept }) => kept) ? STATUS.fine : STATUS.findings;
  }
}

function whichArrangement(given: string, name: string | undefined, known: readonly string[]): string {
  if (known.length === 0) return `${given} declares no arrangement. Give the file that does.`;
  if (name !== undefined) return `${given} declares no arrangement ${name}. ${nearestOf(name, known)}`;
  return `${given} declares ${counted(known.length, "arrangement")}. Name one with --arrangement: ${known.join(", ")}.`;
}

function tellErrors(report: CheckReport, texts: ReadonlyMap<string, string>, around: Surroundings): Status {
  printFindings(report.files, texts, around.err, around);
  around.err.write("Nothing was arranged: what the table says is not known.\n");
  return STATUS.findings;
}

function toldText({ arrangement, ring, parts, stay, before, after, bound, gap, exact, limits }: Arrangements): string {
  const at = after.kind === "mass" ? " at the radius, which is not given" : "";
  const rows = [
    ...(before === null ? [] : [["before", show(before)] as const]),
    ["proposed", `${show(after)}${at}`] as const,
    [
      "least",
      exact ? "no order leaves less" : `no order leaves less than ${show(bound)}; the gap is ${show(gap)}`,
    ] as const,
    ...limits.map(
      ({ value, kept }) => ["limit", `${show(value)}${kept ? ", kept" : ", not kept by this set"}`] as const,
    ),
  ];
  const moved =
    stay === parts
      ? "all keep the position that the table gives them"
      : `${stay} keep${stay === 1 ? "s" : ""} the position that the table gives ${stay === 1 ? "it" : "them"}`;
  return `${arrangement}: ${counted(parts, "part")} on ${ring}, ${moved}.\n${rows.map(([label, value]) => `  ${label.padEnd(10)}${value}\n`).join("")}`;
}
