// `sprag explain`: the page of a rule, the list of all, or how the values at a line of a file came about.
import type { Command } from "commander";
import { explanationLines } from "#outputs/explanation.ts";
import { allCodes, explain, pageText } from "#rules/explain.ts";
import { explainedText, explainLine } from "#workspace/explain-line.ts";
import type { Perform } from "./call.ts";
import { addChoice, type Choices, oneOf, requireKnown } from "./choices.ts";
import { openOne } from "./open-one.ts";
import { printable, wrapped } from "./printable.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

export function defineExplain(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("[what]", "the code of a finding, such as order.enclosed, or FILE:LINE")
    .option("--format <format>", "of FILE:LINE: text for people, json for programs", oneOf("--format", FORMATS), "text")
    .option("--set <Option=Value>", "of FILE:LINE: a choice made before the work starts; may be given again", addChoice)
    .option("--root <folder>", "the workspace (default: this folder, or the one that holds the file)")
    .addHelpText("after", EXAMPLES)
    .action((what: string | undefined, options: Options) => perform(() => tell(what, options, around)));
}

const FORMATS = ["text", "json"] as const;

interface Options {
  readonly format: (typeof FORMATS)[number];
  readonly set?: Choices;
  readonly root?: string;
}

const EXAMPLES = `
Examples:
  sprag explain
  sprag explain order.enclosed
  sprag explain overhaul.sprag:136
  sprag explain overhaul.sprag:136 --set Extent=Full --format json`;

function tell(what: string | undefined, options: Options, around: Surroundings): Status {
  const { out } = around;
  const width = Math.min(out.columns ?? WIDEST, WIDEST);
  // A code has no colon.
  const [, file, line] = /^(.+):([^:]*)$/.exec(what ?? "") ?? [];
  if (file !== undefined && line !== undefined) out.write(valuesText(file, line, options, around));
  else if (options.format === "json" || options.set !== undefined)
    throw new Refusal("--format json and --set go with FILE:LINE, such as overhaul.sprag:136.");
  else out.write(what === undefined ? listText(width) : pageOf(what, width));
  return STATUS.fine;
}

function valuesText(file: string, line: string, options: Options, around: Surroundings): string {
  if (!/^[1-9]\d*$/.test(line))
    throw new Refusal(`“${line}” is no line. Give the file and a line from 1, such as ${file}:12.`);
  const { workspace, paths } = openOne(file, options, around);
  const { format, set } = options;
  const [path = ""] = paths;
  requireKnown(set, workspace.options(paths));
  const found = explainLine(workspace, path, Number(line), set === undefined ? {} : { set });
  if (found.kind === "no file") throw new Refusal(`${file} could not be read.`);
  if (found.kind === "no line") throw new Refusal(`${file} has ${found.lines} lines, and so no line ${line}.`);
  if (format === "json") return explainedText(path, Number(line), found, workspace);
  if (found.kind === "nothing") return nothingText(file, line, found.elsewhere);
  return found.values
    .map(({ of, step, explanation }, at) => {
      const head = step === null || step === found.values[at - 1]?.step ? [] : [`Step ${step}`, ""];
      return `${[...head, ...explanationLines(explanation, of)].map(printable).join("\n")}\n`;
    })
    .join("\n");
}

function nothingText(file: string, line: string, elsewhere: readonly number[]): string {
  if (elsewhere.length === 0)
    return `Nothing is worked out in ${file}. Sprag works out settings with an adapter, preloads, hot fits, lifts, oxygen and unbalance.\n`;
  const others = elsewhere.slice(0, MOST_LINES).join(", ");
  const rest = elsewhere.length > MOST_LINES ? " and more" : "";
  return `Nothing is worked out at line ${line}. See ${elsewhere.length === 1 ? "line" : "lines"} ${others}${rest}.\n`;
}

const MOST_LINES = 8;

const WIDEST = 100;

function pageOf(code: string, width: number): string {
  const found = explain(code);
  if (found.known) return pageText(found, Math.min(width, 78));
  const nearest = found.nearest === null ? "" : ` Nearest: ${found.nearest}.`;
  throw new Refusal(`no rule has the code “${code}”.${nearest} sprag explain lists them all.`);
}

function listText(width: number): string {
  const rules = allCodes();
  const codeWidth = Math.max(...rules.map((rule) => rule.code.length)) + 2;
  const severityWidth = Math.max(...rules.map((rule) => rule.severity.length)) + 2;
  const indent = codeWidth + severityWidth;
  const lines = rules.flatMap(({ code, severity, finds }) =>
    wrapped(finds, Math.max(20, width - indent)).map((line, at) =>
      at === 0 ? code.padEnd(codeWidth) + severity.padEnd(severityWidth) + line : " ".repeat(indent) + line,
    ),
  );
  return `${lines.join("\n")}\n`;
}
