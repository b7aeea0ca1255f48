// `--shard i/n`: which files of a call one of several machines checks. It hangs on nothing but the path from the root, so that machines that
// know nothing of each other leave no file out and check none twice.
import { createHash } from "node:crypto";
import { MOST_SHARDS } from "#workspace/report-shard.ts";
import { Refusal } from "./refusal.ts";

export interface ShardWanted {
  /** From 1. */
  readonly number: number;
  readonly of: number;
}

/** Reads `2/4`, for commander. */
export function shardWanted(given: string): ShardWanted {
  const [, number, of] = (/^(\d{1,15})\/(\d{1,15})$/.exec(given) ?? []).map(Number);
  if (number === undefined || of === undefined)
    throw new Refusal(`--shard takes i/n, such as 2/4 for the second of four shards; “${given}” is not so.`);
  if (of === 0) throw new Refusal(`--shard ${given}: there is no shard of none. Write 1/1 for all files.`);
  if (of > MOST_SHARDS) throw new Refusal(`--shard ${given}: ${MOST_SHARDS} shards are the most. Make fewer of them.`);
  if (number >= 1 && number <= of) return { number, of };
  throw new Refusal(
    `--shard ${given}: shards are counted from 1. Write ${of === 1 ? "1/1" : `1/${of} to ${of}/${of}`}.`,
  );
}

/** @param path from the root, with `/` */
export function isInShard(path: string, { number, of }: ShardWanted): boolean {
  return createHash("sha256").update(path).digest().readUInt32BE(0) % of === number - 1;
}
