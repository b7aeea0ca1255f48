// Facts of procedures that were taken over are those that a fresh check finds, at the places where they stand now.
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlace } from "#harness/random-edit.ts";
import { openSamples } from "#harness/samples.ts";
import { isThorough } from "#harness/thorough.ts";
import { threefoldSamples } from "#harness/threefold.ts";
import { typedThrough } from "#harness/typed-through.ts";

/** Those with a fault have findings to move. */
const shops = threefoldSamples((path) => path !== "faulty/flow.too-large.sprag");

const edit = fc.record({
  place: anyPlace,
  drop: fc.constantFrom(0, 0, 0, 1, 12),
  put: fc.constantFrom(
    "",
    "\n",
    "\n",
    "x",
    "}",
    '"',
    "step ",
    "critical\n",
    'note "See above."\n',
    'step do "as shown"\n',
  ),
  back: fc.boolean(),
});

test("after any edits the findings are those of a fresh check", { timeout: 1_200_000 }, () => {
  let compared = 0;
  let found = 0;
  fc.assert(
    fc.property(fc.nat(shops.length - 1), fc.array(edit, { minLength: 4, maxLength: 4 }), (shop, edits) => {
      const { path, texts } = shops[shop] as (typeof shops)[number];
      const { findings, states } = typedThrough(path, texts.get(path) ?? "", edits, (text, before) =>
        openSamples(new Map(texts).set(path, text), [], before ?? undefined),
      );
      compared += states;
      found += findings;
    }),
    { numRuns: isThorough ? 1_000 : 8 },
  );
  console.log(`${compared} states compared with a fresh check, ${found} findings in them`);
  expect(found).toBeGreaterThan(compared);
});
