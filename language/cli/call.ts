// What all commands have alike: how they are declared, how they tell findings and troubles. Knows no single command.
import type { Command } from "commander";
import type { FileReport } from "#workspace/report.ts";
import { findingsText } from "./findings-text.ts";
import { printableName } from "./printable.ts";
import { type Trouble, troubleLine } from "./refusal.ts";
import { type Status, type Stream, type Surroundings, wantsColour } from "./surroundings.ts";

/** Declares arguments and options of a sub-command, and hands on its work once a call asks for it. */
export type Definition = (command: Command, perform: Perform, around: Surroundings) => void;
export type Perform = (work: Work) => void;
/** Done at once, or after a while where it waits for something. */
export type Work = () => Status | Promise<Status>;

/** Wider lines are hard to read. */
const WIDEST = 100;
const NARROWEST = 40;

export function printFindings(
  files: readonly FileReport[],
  texts: ReadonlyMap<string, string>,
  stream: Stream,
  { env }: Surroundings,
): void {
  const width = Math.max(NARROWEST, Math.min(stream.columns ?? WIDEST, WIDEST));
  const style = { colour: wantsColour(stream, env), width };
  stream.write(findingsText(files, (path) => texts.get(path) ?? "", style));
}

export function printTroubles(troubles: readonly Trouble[], around: Surroundings): void {
  printLines(troubles.map(troubleLine), around);
}

/** On standard error, each on a line of its own. */
export function printLines(lines: readonly string[], { err }: Surroundings): void {
  for (const line of lines) err.write(`sprag: ${printableName(line)}\n`);
}
