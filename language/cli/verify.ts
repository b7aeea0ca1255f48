// `sprag verify`: a filled record against the procedure that its checklist was made from.
import { resolve } from "node:path";
import type { Command } from "commander";
import { type VerifyReport, type VerifyResult, verify } from "#workspace/verify.ts";
import type { Perform } from "./call.ts";
import { addChoice, type Choices, nearestOf, oneOf, requireKnown } from "./choices.ts";
import { CRIB_OPTION } from "./crib.ts";
import { counted } from "./findings-text.ts";
import { openFigures } from "./open-files.ts";
import { openOne } from "./open-one.ts";
import { printableName } from "./printable.ts";
import { readText } from "./read-text.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

const FORMATS = ["text", "json"] as const;

interface Options {
  readonly for: string;
  readonly format: (typeof FORMATS)[number];
  readonly set?: Choices;
  readonly root?: string;
  readonly crib?: string;
}

export function defineVerify(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<record>", "the record as saved from the checklist, a JSON file")
    .requiredOption("--for <file>", "the file that holds the procedure")
    .option("--format <format>", "text for people, json for programs", oneOf("--format", FORMATS), "text")
    .option("--set <Option=Value>", "a choice the record must have been made with; may be given again", addChoice)
    .option("--root <folder>", "the workspace (default: this folder, or the one that holds the file)")
    .option(...CRIB_OPTION)
    .addHelpText("after", EXAMPLES)
    .action((record: string, options: Options) => perform(() => hold(record, options, around)));
}

const EXAMPLES = `
Looks whether the record is of exactly these inputs (their content hash) and options, complete, in order, with readings within
limits, and whether hold points were signed by somebody who did none of the work. A checklist made with --crib is verified with it.
Exit status: 0 all is well, 1 findings, 2 the record or the file could not be used.

Examples:
  sprag verify WI-045-03-record.json --for hot-bearing-fit.sprag
  sprag verify record.json --for overhaul.sprag --set Extent=Full --format json`;

function hold(given: string, options: Options, around: Surroundings): Status {
  const { for: file, set, root, crib, format } = options;
  const read = readText(resolve(around.cwd, given));
  if (!read.ok) throw new Refusal(`${given} ${read.message}`);
  const opened = openOne(
    file,
    { ...(root === undefined ? {} : { root }), ...(crib === undefined ? {} : { crib }) },
    around,
  );
  const [path = ""] = opened.paths;
  requireKnown(set, opened.workspace.options(opened.paths));
  const result = verify(openFigures(opened, path), {
    path,
    record: read.text,
    ...(set === undefined ? {} : { set }),
    ...(opened.crib === null ? {} : { crib: opened.crib }),
  });
  if (result.kind !== "done") throw new Refusal(refusalFor(result, given, file));
  const { report } = result;
  around.out.write(format === "json" ? `${JSON.stringify(report, null, 2)}\n` : reportText(report));
  return report.findings.length === 0 ? STATUS.fine : STATUS.findings;
}

function refusalFor(result: Exclude<VerifyResult, { readonly kind: "done" }>, record: string, file: string): string {
  switch (result.kind) {
    case "no file":
      return `${file} could not be read.`;
    case "no procedure":
      return `${file} holds no procedure ${printableName(result.name)}, which the record is of. ${nearestOf(result.name, result.known)}`;
    case "no record":
      switch (result.fault.kind) {
        case "too large":
          return `${record} is too large for a record of a checklist.`;
        case "no json":
          return `${record} is no JSON. Give the file that the checklist saved.`;
        case "no record":
          return `${record} is no record of a checklist. Give the file that the checklist saved.`;
        case "other version":
          return `${record} is a record of version ${printableName(result.fault.version)}; this command reads version 1.`;
        case "part":
          return `${record} is damaged: ${partText(result.fault.part)} is missing or is not what it should be. Give the file as the checklist saved it.`;
      }
  }
}

/** An entry is counted from 1, as in a finding. */
function partText(part: string): string {
  const [whole, at, rest] = /^events\[(\d+)\]\.?(.*)$/.exec(part) ?? [];
  if (whole === undefined) return printableName(part);
  return `${rest ? `${printableName(rest)} of ` : ""}entry ${Number(at) + 1}`;
}

function reportText({ document, procedure, hash, findings, summary }: VerifyReport): string {
  const head = `${printableName(document)} (${printableName(procedure)}), content hash ${hash.slice(0, 12)}\n`;
  const rows = findings.map(({ code, message, event }) => {
    const at = event === null ? "" : ` (entry ${event + 1})`;
    return `  ${printableName(message)}${at}  [${code}]\n`;
  });
  const state = summary.complete ? "complete" : "not complete";
  const result = findings.length === 0 ? "nothing to be said against it" : counted(findings.length, "finding");
  // Of another text nothing was held against it.
  const isOther = findings.some(({ code }) => code === "record.other-inputs");
  const compared = isOther ? "Not compared" : `${counted(summary.marked, "place")} marked, ${state}`;
  return `${head}${rows.join("")}${compared}: ${result}\n`;
}
