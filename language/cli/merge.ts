// `sprag merge`: the shards of a check, made with --shard on several machines, as the one report of all files.
import { resolve } from "node:path";
import type { Command } from "commander";
import { reportText } from "#workspace/report.ts";
import { mergedReport } from "#workspace/report-merge.ts";
import { reportSarif } from "#workspace/report-sarif.ts";
import { readShard } from "#workspace/report-shard.ts";
import { type Perform, printLines } from "./call.ts";
import { FAIL_ON_OPTION, isFailed, type Level } from "./fail-on.ts";
import { readText } from "./read-text.ts";
import { Refusal } from "./refusal.ts";
import { type GivenShard, requireTogether } from "./shards-together.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";
import { writeOut } from "./write-out.ts";

interface Options {
  readonly failOn: Level;
  readonly out?: string;
}

export function defineMerge(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<file...>", "all shards of one check, as JSON or all as SARIF, in any order")
    .option(...FAIL_ON_OPTION)
    .option("--out <file>", "where to write it (default: standard output)")
    .addHelpText("after", EXAMPLES)
    .action((files: readonly string[], options: Options) => perform(() => merge(files, options, around)));
}

const EXAMPLES = `
What is written is what sprag check writes without --shard, in the format of the shards. Nothing is written where a
shard is missing, is there twice, or is of another check.

Examples:
  sprag merge shard-1.json shard-2.json shard-3.json shard-4.json
  sprag merge shard-*.sarif --out findings.sarif`;

/** Near what a text can hold at all. */
const MOST_BYTES = 500_000_000;

function merge(given: readonly string[], { failOn, out }: Options, around: Surroundings): Status {
  const shards = given.map((file) => shardIn(file, around.cwd));
  requireTogether(shards);
  const reports = shards
    .map(({ report }) => report)
    .sort(({ shard: one }, { shard: other }) => one.number - other.number);
  const whole = mergedReport(reports);
  const troubles = new Set(reports.flatMap(({ shard }) => shard.troubles ?? []));
  printLines([...troubles], around);
  const text = shards[0]?.format === "sarif" ? reportSarif(whole) : reportText(whole);
  const from = given.map((file) => resolve(around.cwd, file));
  // A check prints no report either where no file could be used.
  if (whole.files.length > 0) writeOut(text, out, "the report", from, around);
  if (troubles.size > 0) return STATUS.unusable;
  return isFailed(whole.summary, failOn) ? STATUS.findings : STATUS.fine;
}

/** @throws Refusal where the file holds none */
function shardIn(given: string, cwd: string): GivenShard {
  const text = readText(resolve(cwd, given), MOST_BYTES);
  if (!text.ok) throw new Refusal(`${given} ${text.message}`);
  const read = readShard(text.text);
  switch (read.kind) {
    case "shard":
      return { ...read, given };
    case "whole":
      throw new Refusal(`${given} is the report of a whole check. A shard is made with sprag check --shard.`);
    case "changed":
      throw new Refusal(`${given} was changed after it was written, or is cut off. Make this shard again.`);
    default:
      throw new Refusal(
        `${given} is no report of a shard, or only a part of one. Give what sprag check --shard wrote with --format json or sarif.`,
      );
  }
}
