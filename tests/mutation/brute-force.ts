// The procedures of `differential.test.ts`, the first of them, in small groups: a mutant then goes only through the groups that
// reach it. For the mutation test alone.
import fc from "fast-check";
import { expect, test } from "vitest";
import { differences, type Wanted, wantedIn } from "../oracles/comparison.ts";
import { procedures } from "../oracles/procedure-generator.ts";

const GROUPS = 30;
const IN_GROUP = 10;

const made = fc.sample(procedures, { numRuns: GROUPS * IN_GROUP, seed: 7 });
/** What must be found says the brute-force run, which no mutant changes: asked once. */
const wanted = new Map<number, readonly Wanted[]>();

test.each(Array.from({ length: GROUPS }, (_, group) => group))(
  "the checker says what the brute-force run says",
  (group) => {
    const first = group * IN_GROUP;
    const here = wanted.get(group) ?? made.slice(first, first + IN_GROUP).map(wantedIn);
    wanted.set(group, here);
    expect(here.flatMap(differences)).toEqual([]);
  },
);
