// Older texts through the editor's own git. No program is started from here: where the editor has no git, or the folder is in none,
// that is said. Knows no review.
import { Disposable, type Event, extensions, l10n, type Uri, workspace } from "vscode";

/** What this uses of the interface that the extension `vscode.git` offers others (its version 1). */
interface GitExports {
  readonly enabled: boolean;
  getAPI(version: 1): GitApi;
}

interface GitApi {
  readonly state: "uninitialized" | "initialized";
  readonly onDidChangeState: Event<GitApi["state"]>;
  readonly onDidOpenRepository: Event<Repository>;
  readonly repositories: readonly Repository[];
  getRepository(uri: Uri): Repository | null;
  toGitUri(uri: Uri, ref: string): Uri;
}

interface Repository {
  readonly rootUri: Uri;
  readonly state: {
    readonly HEAD: { readonly commit?: string } | undefined;
    readonly workingTreeChanges: readonly { readonly uri: Uri }[];
    readonly indexChanges: readonly { readonly uri: Uri }[];
    readonly onDidChange: Event<void>;
  };
  /** Rejects where the file is not in that commit. */
  show(ref: string, path: string): Promise<string>;
}

const LAST = "HEAD";

/** The last commit of the folder that a file is in. */
export interface LastCommit {
  /** Null for a file that is not in it. A file outside of it did not change with it: its text is as it is now. */
  readonly textOf: (uri: Uri) => Promise<string | null>;
  /** Under which the editor shows it. */
  readonly addressOf: (uri: Uri) => Uri;
}

/** @throws Error with a sentence for the reader where there is none */
export async function lastCommitFor(uri: Uri): Promise<LastCommit> {
  const api = await gitApi();
  if (api === undefined)
    throw new Error(
      l10n.t(
        "This editor has no git here, so there is no older text to compare with. Use “sprag review” on the command line.",
      ),
    );
  const repository = api.getRepository(uri);
  if (repository === null)
    throw new Error(l10n.t("This file is in no git repository, so there is no older text to compare with."));
  if (repository.state.HEAD?.commit === undefined)
    throw new Error(l10n.t("Nothing has been committed here yet, so there is no older text to compare with."));
  return {
    textOf: async (of) => {
      // Each time that it is asked for, the same repository is another object.
      if (api.getRepository(of)?.rootUri.toString() !== repository.rootUri.toString()) return readNow(of);
      return repository.show(LAST, of.fsPath).catch(() => null);
    },
    addressOf: (of) => api.toGitUri(of, LAST),
  };
}

/** Tells, now and at each change, which files differ from the last commit; never, where there is no git. */
export async function watchChanged(told: (changed: readonly Uri[]) => void): Promise<Pick<Disposable, "dispose">> {
  const api = await gitApi();
  const ends: Disposable[] = [];
  const all = (): void => {
    const states = api?.repositories.map(({ state }) => state) ?? [];
    told(states.flatMap((state) => [...state.workingTreeChanges, ...state.indexChanges].map(({ uri }) => uri)));
  };
  const watch = ({ state }: Repository): void => {
    ends.push(state.onDidChange(all));
    all();
  };
  if (api !== undefined) {
    ends.push(api.onDidOpenRepository(watch));
    api.repositories.forEach(watch);
  }
  return { dispose: () => Disposable.from(...ends).dispose() };
}

/** Undefined where the editor has no git, or it is turned off, or it may not work in a folder without trust. */
async function gitApi(): Promise<GitApi | undefined> {
  const extension = extensions.getExtension<GitExports>("vscode.git");
  if (extension === undefined) return undefined;
  const git = await extension.activate().then(
    () => extension.exports,
    () => undefined,
  );
  if (git?.enabled !== true) return undefined;
  const api = git.getAPI(1);
  if (api.state === "uninitialized")
    await new Promise<void>((ready) => {
      const end = api.onDidChangeState(() => {
        end.dispose();
        ready();
      });
    });
  return api;
}

async function readNow(uri: Uri): Promise<string | null> {
  return workspace.fs.readFile(uri).then(
    (bytes) => new TextDecoder().decode(bytes),
    () => null,
  );
}
