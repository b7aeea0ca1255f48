// One server at a time: starts it, and starts another when it died, until that happens too often. Every start makes a new
// client, which hands the server all open texts again, so nothing is lost. Knows nothing of what the server does.
import { type LogOutputChannel, l10n, window } from "vscode";
import { type BaseLanguageClient, CloseAction, ErrorAction, type LanguageClientOptions } from "vscode-languageclient";
import type { StatusLine } from "./status-line.ts";

/** Makes a client that is not started yet; calls `died` where only it can see that the server is gone. */
export type MakeClient = (options: LanguageClientOptions, died: () => void) => BaseLanguageClient;

export interface ServerRun {
  /** The client of the server that runs now, or was the last to run; waits while one is being started. */
  readonly client: () => Promise<BaseLanguageClient>;
  /** Starts the server; where it does not start, the reader is told, and nothing is thrown. */
  readonly start: () => Promise<void>;
  /** Stops the server that runs and starts another. */
  readonly restart: () => Promise<void>;
  readonly dispose: () => void;
}

/** What a run is made of. */
export interface RunParts {
  readonly makeClient: MakeClient;
  /** Asked at each start, since folders and settings change. */
  readonly options: () => LanguageClientOptions;
  /** Called with each new client, before it starts. */
  readonly prepare: (client: BaseLanguageClient) => void;
  readonly status: StatusLine;
  readonly log: LogOutputChannel;
}

const MOST_DEATHS = 4;
const WITHIN_MS = 180_000;

/** One client, and whether it is still the one that counts. */
interface Attempt {
  readonly client: BaseLanguageClient;
  over: boolean;
}

export function serverRun(parts: RunParts): ServerRun {
  let attempt: Attempt | undefined;
  let starting: Promise<void> = Promise.resolve();
  let deaths: number[] = [];

  const start = (): Promise<void> => {
    starting = startNow();
    return starting;
  };

  const startNow = async (): Promise<void> => {
    parts.status.starting();
    const mine: Attempt = {
      client: parts.makeClient(
        withEnd(parts.options(), () => died(mine)),
        () => died(mine),
      ),
      over: false,
    };
    attempt = mine;
    writeOnly(mine.client);
    parts.prepare(mine.client);
    try {
      await mine.client.start();
    } catch (error) {
      parts.log.error(String(error));
      if (!mine.over)
        giveUp(mine, l10n.t("The Sprag checker could not be started. Your text is untouched, but it is not checked."));
    }
  };

  const died = (mine: Attempt): void => {
    if (mine.over) return;
    mine.over = true;
    const now = Date.now();
    deaths = [...deaths.filter((at) => now - at < WITHIN_MS), now];
    if (deaths.length > MOST_DEATHS) {
      giveUp(
        mine,
        l10n.t(
          "The Sprag checker stopped {0} times in a few minutes. Your text is untouched, but it is not checked.",
          deaths.length,
        ),
      );
      return;
    }
    void end(mine);
    void start();
    if (deaths.length === 1) tellOfRestart();
  };

  const tellOfRestart = (): void => {
    const showLog = l10n.t("Show Log");
    void window
      .showWarningMessage(
        l10n.t(
          "The Sprag checker stopped and was started again. Nothing is lost; if it happens again, the log says why.",
        ),
        showLog,
      )
      .then((choice) => choice === showLog && parts.log.show());
  };

  const giveUp = (mine: Attempt, message: string): void => {
    mine.over = true;
    void end(mine);
    parts.status.off(message);
    const again = l10n.t("Start Again");
    const showLog = l10n.t("Show Log");
    void window.showErrorMessage(message, again, showLog).then((choice) => {
      if (choice === again) return restart();
      if (choice === showLog) parts.log.show();
      return undefined;
    });
  };

  const end = async (old: Attempt): Promise<void> => {
    old.over = true;
    // A server that is gone answers no farewell.
    await old.client.dispose().catch((error: unknown) => parts.log.debug(String(error)));
  };

  const restart = async (): Promise<void> => {
    deaths = [];
    if (attempt !== undefined) await end(attempt);
    await start();
  };

  return {
    client: async () => {
      await starting;
      if (attempt === undefined) throw new Error("The server was never started.");
      return attempt.client;
    },
    start,
    restart,
    dispose: () => attempt !== undefined && void end(attempt),
  };
}

/**
 * The client's own words about its connection go to the log only. On the screen they are no help to a writer, and four
 * messages within a second make the workbench show none of them, ours neither.
 */
function writeOnly(client: BaseLanguageClient): void {
  const write = client.error.bind(client);
  client.error = (message, data) => write(message, data, false);
}

function withEnd(options: LanguageClientOptions, closed: () => void): LanguageClientOptions {
  return {
    ...options,
    initializationFailedHandler: () => false,
    errorHandler: {
      error: () => ({ action: ErrorAction.Continue, handled: true }),
      closed: () => {
        closed();
        return { action: CloseAction.DoNotRestart, handled: true, message: "The server is gone." };
      },
    },
  };
}
