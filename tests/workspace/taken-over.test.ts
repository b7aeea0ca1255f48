// Facts of procedures that were taken over are those that a fresh check finds, at the places where they stand now.
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlace, firstProcedure, typedInto } from "#harness/random-edit.ts";
import { openSamples } from "#harness/samples.ts";
import { isThorough } from "#harness/thorough.ts";
import { threefoldSamples } from "#harness/threefold.ts";
import type { Workspace } from "#workspace/index.ts";

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
      let text = texts.get(path) ?? "";
      let workspace: Workspace | undefined;
      // What a fresh workspace finds is asked for behind them all: it may leave something that hides what these would keep.
      const reports: (readonly [ReadonlyMap<string, string>, ReturnType<Workspace["check"]>])[] = [];
      const look = (next: string): void => {
        const changed = new Map(texts).set(path, next);
        workspace = openSamples(changed, [], workspace);
        reports.push([changed, workspace.check([path])]);
      };
      look(text);
      for (const { back, ...edit } of edits) {
        const next = typedInto(text, edit, firstProcedure(text));
        look(next);
        if (back) look(text);
        else text = next;
      }
      for (const [changed, report] of reports) {
        expect(report).toEqual(openSamples(changed, []).check([path]));
        compared++;
        found += report.files[0]?.findings.length ?? 0;
      }
    }),
    { numRuns: isThorough ? 1_000 : 8 },
  );
  console.log(`${compared} states compared with a fresh check, ${found} findings in them`);
  expect(found).toBeGreaterThan(compared);
});
