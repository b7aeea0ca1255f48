// `sprag check --watch`: checks again when a file changes, comes or goes, of those that the call names and all that they use. One run at a
// time; what did not change is taken over from the one before.
import { join, relative, resolve, sep } from "node:path";
import type { Workspace } from "#workspace/workspace.ts";
import { type Called, type CallOptions, called } from "./check-call.ts";
import { checkFiles } from "./check-files.ts";
import { tellOf } from "./check-print.ts";
import type { Level } from "./fail-on.ts";
import { changedSince, foldersOf, type Seen, takeDown, takingDown } from "./files-seen.ts";
import { diskSource } from "./open-files.ts";
import { printableName } from "./printable.ts";
import { progressOn } from "./progress.ts";
import { Refusal, refusalText } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";
import { watchFolders } from "./watched-folders.ts";

interface Options extends CallOptions {
  readonly format?: string;
  readonly failOn: Level;
  readonly jobs?: number;
}

/** Comes back when it is told to stop, with the status of the last run. @throws Refusal where the first run is refused */
export function watch(given: readonly string[], options: Options, around: Surroundings): Promise<Status> {
  requireForPeople(options);
  const list = (): Called | Refusal => orRefusal(() => called(given, options, around));
  let last = run(list(), null);
  if (last.refusal !== null) throw last.refusal;
  around.err.write("Waiting for changes. Ctrl-C ends it.\n");
  return new Promise((end, fail) => {
    const folders = watchFolders(() => {
      try {
        look();
      } catch (error) {
        folders.close();
        fail(error);
      }
    });
    watchAll(last.list);
    around.onStop?.(() => {
      folders.close();
      end(last.status);
    });

    function look(): void {
      const now = list();
      const changes = changesSince(last, now, around.cwd);
      if (changes.length > 0) {
        around.out.write(`\n${changesText(changes)}\n`);
        last = run(now, last);
        if (last.refusal !== null) around.err.write(refusalText(last.refusal.message));
      }
      watchAll(now);
    }

    function watchAll(now: Called | Refusal): void {
      const walked = now instanceof Refusal ? [] : now.folders.map((folder) => join(now.job.root, folder));
      // What happened in a folder before it was watched is looked for once more.
      if (folders.set([...foldersOf(last.seen), ...walked])) folders.nudge();
    }
  });

  function run(now: Called | Refusal, before: Run | null): Run {
    const seen: Seen = new Map();
    for (const path of [...given, ...(options.crib === undefined ? [] : [options.crib])])
      takeDown(seen, resolve(around.cwd, path));
    if (now instanceof Refusal) return { list: now, seen, workspace: null, status: STATUS.unusable, refusal: now };
    const { job } = now;
    const source = takingDown(diskSource(job.root), job.root, seen);
    const isSameRoot = before !== null && !(before.list instanceof Refusal) && before.list.job.root === job.root;
    let workspace = isSameRoot ? before.workspace : null;
    const keep = (opened: Workspace): void => {
      workspace = opened;
    };
    const progress = progressOn(around.err, around.now);
    const checked = orRefusal(() => checkFiles(job, progress, { source, before: workspace, keep }));
    progress.wipe();
    if (checked instanceof Refusal) return { list: now, seen, workspace, status: STATUS.unusable, refusal: checked };
    const status = tellOf(now, checked, { failOn: options.failOn, format: "text" }, around);
    return { list: now, seen, workspace, status, refusal: null };
  }
}

interface Run {
  /** The files of the call when it began, or why there are none. */
  readonly list: Called | Refusal;
  readonly seen: Seen;
  readonly workspace: Workspace | null;
  readonly status: Status;
  readonly refusal: Refusal | null;
}

/** @throws Refusal */
function requireForPeople({ format, jobs, shard }: Options): void {
  if ((format ?? "text") !== "text")
    throw new Refusal(`--watch prints one check after another, which is no ${format}. Leave one of the two out.`);
  if (jobs !== undefined)
    throw new Refusal("--watch checks again only what has changed, which one thread does best. Leave --jobs out.");
  if (shard !== undefined) throw new Refusal("--watch checks all files of the call. Leave --shard out.");
}

function orRefusal<T>(work: () => T): T | Refusal {
  try {
    return work();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
}

/** What is not as the last run found it, as paths from the root. */
function changesSince({ list, seen }: Run, now: Called | Refusal, cwd: string): readonly string[] {
  const root = now instanceof Refusal ? cwd : now.job.root;
  const changed = changedSince(seen).map((path) => relative(root, path).split(sep).join("/"));
  const [before, after] = [list, now].map((one) => new Set(one instanceof Refusal ? [] : one.job.all));
  const others = [...(before ?? []), ...(after ?? [])].filter((path) => before?.has(path) !== after?.has(path));
  const all = [...new Set([...changed, ...others])].sort();
  // Such as a folder that may not be looked into.
  return all.length === 0 && listText(list) !== listText(now) ? ["."] : all;
}

function listText(list: Called | Refusal): string {
  return list instanceof Refusal ? list.message : JSON.stringify([list.job.root, list.troubles]);
}

/** As many as anybody reads. */
const MOST_TOLD = 3;

function changesText(paths: readonly string[]): string {
  const told = paths.slice(0, MOST_TOLD).map(printableName).join(", ");
  return `Changed: ${told}${paths.length > MOST_TOLD ? ` and ${paths.length - MOST_TOLD} more` : ""}`;
}
