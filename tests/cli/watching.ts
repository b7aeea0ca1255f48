// `sprag check --watch` as a process of its own, for tests: what it prints, and how it ends.
import { type ChildProcess, spawn } from "node:child_process";
import { renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Folder } from "#harness/command.ts";
import { shipped } from "#harness/shipped.ts";

let command = "";

/** To be said once in a file of tests. */
export function withCommand(): void {
  command = shipped();
}

interface Watching {
  /** What was printed since the last time, once it has this in it and nothing more comes. */
  readonly next: (wanted: string) => Promise<string>;
  /** What is printed for a while: nothing, if nothing is to be. */
  readonly rest: () => Promise<string>;
  /** Ctrl-C, and the status that it ends with. */
  readonly end: () => Promise<number | null>;
  readonly err: () => string;
  /** The first run is over. */
  readonly isReady: () => Promise<void>;
  readonly process: ChildProcess;
}

/** Long enough for changes that were gathered to be checked. */
export const QUIET = 300;
export const pause = (time: number): Promise<void> => new Promise((done) => setTimeout(done, time));

export function watching(folder: Folder, ...args: readonly string[]): Watching {
  return watchingOn([], folder, args);
}

/** @param node further arguments of Node itself */
export function watchingOn(node: readonly string[], folder: Folder, args: readonly string[]): Watching {
  const child = spawn(process.execPath, [...node, command, "check", "--watch", ...args], {
    ...{ cwd: folder.path, env: { PATH: process.env.PATH }, stdio: ["ignore", "pipe", "pipe"] },
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  const ended = new Promise<number | null>((done) => child.on("close", done));
  let [out, err] = ["", ""];
  child.stdout?.on("data", (text) => {
    out += text;
  });
  child.stderr?.on("data", (text) => {
    err += text;
  });
  const rest = async (): Promise<string> => {
    let before = "";
    do {
      before = out;
      await pause(QUIET);
    } while (out !== before);
    out = "";
    return before;
  };
  const until = async (isSo: () => boolean): Promise<void> => {
    for (let tries = 0; tries < 200 && !isSo(); tries++) await pause(50);
  };
  return {
    rest,
    isReady: () => until(() => err.includes("Waiting")),
    next: async (wanted) => {
      await until(() => out.includes(wanted));
      return await rest();
    },
    end: () => {
      child.kill("SIGINT");
      return ended;
    },
    err: () => err,
    process: child,
  };
}

/** In one go, so that no run sees half of it. */
export function write(folder: Folder, path: string, text: string): void {
  const beside = `${folder.path}.new`;
  writeFileSync(beside, text);
  renameSync(beside, join(folder.path, path));
}

export const NONE = "No findings in 1 file; 1 procedure, 1 step checked.\n";
