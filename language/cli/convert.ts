// `sprag convert`: one quantity in another unit, exactly and as it may be shown, with the band rounded inwards.
import type { Command } from "commander";
import type { Conversion, ConversionProblem, ConvertedReading } from "#quantity/convert.ts";
import { convertText } from "#quantity/convert.ts";
import type { QuantityProblem } from "#quantity/problem.ts";
import type { TextSpan } from "#quantity/quantity-text.ts";
import { findingsOf } from "#rules/run.ts";
import type { Span } from "#syntax/span.ts";
import type { Perform } from "./call.ts";
import { Refusal, refusalText } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

export function defineConvert(command: Command, perform: Perform, around: Surroundings): void {
  command
    .usage('"QUANTITY" UNIT')
    .argument("<words...>", "a quantity, and behind it the unit to convert to")
    .addHelpText("after", EXAMPLES)
    .action((words: readonly string[]) => perform(() => convert(words, around)));
}

const EXAMPLES = `
A band that must be kept is rounded inwards: who keeps it keeps the original.

Examples:
  sprag convert "40 N·m" lbf·in
  sprag convert "38 .. 42 N·m" lbf·ft
  sprag convert "at most 120 °C" °F`;

function convert(words: readonly string[], { out, err }: Surroundings): Status {
  const [target = "", text] = [words[words.length - 1], words.slice(0, -1).join(" ")];
  if (text === "" || target === "") {
    throw new Refusal('convert wants a quantity and a unit, such as sprag convert "40 N·m" lbf·in.');
  }
  const conversion = convertText(text, target);
  if (!conversion.ok) throw new Refusal(problemWords(conversion.problem, text) ?? `“${text}” could not be converted.`);
  for (const note of conversion.notes) {
    const said = note.kind === "style" ? null : problemWords(note, text);
    if (said !== null) err.write(refusalText(said));
  }
  out.write(conversionText(conversion));
  return STATUS.fine;
}

function conversionText({ unit, readings }: Extract<Conversion, { ok: true }>): string {
  return readings.map((reading) => readingText(reading, unit)).join("\n");
}

/** A longer one tells a reader nothing. */
const LONGEST_FRACTION = 20;

function readingText({ kind, from, ends, shown, inwards }: ConvertedReading, unit: string): string {
  const rows = ends.map(({ end, exact, digits }) => {
    const isShort = exact !== null && exact.length <= LONGEST_FRACTION;
    const note = exact === digits ? "exactly" : isShort ? `rounded; exactly ${exact}` : "rounded";
    return [ends.length === 1 ? "value" : end, `${digits} ${unit}`, note] as const;
  });
  const all: readonly (readonly [string, string, string])[] = [
    ...(inwards === null ? [] : [["band", inwards, "rounded inwards; keeping it keeps the original"] as const]),
    ...rows,
  ];
  const widest = Math.max(...all.map(([, value]) => value.length));
  const lines = all.map(([label, value, note]) => `  ${label.padEnd(8)}${value.padEnd(widest)}  ${note}`);
  return `${from} = ${shown}   (${kind})\n${lines.join("\n")}\n`;
}

/** In a sentence or two, or a few lines; null for what needs no words. */
function problemWords(problem: ConversionProblem, text: string): string | null {
  switch (problem.kind) {
    case "unreadable":
      return unreadableWords(problem, text);
    case "unknown target": {
      const nearest = problem.nearest.length === 0 ? "" : ` Nearest: ${problem.nearest.join(", ")}.`;
      return `“${problem.text}” is no unit.${nearest}`;
    }
    case "ambiguous target":
      return `“${problem.text}” can mean two things: ${problem.why}. It is read as ${problem.readAs}.`;
    case "decimal comma":
      if (problem.whole !== null)
        return `The comma in “${problem.text}” can be read in more than one way. Write ${problem.whole} or ${problem.canonical}, whichever is meant.`;
      return `“${problem.text}” has a comma where a point belongs. It is read as ${problem.canonical}.`;
    default:
      return ruleWords(problem);
  }
}

function unreadableWords({ at, expected }: { at: TextSpan; expected: string }, text: string): string {
  const found = text.slice(at.start, at.end).trim();
  const dash = /^(.*\d\S*?)\s*[-–—]\s*(\d.*)$/.exec(text);
  if (dash !== null && /^[-–—]/.test(found))
    return `The range “${text}” is written with a dash. Write ${dash[1]} .. ${dash[2]}.`;
  const what = expected === "the end" ? "nothing more" : expected;
  const where = found === "" ? "at its end" : `where “${found}” stands`;
  return `“${text}” cannot be read as a quantity: ${what} belongs ${where}. Write it as in 40 N·m, 38 .. 42 N·m or 40 ± 2 N·m.`;
}

/** What the rule says that finds the same in a file. */
function ruleWords(problem: QuantityProblem<TextSpan>): string | null {
  const span: Span = { path: "", ...problem.at };
  const placed = { ...problem, at: span } as QuantityProblem<Span>;
  const [finding] = findingsOf([{ kind: "quantity", span, problem: placed }]);
  if (finding === undefined) return null;
  const parts = [finding.message, ...(finding.why ?? "").split("\n"), finding.remedy ?? ""];
  return parts.filter((part) => part !== "").join("\n");
}
