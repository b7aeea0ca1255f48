// The checker against a brute-force run over all option values and outcomes of checks: same codes, places and option sets.
import fc from "fast-check";
import { expect, test } from "vitest";
import { type SimProcedure, simText, simulate } from "../oracles/paper-simulator.ts";
import { procedures } from "../oracles/procedure-generator.ts";
import { onPaper } from "./run-on-paper.ts";

const CODES =
  /^order\.(not-installed|already-installed|enclosed|missing-support|retained|unmet-need|left-behind|unfinished)$/;
const RUNS = 700;

test("the checker says what the brute-force run says", () => {
  let compared = 0;
  let faulty = 0;
  const codes = new Map<string, number>();
  fc.assert(
    fc.property(procedures, (made) => {
      const { text, lines } = simText(made);
      const wanted = table(
        simulate(made)
          .filter(({ at }) => lines.has(at))
          .map(({ code, at, so }) => [`${code} line ${lines.get(at)}`, JSON.stringify(so)] as const),
      );
      const found = table(
        onPaper(text)
          .facts.filter(({ code }) => CODES.test(code))
          // An aid that is in from the start is told at `begin with`, which the simulator has no place for.
          .filter(({ code, line }) => code !== "order.left-behind" || line >= (lines.get("items") ?? 0))
          .flatMap(({ code, line, fact }) =>
            assignmentsOf(made, fact.options).map((so) => [`${code} line ${line}`, so] as const),
          ),
      );
      compared += Object.keys(wanted).length + 1;
      if (Object.keys(wanted).length > 0) faulty++;
      for (const key of Object.keys(wanted)) {
        const code = key.split(" ")[0] ?? "";
        codes.set(code, (codes.get(code) ?? 0) + 1);
      }
      expect(found, text).toEqual(wanted);
    }),
    { numRuns: RUNS, seed: 7 },
  );
  const counts = [...codes].map(([code, count]) => `${count} ${code}`).join(", ");
  console.info(
    `brute-force run: ${compared} comparisons over ${RUNS} procedures, ${faulty} of them with faults: ${counts}`,
  );
  expect(faulty).toBeGreaterThan(0.3 * RUNS);
  expect(faulty).toBeLessThan(0.7 * RUNS);
  expect(codes.size).toBe(8);
});

/** Each assignment of all options that the found ones allow. */
function assignmentsOf(
  { options }: SimProcedure,
  found: readonly Readonly<Record<string, string>>[] | undefined,
): string[] {
  const all = options.reduce<Record<string, string>[]>(
    (list, { name, values }) => list.flatMap((so) => values.map((value) => ({ ...so, [name]: value }))),
    [{}],
  );
  return all
    .filter(
      (so) =>
        found === undefined || found.some((cube) => Object.entries(cube).every(([name, value]) => so[name] === value)),
    )
    .map((so) => JSON.stringify(so));
}

function table(list: Iterable<readonly [string, string]>): Record<string, string[]> {
  const rows = new Map<string, Set<string>>();
  for (const [key, so] of list) rows.set(key, (rows.get(key) ?? new Set()).add(so));
  return Object.fromEntries([...rows].sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, so]) => [key, [...so].sort()]));
}
