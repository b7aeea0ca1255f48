// `sprag export`: one procedure as a document, to a file or to standard output.
import type { Command } from "commander";
import { type ExportRequest, exportAs, outputFormats } from "#workspace/export.ts";
import type { CheckReport } from "#workspace/report.ts";
import { type Perform, printFindings } from "./call.ts";
import { addChoice, type Choices, calendarDay, nearestOf, oneOf, requireKnown } from "./choices.ts";
import { CRIB_OPTION } from "./crib.ts";
import { counted } from "./findings-text.ts";
import { type Opened, openFigures } from "./open-files.ts";
import { handOver, openOne } from "./open-one.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

interface Options {
  readonly as: string;
  readonly format?: string;
  readonly answers?: boolean;
  readonly procedure?: string;
  readonly set?: Choices;
  readonly units: "si" | "us" | "both";
  readonly repeats: "compact" | "full";
  readonly language?: string;
  readonly draft?: boolean;
  readonly out?: string;
  readonly root?: string;
  readonly on?: string;
  readonly crib?: string;
}

export function defineExport(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<file>", "the file that holds the procedure")
    .option(
      "--as <output>",
      `what to write: ${outputFormats()
        .map(({ as }) => as)
        .join(", ")}`,
      "checklist",
    )
    .option("--format <format>", "one of the output's formats, below (default: its first)")
    .option("--answers", "with the answers, at the end of a trainee's sheet")
    .option("--procedure <name>", "which, where the file holds several")
    .option("--set <Option=Value>", "a choice made before the work starts; may be given again", addChoice)
    .option("--units <system>", "si, us or both", oneOf("--units", ["si", "us", "both"]), "both")
    .option(
      "--repeats <form>",
      "compact: one row; full: a row for each pass",
      oneOf("--repeats", ["compact", "full"]),
      "compact",
    )
    .option("--language <code>", "of the fixed words: en or de (default: en)")
    .option("--draft", "write it though there are errors; every page says DRAFT and lists them")
    .option("--out <file>", "where to write it (default: standard output)")
    .option("--root <folder>", "the workspace (default: this folder, or the one that holds the file)")
    .option(...CRIB_OPTION)
    .option("--on <date>", "the day of the work, as 2026-05-04 (default: today)", calendarDay)
    .addHelpText("after", `\nOutputs and their formats:\n${formatLines()}\n${EXAMPLES}`)
    .action((file: string, options: Options) => perform(() => write(file, options, around)));
}

function formatLines(): string {
  return outputFormats()
    .map(({ as, formats }) => `  ${as.padEnd(10)} ${formats.join(", ")}`)
    .join("\n");
}

/** Empty for an output that is not known, which is told first. */
function firstFormat(as: string): string {
  return outputFormats().find((output) => output.as === as)?.formats[0] ?? "";
}

const EXAMPLES = `
Examples:
  sprag export pump.sprag --as checklist --format html --out pump.html
  sprag export overhaul.sprag --procedure Reseal --set Extent=Reseal --units si --format md
  sprag export pump.sprag --crib shop/crib.sprag --on 2026-05-04 --out pump.html
  sprag export pump.sprag --draft --out draft.html`;

function write(given: string, options: Options, around: Surroundings): Status | Promise<Status> {
  const { as, procedure, set, units, repeats, draft = false, answers = false, language } = options;
  if (answers && as !== "trainee") throw new Refusal("--answers goes with --as trainee.");
  const opened = openOne(given, options, around);
  const [path = ""] = opened.paths;
  requireKnown(set, opened.workspace.options(opened.paths));
  const { format = firstFormat(as) } = options;
  const result = exportAs(openFigures(opened, path), {
    ...{ path, as, format, units, repeats, draft, answers },
    fonts: async () => {
      const [regular, bold] = await Promise.all([around.asset("DejaVuSans.ttf"), around.asset("DejaVuSans-Bold.ttf")]);
      return { regular, bold };
    },
    ...(language === undefined ? {} : { language }),
    ...(procedure === undefined ? {} : { procedure }),
    ...(set === undefined ? {} : { set }),
    ...(opened.crib === null ? {} : { crib: opened.crib }),
  } satisfies ExportRequest);
  switch (result.kind) {
    case "unknown output":
      throw new Refusal(`--as cannot be “${as}”. ${nearestOf(as, result.known)}`);
    case "unknown format":
      throw new Refusal(`--format of a ${as} cannot be “${format}”. ${nearestOf(format, result.known)}`);
    case "unknown language":
      throw new Refusal(`--language cannot be “${language}”. ${nearestOf(language ?? "", result.known)}`);
    case "no file":
      throw new Refusal(`${given} could not be read.`);
    case "which procedure":
      throw new Refusal(whichProcedure(given, procedure, result.known));
    case "errors":
      return tellErrors(result.report, opened, around);
    case "done":
      return typeof result.content === "string"
        ? handDocument(result.content, options, opened, around)
        : result.content.then((bytes) => handDocument(bytes, options, opened, around));
  }
}

function handDocument(content: string | Uint8Array, { out }: Options, opened: Opened, around: Surroundings): Status {
  handOver(content, out, "the document", opened, around);
  return STATUS.fine;
}

function whichProcedure(given: string, name: string | undefined, known: readonly string[]): string {
  if (known.length === 0) return `${given} holds no procedure to write.`;
  if (name !== undefined) return `${given} holds no procedure ${name}. ${nearestOf(name, known)}`;
  return `${given} holds ${counted(known.length, "procedure")}. Name one with --procedure: ${known.join(", ")}.`;
}

function tellErrors(report: CheckReport, { workspace }: Opened, around: Surroundings): Status {
  printFindings(report.files, workspace.snapshot.texts, around.err, around);
  around.err.write(
    `Nothing was written: ${counted(report.summary.errors, "error")} to mend. With --draft it is written all the same, marked DRAFT.\n`,
  );
  return STATUS.findings;
}
