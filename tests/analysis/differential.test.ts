// The checker against a brute-force run over all option values, outcomes of checks and orders: same codes, lines and option sets.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { SimProcedure } from "../oracles/paper/shop.ts";
import { simText } from "../oracles/paper/text.ts";
import { assignments, simulate } from "../oracles/paper-simulator.ts";
import { procedures } from "../oracles/procedure-generator.ts";
import { onPaper } from "./run-on-paper.ts";

/** All that the brute-force run looks for. */
const CODES = [
  "not-installed",
  "already-installed",
  "occupied",
  "wrong-place",
  "missing-support",
  "enclosed",
  "retained",
  "locked",
  "not-tightened",
  "left-seated",
  "reused",
  "unsupported",
  "uncured",
  "unmet-need",
  "declared",
  "direction",
  "position",
  "cold-fit",
  "energised",
  "not-proved",
  "restored-open",
  "left-behind",
  "unfinished",
  "not-final",
  "wasted",
].map((name) => `order.${name}`);
const RUNS = 2000;
const LEAST = 10;

test("the checker says what the brute-force run says", { timeout: 120_000 }, () => {
  const runs = fc.sample(procedures, { numRuns: RUNS, seed: 7 }).map(compared);
  const faulty = runs.filter(({ wanted }) => wanted.length > 0).length;
  const counts = CODES.map(
    (code) => [code, runs.flatMap(({ wanted }) => wanted).filter((row) => row.startsWith(`${code} `)).length] as const,
  );
  const told = counts.map(([code, count]) => `${count} ${code}`).join(", ");
  const all = runs.reduce((so, { wanted }) => so + wanted.length + 1, 0);
  console.info(`brute-force run: ${all} comparisons over ${RUNS} procedures, ${faulty} of them with faults: ${told}`);
  // The shortest first: it tells most.
  const different = runs.filter(({ missing, extra }) => missing.length + extra.length > 0);
  different.sort((one, other) => one.text.length - other.text.length);
  const [shortest] = different;
  expect(different, shortest && [...shortest.missing, ...shortest.extra, shortest.text].join("\n")).toEqual([]);
  expect(faulty).toBeGreaterThan(0.3 * RUNS);
  expect(faulty).toBeLessThan(0.7 * RUNS);
  expect(counts.filter(([, count]) => count < LEAST)).toEqual([]);
});

/** What only the brute-force run says of a procedure, and what only the checker does: code, line and assignments. */
function compared(made: SimProcedure): { text: string; wanted: string[]; missing: string[]; extra: string[] } {
  const { text, lines } = simText(made);
  const wanted = rows(
    simulate(made)
      .filter(({ at }) => lines.has(at))
      .map(({ code, at, so }) => [`${code} line ${lines.get(at)}`, keyOf(so)] as const),
  );
  const found = rows(
    onPaper(text)
      .facts.filter(({ code }) => CODES.includes(code))
      // An aid that is in from the start is told at `begin with`, which the simulator has no place for.
      .filter(({ code, line }) => code !== "order.left-behind" || line >= (lines.get("items") ?? 0))
      .flatMap(({ code, line, fact }) =>
        assignmentsOf(made, fact.options).map((so) => [`${code} line ${line}`, so] as const),
      ),
  );
  return {
    text,
    wanted,
    missing: wanted.filter((row) => !found.includes(row)).map((row) => `missing: ${row}`),
    extra: found.filter((row) => !wanted.includes(row)).map((row) => `too much: ${row}`),
  };
}

/** Each assignment of all options that the found ones allow. */
function assignmentsOf(
  { options }: SimProcedure,
  found: readonly Readonly<Record<string, string>>[] | undefined,
): string[] {
  return assignments(options)
    .filter(
      (so) =>
        found === undefined || found.some((cube) => Object.entries(cube).every(([name, value]) => so[name] === value)),
    )
    .map(keyOf);
}

function keyOf(so: Readonly<Record<string, string>>): string {
  return JSON.stringify(Object.entries(so).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** One line for each code and place, with all assignments. */
function rows(list: Iterable<readonly [string, string]>): string[] {
  const found = new Map<string, Set<string>>();
  for (const [key, so] of list) found.set(key, (found.get(key) ?? new Set()).add(so));
  return [...found].map(([key, so]) => `${key}: ${[...so].sort().join(" ")}`).sort();
}
