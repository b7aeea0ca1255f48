// Whether shards are all of one check, each of them once. Knows no report but what a shard says of itself.
import type { Shard, ShardFormat, ShardReport } from "#workspace/report-shard.ts";
import { Refusal } from "./refusal.ts";

/** A shard and the file it was read from, as that was given. */
export interface GivenShard {
  readonly given: string;
  readonly format: ShardFormat;
  readonly report: ShardReport;
}

/** @throws Refusal that says which is in the way, and of which two where it takes two */
export function requireTogether(shards: readonly GivenShard[]): void {
  const [first, ...others] = shards;
  if (first === undefined) return;
  for (const other of others) requireAlike(first, other);
  const { of } = first.report.shard;
  const byNumber = new Map<number, string>();
  for (const { given, report } of shards) {
    const { number } = report.shard;
    const same = byNumber.get(number);
    if (same !== undefined)
      throw new Refusal(`${same} and ${given} are both shard ${number} of ${of}. Give one of them.`);
    byNumber.set(number, given);
  }
  const numbers = Array.from({ length: of }, (_, at) => at + 1);
  const missing = numbers.filter((number) => !byNumber.has(number));
  if (missing.length > 0) throw new Refusal(missingText(missing, of));
}

/** As many as anybody reads. */
const MOST_TOLD = 10;

function missingText(missing: readonly number[], of: number): string {
  if (missing.length === 1) return `Shard ${missing[0]} of ${of} is missing. Give its file too.`;
  const more = missing.length > MOST_TOLD ? ` and ${missing.length - MOST_TOLD} more` : "";
  return `Of ${of} shards, ${missing.slice(0, MOST_TOLD).join(", ")}${more} are missing. Give their files too.`;
}

function requireAlike(one: GivenShard, other: GivenShard): void {
  if (one.format !== other.format)
    throw new Refusal(
      `${one.given} is ${NAMES[one.format]}, ${other.given} ${NAMES[other.format]}. Give all shards in one format.`,
    );
  const difference = differenceOf(one.report.shard, other.report.shard);
  if (difference !== null)
    throw new Refusal(
      `${one.given} and ${other.given} are of different checks: ${difference}. Make all shards with one call, but for --shard.`,
    );
}

const NAMES: Readonly<Record<ShardFormat, string>> = { json: "JSON", sarif: "SARIF" };

/** What tells their checks apart; null where they are of one. */
function differenceOf(one: Shard, other: Shard): string | null {
  const apart: readonly (readonly [string, (shard: Shard) => string])[] = [
    ["a shard of ", ({ of }) => String(of)],
    ["made by ", ({ release }) => `Sprag ${release}`],
    ["made with ", setText],
    ["held against ", ({ crib }) => (crib === undefined ? "no crib" : `the crib ${crib.path} as of ${crib.on}`)],
    ["of ", ({ files }) => `${files} ${files === 1 ? "file" : "files"} in all`],
  ];
  for (const [before, textOf] of apart) {
    const [a, b] = [textOf(one), textOf(other)];
    if (a !== b) return `the first is ${before}${a}, the second ${before}${b}`;
  }
  return one.inputs === other.inputs ? null : "a file was changed, added or taken away between them";
}

function setText({ set = {} }: Shard): string {
  const choices = Object.entries(set).map(([option, choice]) => `${option}=${choice}`);
  return choices.length === 0 ? "no choice" : `--set ${choices.join(" --set ")}`;
}
