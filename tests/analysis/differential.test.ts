// The checker against a brute-force run over all option values, outcomes of checks and orders: same codes, lines and option sets;
// over the drills, which are the same every time, and over random procedures.
import fc from "fast-check";
import { expect, test } from "vitest";
import { isThorough, oneIn } from "#harness/thorough.ts";
import { CODES, differences, wantedIn } from "../oracles/comparison.ts";
import { drills } from "../oracles/paper/drills.ts";
import { clockDrills, flowDrills } from "../oracles/paper/flow-drills.ts";
import type { SimProcedure } from "../oracles/paper/shop.ts";
import { procedures } from "../oracles/procedure-generator.ts";

const RUNS = isThorough ? 2000 : 50;
/** Of the drills one in so many: all of them take minutes, and `npm run effects` goes through all. */
const SHARE = 30;
/** Those of the flow and of clocks are small, and each jump stands at many places. */
const FLOW_SHARE = 40;
const LEAST = isThorough ? 10 : 1;

test("the checker says what the brute-force run says", { timeout: 1_800_000 }, () => {
  const random = compared(fc.sample(procedures, { numRuns: RUNS, seed: 7 }));
  const small = [flowDrills(), clockDrills()].flatMap((list) => oneIn(FLOW_SHARE, list));
  const drilled = compared([...oneIn(SHARE, drills()), ...small]);
  const faulty = random.filter((rows) => rows.length > 0).length;
  const all = [...random, ...drilled].flat();
  const counts = CODES.map((code) => [code, all.filter((row) => row.startsWith(`${code} `)).length] as const);
  const told = counts.map(([code, count]) => `${count} ${code}`).join(", ");
  console.info(`brute-force run: ${RUNS} random procedures, ${faulty} faulty, ${drilled.length} drills: ${told}`);
  expect(faulty).toBeGreaterThan(0.3 * RUNS);
  expect(faulty).toBeLessThan(0.7 * RUNS);
  expect(counts.filter(([, count]) => count < LEAST)).toEqual([]);
});

/** What the brute-force run says of each, once it is shown that the checker says the same. */
function compared(list: readonly SimProcedure[]): readonly (readonly string[])[] {
  const runs = list.map((made) => {
    const wanted = wantedIn(made);
    return { ...wanted, different: differences(wanted) };
  });
  // The shortest first: it tells most.
  const different = runs.filter((run) => run.different.length > 0);
  different.sort((one, other) => one.text.length - other.text.length);
  const [shortest] = different;
  expect(different, shortest && [...shortest.different, shortest.text].join("\n")).toEqual([]);
  return runs.map(({ rows }) => rows);
}
