// When what is checked: files on the screen as soon as the writer rests, then the files that use them, then whole folders in the
// background with progress. One loop, one check at a time, a turn for others after each.
import type { Diagnostic } from "vscode-languageserver";
import { isTable } from "#workspace/load.ts";
import { dependentsOf } from "./dependents.ts";
import { diagnosticOf } from "./diagnostics.ts";
import { findingsInTurns } from "./findings.ts";
import type { Folder } from "./folder.ts";
import type { Status } from "./protocol.ts";
import { type Session, turn } from "./session.ts";
import type { Say, Text } from "./words.ts";

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

interface Job {
  readonly folder: Folder;
  readonly path: string;
}

/** In milliseconds. A check waits for the writer to rest, the longer the longer the last one took. */
const SHORTEST_REST = 10;
const LONGEST_REST = 500;

export function createChecking(session: Session, say: Say): Checking {
  const soon = new Map<string, Job>();
  const later = new Map<string, Job>();
  /** Changed files whose users are not known yet. */
  const touched = new Map<string, Job>();
  const shown = new Map<string, string>();
  const counts = new Map<string, { errors: number; warnings: number }>();
  let rest = SHORTEST_REST;
  let lastChange = 0;
  let running: Promise<void> | null = null;
  let background: Background | null = null;
  let beginning = 0;

  const keyOf = ({ folder, path }: Job): string => `${folder.uri}\n${path}`;
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
      const [key, job] = from.entries().next().value as [string, Job];
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
    if (!wasStopped) tell(checkedStatus());
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
  const check = async (job: Job): Promise<void> => {
    const { folder, path } = job;
    const workspace = await folder.settled();
    const open = folder.open.get(path);
    // The text may change meanwhile, or the folder be gone: then this is no longer true.
    const isWanted = (): boolean => !soon.has(keyOf(job)) && isKnown(folder);
    const findings = await findingsInTurns(workspace, path, isWanted);
    if (findings === null || !isWanted()) return;
    const form = {
      related: session.client.textDocument?.publishDiagnostics?.relatedInformation === true,
      pages: session.commands.has("sprag.showRule"),
    };
    const diagnostics = findings.map((finding) => diagnosticOf(folder, finding, form, open?.version));
    const counted = findings.filter(({ allowed }) => allowed === undefined);
    counts.set(keyOf(job), {
      errors: counted.filter(({ severity }) => severity === "error").length,
      warnings: counted.filter(({ severity }) => severity === "warning").length,
    });
    publish(job, diagnostics, open?.version);
  };
  const publish = (job: Job, diagnostics: readonly Diagnostic[], version: number | undefined): void => {
    const uri = job.folder.uriOf(job.path);
    const same = JSON.stringify(diagnostics);
    // Files that are not open are many: only what is new for them is sent.
    if (version === undefined && (shown.get(keyOf(job)) ?? "[]") === same) return;
    shown.set(keyOf(job), same);
    const sent = { uri, diagnostics: [...diagnostics], ...(version === undefined ? {} : { version }) };
    // The client may be gone.
    session.connection.sendDiagnostics(sent).catch(() => {});
  };
  const checkedStatus = (): Status => {
    const all = [...counts.values()];
    return {
      state: "checked",
      files: all.length,
      errors: all.reduce((so, { errors }) => so + errors, 0),
      warnings: all.reduce((so, { warnings }) => so + warnings, 0),
    };
  };
  const isToBeShown = ({ folder, path }: Job): boolean =>
    folder.open.has(path) || (session.settings().checkFolder && session.isListed(folder) && folder.holds(path));
  const enqueue = (job: Job): void => {
    if (isTable(job.path)) return;
    const key = keyOf(job);
    if (job.folder.open.has(job.path)) {
      later.delete(key);
      soon.set(key, job);
    } else if (!isToBeShown(job)) forget(job);
    else if (!soon.has(key)) later.set(key, job);
  };
  const forget = (job: Job): void => {
    const key = keyOf(job);
    soon.delete(key);
    later.delete(key);
    background?.left.delete(key);
    counts.delete(key);
    publish(job, [], undefined);
    shown.delete(key);
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
    const status: Status = why === null ? checkedStatus() : { state: "stopped", done: of - left.size, of, why };
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
      const jobs = folders.flatMap((folder) => folder.paths().map((path) => ({ folder, path })));
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
  readonly progress: BackgroundProgress;
  /** Keys of the files still to be checked. */
  readonly left: Set<string>;
  readonly of: number;
  readonly ended: (status: Status) => void;
}

interface BackgroundProgress {
  readonly report: (done: number, of: number) => void;
  readonly isCancelled: () => boolean;
  readonly end: () => void;
}

async function startProgress(session: Session, say: Say, title: Text): Promise<BackgroundProgress> {
  if (session.client.window?.workDoneProgress !== true)
    return { report: () => {}, isCancelled: () => false, end: () => {} };
  const reporter = await session.connection.window.createWorkDoneProgress().catch(() => null);
  if (reporter === null) return { report: () => {}, isCancelled: () => false, end: () => {} };
  let isCancelled = false;
  let hasEnded = false;
  reporter.token.onCancellationRequested(() => {
    isCancelled = true;
  });
  reporter.begin(say(title), 0, undefined, true);
  return {
    report: (done, of) =>
      reporter.report(of === 0 ? 100 : Math.floor((done / of) * 100), say("{0} of {1} files", done, of)),
    isCancelled: () => isCancelled,
    end: () => {
      if (!hasEnded) reporter.done();
      hasEnded = true;
    },
  };
}

function traceOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds));
}
