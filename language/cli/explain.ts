// `sprag explain`: the page of a rule, the list of all, or how the values at a line of a file came about.
import type { Command } from "commander";
import { pageText } from "#rules/explain.ts";
import { allCodes, explain, explainLine, explanationLines } from "#workspace/index.ts";
import type { Perform } from "./call.ts";
import { openOne } from "./open-one.ts";
import { printable, wrapped } from "./printable.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

export function defineExplain(command: Command, perform: Perform, around: Surroundings): void {
  command
    .description("Print the page of a rule, or how the values at a line came about; without either, list all rules.")
    .argument("[what]", "the code of a finding, such as order.enclosed, or FILE:LINE")
    .option("--root <folder>", "the workspace (default: this folder, or the one that holds the file)")
    .addHelpText("after", EXAMPLES)
    .action((what: string | undefined, options: Options) => perform(() => tell(what, options, around)));
}

interface Options {
  readonly root?: string;
}

const EXAMPLES = `
Examples:
  sprag explain
  sprag explain order.enclosed
  sprag explain overhaul.sprag:136`;

function tell(what: string | undefined, options: Options, around: Surroundings): Status {
  const { out } = around;
  const width = Math.min(out.columns ?? WIDEST, WIDEST);
  // A code has no colon.
  const [, file, line] = /^(.+):([^:]*)$/.exec(what ?? "") ?? [];
  if (file !== undefined && line !== undefined) out.write(valuesText(file, line, options, around));
  else out.write(what === undefined ? listText(width) : pageOf(what, width));
  return STATUS.fine;
}

function valuesText(file: string, line: string, options: Options, around: Surroundings): string {
  if (!/^[1-9]\d*$/.test(line))
    throw new Refusal(`“${line}” is no line. Give the file and a line from 1, such as ${file}:12.`);
  const { workspace, paths } = openOne(file, options, around);
  const found = explainLine(workspace, paths[0] ?? "", Number(line));
  switch (found.kind) {
    case "no file":
      throw new Refusal(`${file} could not be read.`);
    case "no line":
      throw new Refusal(`${file} has ${found.lines} lines, and so no line ${line}.`);
    case "nothing": {
      const others = found.elsewhere.slice(0, MOST_LINES).join(", ");
      const rest = found.elsewhere.length > MOST_LINES ? " and more" : "";
      return found.elsewhere.length === 0
        ? `Nothing is worked out in ${file}. Sprag works out settings with an adapter, preloads and hot fits.\n`
        : `Nothing is worked out in the step at line ${line}. See ${found.elsewhere.length === 1 ? "line" : "lines"} ${others}${rest}.\n`;
    }
    case "values":
      return found.values
        .map(({ of, step, explanation }, at) => {
          const head = step?.number !== found.values[at - 1]?.step?.number ? [`Step ${step?.number ?? ""}`, ""] : [];
          return `${[...head, ...explanationLines(explanation, of)].map(printable).join("\n")}\n`;
        })
        .join("\n");
  }
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
