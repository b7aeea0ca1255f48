// Runs the command in this process, in a folder of its own that is gone after the test. The single place where tests of
// the command make files and call it.
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { onTestFinished } from "vitest";
import { run } from "#cli/program.ts";
import type { Surroundings } from "#cli/surroundings.ts";

export interface Called {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

export interface Folder {
  /** Absolute, without links. */
  readonly path: string;
  /** Runs the command there. */
  readonly sprag: (...args: string[]) => Called;
  /** As `sprag`, for another terminal, environment or folder. */
  readonly spragAs: (around: Partial<Place>, ...args: string[]) => Called;
  readonly read: (path: string) => string;
}

export interface Place {
  readonly cwd: string;
  readonly env: Surroundings["env"];
  readonly isTerminal: boolean;
  readonly columns: number;
}

/** @param files text or bytes by path */
export function folderWith(files: Readonly<Record<string, string | Buffer>> = {}): Folder {
  const path = realpathSync(mkdtempSync(join(tmpdir(), "sprag-test-")));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), content);
  }
  return {
    path,
    sprag: (...args) => call({ cwd: path }, args),
    spragAs: (place, ...args) => call({ cwd: path, ...place }, args),
    read: (name) => readFileSync(join(path, name), "utf8"),
  };
}

function call(place: Partial<Place> & { readonly cwd: string }, args: readonly string[]): Called {
  const written = { out: "", err: "" };
  const stream = (name: keyof typeof written): Surroundings["out"] => ({
    write: (text) => {
      written[name] += text;
    },
    isTerminal: place.isTerminal ?? false,
    columns: place.columns ?? null,
  });
  let ticks = Date.UTC(2026, 4, 4);
  const status = run(args, {
    cwd: place.cwd,
    env: place.env ?? {},
    out: stream("out"),
    err: stream("err"),
    // A clock that never stands still, so that every word of progress is shown.
    now: () => {
      ticks += 1000;
      return new Date(ticks);
    },
    serve: () => {
      written.out += "(serving)";
    },
  });
  return { status, ...written };
}
