// The procedures of `differential.test.ts`, the first of them, and some of its drills with clocks, in small groups: a mutant then goes
// only through the groups that reach it. For the mutation test alone.
import fc from "fast-check";
import { expect, test } from "vitest";
import { differences, type Wanted, wantedIn } from "../oracles/comparison.ts";
import { clockDrills } from "../oracles/paper/flow-drills.ts";
import { procedures } from "../oracles/procedure-generator.ts";

const RANDOM = 300;
const CLOCK_SHARE = 40;
const IN_GROUP = 10;

const clocks = clockDrills().filter((_, at) => at % CLOCK_SHARE === 0);
const made = [...fc.sample(procedures, { numRuns: RANDOM, seed: 7 }), ...clocks];
/** What must be found says the brute-force run, which no mutant changes: asked once. */
const wanted = new Map<number, readonly Wanted[]>();

test.each(Array.from({ length: Math.ceil(made.length / IN_GROUP) }, (_, group) => group))(
  "the checker says what the brute-force run says",
  (group) => {
    const first = group * IN_GROUP;
    const here = wanted.get(group) ?? made.slice(first, first + IN_GROUP).map(wantedIn);
    wanted.set(group, here);
    expect(here.flatMap(differences)).toEqual([]);
  },
);
