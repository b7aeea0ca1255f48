// Shows how far the check of a folder is, and lets the reader stop it: a large folder with a button to cancel, a small one
// in the status bar alone. The server says when a check begins and ends; the status says how far it is.
import { l10n, type Progress, ProgressLocation, window } from "vscode";
import type { WorkDoneProgressBegin, WorkDoneProgressEnd, WorkDoneProgressReport } from "vscode-languageclient";
import type { Status } from "../../language/server/protocol.ts";

export interface BackgroundCheck {
  /** A message of the server about work that it does; `next` shows it as the editor shows such work. */
  readonly work: (token: string | number, message: WorkMessage, next: () => void) => void;
  readonly told: (status: Status) => void;
  /** The server is gone. */
  readonly over: () => void;
}

type WorkMessage = WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd;

/** From here on it takes long enough that somebody may want to stop it. */
const LARGE_FOLDER = 100;

interface Shown {
  readonly report: (message: string, percent: number) => void;
  readonly end: () => void;
}

export function createBackgroundCheck(cancel: (token: string | number) => void): BackgroundCheck {
  let token: string | number | undefined;
  let shown: Shown | undefined;
  const over = (): void => {
    shown?.end();
    shown = undefined;
    token = undefined;
  };
  return {
    work: (of, message, next) => {
      if (message.kind === "begin" && message.cancellable === true) token = of;
      else if (of !== token) next();
      else if (message.kind === "end") over();
      else if (message.kind === "report") shown?.report(message.message ?? "", message.percentage ?? 0);
    },
    told: (status) => {
      if (status.state === "checked" || status.state === "stopped") return over();
      if (token === undefined || shown !== undefined) return;
      const mine = token;
      shown = show(status.of >= LARGE_FOLDER, () => cancel(mine));
    },
    over,
  };
}

function show(isLarge: boolean, cancel: () => void): Shown {
  let progress: Progress<{ message?: string; increment?: number }> | undefined;
  let reached = 0;
  let end = (): void => {};
  void window.withProgress(
    {
      location: isLarge ? ProgressLocation.Notification : ProgressLocation.Window,
      title: isLarge ? l10n.t("Checking all files") : l10n.t("Sprag: checking all files"),
      cancellable: isLarge,
    },
    (given, cancelled) => {
      progress = given;
      cancelled.onCancellationRequested(cancel);
      return new Promise<void>((resolve) => {
        end = resolve;
      });
    },
  );
  return {
    report: (message, percent) => {
      // Reading and checking each count to a hundred; the bar only goes on.
      progress?.report({ message, increment: Math.max(0, percent - reached) });
      reached = Math.max(reached, percent);
    },
    end: () => end(),
  };
}
