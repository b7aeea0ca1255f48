// Tells when something happens in folders, once for each burst of it. Knows no files: what has happened, the caller finds out.
import { type FSWatcher, statSync, watch } from "node:fs";
import { codeOf } from "./system-error.ts";

export interface WatchedFolders {
  /** Watches these from now on and no others. @returns whether one was not watched before, so that something in it may have been missed */
  readonly set: (folders: Iterable<string>) => boolean;
  /** Tells as if something had happened. */
  readonly nudge: () => void;
  readonly close: () => void;
}

/** In milliseconds: an editor that saves, or a copy of several files, takes less. */
const GATHERED = 100;
/** In milliseconds, where the machine does not say by itself what happens. */
const POLLED = 1000;

export function watchFolders(tell: () => void): WatchedFolders {
  const watched = new Map<string, { readonly mark: string; readonly watcher: FSWatcher }>();
  let waiting: NodeJS.Timeout | undefined;
  let polling: NodeJS.Timeout | undefined;
  const nudge = (): void => {
    waiting ??= setTimeout(() => {
      waiting = undefined;
      tell();
    }, GATHERED);
  };
  const poll = (): void => {
    polling ??= setInterval(nudge, POLLED);
  };
  const drop = (folder: string): void => {
    watched.get(folder)?.watcher.close();
    watched.delete(folder);
  };
  const add = (folder: string): boolean => {
    const mark = markOf(folder);
    if (mark === null || watched.get(folder)?.mark === mark) return false;
    drop(folder);
    try {
      const watcher = watch(folder, nudge);
      // A folder that goes away is no fault.
      watcher.on("error", () => {
        drop(folder);
        nudge();
      });
      watched.set(folder, { mark, watcher });
      return true;
    } catch (error) {
      // Such as more folders than the machine watches.
      if (codeOf(error) !== "ENOENT") poll();
      return false;
    }
  };
  return {
    nudge,
    set: (folders) => {
      const wanted = new Set(folders);
      for (const folder of watched.keys()) if (!wanted.has(folder)) drop(folder);
      return [...wanted].map(add).includes(true);
    },
    close: () => {
      clearTimeout(waiting);
      clearInterval(polling);
      for (const folder of [...watched.keys()]) drop(folder);
    },
  };
}

/** A folder that was taken away and made again is another one. */
function markOf(folder: string): string | null {
  try {
    const { dev, ino } = statSync(folder);
    return `${dev} ${ino}`;
  } catch {
    return null;
  }
}
