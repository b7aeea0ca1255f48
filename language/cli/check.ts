// `sprag check`: the findings in files and folders.
import type { Command } from "commander";
import type { Perform } from "./call.ts";
import { type CallOptions, called } from "./check-call.ts";
import type { Checked } from "./check-files.ts";
import { FORMATS, tellOf } from "./check-print.ts";
import { checkInThreads, jobsWanted } from "./check-threads.ts";
import { checkTrace } from "./check-trace.ts";
import { addChoice, calendarDay, oneOf } from "./choices.ts";
import { CRIB_OPTION } from "./crib.ts";
import { FAIL_ON_OPTION, type Level } from "./fail-on.ts";
import { progressOn } from "./progress.ts";
import { shardWanted } from "./shard.ts";
import type { Status, Surroundings } from "./surroundings.ts";
import { watch } from "./watch.ts";

const REPORTS = ["findings", "trace"] as const;

interface Options extends CallOptions {
  readonly format?: string;
  readonly report: (typeof REPORTS)[number];
  readonly failOn: Level;
  readonly jobs?: number;
  readonly watch?: true;
}

export function defineCheck(command: Command, perform: Perform, around: Surroundings): void {
  command
    .argument("<path...>", "files, and folders with .sprag files in them")
    .option(
      "--format <format>",
      "text for people; json, sarif or junit for programs (default: text); of a trace: md, csv (default: md)",
    )
    .option(
      "--report <report>",
      "findings; trace: every value and step with the source it cites",
      oneOf("--report", REPORTS),
      "findings",
    )
    .option(...FAIL_ON_OPTION)
    .option("--set <Option=Value>", "a choice made before the work starts; may be given again", addChoice)
    .option(
      "--root <folder>",
      "the workspace; paths in findings begin there (default: this folder, or the one that holds the paths)",
    )
    .option(...CRIB_OPTION)
    .option("--on <date>", "the day of the work, as 2026-05-04 (default: today)", calendarDay)
    .option("--shard <i/n>", "only the i-th of n shards of the files, as json or sarif for sprag merge", shardWanted)
    .option("--jobs <n>", "threads to share the files among, for thousands of them (default: 1)", jobsWanted)
    .option("--watch", "check again whenever a file changes, until Ctrl-C; as text only")
    .addHelpText("after", EXAMPLES)
    .action((paths: readonly string[], options: Options) => {
      const work = options.report === "trace" ? checkTrace : options.watch === true ? watch : check;
      perform(() => work(paths, options, around));
    });
}

const EXAMPLES = `
A trace says for every value and every step of the files what source it cites, whichever choices are made.
A folder means every .sprag file in it, but for hidden folders, node_modules and what .gitignore leaves out.
A file's shard hangs on its path from the root alone; what it uses is read all the same.
Each thread takes seconds to warm up: up to some 1,000 files of 100 lines one is as fast as several.

Examples:
  sprag check .
  sprag check pump.sprag shop --fail-on warning
  sprag check overhaul.sprag --set Extent=Full --format json
  sprag check shop --format sarif > findings.sarif
  sprag check shop --shard 2/4 --format json > shard-2.json
  sprag check shop --watch
  sprag check overhaul.sprag shop --report trace --format csv
  sprag check overhaul.sprag --crib shop/crib.sprag --on 2026-05-04`;

function check(given: readonly string[], options: Options, around: Surroundings): Status | Promise<Status> {
  const format = oneOf("--format", FORMATS)(options.format ?? "text");
  const progress = progressOn(around.err, around.now);
  const call = called(given, options, around);
  const tell = (checked: Checked): Status => {
    progress.wipe();
    return tellOf(call, checked, { ...options, format }, around);
  };
  try {
    const done = checkInThreads(call.job, options.jobs ?? 1, progress, around);
    return done instanceof Promise ? done.then(tell).finally(progress.wipe) : tell(done);
  } catch (error) {
    progress.wipe();
    throw error;
  }
}
