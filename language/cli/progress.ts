// One line on standard error that says how far the work is, wiped at the end; only where a person looks at it.
import type { Stream } from "./surroundings.ts";

export interface Progress {
  readonly show: (words: string) => void;
  readonly wipe: () => void;
}

/** Where nobody looks. */
export const SILENT: Progress = { show: () => {}, wipe: () => {} };

const WIPE = "\r\u001b[2K";
/** More often than this no one can read it. */
const PAUSE = 80;

export function progressOn(err: Stream, now: () => Date): Progress {
  if (!err.isTerminal) return SILENT;
  let last = Number.NEGATIVE_INFINITY;
  let isShown = false;
  return {
    show: (words) => {
      const time = now().getTime();
      if (time - last < PAUSE) return;
      last = time;
      isShown = true;
      err.write(`${WIPE}${words.slice(0, (err.columns ?? 80) - 1)}`);
    },
    wipe: () => {
      if (isShown) err.write(WIPE);
      isShown = false;
    },
  };
}
