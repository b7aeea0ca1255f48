// One shard of a check: its report and what it says of itself, as JSON or inside SARIF. Reads it again for a merge, which takes nothing from
// a file that is not as it was written. Knows no file and no words for a reader.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { type CheckReport, reportText } from "./report.ts";
import { reportSarif } from "./report-sarif.ts";

/** Which of several shards it is, and what was asked of all of them together. */
export interface Shard {
  /** From 1. */
  readonly number: number;
  readonly of: number;
  /** The release of Sprag that checked. */
  readonly release: string;
  /** How many files all shards have together. */
  readonly files: number;
  /** SHA-256 over the paths and bytes of these, and of the crib. */
  readonly inputs: string;
  readonly set?: Readonly<Record<string, string>>;
  /** The crib that tools were held against, and the day. */
  readonly crib?: { readonly path: string; readonly on: string };
  /** What could not be used, each as it was told; absent where all could. */
  readonly troubles?: readonly string[];
}

export interface ShardReport extends CheckReport {
  readonly shard: Shard;
}

/** More would have hardly a file each. */
export const MOST_SHARDS = 10_000;

export const SHARD_FORMATS = ["json", "sarif"] as const;
export type ShardFormat = (typeof SHARD_FORMATS)[number];

/** `whole`: a report of ours that is no shard. `changed`: a shard that is not as it was written. */
export type ShardRead =
  | { readonly kind: "shard"; readonly format: ShardFormat; readonly report: ShardReport }
  | { readonly kind: "no report" | "whole" | "changed" };

/** In SARIF the whole shard stands beside the results, which have no place for all that a merge needs. */
export function shardText({ files, summary }: CheckReport, shard: Shard, format: ShardFormat): string {
  const sum = sumOf(shard, { files, summary });
  const report = { version: 1 as const, shard: { ...shard, sum }, files, summary };
  return format === "json" ? reportText(report) : reportSarif(report, { report });
}

export function readShard(text: string): ShardRead {
  const value = parsed(text);
  const run = within(value, "runs", "0");
  const isSarif = within(run, "tool", "driver", "name") === "sprag check";
  const report = (isSarif ? within(run, "properties", "report") : value) as Marked;
  if (isSarif && report === undefined) return { kind: "whole" };
  if (within(report, "version") !== 1 || within(report, "summary", "procedures") === undefined)
    return { kind: "no report" };
  if (within(report, "shard") === undefined) return { kind: "whole" };
  const { sum, ...shard }: Marked["shard"] = Object(report.shard);
  if (sum !== sumOf(shard, report) || !isCounted(shard)) return { kind: "changed" };
  return { kind: "shard", format: isSarif ? "sarif" : "json", report: { ...report, shard } };
}

interface Marked extends CheckReport {
  readonly shard: Shard & { readonly sum: string };
}

/** Where it agrees, the report is as it was written, and needs no look at its parts. */
function sumOf(shard: Shard, { files, summary }: Pick<CheckReport, "files" | "summary">): string {
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify([shard, files, summary]))));
}

function isCounted({ number, of }: Shard): boolean {
  return Number.isInteger(of) && of <= MOST_SHARDS && Number.isInteger(number) && number >= 1 && number <= of;
}

/** What stands at the end of this way through objects and lists, if anything does. */
function within(value: unknown, ...way: readonly string[]): unknown {
  let at = value;
  for (const name of way) {
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, name)) return undefined;
    at = (at as Readonly<Record<string, unknown>>)[name];
  }
  return at;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
