// Writes down what must be found in each procedure that a broken follower is tried on: some of the drills with clocks, which are short,
// all other drills, random procedures.
import { writeFileSync } from "node:fs";
import fc from "fast-check";
import { wantedIn } from "../../oracles/comparison.ts";
import { drills } from "../../oracles/paper/drills.ts";
import { clockDrills } from "../../oracles/paper/flow-drills.ts";
import { procedures } from "../../oracles/procedure-generator.ts";

/** Of the drills with clocks the first, made by hand, and then one in so many: they differ little. */
const CLOCK_SHARE = 10;

const [path = "", runs, seed] = process.argv.slice(2);
const random = fc.sample(procedures, { numRuns: Number(runs), seed: Number(seed) });
const clocks = clockDrills().filter((_, at) => at < CLOCK_SHARE || at % CLOCK_SHARE === 0);
writeFileSync(path, JSON.stringify([...clocks, ...drills(), ...random].map(wantedIn)));
