// What a call of `sprag check` asks for: its files, of these the shard that is to be checked, and what that says of itself. Knows no output.
import { createHash } from "node:crypto";
import { join } from "node:path";
import type { Shard } from "#workspace/report-shard.ts";
import about from "../package.json" with { type: "json" };
import type { CheckJob } from "./check-files.ts";
import type { Choices } from "./choices.ts";
import { cribFile } from "./crib.ts";
import { findFiles, rootFolder } from "./find-files.ts";
import { readBytes } from "./read-text.ts";
import { type Trouble, troubleLine } from "./refusal.ts";
import { isInShard, type ShardWanted } from "./shard.ts";
import { dateOf, type Surroundings } from "./surroundings.ts";

export interface CallOptions {
  readonly set?: Choices;
  readonly root?: string;
  readonly on?: string;
  readonly crib?: string;
  readonly shard?: ShardWanted;
}

export interface Called {
  readonly job: CheckJob;
  readonly troubles: readonly Trouble[];
  /** The folders that were looked through, from the root. */
  readonly folders: readonly string[];
}

/** The files as they lie there now. @throws Refusal where there is no crib in the place of one */
export function called(given: readonly string[], options: CallOptions, around: Surroundings): Called {
  const { crib, on, set, shard } = options;
  const root = rootFolder(options.root, around.cwd, crib === undefined ? given : [...given, crib]);
  const { folders, paths: all, troubles } = findFiles(given, root, around.cwd);
  const job = {
    ...{ root, day: dateOf(on, around), all },
    paths: shard === undefined ? all : all.filter((path) => isInShard(path, shard)),
    ...(set === undefined ? {} : { set }),
    ...(crib === undefined ? {} : { crib: { given: crib, path: cribFile(crib, root, around.cwd) } }),
  };
  return { job, troubles, folders };
}

/** @param troubles of the call and of the check */
export function shardOf({ number, of }: ShardWanted, job: CheckJob, troubles: readonly Trouble[]): Shard {
  const { all, crib, day, set } = job;
  return {
    ...{ number, of, release: about.version, files: all.length, inputs: inputsOf(job) },
    ...(set === undefined ? {} : { set: sorted(set) }),
    ...(crib === undefined ? {} : { crib: { path: crib.path, on: day } }),
    ...(troubles.length === 0 ? {} : { troubles: troubles.map(troubleLine) }),
  };
}

function inputsOf({ all, crib, root }: CheckJob): string {
  const hash = createHash("sha256");
  for (const path of crib === undefined ? all : [...all, crib.path]) {
    const bytes = readBytes(join(root, path), Number.POSITIVE_INFINITY);
    // Lengths come first, so that no two sets of files run together to the same bytes.
    hash.update(`${Buffer.byteLength(path)} ${bytes?.length ?? "unread"}\n${path}\n`);
    if (bytes !== null) hash.update(bytes);
  }
  return hash.digest("hex");
}

/** The order in which choices were written says nothing. */
function sorted(set: Choices): Choices {
  return Object.fromEntries(Object.entries(set).sort(([one], [other]) => (one < other ? -1 : 1)));
}
