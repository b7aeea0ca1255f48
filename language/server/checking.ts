// When what is checked: files on the screen as soon as the writer rests, then the files that use them, then whole folders in the
// background with progress. One loop, one check at a time, a turn for others after each.
import { isTable } from "#workspace/load.ts";
import { dependentsOf } from "./dependents.ts";
import { findingsInTurns } from "./findings.ts";
import type { Folder } from "./folder.ts";
import { type Progress, startProgress } from "./progress.ts";
import type { Status } from "./protocol.ts";
import { createPublished, type FolderFile, keyOf } from "./published.ts";
import { type Session, turn } from "./session.ts";
import type { Say } from "./words.ts";

export interface Checking {
  /** Texts changed: the open ones among them and their users are checked soon, the others after that. */
  readonly changed: (folder: Folder, paths: readonly string[]) => void;
  /** A file is gone from the screen or the disk, or belongs to no folder any more. */
  readonly forget: (folder: Folder, path: string) => void;
  /** Reads whole folders. Gives null, or how it was stopped. */
  readonly read: (folders: readonly Folder[]) => Promise<Status | null>;
  /** Checks whole folders that were read; resolves when done or stopped. */
  readonly all: (folders: readonly Folder[]) => Promise<Status>;
  /** Settings are others now: what is no longer to be shown goes. */
  readonly settled: () => void;
  /** Resolves when nothing is waiting to be checked. */
  readonly idle: () => Promise<void>;
}

/** In milliseconds. A check waits for the writer to rest, the longer the longer the last one took. */
const SHORTEST_REST = 10;
const LONGEST_REST = 500;

