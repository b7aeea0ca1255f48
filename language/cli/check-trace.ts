// `sprag check --report trace`: every value and step of the files with the source it cites.
import { TRACE_FORMATS, traceMatrix } from "#workspace/trace.ts";
import { printTroubles } from "./call.ts";
import { type CallOptions, called } from "./check-call.ts";
import { openJob } from "./check-files.ts";
import { oneOf } from "./choices.ts";
import { progressOn } from "./progress.ts";
import { Refusal } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

interface Options extends CallOptions {
  readonly format?: string;
  readonly jobs?: number;
  readonly watch?: true;
}

export function checkTrace(given: readonly string[], options: Options, around: Surroundings): Status {
  const format = oneOf("--format", TRACE_FORMATS)(options.format ?? TRACE_FORMATS[0] ?? "");
  if (options.shard !== undefined) throw new Refusal("--shard goes with findings: a trace is of all files at once.");
  if (options.jobs !== undefined) throw new Refusal("--jobs goes with findings: a trace is made by one thread.");
  if (options.watch === true) throw new Refusal("--watch goes with findings: a trace is written once.");
  const progress = progressOn(around.err, around.now);
  const { job, troubles } = called(given, options, around);
  try {
    const { paths, troubles: ofFiles, workspace } = openJob(job, progress);
    progress.wipe();
    const all = [...troubles, ...ofFiles];
    printTroubles(all, around);
    around.out.write(traceMatrix(workspace, paths, format) ?? "");
    return all.length > 0 ? STATUS.unusable : STATUS.fine;
  } finally {
    progress.wipe();
  }
}
