// `sprag explain`: the page of a rule, or the list of all.
import type { Command } from "commander";
import { pageText } from "#rules/explain.ts";
import { allCodes, explain } from "#workspace/index.ts";
import type { Perform } from "./call.ts";
import { wrapped } from "./printable.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

export function defineExplain(command: Command, perform: Perform, around: Surroundings): void {
  command
    .description("Print the page of a rule; without a code, list all rules.")
    .argument("[code]", "the code of a finding, such as order.enclosed")
    .addHelpText("after", "\nExamples:\n  sprag explain\n  sprag explain order.enclosed")
    .action((code: string | undefined) => perform(() => tell(code, around)));
}

function tell(code: string | undefined, { out }: Surroundings): Status {
  const width = Math.min(out.columns ?? WIDEST, WIDEST);
  out.write(code === undefined ? listText(width) : pageOf(code, width));
  return STATUS.fine;
}

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