export function createChecking(session: Session, say: Say): Checking {
  const soon = new Map<string, FolderFile>();
  const later = new Map<string, FolderFile>();
  /** Changed files whose users are not known yet. */
  const touched = new Map<string, FolderFile>();
  const published = createPublished(session);
  let rest = SHORTEST_REST;
  let lastChange = 0;
  let running: Promise<void> | null = null;
  let background: Background | null = null;
  let beginning = 0;

  const isKnown = (folder: Folder): boolean => session.folders().includes(folder);
  const tell = (status: Status): void => {
    if (session.tellsStatus) void session.connection.sendNotification("sprag/status", status);
  };

  const run = (): Promise<void> => {
    running ??= loop().finally(() => {
      running = null;
    });
    return running;
  };
  const loop = async (): Promise<void> => {
    let wasStopped = false;
    while (soon.size + later.size + touched.size > 0) {
      const quiet = performance.now() - lastChange;
      if (soon.size + touched.size > 0 && quiet < rest) {
        await pause(rest - quiet);
        continue;
      }
      if (touched.size > 0) {
        await enqueueUsers().catch((error: unknown) => told(error));
        continue;
      }
      if (background?.progress.isCancelled() === true) {
        later.clear();
        wasStopped = true;
        endBackground(say("The check of the folder was cancelled."));
        continue;
      }
      const [from, isSoon] = soon.size > 0 ? [soon, true] : [later, false];
      const [key, job] = from.entries().next().value as [string, FolderFile];
      from.delete(key);
      const began = performance.now();
      // A fault of our own in one file must not end the checking of all others.
      await check(job).catch((error: unknown) => told(error, `${job.path}: `));
      if (isSoon) rest = Math.min(LONGEST_REST, Math.max(SHORTEST_REST, performance.now() - began));
      if (background?.left.delete(key) === true) reportBackground(background);
      if (background?.left.size === 0) endBackground(null);
      await turn();
    }
    if (background !== null) endBackground(null);
    if (!wasStopped) tell(published.status());
  };
  const told = (error: unknown, where = ""): void => session.connection.console.error(`${where}${traceOf(error)}`);
  const enqueueUsers = async (): Promise<void> => {
    const changed = [...touched.values()];
    touched.clear();
    for (const folder of new Set(changed.map((job) => job.folder))) {
      const workspace = await folder.settled();
      const paths = changed.filter((job) => job.folder === folder).map(({ path }) => path);
      // Taken out meanwhile, it must not push its successor's work aside.
      if (!isKnown(folder)) continue;
      for (const path of dependentsOf(workspace, paths)) enqueue({ folder, path });
    }
  };
  const check = async (job: FolderFile): Promise<void> => {
    const { folder, path } = job;
    const workspace = await folder.settled();
    const open = folder.open.get(path);
    // The text may change meanwhile, or the folder be gone: then this is no longer true.
    const isWanted = (): boolean => !soon.has(keyOf(job)) && isKnown(folder);
    const findings = await findingsInTurns(workspace, path, isWanted);
    if (findings === null || !isWanted()) return;
    published.show(job, findings, open?.version);
  };
  const isToBeShown = ({ folder, path }: FolderFile): boolean =>
    session.owns(folder, path) &&
    (folder.open.has(path) || (session.settings().checkFolder && session.isListed(folder) && folder.holds(path)));
  const enqueue = (job: FolderFile): void => {
    if (isTable(job.path)) return;
    const key = keyOf(job);
    if (!isToBeShown(job)) forget(job);
    else if (job.folder.open.has(job.path)) {
      later.delete(key);
      soon.set(key, job);
    } else if (!soon.has(key)) later.set(key, job);
  };
  const forget = (job: FolderFile): void => {
    const key = keyOf(job);
    soon.delete(key);
    later.delete(key);
    background?.left.delete(key);
    published.remove(job);
  };
  const reportBackground = ({ progress, left, of }: Background): void => {
    progress.report(of - left.size, of);
    tell({ state: "checking", done: of - left.size, of });
  };
  /** @param why it was stopped; null where it came to its end */
  const endBackground = (why: string | null): void => {
    if (background === null) return;
    const { progress, left, of, ended } = background;
    background = null;
    progress.end();
    const status: Status = why === null ? published.status() : { state: "stopped", done: of - left.size, of, why };
    if (why !== null) tell(status);
    ended(status);
  };

  return {
    changed: (folder, paths) => {
      if (!isKnown(folder)) return;
      lastChange = performance.now();
      for (const path of paths) {
        enqueue({ folder, path });
        touched.set(keyOf({ folder, path }), { folder, path });
      }
      void run();
    },
    forget: (folder, path) => forget({ folder, path }),
    read: async (folders) => {
      const progress = await startProgress(session, say, "Sprag: reading procedures");
      let status: Status | null = null;
      for (const folder of folders) {
        await folder.readAll(async (done, of) => {
          tell({ state: "reading", done, of });
          progress.report(done, of);
          await turn();
          if (progress.isCancelled())
            status = { state: "stopped", done, of, why: say("Reading the folder was cancelled.") };
          return status === null;
        });
        if (status !== null) break;
      }
      progress.end();
      if (status !== null) tell(status);
      return status;
    },
    all: async (folders) => {
      const jobs = folders.flatMap((folder) =>
        folder
          .paths()
          .filter((path) => session.owns(folder, path))
          .map((path) => ({ folder, path })),
      );
      beginning++;
      const progress = await startProgress(session, say, "Sprag: checking procedures");
      beginning--;
      endBackground(say("Another check of the folder was begun."));
      for (const job of jobs) if (!soon.has(keyOf(job))) later.set(keyOf(job), job);
      const left = new Set(jobs.map(keyOf));
      const end = new Promise<Status>((ended) => {
        background = { progress, left, of: left.size, ended };
      });
      tell({ state: "checking", done: 0, of: left.size });
      void run();
      return end;
    },
    settled: () => {
      for (const folder of session.folders())
        for (const path of folder.paths()) if (!isToBeShown({ folder, path })) forget({ folder, path });
    },
    idle: async () => {
      while (running !== null || beginning > 0) await (running ?? turn());
    },
  };
}

/** A check of whole folders that is under way. */
interface Background {
  readonly progress: Progress;
  /** Keys of the files still to be checked. */
  readonly left: Set<string>;
  readonly of: number;
  readonly ended: (status: Status) => void;
}

function traceOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds));
}
