// `--jobs N`: the files of a check in as many parts, each checked by a thread of its own. Findings come back, never trees: to hand those over
// takes longer than to make them. Knows no output.
import { mergedReport } from "#workspace/report-merge.ts";
import { type Checked, type CheckJob, checkFiles } from "./check-files.ts";
import { type Progress, SILENT } from "./progress.ts";
import { Refusal, type Trouble } from "./refusal.ts";
import type { Surroundings } from "./surroundings.ts";

/** More threads than any machine that checks has cores. */
const MOST_JOBS = 64;

/** Reads `2`, for commander. */
export function jobsWanted(given: string): number {
  const jobs = /^\d{1,9}$/.test(given) ? Number(given) : 0;
  if (jobs >= 1 && jobs <= MOST_JOBS) return jobs;
  throw new Refusal(`--jobs takes a whole number from 1 to ${MOST_JOBS}; “${given}” is not so.`);
}

/** As {@link checkFiles}, which it is where one thread is enough. */
export function checkInThreads(
  job: CheckJob,
  jobs: number,
  progress: Progress,
  { thread }: Surroundings,
): Checked | Promise<Checked> {
  const parts = Math.min(jobs, job.paths.length);
  if (parts < 2 || thread === undefined) return checkFiles(job, progress);
  progress.show(`checking ${job.paths.length} files in ${parts} threads`);
  const numbers = Array.from({ length: parts }, (_, number) => number);
  return Promise.all(
    numbers.map(async (number) => {
      const part: CheckJob = { ...job, paths: job.paths.filter((_, at) => at % parts === number) };
      const done = (await thread(part)) as Done;
      if (done.refused !== undefined) throw new Refusal(done.refused);
      return done.checked;
    }),
  ).then((checked) => together(job, checked));
}

type Done =
  | { readonly checked: Checked; readonly refused?: undefined }
  | { readonly checked?: undefined; readonly refused: string };

/** The work of a thread: what it is handed, and what it sends back. @param job a {@link CheckJob} */
export function checkInThread(job: unknown): unknown {
  try {
    return { checked: checkFiles(job as CheckJob, SILENT) } satisfies Done;
  } catch (error) {
    if (error instanceof Refusal) return { refused: error.message } satisfies Done;
    throw error;
  }
}

function together({ all }: CheckJob, parts: readonly Checked[]): Checked {
  const order = new Map(all.map((path, at) => [path, at]));
  const place = ({ path }: Trouble): number => order.get(path) ?? all.length;
  // What several parts use is told of by each of them.
  const troubles = new Map(parts.flatMap((part) => part.troubles).map((trouble) => [trouble.path, trouble]));
  return {
    report: mergedReport(parts.map(({ report }) => report)),
    troubles: [...troubles.values()].sort((one, other) => place(one) - place(other)),
    texts: new Map(parts.flatMap(({ texts }) => [...texts])),
  };
}
