// Runs the command in this process, in a folder of its own that is gone after the test. The single place where tests of
// the command make files and call it.
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { onTestFinished } from "vitest";
import { COMMANDS, definitionsFor } from "#cli/commands.ts";
import { run } from "#cli/program.ts";
import type { Surroundings } from "#cli/surroundings.ts";
import { assetFile } from "./fonts.ts";

const definitions = await definitionsFor(Object.keys(COMMANDS));

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
  /** As `sprag`, for a call that takes a while. `bytes`: what was written to standard output that is no text. */
  readonly spragLater: (...args: string[]) => Promise<Called & { readonly bytes: Uint8Array }>;
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
    sprag: (...args) => atOnce({ cwd: path }, args),
    spragLater: (...args) => later({ cwd: path }, args),
    spragAs: (place, ...args) => atOnce({ cwd: path, ...place }, args),
    read: (name) => readFileSync(join(path, name), "utf8"),
  };
}

type Standing = Partial<Place> & Pick<Place, "cwd">;

function atOnce(place: Standing, args: readonly string[]): Called {
  const { status, written } = call(place, args);
  if (typeof status !== "number") throw new Error("this call takes a while: use spragLater");
  return { status, ...written };
}

async function later(place: Standing, args: readonly string[]): Promise<Called & { readonly bytes: Uint8Array }> {
  const { status, written, bytes } = call(place, args);
  return { status: await status, ...written, bytes: Buffer.concat(bytes) };
}

function call(place: Standing, args: readonly string[]) {
  const written = { out: "", err: "" };
  const bytes: Uint8Array[] = [];
  const stream = (name: keyof typeof written): Surroundings["out"] => ({
    write: (content) => {
      if (typeof content === "string") written[name] += content;
      else bytes.push(content);
    },
    isTerminal: place.isTerminal ?? false,
    columns: place.columns ?? null,
  });
  let ticks = Date.UTC(2026, 4, 4);
  const around: Surroundings = {
    cwd: place.cwd,
    env: place.env ?? {},
    out: stream("out"),
    err: stream("err"),
    // A clock that never stands still, so that every word of progress is shown.
    now: () => {
      ticks += 1000;
      return new Date(ticks);
    },
    asset: async (name) => readFileSync(assetFile(name)),
    serve: () => {
      written.out += "(serving)";
    },
  };
  const status = run(args, around, definitions);
  return { status, written, bytes };
}
