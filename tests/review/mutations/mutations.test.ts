// Every kind of change at random places of the samples is reported in its group at its step, and nothing graver is.
import fc from "fast-check";
import { expect, test } from "vitest";
import { isShopProcedure, openSamples, plainTexts } from "#harness/samples.ts";
import { oneIn } from "#harness/thorough.ts";
import { parseText } from "#syntax/parse.ts";
import { reviewOf, type Workspace } from "#workspace/index.ts";
import { apply, type Change, type Random, randomOf, type Sample, sampleOf } from "./edit.ts";
import { faultsOf, line, type Made } from "./judge.ts";
import type { Kind } from "./kind.ts";
import { kinds } from "./kinds.ts";

/** So many are made of each kind, where the samples offer as many. */
const MOST = 1;
/** Of the kinds one in so many, of each group some. */
const SHARE = 9;
/** Goes over the samples so often for them. */
const ROUNDS = 3;

const procedures = [...plainTexts.keys()].filter(isShopProcedure);
const files = [...plainTexts.keys()].filter((path) => isShopProcedure(path) || path.startsWith("shop/"));
const asWritten = openSamples(new Map(), files);
const asRead = new Map(files.map((path) => [path, sampleOf(path, plainTexts.get(path) ?? "")]));

test("at least forty kinds, each by a name of its own", () => {
  expect(new Set(kinds.map(({ name }) => name)).size).toBe(kinds.length);
  expect(kinds.length).toBeGreaterThanOrEqual(40);
});

test.each(oneIn(SHARE, kinds).map((kind) => [kind.name, kind] as const))("%s", (name, kind) => {
  const made = [...changesOf(kind)];
  console.info(`${name}: ${made.length} made and compared`);
  expect(made.length, `${name} found no place in any sample`).toBeGreaterThan(0);
  const wrong = made.flatMap((one) => {
    const faults = faultsOf(one);
    return faults.length === 0 ? [] : [shown(one, faults)];
  });
  expect(wrong.join("\n\n")).toBe("");
});

function* changesOf(kind: Kind): Generator<Made> {
  const seen = new Set<string>();
  const paths = kind.library === undefined ? procedures : [kind.library];
  const seeds = fc.sample(fc.noBias(fc.nat()), ROUNDS * paths.length);
  for (const [turn, seed] of seeds.entries()) {
    if (seen.size >= MOST) return;
    const random = randomOf(seed);
    // Not every kind begins with the same sample.
    const written = asRead.get(paths[(turn + kinds.indexOf(kind)) % paths.length] ?? "");
    const sample = written === undefined ? null : begun(kind, written, random);
    const change = sample === null ? null : kind.mutate(sample, random);
    if (sample === null || change === null) continue;
    const text = apply(sample.text, change.edits);
    if (seen.has(text) || parseText(text, sample.path).problems.length > 0) continue;
    seen.add(text);
    yield made(kind, sample, change, text);
  }
}

/** The sample, or what the kind makes of it for its change to have a place. */
function begun({ from }: Kind, sample: Sample, random: Random): Sample | null {
  if (from === undefined) return sample;
  const start = from(sample, random);
  return start === null ? null : sampleOf(sample.path, apply(sample.text, start.edits));
}

function made(kind: Kind, sample: Sample, change: Change, text: string): Made {
  const paths = kind.library === undefined ? [sample.path] : procedures;
  const old = { workspace: kind.from === undefined ? asWritten : opened(sample.path, sample.text, asWritten), paths };
  const now = { workspace: opened(sample.path, text, old.workspace), paths };
  return { kind, sample, change, old, now, report: reviewOf(old, now) };
}

const opened = (path: string, text: string, before: Workspace): Workspace =>
  openSamples(new Map([[path, text]]), files, before);

const shown = ({ sample, change, report }: Made, faults: readonly string[]): string =>
  [
    `${sample.path}`,
    diffOf(sample, change),
    ...faults.map((fault) => `  ! ${fault}`),
    ...report.changes.map((entry) => `  = ${line(entry)}`),
  ].join("\n");

const diffOf = ({ text }: Sample, { edits }: Change): string =>
  edits
    .map(
      ({ start, end, text: by }) =>
        `  @${text.slice(0, start).split("\n").length} - ${text.slice(start, end).trim()}\n     + ${by.trim()}`,
    )
    .join("\n");
