// Work in the background that the editor shows, and that the writer can stop. Knows no work.
import type { Session } from "./session.ts";
import type { Say, Text } from "./words.ts";

export interface Progress {
  readonly report: (done: number, of: number) => void;
  readonly isCancelled: () => boolean;
  readonly end: () => void;
}

/** Where the editor shows none, nothing is shown and nothing stops it. */
export async function startProgress(session: Session, say: Say, title: Text): Promise<Progress> {
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
