// Files of a git repository as they are in a revision or staged. Git is called with lists of arguments, reads objects and the
// index only, and is given nothing that could make it run another program. Knows no procedure.
import { execFileSync } from "node:child_process";
import { Refusal } from "./refusal.ts";
import { codeOf } from "./system-error.ts";

/** The files of one state of a repository. Paths are from its top folder, with `/`. */
export interface GitFiles {
  /** Plain files, without links and other repositories. */
  readonly paths: readonly string[];
  /** The bytes of a file, as they are kept; null where there is none. */
  readonly bytes: (path: string) => Buffer | null;
  /** Has these at hand from now on, read at once. */
  readonly fetch: (paths: readonly string[]) => void;
}

export interface Repository {
  /** Its top folder: absolute, without links. */
  readonly top: string;
  /** @throws Refusal where there is no such revision */
  readonly revision: (name: string) => GitFiles;
  readonly staged: () => GitFiles;
}

type Environment = Readonly<Record<string, string | undefined>>;

/** The repository that a folder lies in. @throws Refusal where there is none, or no git */
export function openRepository(folder: string, env: Environment): Repository {
  const outside = callerIn(folder, env);
  const top = outside(["rev-parse", "--show-toplevel"], `${folder} lies in no git repository.`)
    .toString("utf8")
    .replace(/\r?\n$/, "");
  const git = callerIn(top, env);
  const shown = (name: string): string => `The repository has no revision “${name}”.`;
  return {
    top,
    revision: (name) => {
      // What begins like an option, or holds a sign that no name has, is not even asked for.
      if (name === "" || name.startsWith("-") || CONTROL.test(name)) throw new Refusal(shown(name));
      const commit = git(["rev-parse", "--verify", "--quiet", "--end-of-options", `${name}^{commit}`], shown(name));
      const id = commit.toString("latin1").trim();
      if (!OBJECT.test(id)) throw new Refusal(shown(name));
      const listed = git(["ls-tree", "-r", "-z", "--full-tree", id], `The files of “${name}” could not be listed.`);
      return filesOf(entriesIn(listed, TREE_ENTRY), git);
    },
    staged: () =>
      filesOf(entriesIn(git(["ls-files", "-s", "-z"], "What is staged could not be listed."), INDEX_ENTRY), git),
  };
}

const OBJECT = /^[0-9a-f]{40}(?:[0-9a-f]{24})?$/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
const CONTROL = /[\u0000-\u001f\u007f]/;
/** `100644 blob ID`, of plain files. */
const TREE_ENTRY = /^100(?:644|755) blob ([0-9a-f]+)$/;
/** `100644 ID 0`; other numbers at the end are sides of a merge that is not done. */
const INDEX_ENTRY = /^100(?:644|755) ([0-9a-f]+) 0$/;

type Git = (args: readonly string[], refusal: string, input?: string) => Buffer;

/** So much is read at once. */
const MOST_OUTPUT = 1_000_000_000;
const LONGEST_MS = 120_000;

function callerIn(cwd: string, env: Environment): Git {
  return (args, refusal, input = "") => {
    try {
      return execFileSync("git", [...SAFE, ...args], {
        cwd,
        env: safeEnvironment(env),
        input,
        maxBuffer: MOST_OUTPUT,
        timeout: LONGEST_MS,
        stdio: ["pipe", "pipe", "pipe"],
        windowsHide: true,
      });
    } catch (error) {
      if (codeOf(error) === "ENOENT") throw new Refusal("git could not be started. Is it installed?");
      throw new Refusal(`${refusal}${reasonOf(error)}`);
    }
  };
}

/**
 * Before every command. What a repository's own settings would have run (a file monitor, hooks, other diffs, a pager, a helper for
 * a distant server) is set aside: these come after them and win. Only commands are called that know no filters and no aliases.
 */
const SAFE: readonly string[] = [
  "--no-pager",
  "--no-replace-objects",
  "--literal-pathspecs",
  ...[
    "core.fsmonitor=false",
    "core.hooksPath=/dev/null",
    "core.sshCommand=false",
    "core.gitProxy=",
    "core.askPass=",
    "core.pager=cat",
    "credential.helper=",
    "diff.external=",
    "protocol.allow=never",
    "safe.bareRepository=explicit",
  ].flatMap((setting) => ["-c", setting]),
];

/** Nothing that speaks to git from outside; no lock taken, nothing fetched, nobody asked. */
function safeEnvironment(env: Environment): NodeJS.ProcessEnv {
  const kept = Object.entries(env).filter(([name]) => !/^(?:GIT_|SSH_ASKPASS$|PAGER$)/i.test(name));
  return {
    ...Object.fromEntries(kept),
    GIT_OPTIONAL_LOCKS: "0",
    GIT_NO_LAZY_FETCH: "1",
    GIT_NO_REPLACE_OBJECTS: "1",
    GIT_TERMINAL_PROMPT: "0",
    // The one list that a repository's settings cannot lengthen.
    GIT_ALLOW_PROTOCOL: "",
    LC_ALL: "C",
  };
}

/** What git says of it: its first line, if it says that the folder is not to be trusted. */
function reasonOf(error: unknown): string {
  const said = typeof error === "object" && error !== null && "stderr" in error ? String(error.stderr) : "";
  return /dubious ownership/.test(said) ? " Git does not trust it, as it belongs to somebody else." : "";
}

/* ---- lists and contents ---- */

function entriesIn(listed: Buffer, entry: RegExp): ReadonlyMap<string, string> {
  const ids = new Map<string, string>();
  for (const line of listed.toString("utf8").split("\0")) {
    const tab = line.indexOf("\t");
    const id = entry.exec(line.slice(0, Math.max(tab, 0)))?.[1];
    if (id !== undefined) ids.set(line.slice(tab + 1), id);
  }
  return ids;
}

function filesOf(ids: ReadonlyMap<string, string>, git: Git): GitFiles {
  const known = new Map<string, Buffer>();
  const fetch = (paths: readonly string[]): void => {
    const wanted = paths.flatMap((path) => ids.get(path) ?? []).filter((id) => !known.has(id));
    if (wanted.length === 0) return;
    const batch = git(["cat-file", "--batch"], "The files could not be read.", `${wanted.join("\n")}\n`);
    for (const [id, bytes] of contentsIn(batch)) known.set(id, bytes);
  };
  return {
    paths: [...ids.keys()],
    fetch,
    bytes: (path) => {
      fetch([path]);
      return known.get(ids.get(path) ?? "") ?? null;
    },
  };
}

/** `ID blob SIZE`, a new line, so many bytes, a new line; over and over. What is not there has `ID missing`. */
function* contentsIn(batch: Buffer): Generator<readonly [string, Buffer]> {
  let at = 0;
  while (at < batch.length) {
    const end = batch.indexOf(10, at);
    if (end < 0) return;
    const [, id = "", size = ""] = /^([0-9a-f]+) blob (\d+)$/.exec(batch.toString("latin1", at, end)) ?? [];
    at = end + 1;
    if (id === "") continue;
    yield [id, batch.subarray(at, at + Number(size))];
    at += Number(size) + 1;
  }
}
